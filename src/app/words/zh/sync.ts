import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: '已同步',
  syncing: '正在同步…',
  toSend: (count) => `待发送 ${count} 条`,
  unreached: (span) => (span === null ? '连不上服务器' : `连不上服务器已 ${span}`),
  waits: '服务器要求等待',
  refused: '被服务器拒绝',
  quarantined: (count) => `${count} 条记录已隔离`,
  rolledBack: '服务器的日志可能倒退了',
  headFault: '服务器的日志存疑',
  clocksOff: (count) => `${count} 台平板的时钟不准`,
  history: (share) => `正在加载历史：${share}`,
  historyChecked: '正在检查历史',
  historyTitle: '历史',
  stillMissing: (missing, of) => `${of} 条较早记录中，${missing} 条还没到。`,
  checkedHelp: '所有记录都在了。本平板现在自己全部推算并比对。',
  historyHelp:
    '本平板从另一台平板推算的结果开始。上料和核对照常。其余到齐之前，这里的日志、导出和追溯不完整。',
  notWhole: (missing) => `还有 ${missing} 条较早记录未到：答案会不完整。服务器都有。`,
};
