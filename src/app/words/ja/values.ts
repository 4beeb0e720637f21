import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `${part}を測定する`,
  ask: '供給する前に、このリールの部品を1個測定してください。',
  which: 'コードは複数の値に読めます。正しい値を選んでください。',
  wanted: (nominal, least, most, unit) => `規格：${nominal} ${unit}、${least}〜${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `測定器：± ${percent} %、± ${digits}デジット。ガードバンド：その${guard} %。`,
  shows: (unit) => `測定器の表示（${unit}）`,
  help: '入力するか、測定器から送ってください。',
  wrong: '数字を入力してください。例：10.02',
  otherUnit: (unit) => `測定器は別の量を示しています。${unit}の数字が必要です。`,
  check: '値を確認する',
  cannot: '測定しないままにする',
  rule: {
    title: '供給前に測定する部品',
    help: '部品の種類ごとに1行。値は部品一覧か段取りの注記から取ります。行がなければ確認なし。',
    begins: '品番の先頭（空欄：値のあるすべて）',
    add: '部品の種類を追加する',
    percent: '測定器：読み値の ± %',
    digits: '測定器：最終桁の ± デジット',
    guard: 'ガードバンド、測定器の不確かさの %',
    wrong: '測定器の数値は数字で、種類は1回ずつ入力してください。',
  },
};
