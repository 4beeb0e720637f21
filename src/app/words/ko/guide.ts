import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '안내 연습',
  about: '한 번에 한 단계씩입니다. 필요하면 떠나십시오. 같은 단계에서 이어집니다.',
  guides: {
    operator: '릴 세 개, 하나는 틀린 것. 스플라이스 한 번. 경고 한 번.',
    lead: '보류된 릴 결정. 내보내기.',
    engineer: '셋업 가져오기.',
  },
  start: '안내 시작',
  goOn: (at, of) => `${of}단계 중 ${at}단계부터 계속`,
  again: '1단계부터 다시',
  step: (at, of) => `${of}단계 중 ${at}단계`,
  leave: '안내 나가기',
  go: '위치 보기',
  skip: '이 단계 건너뛰기',
  still: '다른 작업이었습니다. 이 단계는 아직 남아 있습니다.',
  over: '모든 단계를 마쳤습니다. 더 연습하거나 연습을 끝내십시오.',
  noLead: '이 공장에는 아직 반장이 없습니다. 먼저 추가하십시오.',
  example: '예제 시트 사용',
  steps: {
    first: {
      ask: '슬롯 라벨을 누르고, 맞는 릴을 누르십시오.',
      seen: (slot) => `${slot}: 합격.`,
    },
    wrong: {
      ask: (group) => `슬롯 라벨을 누르고, 틀린 릴을 누르십시오. “${group}”에 있습니다.`,
      seen: (slot) => `${slot}: 거부. 그 릴은 쓰면 안 됩니다.`,
    },
    second: {
      ask: '슬롯을 하나 더 누르고, 맞는 릴을 누르십시오.',
      seen: (slot) => `${slot}: 합격.`,
    },
    splice: {
      ask: (group) => `스플라이스: “${group}”에서 슬롯을 누르고 릴을 누르십시오.`,
      seen: (slot) => `${slot}: 스플라이스됨.`,
    },
    run: {
      ask: '라인에서 생산을 시작하십시오.',
      seen: '생산이 시작되었습니다.',
    },
    warning: {
      ask: '슬롯이 경고할 때까지 라인에서 패널을 세십시오.',
      seen: (slot) => `${slot}: 경고.`,
    },
    answer: {
      ask: (act) => `경고 옆의 “${act}”를 누르거나 그 슬롯을 스플라이스하십시오.`,
      seen: '경고에 응답했습니다.',
    },
    hold: {
      ask: '슬롯 라벨을 누르고, 수량이 없는 릴을 누르십시오.',
      seen: (slot) => `${slot}: 보류. 반장이 결정해야 합니다.`,
    },
    clear: {
      ask: '반장으로 결정: 사원증, PIN, 이유.',
      seen: '결정했습니다. 로그에 이름이 남습니다.',
    },
    export: {
      ask: (act) => `로그에서 “${act}”, 다음에 CSV를 누르십시오. 연습에서는 파일을 저장하지 않습니다.`,
      seen: '내보내기를 요청했습니다. 파일은 저장되지 않았습니다.',
    },
    open: {
      ask: (page) => `“${page}”를 여십시오.`,
      seen: (page) => `“${page}”가 열려 있습니다.`,
    },
    take: {
      ask: (example, act) => `“${example}”를 누르고, 바뀌는 것을 본 뒤 “${act}”를 누르십시오.`,
      seen: (product) => `${product}: 가져왔습니다.`,
    },
    look: {
      ask: (page) => `“${page}”에서 찾으십시오.`,
      seen: '목록에 있습니다.',
    },
  },
};
