// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `测得：${f['quantity']} ± ${f['uncertainty']} ${f['unit']}。要求：${f['nominal']} ${f['unit']}，${f['least']} 到 ${f['most']}。扣除保护带 ${f['guard']}：${f['from']} 到 ${f['to']}。`;

export const plantReasonsZh: PlantReasons = {
  'feeder-unknown': {
    title: '未知的飞达',
    say: (f) => `飞达 ${f['feeder']} 不在工厂清单上，无法核对其宽度。`,
    act: '须由班长决定。',
  },
  'feeder-type': {
    title: '飞达型号不对',
    say: (f) => `飞达 ${f['feeder']} 是 ${f['found']}；此站位要 ${f['wanted']}。`,
    act: '换该型号的飞达。',
  },
  'feeder-drive': {
    title: '驱动不对',
    say: (f) => `飞达 ${f['feeder']} 的驱动是 ${f['found']}；此站位要 ${f['wanted']}。`,
    act: '换驱动正确的飞达。',
  },
  'feeder-height': {
    title: '料穴对飞达太深',
    say: (f) => `料带的料穴深 ${f['wanted']} mm；飞达 ${f['feeder']} 只能过 ${f['found']} mm。`,
    act: '换能过更深料穴的飞达。',
  },
  'maker-not-listed': {
    title: '制造商不在本产品清单上',
    say: (f) =>
      `本产品未批准 ${f['supplierPart']} 用于 ${f['part']}。${f['listed'] ? `已批准：${f['listed']}。` : ''}${f['approvedFor'] ? `它在 ${f['approvedFor']} 已批准。` : ''}`,
    act: '换清单内制造商的料盘，或由班长决定。',
  },
  'date-code-old': {
    title: '按日期代码太旧',
    say: (f) => `生产于 ${f['made']}。产线对此物料的料龄限值到 ${f['last']} 为止。`,
    act: '须由班长决定。',
  },
  'date-code-unknown': {
    title: '料龄未知',
    say: (f) =>
      f['dateCode']
        ? `日期代码 ${f['dateCode']} 不能确定地读出。产线限制此物料的料龄。`
        : '标签上没有日期代码。产线限制此物料的料龄。',
    act: '须由班长决定。',
  },
  'value-outside': {
    title: '数值错误',
    say: measured,
    act: '不要上料。另放此料盘，再扫描另一盘。',
  },
  'value-unsure': {
    title: '数值不明确',
    say: (f) => `${measured(f)}对这台仪表来说离限值太近。`,
    act: '重新扫描料盘再测一次，或由班长决定。',
  },
  'value-unmeasured': {
    title: '数值未测',
    say: (f) => `产线要求供料前测量一个 ${f['part']}。`,
    act: '重新扫描料盘进行测量，或由班长决定。',
  },
  'value-unknown': {
    title: '没有可核对的数值',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `物料表中 ${f['part']} 的数值没有误差。`
        : `物料表中没有 ${f['part']} 的数值。`,
    act: '须由班长决定。请在物料中输入数值。',
  },
  'value-within': { title: '数值已核对', say: measured, act: '' },
  'feeder-care': {
    title: '飞达该保养了',
    say: (f) =>
      `飞达 ${f['feeder']} 已贴约 ${f['placed']} 个；本厂规定每贴 ${f['after']} 个保养一次。取下后请送去保养。`,
    act: '',
  },
  'older-in-store': {
    title: '仓库有更旧的料盘',
    say: (f) =>
      f['by'] === 'expires'
        ? `${f['place']} 的料盘 ${f['reel']} 须在 ${f['expires']} 前用完，早于这一盘。`
        : `${f['place']} 的料盘 ${f['reel']} 日期代码为 ${f['dateCode']}，比这一盘旧。`,
    act: '',
  },
};
