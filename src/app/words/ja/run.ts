import type { words as english } from '../en/run.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) => `${count}スロットがまだ正しくありません：「セット」を見てください。`,
  startTitle: '生産を開始する',
  panelSecondsHelp: 'ラインの実際のペースを測るまで使います。',
  panelPrefix: 'パネルコードの先頭',
  panelPrefixHelp: 'パネルにコードがなければ空欄に。タップで数えます。',
  wrongNumber: '0より大きい数を入力してください。',
  startAnyway: '空きスロットのまま開始する',
  stopTitle: 'ラインが止まった理由は？',
  endTitle: 'この生産を終了しますか',
  endText: (done, wanted) =>
    `${formatCount(wanted)}パネル中${done}パネルを数えました。リールはスロットに残ります。`,
  plusManyTitle: 'あと何パネル加えますか',
  skippedTitle: '次のパネルでスキップする基板は？',
  skippedHelp: '不良マークのある基板をそれぞれタップしてください。次の計数に反映します。',
  skippedUse: (count) => (count === 0 ? 'スキップなし' : `${count}枚をスキップする`),
  skippedManyTitle: (panels) => `この${formatCount(panels)}パネルでスキップした基板は？`,
  skippedMost: (boards) => `基板は${boards}枚しかありません。小さい数を入力してください。`,
  skippedNotKnown: '不明',
  scrapTitle: '何パネル廃棄しますか',
  scrapHelp: '計数には残ります（部品は使用済み）。同じ数だけ追加で生産します。',
  scrapMost: (panels) => `数えた良品は${panels}パネルだけです。小さい数を入力してください。`,
  setRightTitle: '何パネルできましたか',
  setRightHelp: '生産数がこの数になります。誰が数えても、ここから続きます。',
  setRightWhy: '数が違う理由は？',
  setRightYes: (panels) => `${panels}にする`,
  setRightMissing: '別の数と理由を入力してください。',
  stoodSince: '停止開始',
  stoodLast: (clock, span) => `${clock}、最後のパネル、${span}前`,
  stoodNow: (clock) => `今、${clock}`,
};
