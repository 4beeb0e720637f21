import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsZh, tableZh } from './verdict-moisture.ts';
import { plantReasonsZh } from './verdict-plant.ts';

const reasons: ReasonWords = {
  ...moistureReasonsZh,
  ...plantReasonsZh,
  'unknown-slot': {
    title: '没有这个站位',
    say: (f) => `本产线没有站位 ${f['slot']}。`,
    act: '请在机器上扫站位的码。',
  },
  'slot-not-in-setup': {
    title: '站位不用',
    say: (f) => `本站位表在 ${f['slot']} 不要料。`,
    act: '让它空着。请扫正确的站位。',
  },
  'slot-loaded': {
    title: '站位已上料',
    say: (f) => `${f['slot']} 已有 ${f['part']}${f['reel'] ? `（料盘 ${f['reel']}）` : ''}。`,
    act: '先把那盘下料。',
  },
  'slot-empty': {
    title: '站位是空的',
    say: (f) => `${f['slot']} 上没有料。`,
    act: '这里接不了料：请上料。',
  },
  'no-part': {
    title: '没有料号',
    say: (f) => `标签上没有码说明是哪种物料。需要：${f['wanted']}。`,
    act: '扫整张标签，或输入印的料号。',
  },
  'wrong-part': {
    title: '物料错误',
    say: (f) => (f['goesTo'] ? `这盘料属于 ${f['goesTo']}。` : '本站位表没有站位要这种物料。'),
    act: '放回去。请扫另一盘。',
  },
  'wrong-for-lane': {
    title: '不适用于另一轨道',
    say: (f) => `${f['lane']} 从此站位取 ${f['wanted']}。`,
    act: '请放回。请扫描两条轨道都能用的料盘。',
  },
  'kept-for-lane': {
    title: '留给另一轨道',
    say: (f) => `${f['slot']} 上是 ${f['lane']} 用的 ${f['part']}。`,
    act: '请让那盘料留在原处。要接料，请先选择另一轨道。',
  },
  'not-in-setup': {
    title: '不在本站位表中',
    say: (f) => (f['slot'] ? `没有站位要这盘料。最接近的是 ${f['slot']}。` : '没有站位要这盘料。'),
    act: '留在料车上，或放回仓库。',
  },
  'bake-short': {
    title: '烘烤太短',
    say: (f) =>
      `烘烤 ${f['hours']} h${f['celsius'] ? `，${f['celsius']} °C` : ''}。${f['wanted'] ? `表中对此要求 ${f['wanted']} h` : '表中没有对应的行'}，所以车间寿命没有恢复：剩 ${f['leftSeconds']}。（${restsOn(f, tableZh)}未知的封装按最差的算。）`,
    act: '须由班长决定。',
  },
  'same-label': {
    title: '同标签的第二盘',
    say: () => '已由人确认：标签与这里在用的料盘相同。',
    act: '',
  },
  'reel-elsewhere': {
    title: '料盘在别的站位',
    say: (f) => `日志中料盘 ${f['reel']} 在 ${f['slot']}。`,
    act: '若已不在那里，请先在那里下料。',
  },
  'reel-on-cart': {
    title: '料盘在料车上',
    say: (f) => `日志中料盘 ${f['reel']} 在料车 ${f['cart']}，供 ${f['slot']}。`,
    act: '换一盘，或先在“准备”里从料车取下。',
  },
  'slot-on-cart': {
    title: '站位已在料车备好',
    say: (f) => `料车 ${f['cart']} 已有供 ${f['slot']} 的料盘。`,
    act: '扫另一站位，或先把那个位置从料车取下。',
  },
  'reel-here': {
    title: '料盘已在这里',
    say: (f) => `料盘 ${f['reel']} 已在 ${f['slot']}。`,
    act: '请扫下一盘。',
  },
  'reel-blocked': {
    title: '料盘已禁用',
    say: (f) => `已禁用：${f['reason']}。`,
    act: '请另放。叫班长来。',
  },
  'feeder-elsewhere': {
    title: '飞达在别的站位',
    say: (f) => `日志中飞达 ${f['feeder']} 在 ${f['slot']}。`,
    act: '检查飞达的码，或先在那里下料。',
  },
  'feeder-aside': {
    title: '飞达已另放',
    say: (f) => `飞达 ${f['feeder']} 不得使用：${f['why']}。`,
    act: '请换另一把飞达。保养后请在飞达处登记。',
  },
  'feeder-lanes': {
    title: '飞达没有空通道',
    say: (f) => `飞达 ${f['feeder']} 的通道数：${f['lanes']}。日志中它已在 ${f['slots']}。`,
    act: '检查飞达的码，或更正其型号的通道数。',
  },
  'feeder-on-cart': {
    title: '飞达在料车上',
    say: (f) => `日志中飞达 ${f['feeder']} 在料车 ${f['cart']}，供 ${f['slot']}。`,
    act: '检查飞达的码，或先在“准备”里从料车取下。',
  },
  'feeder-width': {
    title: '飞达不适合料带',
    say: (f) => `飞达 ${f['feeder']} 用于 ${f['found']} mm 料带；此站位要 ${f['wanted']} mm。`,
    act: '换宽度正确的飞达。',
  },
  'feeder-pitch': {
    title: '飞达间距不合',
    say: (f) => `飞达 ${f['feeder']} 步进 ${f['found']} mm；此料带要 ${f['wanted']} mm。`,
    act: '设定间距，或换飞达。间距错误会在不知不觉中抛料。',
  },
  'floor-life-over': {
    title: '车间寿命已到',
    say: () => '这盘料离开防潮袋太久了。',
    act: '不要使用。按你们的规定送去烘烤。',
  },
  'not-the-loaded-reel': {
    title: '不是日志里的料盘',
    say: (f) => `日志中 ${f['slot']} 是 ${f['loaded'] || '另一盘'}。`,
    act: '查明是谁换的。然后下料，再重新上料。',
  },
  'part-contradicts': {
    title: '标签自相矛盾',
    say: (f) => `标签写 ${f['part']}，但 ${f['supplierPart']} 批准用于 ${f['approvedFor']}。`,
    act: '须由班长决定。',
  },
  'alternate-not-approved': {
    title: '替代料在此未批准',
    say: (f) => `${f['found']} 在 ${f['approvedFor']} 可替代 ${f['wanted']}，但本产品不行。`,
    act: '须由班长决定。',
  },
  'supplier-part-not-approved': {
    title: '未知的供应商料号',
    say: (f) => `${f['supplierPart']} 不在批准清单上。需要：${f['wanted']}。`,
    act: '须由班长决定。',
  },
  'no-quantity': {
    title: '没有数量',
    say: () => '标签上没有数量，所以料尽时间未知。',
    act: '输入数量，或由班长决定。',
  },
  expired: {
    title: '已过期',
    say: (f) => `有效期至 ${f['expires']}。`,
    act: '须由班长决定。',
  },
  'by-alternate': {
    title: '已批准的替代料',
    say: (f) => `${f['found']} 是 ${f['wanted']} 的已批准替代料。`,
    act: '',
  },
  'by-supplier-part': {
    title: '按供应商料号',
    say: (f) => `${f['supplierPart']} 已批准用于 ${f['part']}。`,
    act: '',
  },
  'by-comparison': {
    title: '视为同一料号',
    say: (f) => `按现场的${f['rule']}规则，${f['found']} 视为 ${f['wanted']}。`,
    act: '',
  },
  'mixed-lots': {
    title: '另一批次',
    say: (f) => `批次从 ${f['from']} 变为 ${f['to']}。`,
    act: '',
  },
  'quantity-corrected': {
    title: '不是标签的数量',
    say: (f) =>
      f['label'] === ''
        ? `标签没有数量；日志用 ${f['quantity']}。`
        : `标签写 ${f['label']}；日志用 ${f['quantity']}。`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: '可用于更换',
    refill: '可用于补料',
    load: '料盘正确',
    splice: '接料的料盘正确',
    sweep: '已见',
  },
  refused: '已拒绝',
  held: '暂扣，等班长',
  wants: (slot) => `${slot} 要`,
  says: '料盘写着',
  also: '另外',
  goOn: '继续',
  nextIs: (slot) => `下一个：${slot}`,
  another: '扫另一盘',
  callLead: '由班长决定',
  typeQuantity: '输入数量',
  takeBack: '撤回',
  parts: (count) => `${formatCount(count)} 个`,
  lot: (lot) => `批次 ${lot}`,
  reel: (reel) => `料盘 ${reel}`,
  practice: '练习扫描',
  allLoaded: '每个站位都已上料。',
  spliceCaution:
    '只有停机后，或飞达已在防护区外（按其手册）时，才能接料带。刀口朝外，避开手指。以现场规定为准。',
  loadCaution: '伸手之前先停机，等贴装头停下。以现场规定为准。',
  reasons,
};
