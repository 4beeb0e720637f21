import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: '工場の名前',
  nameHelp: 'セット表、バッジ、エクスポートに載ります。',
  zoneHelp: '新しいラインはこれで始まります。',
  nameMissing: '工場の名前を入力してください。',
  zoneUnknown: '一覧からタイムゾーンを選んでください。',
  same: '変更はありません。',
  save: '名前を保存する',
  saved: (name) => `${name}を保存しました。`,
  fileTitle: '2つ目の工場のためのファイル',
  fileHelp:
    'ライン、機械、バンク、ルール、部品のルール、チェックリスト、ラベルのルールが入ります。人、リール、段取り表、履歴は入りません。',
  noLine: 'ラインがまだありません。',
  fileSave: 'ファイルを保存する',
  fileSaved: (name) => `${name}を保存しました。`,
  beginTitle: '別の工場のファイルから始める',
  beginHelp: '別の工場のこのページ、または「reelward plant」で保存したファイルです。',
  notEmpty: 'この工場にはもうラインがあります。ファイルはラインのない工場だけに使えます。',
  begun: 'ラインとルールが入りました。次のステップへ進んでください。',
  choose: 'ファイルを選ぶ',
  brings: '入るもの：',
  bringsOf: (name) => `${name}から入るもの：`,
  counts: {
    lines: 'ライン',
    slots: 'スロット',
    parts: '部品のルール',
    checklists: 'チェックリスト',
    labelRules: 'ラベルのルール',
  },
  begin: 'このファイルを使う',
  toSteps: '最初のステップ',
  faults: {
    'not-json': '工場のファイルではありません。別の工場で保存したファイルを選んでください。',
    'not-a-plant': '別の種類のファイルです。別の工場で保存したファイルを選んでください。',
    newer: '新しいバージョンのファイルです。先にこのタブレットを更新してください。',
    'no-lines': 'ファイルにラインがありません。別の工場でもう一度保存してください。',
    kind: (at, what) =>
      `${at}番目の項目（${what}）はこのファイルに入りません。別の工場でもう一度保存してください。`,
    payload: (at, what) => `${at}番目の項目（${what}）が壊れています。別の工場でもう一度保存してください。`,
  },
};
