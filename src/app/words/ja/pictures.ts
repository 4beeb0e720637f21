import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'ラベルの画像',
  ruleHelp: 'セットやスプライスでカメラが読んだラベルの画像を残します。',
  keep: '画像を残す',
  days: '保存日数',
  megabytes: '各タブレットの容量、MB',
  fault: '画像は 1～3650 日、1～10000 MB にしてください。',
  shown: 'ラベルの画像',
  notHere: '画像はこのタブレットにありません。ラベルを読んだタブレットで確認してください。',
  none: '画像は見つかりませんでした。',
  broken: '保存した画像と異なります。班長に知らせてください。',
  failed: 'ラベルの画像は残せませんでした。判定は有効です。',
  exported: 'ラベルの画像も保存',
  saved: (name) => `${name}に保存しました。`,
};
