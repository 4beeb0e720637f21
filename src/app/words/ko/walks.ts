import type { words as english } from '../en/walks.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: '순회',
  walkSplices: (count) => (count === 1 ? '스플라이스 1건' : `스플라이스 ${count}건, 순회 한 번`),
  walkMore: (count) => `나중에 순회 ${count}회 더`,
  crew: '이 라인의 인원',
  missTitle: '제때 불가',
  miss: {
    windowTooShort: (moment) => `${moment}까지 스플라이스: 시간이 너무 짧음`,
    closesTooSoon: (moment) => `${moment}까지 스플라이스: 제때 갈 사람이 없음`,
    crowdedOut: (moment) => `${moment}까지 스플라이스: 모두 다른 스플라이스로 바쁨`,
  },
  remedies: {
    cutEarly: (parts, moment) => `이전 테이프를 일찍 ${moment}에 자르기: 약 ${formatCount(parts)}개 버림`,
    secondPerson: (moment) => `두 번째 사람이 ${moment}까지 가기`,
    secondSlot: (moment) => `${moment}까지 부품을 두 번째 슬롯에 장착`,
  },
  orRemedy: (remedy) => `또는: ${remedy}`,
  missMore: (count) => `나중에 ${count}건 더`,
  noRemedy: '라인이 멈춥니다. 다음 릴을 준비하십시오.',
};
