import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}、ログに記録済み`,
  nothingLoaded: '何もセットされていません。',
  closest: '必要なもので最も近い',
  characters: (count) => `${formatCount(count)}文字違います。`,
  belongsAt: 'このリールの場所',
  belongsNowhere: 'ここには、これを使うスロットがありません。',
  lacksReel: '今そこにリールはありません。',
  hasReel: '今そこにリールがあります。',
  onLine: (slot, line) => `${line}の${slot}`,
  rightReel: (slot) => `${slot}に必要`,
  rightReelNone: 'ログでは倉庫にそのリールがありません。',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel}とほか${formatCount(more)}本`),
  feederToFetch: '取ってくるフィーダー',
  feederNone: '一覧にその大きさの空きフィーダーがありません。',
  anotherFeeder: '別のフィーダーをスキャンする',
  carryOn: (slot) => `${slot}へ持っていく`,
  unload: (slot) => `${slot}を取り外す`,
  reachIn: '手を入れる前に機械を止めてください。',
  runsHere: {
    title: 'そのリールはここで使用中です',
    text: (slot) => `このラベルは${slot}のリールと同じです。同じラベルの2本目ですか`,
    same: 'いいえ、そのリールです',
    second: 'はい、2本目です',
  },
  cameBefore: {
    title: 'このリールは前にラインにありましたか',
    text: (lot, left) =>
      `ラベルに固有のIDがありません。似たリール${lot === null ? '' : `（ロット${lot}）`}が${left === null ? '数不明で' : `残り${left}個で`}ラインから外れています。`,
    same: 'はい、そのリールです',
    fresh: 'いいえ、新しいリールです',
  },
};
