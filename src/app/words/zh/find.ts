import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: '用摄像头查找',
  sweep: '用摄像头对料',
  title: '查找料盘',
  help: '请将平板沿标签缓慢移动。',
  sweepHelp: '请让站位标签和其料盘标签都在画面中。',
  on: (slot) => `在 ${slot}`,
  to: (slots) => `去 ${slots}`,
  told: (wanted, barred, read) => `需要：${wanted} · 不要用：${barred} · 已读：${read}`,
  swept: (seen, all) => `已看到：${seen} / ${all}`,
  other: '目前不需要',
  unknown: '未知',
  reading: '读取中…',
  none: '尚未读到任何标签。',
  missing: '尚未看到',
  several: (slot) => `${slot}：附近有多个料盘。请靠近，或扫描站位和料盘。`,
  unsure: (slot) => `${slot}：标签看不出是哪个料盘。`,
  check: '检查此站位',
  times: (count) => `画面中 ${count} ×`,
  kept: (count) => `看到的料盘：${count}。已写入日志。`,
  notKept: '看到的内容未写入日志。请先登录。',
  barred: '不要用',
};
