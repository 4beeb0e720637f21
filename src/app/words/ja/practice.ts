import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: '練習',
  tells: 'ここでの操作は実績になりません。本物のラインは動き続けます。',
  end: '練習を終える',
  real: (slot, told) => `本物のライン：${slot} ${told}`,
  title: 'ラインに触れずに練習する',
  about:
    '今のこのラインのコピーを使います。スキャン、スプライス、段取り替え、間違いも自由です：本物のラインにも、そのログや計数にも届きません。コピーは練習を終えるか、12時間たつと消えます。',
  aboutNew:
    'この工場にはまだラインがないため、架空の小さなラインを使います。スキャン、セット、スプライス、間違いも自由です。練習を終えるか、12時間たつと消えます。',
  warns: '本物のラインの警告は引き続き出ます。',
  start: '練習を始める',
  taken: 'このタブレットの別のウィンドウで練習中です。先にそちらで終えてください。',
  notSaved: (name) => `練習：ファイルは保存しません。実際のラインでは ${name} になります。`,
  labels: '練習用ラベル',
  labelsHelp: 'スキャンの代わりにラベルをタップします：スロット、必要ならフィーダー、リール。',
  print: 'ラベルを印刷する',
  groups: {
    load: 'セットする',
    splice: '次にスプライスする',
    wrong: '拒否・保留になるもの',
    panels: 'パネル',
  },
  slot: (slot) => `スロット${slot}`,
  wants: (part) => `必要：${part}`,
  right: (slot) => `${slot}の正しいリール`,
  wrong: (slot, asked) => `本来は${slot}、${asked}で試す`,
  foreign: (asked) => `使うスロットなし、${asked}で試す`,
  bare: (slot) => `ラベルに数量なし、${slot}用`,
  free: (slot) => `${slot}用の空きフィーダー`,
  panel: '1パネル数える',
  nothing: '先に段取り表を選んでください。そのラベルがここに出ます。',
  names: { line: '練習ライン', machine: '最初の機械', bank: '前', product: '練習基板' },
};
