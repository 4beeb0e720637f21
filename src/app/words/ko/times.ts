import type { words as english } from '../en/times.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: '로그를 읽는 중…',
  running: '라인이 돌고 있습니다. 시간은 마지막 양품 패널부터 셉니다.',
  stopped: '라인이 멈췄습니다. 마지막 양품 패널이 확인되면 정지로 셉니다.',
  madeReady: (span) => `미리 준비 ${span}`,
  standing: '라인 정지',
  external: '라인이 도는 동안 준비',
  paused: (span) => `휴식과 계획 정지 ${span} 제외.`,
  before: '이전의 같은 종류 기종 교체와 비교',
  noneBefore: '이 두 제품 사이의 이전 기종 교체가 로그에 없습니다.',
  thisOne: '이번',
  people: '사람별',
  nobody: '로그인 없음',
  marks: (count) => `동작 ${count}건`,
  steps: '가장 긴 동작',
  kinds: {
    step: '체크리스트',
    skip: '건너뜀',
    load: '끼움',
    unload: '뺌',
    measure: '측정',
    look: '육안 확인',
  },
  none: '이 기종 교체에서 아직 체크하거나 스캔한 것이 없습니다.',
  where: '시간이 쓰인 곳',
  axis: 'min',
  legend: { act: '동작', outside: '미리 할 수 있는 것', stop: '휴식 또는 계획 정지' },
  median: (count, span) =>
    count === 1 ? `이전 것은 ${span} 걸렸습니다.` : `이전 ${count}회의 중앙값은 ${span}입니다.`,
  longer: (span) => `이번에는 ${span} 더 서 있었습니다.`,
  shorter: (span) => `이번에는 ${span} 덜 서 있었습니다.`,
  asMedian: '이번에도 거의 같은 시간 서 있었습니다.',
  medianMark: (span) => `이전 것의 중앙값, ${span}`,
  saved: (steps, span) =>
    `${steps}단계는 마지막 패널 전에 할 수 있었습니다. 라인이 최대 ${span} 덜 섰을 것입니다.`,
  outside: '라인이 도는 동안 할 수 있음',
  late: '도는 동안 할 것을 정지 중에 함',
  candidate: '손을 넣지 않음: 미리 할 수 있는지 결정하십시오',
  noneOutside: '정지 중에 한 동작은 모두 정지가 필요한 것이었습니다.',
  how: '각 시간은 같은 사람의 앞 동작부터 셉니다.',
};
