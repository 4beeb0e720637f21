import type { words as english } from '../en/held.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': '잘못된 릴을 늦게 발견',
    cleared: '보류를 잘못 해제',
    blocked: '사용 금지 자재',
    'floor-life': '플로어 라이프 초과',
  },
  hold: '이 패널들 보류',
  holdTitle: (panels) => `패널 ${panels}장을 보류합니까?`,
  holdHelp:
    '들어갔을 수 있는 패널을 모두 보류합니다. 아직 라인 안에 있는 것도 포함합니다. 반장이 서명할 때까지 보류됩니다.',
  goesOn: '아직 슬롯에 있습니다. 먼저 빼십시오. 빼지 않으면 앞으로 나올 패널은 보류되지 않습니다.',
  cause: '왜 보류합니까?',
  lifeHelp: '플로어 라이프가 끝난 순간부터의 패널을 보류합니다.',
  noLifeOver: '로그로는 패널을 생산하는 동안 플로어 라이프가 끝난 적이 없습니다.',
  reason: '무엇을 발견했습니까?',
  codes: (codes) => `패널 코드 ${codes}개를 압니다.`,
  sure: (panels) => (panels === 0 ? '확실히 들어간 것은 없습니다.' : `${panels}장에 확실히 들어갔습니다.`),
  done: (panels) => `패널 ${panels}장을 보류했습니다.`,
  none: '보류된 패널이 없습니다.',
  span: (first, last) => `패널 ${first} ~ ${last}`,
  still: (held, all) => `서명 안 됨: ${all}장 중 ${held}장`,
  noCodes: '패널 코드가 없습니다. 번호로 이 패널들을 찾으십시오.',
  signed: (who, when) => `${who} 서명, ${when}`,
  sign: '서명',
  signAll: '모두 서명',
  signTitle: '이 패널들을 어떻게 했습니까?',
  signHelp: '패널을 하나씩 고르거나 모두 서명하십시오.',
  signWhy: '무엇을 했습니까? 예: 재작업, 폐기, 이상 없음.',
  signDone: '서명했습니다.',
  save: '코드를 CSV로 저장',
  which: '어느 패널입니까?',
};
