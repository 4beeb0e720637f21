import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: '这个练习来自演示上一次的启动。',
  fresh: '重新开始',
  failed: (why) => `演示工厂加载失败：${why}`,
};
