import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '线上的拼板',
  help: '换料盘的地方，这些拼板存疑。请输入可能的最大值，机器前停着的一块也算。没人输入时用估计值代替。',
  behind: (machine) => `${machine}：此处已做完、尚未计数的拼板，最多`,
  before: (machine) => `${machine}：已计数、尚未到达的拼板，最多`,
  missed: '漏计而过的拼板，最多',
  guess: (most) => `未输入：按最多 ${most} 块假定（常见做法）。`,
  seen: (panels, most) => `${panels} 块拼板在两处都扫过：中间最多有 ${most} 块。`,
  takeSeen: '采用扫描结果',
  takeHelp: '看到的不是上限：可能更多时请输入更大的数。扫描若超出，范围会自动放宽。',
  scansHere: '在本平板扫描的拼板',
  count: '要计数',
  goInto: (machine) => `进入 ${machine}`,
  scansHelp: '在某台机器前扫几块拼板，再在计数处扫一次：产线就知道中间有多少块。',
  save: '保存线上的拼板',
  saved: '已保存。追溯从现在起按此计算。',
  wrong: '请输入 0 到 500 的整数，以及低于 50 % 的比例。',
  exitOpen: '打开出口屏幕',
  exitTitle: '已生产拼板',
  exitHelp: '每块拼板离线时请扫描。',
  exitCounted: '已计数：',
  exitBefore: '之前扫过，未增加：',
  exitNoRun: '此线没有在生产。请先开始。',
  exitLost: '此页面失去了键盘。扫描前请点这里。',
  exitLeave: '离开此屏幕',
};
