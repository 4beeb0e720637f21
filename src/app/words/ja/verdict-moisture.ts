// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableJa: TableWords = {
  own: '表：自社所有の規格書。',
  copy: '表：公開版と照合済み。',
  memory: '表：記憶による。',
};

export const moistureReasonsJa: MoistureReasons = {
  'bake-hours-over': {
    title: 'ベーキングの合計が長すぎる',
    say: (f) =>
      `90 °C 超がこれまで${f['hours']} h、上限は${f['most']} h です。リードのはんだ付け性が落ちている可能性があります。`,
    act: '班長の判断が必要です。部品のメーカーに聞いてください。',
  },
  'label-time-missing': {
    title: 'レベル6：ラベルの時間は？',
    say: () => 'レベル6のリールがベーキング後にもつ時間は、袋のラベルにあります。まだ誰も入力していません。',
    act: 'ベーキングし、「袋・オーブン」で時間を入力してから、もう一度スキャンしてください。',
  },
  'reel-unnamed': {
    title: 'IDがなく、開封済みのリールかもしれない',
    say: (f) =>
      `この部品のリール${f['lot'] ? `（ロット${f['lot']}）` : ''}が以前ラインから外れています${f['left'] ? `（残り${f['left']}）` : ''}。IDがないと2本を区別できないため、${f['floorLife'] === 'true' ? 'フロアライフ' : '数'}が不明です。`,
    act: 'リールにIDを付けるか、班長に判断してもらってください。',
  },
  'reel-gone': {
    title: 'ログではずっと前に使い切ったリール',
    say: (f) =>
      `ログでは、リール${f['reel']}またはその部品の一部はずっと前に使い切られています。袋から出ていた時間は、このタブレットでは分かりません。`,
    act: 'ロットは「トレース」で調べ、班長に判断してもらってください。',
  },
  'floor-life-short': {
    title: 'フロアライフがリールより先に終わる',
    say: (f) => `フロアライフはあと${f['leftSeconds']}、リールは${f['neededSeconds']}もちます。`,
    act: '班長の判断が必要です。',
  },
};
