import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

/** Facts that name a field carry its English name, or its own in a placement file. */
const fields: Readonly<Record<string, string>> = {
  slot: '站位',
  machine: '机器',
  bank: '料台',
  'slot number': '站位号',
  part: '物料',
  'placements per panel': '每拼板贴装数',
  'tape width': '料带宽度',
  pitch: '间距',
  'sharing among slots': '站位间分配',
  alternates: '替代料',
  'supplier parts': '供应商料号',
  description: '描述',
  package: '封装',
  pins: '引脚',
  'body size': '本体尺寸',
  'body thickness': '本体厚度',
  'moisture sensitivity level': '湿敏等级',
  polarity: '极性',
  'feeder type': '飞达型号',
  'feeder drive': '飞达驱动',
  'pocket depth': '料穴深度',
  critical: '关键',
  'positions taken': '占站位数',
  side: '面',
  'reference designators': '位号',
  designator: '位号',
  fitted: '装',
  'not fitted': '不装',
  notFitted: '不装',
  note: '备注',
  quantity: '数量',
  'order numbers': '订货号',
  value: '值',
  device: '库名',
  variants: '变体',
  mounting: '安装方式',
  mount: '安装方式',
  mirrored: '镜像',
  place: 'X 和 Y',
  rotation: '角度',
  level: '层级',
  item: '项号',
  maker: '制造商',
};

function field(name: string | number | undefined): string {
  return fields[String(name)] ?? String(name);
}

/** A side as the file's reader names it. */
function side(name: string | number | undefined): string {
  return name === 'bottom' ? '底面' : '顶面';
}

/** A yes or no as the file's reader names it. */
function flag(name: string | number | undefined): string {
  return name === 'yes' ? '是' : '否';
}

const said: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () => '文件不是 UTF-8，已按 Windows-1252 读取。请检查带重音的字母，或存为 UTF-8。',
  quoteBroken: (f) => `第 ${f['row']} 行的引号没有闭合。后面的内容可能在错的格里。请更正该行。`,
  rowTooLong: (f) => `该行有 ${f['found']} 格，表头有 ${f['wanted']} 格。似乎有一格含分隔符：请加引号。`,
  rowUnreadable: (f) => `该行有 ${f['found']} 格，表头有 ${f['wanted']} 格，对不上。请更正该行。`,
  noRows: () => '表头下没有行。请带行重新导出表格。',
  moreProblems: (f) => `还有 ${f['count']} 个问题未列出。先更正这些，再读取表格。`,
  moreErrors: (f) => `还有 ${f['count']} 个问题未列出，其中有错误。先更正这些，再读取表格。`,
  columnMissing: (f) => `没有“${field(f['wanted'])}”列。现有的列：${f['headers']}。请手动选择列。`,
  columnAbsent: (f) =>
    `没有“${field(f['wanted'])}”列。现有的列：${f['headers']}。请手动选择列，或不用它继续。`,
  columnNotFound: (f) =>
    `此表没有用于${field(f['field'])}的列“${f['wanted']}”。它有：${f['headers']}。请重新选择列。`,
  columnUnknown: (f) => `列“${f['found']}”未使用。站位表若需要，请手动选择它的内容。`,
  columnTwice: (f) =>
    `列“${f['found']}”也像是${field(f['field'])}；使用的是“${f['used']}”。若应是另一列，请手动选择。`,
  usagePerBoard: (f) => `列“${f['found']}”似乎按单板计数，这里当作按拼板。若一块拼板有几块单板，请乘上。`,
  slotMissing: (f) => `站位为空，但该行有物料 ${f['part']}。请填写站位。`,
  textTooLong: (f) => `${field(f['field'])}“${f['found']}…”超过 ${f['most']} 个字符。请缩短。`,
  textCut: (f) => `文字超过 ${f['most']} 个字符。其余略去：请缩短。`,
  slotUnclear: (f) => `站位“${f['found']}”不是 M1-F-014 这样的写法，无法检查相邻站位。照原样采用。`,
  slotNumberUnreadable: (f) => `站位号“${f['found']}”不是 1 以上的整数。请更正。`,
  partMissing: (f) => `站位 ${f['slot']} 没有料号，但其他格有内容。请填写。`,
  usageUnreadable: (f) => `每拼板贴装数“${f['found']}”不是 0 以上的整数。请更正。`,
  usageMissing: () => '每拼板贴装数为空，没人能知道此站位何时用完。请填写，或添加坐标文件。',
  usageZero: () => '每拼板贴装数为 0：站位上了料但不用。若是这样，请标为不装。',
  usageFromDesignators: (f) =>
    `每拼板贴装数为空，${f['count']} 个位号按 ${f['count']} 算。请确认它们涵盖整块拼板。`,
  designatorsDisagree: (f) => `有 ${f['found']} 个位号，但每拼板贴装数为 ${f['wanted']}。请查哪个对。`,
  widthUnreadable: (f) => `料带宽度“${f['found']}”不是 mm 数。请写 8 或 8 mm。`,
  widthUnknown: (f) => `${f['found']} mm 不是 EIA-481 的料带宽度（${f['wanted']} mm）。请更正。`,
  widthMissing: () => '没有料带宽度，没人能核对飞达是否合适。请填写。',
  notTape: (f) => `“${f['found']}”不是料带，此站位没有料带长度和接料时间。`,
  pitchUnreadable: (f) => `间距“${f['found']}”不是大于 0 的 mm 数。请写 4 或 4 mm。`,
  pitchUnusual: (f) =>
    `EIA-481 对 ${f['width']} mm 料带没有 ${f['found']} mm 间距，只有 ${f['wanted']} mm。请检查；少数料带不同。`,
  pitchMissing: () => '没有间距，料带长度无法换算成个数。请填写。',
  positionsUnreadable: (f) => `占站位数“${f['found']}”不是 1 到 60 的整数。请更正。`,
  pinsUnreadable: (f) => `引脚数“${f['found']}”不是 1 以上的整数，已略去。请更正。`,
  bodySizeUnreadable: (f) => `本体尺寸“${f['found']}”不是以 mm 计的长和宽，已略去。请写成 17 x 17。`,
  thicknessUnreadable: (f) => `本体厚度“${f['found']}”不是大于 0 的 mm 数，已略去。请更正。`,
  pocketUnreadable: (f) => `料穴深度“${f['found']}”不是大于 0 的 mm 数，已略去。请更正。`,
  mslUnknown: (f) => `“${f['found']}”不是湿敏等级（1, 2, 2a, 3, 4, 5, 5a, 6），已略去。请更正。`,
  sharingUnknown: (f) =>
    `“${f['found']}”没有说明各站位如何分用此物料。各贴各的份写“split”，一个供到用完再换写“in turn”。`,
  turnUsageDiffers: (f) =>
    `物料 ${f['part']} 轮流使用：供料的站位贴全部 ${f['wanted']} 个。此行写的是 ${f['found']}。请每行写同一个数。`,
  sideUnknown: (f) => `“${f['found']}”既不是 top（顶面）也不是 bottom（底面），面已略去。请更正。`,
  flagUnreadable: (f) =>
    `“${f['found']}”既不是 yes（是）也不是 no（否），按“${flag(f['taken'])}”算。请更正。`,
  alternateIsPart: (f) => `物料 ${f['part']} 在这里是自己的替代料。已略去。`,
  slotTwice: (f) =>
    `站位 ${f['slot']} 已在第 ${f['first']} 行，物料为 ${f['part']}。一个站位只上一种物料：请更正其中一行。`,
  noRoom: (f) =>
    `站位 ${f['slot']} 的飞达占 ${f['wanted']} 个站位。站位 ${f['next']}（第 ${f['nextRow']} 行）只隔 ${f['found']} 个。请移动其中一个。`,
  littleRoom: (f) =>
    `站位 ${f['slot']} 的 ${f['width']} mm 飞达通常占 ${f['wanted']} 个站位。站位 ${f['next']}（第 ${f['nextRow']} 行）只隔 ${f['found']} 个。请确认放得下，或填写占站位数。`,
  noApprovedReels: (f) => `物料 ${f['part']} 没有已批准的供应商料号，只有带本厂料号的标签能通过。请填写。`,
  partDiffers: (f) =>
    `物料 ${f['part']}：${field(f['field'])}在这里是 ${f['found']}，第 ${f['first']} 行是 ${f['wanted']}。请查哪个对。`,
  usageDisagrees: (f) =>
    `物料 ${f['part']}：站位表文件每拼板 ${f['found']} 个，坐标文件 ${f['wanted']} 个。请查哪个对。`,
  usageRatio: (f) =>
    `每种物料，表中的贴装数都是坐标文件的 ${f['ratio']} 倍。坐标文件似乎只含 ${f['ratio']} 块中的一块单板：请输入一块拼板有几块单板。`,
  usageSplitUnknown: (f) =>
    `物料 ${f['part']}：${f['found']} 个站位共 ${f['wanted']} 个贴装点，坐标文件没说各多少。请填写每拼板贴装数。`,
  partNotPlaced: (f) => `物料 ${f['part']} 有站位，但不在坐标文件中。请核对两边的料号。`,
  partWithoutSlot: (f) =>
    `物料 ${f['part']} 贴 ${f['found']} 次（坐标文件，从第 ${f['first']} 行起），但没有站位。请给站位，或标为不装。`,
  placementPartMissing: (f) => `位号 ${f['designator']} 没有料号，已略去。请填写。`,
  placementTwice: (f) => `位号 ${f['designator']} 与第 ${f['first']} 行在同一位置。只算一次。`,
  placementSideMissing: () => '坐标文件没有“面”列。所有贴装点按顶面算。',
  placementSideUnknown: (f) =>
    `“${f['found']}”既不是 top（顶面）也不是 bottom（底面），该贴装点按顶面算。请更正。`,
  headerGuessed: (f) => `文件没有已知的表头。从内容看，各列是：${f['wanted']}。请检查。`,
  columnByLook: (f) => `从内容看，列“${f['found']}”当作${field(f['field'])}。请检查。`,
  genericParts: (f) =>
    `列“${f['found']}”用一个名称对应几个值，所以是种类而不是料号。按值算。若有料号列，请手动选择。`,
  partsAreDesignators: (f) => `列“${f['found']}”是位号，不是料号。请手动选择料号列。`,
  sheetAdded: (f) => `工作表“${f['found']}”的行表头相同，也已读取；从第 ${f['first']} 行接着编号。`,
  designatorTwice: (f) =>
    `位号 ${f['designator']} 已在第 ${f['first']} 行，位置不同。只算一次。请给板上每个元件单独的名称。`,
  designatorSeldom: (f) =>
    `位号 ${f['designator']} 在文件中有 ${f['found']} 次，其他大多 ${f['wanted']} 次。请确认拼板的每块单板都有它。`,
  placementSideFromName: (f) =>
    `文件里没有说明面。按文件名“${f['found']}”，所有贴装点算作${side(f['side'])}。`,
  throughHole: (f) => `位号 ${f['designator']}（${f['part']}）是通孔插装，不算贴装。`,
  oddPlaced: (f) =>
    `位号 ${f['designator']} 像测试点或孔，但有物料 ${f['part']}。按贴装算。若不是，请标为不装。`,
  valueInPackages: (f) =>
    `值 ${f['part']} 在这里的封装是 ${f['found']}，第 ${f['first']} 行是 ${f['wanted']}。按两种物料算。请给料号。`,
  partInPackages: (f) =>
    `物料 ${f['part']} 在这里的封装是 ${f['found']}，第 ${f['first']} 行是 ${f['wanted']}。请核对料号。`,
  valueWithoutPackage: (f) =>
    `位号 ${f['designator']} 有值 ${f['part']}，但没有封装和料号。没人能知道是哪种物料：请填写。`,
  xmlBroken: (f) => `XML 在此损坏：${f['found']}。后面的没有读取。请重新导出文件。`,
  noComponents: () => '文件里没有元件。请带元件及其位置导出。',
  panelOfFile: (f) => `文件的拼板有 ${f['found']} 块单板；只算一块。请输入一块拼板有几块单板。`,
  billRowWithoutDesignators: (f) => `物料 ${f['part']} 没有位号，此行不贴装任何东西。若要贴装，请填写。`,
  billPartMissing: (f) => `含 ${f['designator']} 的行没有料号也没有值。请填一个。`,
  billPartByOther: (f) => `此行没有料号，其物料称为 ${f['part']}。请填写料号。`,
  secondTable: (f) => `这里开始另一张表（${f['headers']}）。没有读取。`,
  boardsInFile: (f) =>
    `坐标文件已有 ${f['found']} 块单板，所以不再乘 ${f['wanted']} 块。请核对一块拼板有几块单板。`,
  quantityDiffers: (f) => `数量是 ${f['wanted']}，但该行有 ${f['found']} 个位号。请查哪个对。`,
  quantityUnreadable: (f) => `数量“${f['found']}”不是数字。按位号算。请更正。`,
  quantityRatio: (f) => `每一行的数量都是位号的 ${f['ratio']} 倍。物料清单似乎按 ${f['ratio']} 块单板计数。`,
  billDesignatorTwice: (f) => `位号 ${f['designator']} 已在第 ${f['first']} 行，物料相同。只算一次。`,
  billDesignatorDiffers: (f) =>
    `位号 ${f['designator']} 已在第 ${f['first']} 行，物料为 ${f['wanted']}；这里是 ${f['found']}。一个位置只有一种物料：请更正其中一行。`,
  variantOpen: (f) =>
    `物料清单的变体在此不同：${f['wanted']}。按“装”算。请指明生产哪个变体，或用该变体的物料清单。`,
  variantNotFound: (f) => `物料清单没有变体“${f['found']}”。它有：${f['wanted']}。`,
  partDescribedTwice: (f) =>
    `物料 ${f['part']} 在这里的值是 ${f['found']}，第 ${f['first']} 行是 ${f['wanted']}。请核对料号。`,
  markInRemark: (f) => `按备注“${f['found']}”，此行都不装。若只针对某些位号，请在那里写明。`,
  blankNotFitted: (f) => `列“${f['found']}”有些行有标记，${f['count']} 行为空。空按不装算。`,
  designatorNotInBill: (f) =>
    `位号 ${f['designator']} 在坐标文件中，但不在物料清单的任何行，所以不计。请加入物料清单，或标为不装。`,
  designatorNotPlaced: (f) =>
    `位号 ${f['designator']}（物料 ${f['part']}）在物料清单中，但不在坐标文件中，所以不计。`,
  partOfFileDiffers: (f) =>
    `位号 ${f['designator']}：坐标文件中物料为 ${f['found']}，物料清单（第 ${f['first']} 行）为 ${f['wanted']}。以物料清单为准。请查哪个对。`,
  valueOfFileDiffers: (f) =>
    `位号 ${f['designator']}：坐标文件中值为 ${f['found']}，物料清单（第 ${f['first']} 行）为 ${f['wanted']}。以物料清单为准。请查哪个对。`,
  sideOfFileDiffers: (f) =>
    `位号 ${f['designator']} 在坐标文件中是${side(f['found'])}，物料清单说是${side(f['wanted'])}。以坐标文件为准。`,
  sheetDesignatorNotPlaced: (f) => `位号 ${f['designator']} 在此行，但不在坐标文件中。请核对两边。`,
  designatorWithoutSlot: (f) =>
    `位号 ${f['designator']}（坐标文件，第 ${f['first']} 行，物料 ${f['part']}）不在表的任何行。请加到其站位的行，或标为不装。`,
  sheetPartDiffers: (f) =>
    `位号 ${f['designator']}：此行物料为 ${f['found']}，坐标文件或物料清单为 ${f['wanted']}。请查哪个对。`,
  sheetDesignatorTwice: (f) => `位号 ${f['designator']} 已在第 ${f['first']} 行。在那里计数。`,
  listPartEmpty: () => '该行没有料号，但别的格有内容。请补上。',
  listPackingUnknown: (f) =>
    `“${f['found']}”不是料带、剪带、托盘、料管或散料，已略去。请写 tape、cut tape、tray、tube 或 bulk。`,
  listAgeUnreadable: (f) => `料龄限值“${f['found']}”不是月数，已略去。请写 24 或 2 years。`,
  listPriceUnreadable: (f) => `价格“${f['found']}”不是大于 0 的数，已略去。请写 0.012 或 0.012 EUR。`,
  listPriceUnclear: (f) => `“${f['found']}”没有说明价格对应多少个。请写 Price each 或 Price per 1000。`,
  listToleranceUnclear: (f) =>
    `“${f['found']}”中有小于 1 的单纯数字，可能是比例也可能是百分数，已略去。请把列名写成 Tolerance %，或在单元格里写 1 %。`,
  listReelEmpty: () => '该行没有料盘编号，已略去。请补上。',
  listReelTwice: (f) => `料盘 ${f['found']} 已在第 ${f['first']} 行。采用它最后的点数。`,
  listCountUnreadable: (f) => `数量“${f['found']}”不是整数，该行已略去。请更正。`,
};

export const words: Sentences<typeof english> = {
  say: (problem) => said[problem.code](problem.facts),
};
