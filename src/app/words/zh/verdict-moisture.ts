// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableZh: TableWords = {
  own: '表：本厂自有的标准。',
  copy: '表：已与公开版本对照。',
  memory: '表：凭记忆。',
};

export const moistureReasonsZh: MoistureReasons = {
  'bake-hours-over': {
    title: '累计烘烤太久',
    say: (f) => `90 °C 以上至今 ${f['hours']} h；上限 ${f['most']} h。其引脚可能不易焊接。`,
    act: '须由班长决定。请问物料制造商。',
  },
  'label-time-missing': {
    title: '6 级：标签上的时间？',
    say: () => '烘烤之后，6 级料盘能用多久，看袋上标签。还没有人输入。',
    act: '先烘烤，在“袋 / 烘箱”输入小时数，再扫一次。',
  },
  'reel-unnamed': {
    title: '没有编号，可能是已开袋的料盘',
    say: (f) =>
      `此物料的一盘${f['lot'] ? `（批次 ${f['lot']}）` : ''}以前下过线${f['left'] ? `，剩 ${f['left']}` : ''}。没有编号，两盘无法区分，所以${f['floorLife'] === 'true' ? '车间寿命' : '数量'}未知。`,
    act: '给料盘编号，或由班长决定。',
  },
  'reel-gone': {
    title: '日志显示早已用完',
    say: (f) => `按日志，料盘 ${f['reel']} 或其中一部分早已用完。本平板无法得知它在袋外放了多久。`,
    act: '在“追溯”中查其批次。须由班长决定。',
  },
  'floor-life-short': {
    title: '车间寿命先于料盘结束',
    say: (f) => `车间寿命 ${f['leftSeconds']} 后结束，料盘可用 ${f['neededSeconds']}。`,
    act: '须由班长决定。',
  },
};
