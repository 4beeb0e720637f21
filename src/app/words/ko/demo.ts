import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: '이 연습은 데모를 전에 시작했을 때의 것입니다.',
  fresh: '새로 시작',
  failed: (why) => `데모 공장을 불러오지 못했습니다: ${why}`,
};
