// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `測定値：${f['quantity']} ± ${f['uncertainty']} ${f['unit']}。規格：${f['nominal']} ${f['unit']}、${f['least']}〜${f['most']}。ガードバンド${f['guard']}を引くと${f['from']}〜${f['to']}。`;

export const plantReasonsJa: PlantReasons = {
  'feeder-unknown': {
    title: '不明なフィーダー',
    say: (f) => `フィーダー${f['feeder']}は工場の一覧になく、幅を照合できません。`,
    act: '班長の判断が必要です。',
  },
  'feeder-type': {
    title: 'フィーダーの型が違う',
    say: (f) => `フィーダー${f['feeder']}は${f['found']}、このスロットに必要なのは${f['wanted']}です。`,
    act: 'その型のフィーダーを使ってください。',
  },
  'feeder-drive': {
    title: '駆動が違う',
    say: (f) => `フィーダー${f['feeder']}の駆動は${f['found']}、このスロットに必要なのは${f['wanted']}です。`,
    act: '駆動の合うフィーダーを使ってください。',
  },
  'feeder-height': {
    title: 'ポケットがフィーダーには深すぎる',
    say: (f) =>
      `テープのポケットは深さ${f['wanted']} mm、フィーダー${f['feeder']}が通せるのは${f['found']} mm です。`,
    act: 'もっと深いポケット用のフィーダーを使ってください。',
  },
  'maker-not-listed': {
    title: 'メーカーがこの製品の一覧にない',
    say: (f) =>
      `${f['supplierPart']}は、この製品の${f['part']}用に承認されていません。${f['listed'] ? `承認済み：${f['listed']}。` : ''}${f['approvedFor'] ? `${f['approvedFor']}では承認済みです。` : ''}`,
    act: '一覧のメーカーのリールを使うか、班長に判断してもらってください。',
  },
  'date-code-old': {
    title: 'デートコードでは古すぎる',
    say: (f) => `製造${f['made']}。この部品に対するラインの期限は${f['last']}まででした。`,
    act: '班長の判断が必要です。',
  },
  'date-code-unknown': {
    title: '古さが不明',
    say: (f) =>
      f['dateCode']
        ? `デートコード${f['dateCode']}を確実には読めません。ラインはこの部品の古さを制限しています。`
        : 'ラベルにデートコードがありません。ラインはこの部品の古さを制限しています。',
    act: '班長の判断が必要です。',
  },
  'value-outside': {
    title: '値が違う',
    say: measured,
    act: 'セットしないでください。リールを別に置き、別のリールをスキャンしてください。',
  },
  'value-unsure': {
    title: '値を判定できない',
    say: (f) => `${measured(f)}この測定器には規格の境に近すぎます。`,
    act: 'リールをもう一度スキャンして測り直すか、班長に判断してもらってください。',
  },
  'value-unmeasured': {
    title: '値が未測定',
    say: (f) => `ラインは、供給前に${f['part']}を1個測定することを求めています。`,
    act: 'リールをもう一度スキャンして測定するか、班長に判断してもらってください。',
  },
  'value-unknown': {
    title: '照合する値がない',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `部品一覧の${f['part']}の値に許容差がありません。`
        : `部品一覧に${f['part']}の値がありません。`,
    act: '班長の判断が必要です。部品の画面で値を入力してください。',
  },
  'value-within': { title: '値を確認済み', say: measured, act: '' },
  'feeder-care': {
    title: 'フィーダーの整備時期',
    say: (f) =>
      `フィーダー${f['feeder']}は約${f['placed']}個を装着しました。工場の決まりは${f['after']}個ごとの整備です。外したら整備に出してください。`,
    act: '',
  },
  'older-in-store': {
    title: '倉庫にもっと古いリールがある',
    say: (f) =>
      f['by'] === 'expires'
        ? `${f['place']}のリール${f['reel']}は${f['expires']}までに使うもので、これより先です。`
        : `${f['place']}のリール${f['reel']}のデートコードは${f['dateCode']}で、これより古いです。`,
    act: '',
  },
};
