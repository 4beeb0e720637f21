import type { words as english } from '../en/walks.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: '巡线',
  walkSplices: (count) => (count === 1 ? '接 1 次料' : `接 ${count} 次料，一趟`),
  walkMore: (count) => `之后还有 ${count} 趟巡线`,
  crew: '本产线人数',
  missTitle: '来不及',
  miss: {
    windowTooShort: (moment) => `${moment} 前接料：时间太短`,
    closesTooSoon: (moment) => `${moment} 前接料：没人来得及赶到`,
    crowdedOut: (moment) => `${moment} 前接料：大家都在忙别的接料`,
  },
  remedies: {
    cutEarly: (parts, moment) => `提早在 ${moment} 剪断旧料带：约浪费 ${formatCount(parts)} 个`,
    secondPerson: (moment) => `第二个人在 ${moment} 前去`,
    secondSlot: (moment) => `在 ${moment} 前把该物料上到第二个站位`,
  },
  orRemedy: (remedy) => `或：${remedy}`,
  missMore: (count) => `之后还有 ${count} 个`,
  noRemedy: '产线将停。请备好下一盘。',
};
