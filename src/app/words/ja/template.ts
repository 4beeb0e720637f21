import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import type { Sentences } from '../words.ts';

const kinds: Readonly<Record<StepKind, string>> = {
  tick: 'チェック',
  measure: '測定値',
  scan: 'スキャン',
  choice: '選択',
  photo: '写真',
  note: 'メモ',
  sign: '署名',
  known: 'アプリが確認',
};

const conditions: Readonly<Record<StepCondition, string>> = {
  always: '常に',
  'side-changes': '面が変わるとき',
  'stencil-changes': 'メタルマスクが変わるとき',
  'product-changes': '製品が変わるとき',
  'program-changes': 'プログラムが変わるとき',
};

const faults: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'チェックリストに名前を付けてください。',
  'no-steps': 'チェックリストに手順がありません。',
  'step-twice': '同じ手順が2回あります。',
  'no-text': '文が抜けています。',
  'limits-crossed': '下限が上限より大きいです。',
  'no-options': '選択には選択肢が2つ以上必要です。',
  'right-not-listed': '正解が選択肢にありません。',
  'no-unit': '測定値には単位が必要です。',
  'nothing-known':
    '成り立つべきことを選んでください。これを求められるのは段取り替えのチェックリストだけです。',
  'signatures-differ': '署名にはそれぞれ役割が必要です。',
};

export const words: Sentences<typeof english> = {
  kinds,
  conditions,
  faults,
  times: { running: 'ライン稼働中', stopped: 'ライン停止中' },
  version: (version, steps) => `版${version} · ${steps}手順`,
  edit: '編集する',
  title: '名前',
  language: '言語を追加する',
  noLanguage: '追加しない',
  text: '文',
  group: '見出し',
  caution: '注意',
  kind: '回答方法',
  time: '時期',
  condition: '求める条件',
  mandatory: '必須',
  least: '最小',
  most: '最大',
  unit: '単位',
  expects: 'スキャンで一致すべき文字',
  options: '選択肢、カンマ区切り',
  right: '正解、カンマ区切り',
  signature: (number) => `署名${number}`,
  noSignature: 'なし',
  wants: 'スキャンするもの',
  wantNames: {
    stencil: 'メタルマスク',
    paste: 'クリームはんだの容器',
    program: 'プログラム',
    feeder: 'この工場のフィーダー',
    slot: 'このラインのスロット',
    reel: 'この工場のリール',
    other: 'この現場の別のコード',
  },
  knows: '成り立つべきこと',
  factNames: {
    moves: 'フィーダーの移動が残っていない',
    slots: '全スロットに照合済みのリールがある',
    'first-panel': '初品パネルを確認し、正しい',
  },
  up: '前へ',
  down: '後へ',
  remove: '外す',
  add: '手順を追加する',
  done: '完了',
  save: (version) => `版${version}として保存する`,
  saved: (version) => `版${version}を保存しました。開いているチェックリストはそのままです。`,
  help: '版は変わりません。開いているものも終了したものも、開いたときの版のままです。',
  newGroup: 'その他',
};
