import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';

const said: Said = {
  misfit: () => '段取り表がこのラインに合いません',
  move: (count) => `フィーダーの移動があと${count}件`,
  'slot-empty': (count) => `リールのないスロット${count}個`,
  'slot-other': (count) => `別の部品のスロット${count}個`,
  'slot-held': (count) => `班長待ちのリール${count}本`,
  'measured-wrong': (count) => `測定が違う部品${count}種`,
  'looked-wrong': (count) => `見た目が違う部品${count}種`,
  'cannot-tell': (count) => `測定器では境に近すぎる部品${count}種`,
  unchecked: (count) => `未確認の部品${count}種`,
  step: (count) => `チェックリストの手順${count}件`,
  'no-checklist': () => 'チェックリストが一度も開かれていません',
};

export const words: Sentences<typeof english> = {
  said,
  on: (part, slot) => `${slot}の${part}`,
  reelOn: (reel, slot) => `${slot}のリール${reel}`,
  reel: (reel) => `リール${reel}`,
  more: (count) => `ほか${count}件`,
  isWrong: '違う',
  isOpen: '未完',
  nothing: '残っているものはありません。',
};
