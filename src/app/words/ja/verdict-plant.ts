// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons } from '../reason-words.ts';

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
  'older-in-store': {
    title: '倉庫にもっと古いリールがある',
    say: (f) =>
      f['by'] === 'expires'
        ? `${f['place']}のリール${f['reel']}は${f['expires']}までに使うもので、これより先です。`
        : `${f['place']}のリール${f['reel']}のデートコードは${f['dateCode']}で、これより古いです。`,
    act: '',
  },
};
