import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: '练习',
  tells: '这里什么都不算数。真实产线照常。',
  end: '结束练习',
  real: (slot, told) => `真实产线：${slot} ${told}`,
  title: '不碰产线的练习',
  about:
    '得到本产线当前状态的副本。扫描、接料、换线、出错都可以：不会影响真实产线、其日志或计数。结束练习时或十二小时后，副本会删除。',
  aboutNew:
    '本厂还没有产线，所以给出一条小的虚构产线。扫描、上料、接料、出错都可以。结束练习时或十二小时后会删除。',
  warns: '真实产线的预警仍会显示。',
  start: '开始练习',
  taken: '练习已在本平板的另一个窗口打开。请先在那里结束。',
  notSaved: (name) => `练习：不保存文件。在真实产线上会是 ${name}。`,
  labels: '练习用标签',
  labelsHelp: '点标签代替扫描：先站位，需要时点其飞达，再点其料盘。',
  print: '打印标签',
  groups: { load: '要上料', splice: '接下来要接料', wrong: '会被拒绝或暂扣', panels: '拼板' },
  slot: (slot) => `站位 ${slot}`,
  wants: (part) => `要 ${part}`,
  right: (slot) => `${slot} 的正确料盘`,
  wrong: (slot, asked) => `属于 ${slot}；在 ${asked} 试试`,
  foreign: (asked) => `没有站位要它；在 ${asked} 试试`,
  bare: (slot) => `标签上没有数量；供 ${slot}`,
  free: (slot) => `${slot} 的空飞达`,
  panel: '计一块拼板',
  nothing: '请先选择站位表。它的标签会显示在这里。',
  names: { line: '练习产线', machine: '第一台机器', bank: '前', product: '练习板' },
};
