import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `이 태블릿의 시계가 ${clock}에 ${span} 뒤로 갔습니다. 맞추십시오.`,
  ahead: (span, clock) =>
    `이 태블릿이 ${clock}에 ${span} 동안 잠들었거나 시계가 앞으로 갔습니다. 지금 틀리면 맞추십시오.`,
  'behind-log': (span) => `이 태블릿의 시계가 가장 새 기록보다 ${span} 늦습니다. 맞추십시오.`,
  'behind-server': (span) => `이 태블릿의 시계가 서버보다 ${span} 늦습니다. 맞추십시오.`,
  'ahead-of-server': (span) => `이 태블릿의 시계가 서버보다 ${span} 빠릅니다. 맞추십시오.`,
  goesOn: '경고와 시각은 마지막으로 맞던 시각부터 이어서 계산합니다.',
  short: '시계 확인',
  isRight: '시계가 맞음',
};
