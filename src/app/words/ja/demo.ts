import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'この練習は、デモの前回の起動のものです。',
  fresh: '最初からやり直す',
  failed: (why) => `デモ工場を読み込めませんでした：${why}`,
};
