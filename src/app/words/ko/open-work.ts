import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';

const said: Said = {
  misfit: () => '셋업이 이 라인에 맞지 않음',
  move: (count) => `남은 피더 이동 ${count}건`,
  'slot-empty': (count) => `릴 없는 슬롯 ${count}개`,
  'slot-other': (count) => `다른 부품이 있는 슬롯 ${count}개`,
  'slot-held': (count) => `반장을 기다리는 릴 ${count}개`,
  'measured-wrong': (count) => `측정이 틀린 부품 ${count}종`,
  'looked-wrong': (count) => `보기에 틀린 부품 ${count}종`,
  'cannot-tell': (count) => `계측기로는 한계에 너무 가까운 부품 ${count}종`,
  unchecked: (count) => `아직 확인 안 한 부품 ${count}종`,
  step: (count) => `체크리스트 단계 ${count}건`,
  'no-checklist': () => '체크리스트를 연 적이 없음',
};

export const words: Sentences<typeof english> = {
  said,
  on: (part, slot) => `${slot}의 ${part}`,
  reelOn: (reel, slot) => `${slot}의 릴 ${reel}`,
  reel: (reel) => `릴 ${reel}`,
  more: (count) => `외 ${count}건`,
  isWrong: '틀림',
  isOpen: '미완',
  nothing: '남은 것이 없습니다.',
};
