import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `测量 ${part}`,
  ask: '供料前，从此料盘取一个元件用仪表测量。',
  which: '代码可能表示多个数值。请选正确的一个。',
  wanted: (nominal, least, most, unit) => `要求：${nominal} ${unit}，${least} 到 ${most} ${unit}`,
  meter: (percent, digits, guard) => `仪表：± ${percent} %，± ${digits} 个字。保护带：其 ${guard} %。`,
  shows: (unit) => `仪表显示，单位 ${unit}`,
  help: '手动输入，或由仪表输入。',
  wrong: '请输入数字，例如 10.02。',
  otherUnit: (unit) => `仪表显示的是别的量。要求以 ${unit} 为单位的数字。`,
  check: '核对数值',
  cannot: '不测量',
  rule: {
    title: '供料前须测量的物料',
    help: '每类物料一行。数值取自物料表或站位表的备注。没有行：不核对。',
    begins: '料号开头（空：所有有数值的）',
    add: '添加物料类别',
    percent: '仪表：读数的 ± %',
    digits: '仪表：末位的 ± 字',
    guard: '保护带，仪表不确定度的 %',
    wrong: '仪表参数请输入数字，每类只输一次。',
  },
};
