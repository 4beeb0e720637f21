import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';

const said: Said = {
  misfit: () => '站位表不适合本产线',
  move: (count) => `还剩 ${count} 个飞达移动`,
  'slot-empty': (count) => `${count} 个站位没有料盘`,
  'slot-other': (count) => `${count} 个站位是别的物料`,
  'slot-held': (count) => `${count} 盘等班长`,
  'measured-wrong': (count) => `${count} 种物料测量错误`,
  'looked-wrong': (count) => `${count} 种物料看来不对`,
  'cannot-tell': (count) => `${count} 种物料离限值太近，仪表分不清`,
  unchecked: (count) => `${count} 种物料还没检查`,
  step: (count) => `${count} 个检查表步骤`,
  'no-checklist': () => '检查表从未打开',
};

export const words: Sentences<typeof english> = {
  said,
  on: (part, slot) => `${slot} 的 ${part}`,
  reelOn: (reel, slot) => `${slot} 的料盘 ${reel}`,
  reel: (reel) => `料盘 ${reel}`,
  more: (count) => `还有 ${count} 个`,
  isWrong: '错误',
  isOpen: '未完成',
  nothing: '没有未完成的。',
};
