import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import type { Sentences } from '../words.ts';

const kinds: Readonly<Record<StepKind, string>> = {
  tick: '체크',
  measure: '측정값',
  scan: '스캔',
  choice: '선택',
  photo: '사진',
  note: '메모',
  sign: '서명',
  known: '앱이 확인',
};

const conditions: Readonly<Record<StepCondition, string>> = {
  always: '항상',
  'side-changes': '면이 바뀌면',
  'stencil-changes': '메탈 마스크가 바뀌면',
  'product-changes': '제품이 바뀌면',
  'program-changes': '프로그램이 바뀌면',
};

const faults: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': '체크리스트에 이름을 붙이십시오.',
  'no-steps': '체크리스트에 단계가 없습니다.',
  'step-twice': '같은 단계가 두 번 있습니다.',
  'no-text': '글이 빠졌습니다.',
  'limits-crossed': '하한이 상한보다 큽니다.',
  'no-options': '선택에는 선택지가 둘 이상 필요합니다.',
  'right-not-listed': '정답이 선택지에 없습니다.',
  'no-unit': '측정값에는 단위가 필요합니다.',
  'nothing-known': '무엇이 참이어야 하는지 선택하십시오. 기종 교체 체크리스트만 요구할 수 있습니다.',
  'signatures-differ': '서명마다 역할이 필요합니다.',
};

export const words: Sentences<typeof english> = {
  kinds,
  conditions,
  faults,
  times: { running: '라인 가동 중', stopped: '라인 정지 중' },
  version: (version, steps) => `버전 ${version} · ${steps}단계`,
  edit: '편집',
  title: '이름',
  language: '언어 추가',
  noLanguage: '추가 안 함',
  text: '글',
  group: '제목',
  caution: '주의',
  kind: '답변 방식',
  time: '언제',
  condition: '묻는 조건',
  mandatory: '필수',
  least: '최소',
  most: '최대',
  unit: '단위',
  expects: '스캔에서 나와야 하는 글',
  options: '선택지, 쉼표로 구분',
  right: '정답, 쉼표로 구분',
  signature: (number) => `서명 ${number}`,
  noSignature: '없음',
  wants: '스캔할 것',
  wantNames: {
    stencil: '메탈 마스크',
    paste: '솔더 페이스트 용기',
    program: '프로그램',
    feeder: '이 공장의 피더',
    slot: '이 라인의 슬롯',
    reel: '이 공장의 릴',
    other: '현장의 다른 코드',
  },
  knows: '참이어야 하는 것',
  factNames: {
    moves: '남은 피더 이동이 없음',
    slots: '모든 슬롯에 확인된 릴이 있음',
    'first-panel': '첫 패널을 확인했고 맞음',
  },
  up: '앞으로',
  down: '뒤로',
  remove: '빼기',
  add: '단계 추가',
  done: '완료',
  save: (version) => `버전 ${version}(으)로 저장`,
  saved: (version) => `버전 ${version} 저장됨. 열린 체크리스트는 그대로입니다.`,
  help: '버전은 바뀌지 않습니다. 열린 것도 닫힌 것도 열 때의 버전을 유지합니다.',
  newGroup: '기타',
};
