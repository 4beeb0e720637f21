import type { words as english } from '../en/lines.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: '添加产线',
  edit: '更改',
  editOf: (name) => `更改 ${name}`,
  machines: (count) => `${count} 台机器`,
  slots: (count) => `${count} 个站位`,
  fromSheets: '有些站位只从站位表文件得知。打开产线，照机器上所写的命名。',
  newTitle: '新产线',
  newName: (number) => `产线 ${number}`,
  name: '名称',
  zone: '时区',
  zoneHelp: '产线所在地，如 Asia/Shanghai。',
  help: '每个料台，照机器上所写的输入第一个和最后一个站位。',
  bankOf: (number) => `料台 ${number}`,
  removeOf: (number) => `移除料台 ${number}`,
  first: '第一个站位',
  last: '最后一个站位',
  addAcross: (slot) => `添加另一侧：${slot}`,
  addMachine: (slot) => `添加下一台机器：${slot}`,
  addBank: '添加料台',
  picture: '产线的样子',
  save: '保存产线',
  saved: (name) => `${name} 已保存。`,
  faults: {
    'no-number': '两个都要以数字结尾：M1-F-001 和 M1-F-025。',
    differs: '只有结尾的数字可以不同。',
    'not-from-one': '第一个站位必须是 1 号。',
    backwards: '最后的号比第一个小。',
    'too-many': '一个料台最多 500 个站位。',
    twice: '这个料台已经有了。',
  },
  obstacles: {
    ranges: (count) => (count === 1 ? '请改正上面标出的料台。' : `请改正上面标出的 ${count} 个料台。`),
    'name-missing': '请输入名称。',
    'zone-unknown': '请从列表选择时区。',
    'no-banks': '请先输入一个料台的站位。',
    lost: (slots, count) =>
      count === 1 ? `站位 ${slots} 在使用。请保留。` : `会丢掉 ${count} 个在使用的站位：${slots}。请保留。`,
  },
};
