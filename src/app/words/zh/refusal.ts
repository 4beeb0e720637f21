import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}，已在日志`,
  nothingLoaded: '没有上料。',
  closest: '最接近的所需料',
  characters: (count) => `有 ${formatCount(count)} 个字符不同。`,
  belongsAt: '这盘料属于',
  belongsNowhere: '这里没有站位要它。',
  lacksReel: '那里现在没有料盘。',
  hasReel: '那里现在有料盘。',
  onLine: (slot, line) => `${line} 的 ${slot}`,
  rightReel: (slot) => `${slot} 需要`,
  rightReelNone: '日志中仓库里没有它的料盘。',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} 以及另外 ${formatCount(more)} 盘`),
  feederToFetch: '要取的飞达',
  feederNone: '清单上没有这种尺寸的空飞达。',
  anotherFeeder: '扫另一把飞达',
  carryOn: (slot) => `拿到 ${slot}`,
  unload: (slot) => `${slot} 下料`,
  reachIn: '伸手之前先停机。',
  runsHere: {
    title: '这盘料已在这里使用',
    text: (slot) => `这张标签与 ${slot} 上的料盘相同。是同标签的第二盘吗？`,
    same: '不，就是那一盘',
    second: '是，第二盘',
  },
  cameBefore: {
    title: '这盘料以前上过线吗？',
    text: (lot, left) =>
      `标签上没有自己的编号。一盘类似的料${lot === null ? '' : `（批次 ${lot}）`}下线时${left === null ? '数量未知' : `还剩 ${left} 个`}。`,
    same: '是，就是那一盘',
    fresh: '不，是新的',
  },
};
