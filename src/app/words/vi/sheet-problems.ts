import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsVi: Readonly<Record<SheetField, string>> = {
  slot: 'slot',
  machine: 'máy',
  bank: 'dãy',
  number: 'số slot',
  part: 'linh kiện',
  perPanel: 'điểm gắn mỗi panel',
  tapeWidth: 'khổ băng',
  pitch: 'bước',
  sharing: 'chia giữa các slot',
  alternates: 'linh kiện thay thế',
  supplierParts: 'mã nhà cung cấp',
  description: 'mô tả',
  package: 'kiểu vỏ',
  pins: 'số chân',
  bodySize: 'cỡ thân',
  bodyThickness: 'độ dày thân',
  msl: 'mức ẩm (MSL)',
  polarity: 'cực tính',
  feederType: 'loại feeder',
  drive: 'truyền động feeder',
  pocket: 'độ sâu hốc',
  critical: 'trọng yếu',
  positions: 'vị trí chiếm',
  side: 'mặt',
  designators: 'ký hiệu',
  fitted: 'có gắn',
  notFitted: 'không gắn',
  note: 'ghi chú',
};

const namesByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsVi[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return namesByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sideVi(side: string | number | undefined): string {
  return side === 'bottom' ? 'mặt dưới' : 'mặt trên';
}

const vi: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'Tệp không phải UTF-8 nên được đọc như Windows-1252. Kiểm tra chữ có dấu, hoặc lưu thành UTF-8.',
  quoteBroken: (f) =>
    `Dấu ngoặc kép mở ở dòng ${f['row']} không đóng. Phần sau có thể nằm sai ô. Sửa dòng đó.`,
  rowTooLong: (f) =>
    `Dòng có ${f['found']} ô, tiêu đề ${f['wanted']}. Có ô hình như chứa dấu ngăn: đặt nó trong ngoặc kép.`,
  rowUnreadable: (f) => `Dòng có ${f['found']} ô, tiêu đề ${f['wanted']}, và không khớp nhau. Sửa dòng.`,
  noRows: () => 'Dưới tiêu đề không có dòng nào. Xuất lại bảng kèm các dòng.',
  moreProblems: (f) => `Còn ${f['count']} vấn đề không liệt kê. Sửa các vấn đề này, rồi đọc lại bảng.`,
  moreErrors: (f) =>
    `Còn ${f['count']} vấn đề không liệt kê, trong đó có lỗi. Sửa các vấn đề này, rồi đọc lại bảng.`,
  columnMissing: (f) => `Không thấy cột cho ${field(f['wanted'])} trong: ${f['headers']}. Chọn cột bằng tay.`,
  columnAbsent: (f) =>
    `Không thấy cột cho ${field(f['wanted'])} trong: ${f['headers']}. Chọn cột bằng tay, hoặc làm tiếp không có nó.`,
  columnNotFound: (f) =>
    `Bảng này không có cột “${f['wanted']}” cho ${field(f['field'])}. Nó có: ${f['headers']}. Chọn lại cột.`,
  columnUnknown: (f) => `Cột “${f['found']}” không dùng. Nếu setup cần, chọn bằng tay nó chứa gì.`,
  columnTwice: (f) =>
    `Cột “${f['found']}” cũng giống ${field(f['field'])}; đang dùng “${f['used']}”. Nếu phải là cột kia, chọn bằng tay.`,
  usagePerBoard: (f) =>
    `Cột “${f['found']}” hình như tính theo bo và được coi là theo panel. Nếu panel có nhiều bo, hãy nhân lên.`,
  slotMissing: (f) => `Ô slot trống, nhưng dòng ghi linh kiện ${f['part']}. Điền slot.`,
  textTooLong: (f) => `${field(f['field'])}: “${f['found']}…” dài hơn ${f['most']} ký tự. Rút ngắn.`,
  textCut: (f) => `Chữ dài hơn ${f['most']} ký tự. Phần còn lại bị bỏ: rút ngắn.`,
  slotUnclear: (f) =>
    `Slot “${f['found']}” không viết như M1-F-014 nên không kiểm được slot bên cạnh. Dùng đúng như ghi.`,
  slotNumberUnreadable: (f) => `Số slot “${f['found']}” không phải số nguyên từ 1. Sửa lại.`,
  partMissing: (f) => `Slot ${f['slot']} không có mã linh kiện, nhưng các ô khác đã điền. Điền vào.`,
  usageUnreadable: (f) => `Điểm gắn mỗi panel “${f['found']}” không phải số nguyên từ 0. Sửa lại.`,
  usageMissing: () =>
    'Điểm gắn mỗi panel trống nên không ai biết khi nào slot này hết. Điền vào, hoặc thêm tệp tọa độ.',
  usageZero: () =>
    'Điểm gắn mỗi panel là 0: slot được lắp nhưng không dùng. Nếu đúng, đánh dấu dòng là không gắn.',
  usageFromDesignators: (f) =>
    `Điểm gắn mỗi panel trống nên ${f['count']} ký hiệu tính là ${f['count']}. Kiểm tra chúng có đủ cả panel không.`,
  designatorsDisagree: (f) =>
    `${f['found']} ký hiệu, nhưng ${f['wanted']} điểm gắn mỗi panel. Kiểm tra số nào đúng.`,
  widthUnreadable: (f) => `Khổ băng “${f['found']}” không phải số mm. Ghi 8 hoặc 8 mm.`,
  widthUnknown: (f) => `${f['found']} mm không phải khổ băng của EIA-481 (${f['wanted']} mm). Sửa lại.`,
  widthMissing: () => 'Không có khổ băng nên không ai kiểm được feeder có hợp không. Điền vào.',
  notTape: (f) => `“${f['found']}” không phải băng nên slot này không có độ dài băng và giờ nối liệu.`,
  pitchUnreadable: (f) => `Bước “${f['found']}” không phải số mm lớn hơn 0. Ghi 4 hoặc 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 không có bước ${f['found']} mm cho băng ${f['width']} mm, chỉ ${f['wanted']} mm. Kiểm tra; có vài loại băng khác thế.`,
  pitchMissing: () => 'Không có bước nên không đổi được độ dài băng ra số con. Điền vào.',
  positionsUnreadable: (f) => `Vị trí chiếm “${f['found']}” không phải số nguyên từ 1 đến 60. Sửa lại.`,
  pinsUnreadable: (f) => `Số chân “${f['found']}” không phải số nguyên từ 1 trở lên; bị bỏ ra. Sửa lại.`,
  bodySizeUnreadable: (f) =>
    `Cỡ thân “${f['found']}” không phải dài và rộng tính bằng mm; bị bỏ ra. Ghi như 17 x 17.`,
  thicknessUnreadable: (f) => `Độ dày thân “${f['found']}” không phải số mm lớn hơn 0 nên bị bỏ ra. Sửa lại.`,
  pocketUnreadable: (f) => `Độ sâu hốc “${f['found']}” không phải số mm lớn hơn 0; bị bỏ ra. Sửa lại.`,
  mslUnknown: (f) => `“${f['found']}” không phải mức ẩm (1, 2, 2a, 3, 4, 5, 5a, 6) nên bị bỏ ra. Sửa lại.`,
  sharingUnknown: (f) =>
    `“${f['found']}” không cho biết các slot chia linh kiện này thế nào. Ghi “split” nếu mỗi slot gắn phần của mình, “in turn” nếu một slot cấp đến khi hết.`,
  turnUsageDiffers: (f) =>
    `Linh kiện ${f['part']} dùng lần lượt: slot đang cấp gắn đủ ${f['wanted']}. Dòng này ghi ${f['found']}. Ghi cùng một số ở mọi dòng.`,
  sideUnknown: (f) => `“${f['found']}” không phải mặt trên hay mặt dưới nên bỏ mặt ra. Sửa lại.`,
  flagUnreadable: (f) =>
    `“${f['found']}” không phải có hay không, tính là ${f['taken'] === 'yes' ? 'có' : 'không'}. Sửa lại.`,
  alternateIsPart: (f) => `Linh kiện ${f['part']} ở đây là thay thế của chính nó. Phần này bị bỏ ra.`,
  slotTwice: (f) =>
    `Slot ${f['slot']} đã có ở dòng ${f['first']}, với linh kiện ${f['part']}. Một slot chỉ nhận một linh kiện: sửa một trong các dòng.`,
  noRoom: (f) =>
    `Feeder ở slot ${f['slot']} chiếm ${f['wanted']} vị trí. Slot ${f['next']} (dòng ${f['nextRow']}) chỉ cách ${f['found']}. Dời một trong hai.`,
  littleRoom: (f) =>
    `Feeder ${f['width']} mm ở slot ${f['slot']} thường chiếm ${f['wanted']} vị trí. Slot ${f['next']} (dòng ${f['nextRow']}) chỉ cách ${f['found']}. Kiểm tra có vừa không, hoặc điền vị trí chiếm.`,
  noApprovedReels: (f) =>
    `Linh kiện ${f['part']} không có mã nhà cung cấp đã duyệt nên chỉ nhãn có mã nội bộ mới qua. Điền vào.`,
  partDiffers: (f) =>
    `Linh kiện ${f['part']}: ${field(f['field'])} ở đây là ${f['found']}, ở dòng ${f['first']} là ${f['wanted']}. Kiểm tra cái nào đúng.`,
  usageDisagrees: (f) =>
    `Linh kiện ${f['part']}: ${f['found']} điểm gắn mỗi panel trong bảng, ${f['wanted']} trong tệp tọa độ. Kiểm tra số nào đúng.`,
  usageRatio: (f) =>
    `Bảng có gấp ${f['ratio']} lần điểm gắn của tệp tọa độ ở mọi linh kiện. Tệp hình như chứa một bo trong ${f['ratio']}: nhập số bo của panel.`,
  usageSplitUnknown: (f) =>
    `Linh kiện ${f['part']}: ${f['wanted']} điểm gắn cho ${f['found']} slot, và tệp tọa độ không cho biết mỗi slot bao nhiêu. Điền điểm gắn mỗi panel.`,
  partNotPlaced: (f) =>
    `Linh kiện ${f['part']} có slot nhưng không có trong tệp tọa độ. Kiểm tra mã ở cả hai.`,
  partWithoutSlot: (f) =>
    `Linh kiện ${f['part']} được gắn ${f['found']} lần (tệp tọa độ, từ dòng ${f['first']}) nhưng chưa có slot. Cho slot, hoặc đánh dấu không gắn.`,
  placementPartMissing: (f) => `Ký hiệu ${f['designator']} không có mã linh kiện nên bị bỏ ra. Điền vào.`,
  placementTwice: (f) => `Ký hiệu ${f['designator']} ở cùng chỗ như dòng ${f['first']}. Chỉ tính một lần.`,
  placementSideMissing: () => 'Tệp tọa độ không có cột mặt. Mọi điểm gắn tính là mặt trên.',
  placementSideUnknown: (f) =>
    `“${f['found']}” không phải mặt trên hay mặt dưới nên điểm gắn tính là mặt trên. Sửa lại.`,
  headerGuessed: (f) =>
    `Tệp không có tiêu đề đã biết. Theo nội dung thì các cột là: ${f['wanted']}. Kiểm tra lại.`,
  columnByLook: (f) => `Cột “${f['found']}” theo nội dung được coi là ${field(f['field'])}. Kiểm tra lại.`,
  genericParts: (f) =>
    `Cột “${f['found']}” có một tên cho nhiều trị số nên chứa chủng loại chứ không phải mã. Tính theo trị số. Chọn bằng tay cột mã linh kiện nếu có.`,
  partsAreDesignators: (f) =>
    `Cột “${f['found']}” chứa ký hiệu, không phải mã linh kiện. Chọn bằng tay cột mã linh kiện.`,
  sheetAdded: (f) =>
    `Các dòng của trang “${f['found']}” có cùng tiêu đề và cũng được đọc; đánh số tiếp từ dòng ${f['first']}.`,
  designatorTwice: (f) =>
    `Ký hiệu ${f['designator']} đã có ở dòng ${f['first']}, ở chỗ khác. Chỉ tính một lần. Đặt tên riêng cho từng linh kiện trên bo.`,
  designatorSeldom: (f) =>
    `Ký hiệu ${f['designator']} có ${f['found']} lần trong tệp, đa số ký hiệu khác ${f['wanted']} lần. Kiểm tra mọi bo của panel đều có nó.`,
  placementSideFromName: (f) =>
    `Trong tệp không có gì cho biết mặt. Theo tên “${f['found']}” mọi điểm gắn tính là ${sideVi(f['side'])}.`,
  throughHole: (f) => `Ký hiệu ${f['designator']} (${f['part']}) cắm qua lỗ nên không tính là được gắn.`,
  oddPlaced: (f) =>
    `Ký hiệu ${f['designator']} trông như điểm test hoặc lỗ nhưng có linh kiện ${f['part']}. Tính là được gắn. Nếu không phải, đánh dấu không gắn.`,
  valueInPackages: (f) =>
    `Trị số ${f['part']} ở đây có kiểu vỏ ${f['found']}, ở dòng ${f['first']} là ${f['wanted']}. Tính là hai linh kiện. Cho chúng mã linh kiện.`,
  partInPackages: (f) =>
    `Linh kiện ${f['part']} ở đây có kiểu vỏ ${f['found']}, ở dòng ${f['first']} là ${f['wanted']}. Kiểm tra mã linh kiện.`,
  valueWithoutPackage: (f) =>
    `Ký hiệu ${f['designator']} có trị số ${f['part']} nhưng không có kiểu vỏ và mã. Không ai biết là linh kiện nào: điền vào.`,
  xmlBroken: (f) => `XML bị hỏng ở đây: ${f['found']}. Phần sau không được đọc. Xuất lại tệp.`,
  noComponents: () => 'Tệp không chứa linh kiện. Xuất lại kèm linh kiện và chỗ của chúng.',
  panelOfFile: (f) => `Panel trong tệp có ${f['found']} bo; chỉ tính một bo. Cho biết panel có bao nhiêu bo.`,
  billRowWithoutDesignators: (f) =>
    `Linh kiện ${f['part']} không ghi ký hiệu nên không gắn gì từ dòng này. Điền vào nếu nó được gắn.`,
  billPartMissing: (f) =>
    `Dòng có ${f['designator']} không có mã linh kiện và không có trị số. Điền một trong hai.`,
  billPartByOther: (f) =>
    `Dòng không có mã linh kiện nên linh kiện được gọi là ${f['part']}. Điền mã linh kiện.`,
  secondTable: (f) => `Một bảng khác bắt đầu ở đây (${f['headers']}). Không đọc.`,
  boardsInFile: (f) =>
    `Tệp tọa độ đã có ${f['found']} bo nên ${f['wanted']} bo không nhân thêm lần nữa. Kiểm tra panel có bao nhiêu bo.`,
  quantityDiffers: (f) =>
    `Số lượng là ${f['wanted']}, nhưng dòng ghi ${f['found']} ký hiệu. Kiểm tra số nào đúng.`,
  quantityUnreadable: (f) => `Số lượng “${f['found']}” không phải số. Tính theo ký hiệu. Sửa lại.`,
  quantityRatio: (f) =>
    `Ở mọi dòng, số lượng gấp ${f['ratio']} lần số ký hiệu. BOM hình như tính ${f['ratio']} bo.`,
  billDesignatorTwice: (f) =>
    `Ký hiệu ${f['designator']} đã có ở dòng ${f['first']}, cùng linh kiện. Chỉ tính một lần.`,
  billDesignatorDiffers: (f) =>
    `Ký hiệu ${f['designator']} đã có ở dòng ${f['first']}, với linh kiện ${f['wanted']}; ở đây là ${f['found']}. Một chỗ chỉ nhận một linh kiện: sửa một trong các dòng.`,
  variantOpen: (f) =>
    `Các biến thể của BOM khác nhau ở đây: ${f['wanted']}. Tính là có gắn. Cho biết làm biến thể nào, hoặc thêm BOM của biến thể đó.`,
  variantNotFound: (f) => `BOM không có biến thể “${f['found']}”. Nó có: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `Linh kiện ${f['part']} ở đây có trị số ${f['found']}, ở dòng ${f['first']} là ${f['wanted']}. Kiểm tra mã linh kiện.`,
  markInRemark: (f) =>
    `Theo ghi chú “${f['found']}” thì không gắn gì của dòng này. Nếu chỉ nói về vài ký hiệu, ghi chúng ở đó.`,
  blankNotFitted: (f) =>
    `Cột “${f['found']}” có dấu ở vài dòng và trống ở ${f['count']} dòng. Trống tính là không gắn.`,
  designatorNotInBill: (f) =>
    `Ký hiệu ${f['designator']} có trong tệp tọa độ nhưng không có ở dòng nào của BOM nên không tính. Thêm vào BOM, hoặc đánh dấu không gắn.`,
  designatorNotPlaced: (f) =>
    `Ký hiệu ${f['designator']} (linh kiện ${f['part']}) có trong BOM nhưng không có trong tệp tọa độ nên không tính.`,
  partOfFileDiffers: (f) =>
    `Ký hiệu ${f['designator']}: linh kiện ${f['found']} trong tệp tọa độ, ${f['wanted']} trong BOM (dòng ${f['first']}). Tính theo BOM. Kiểm tra cái nào đúng.`,
  valueOfFileDiffers: (f) =>
    `Ký hiệu ${f['designator']}: trị số ${f['found']} trong tệp tọa độ, ${f['wanted']} trong BOM (dòng ${f['first']}). Tính theo BOM. Kiểm tra cái nào đúng.`,
  sideOfFileDiffers: (f) =>
    `Ký hiệu ${f['designator']} ở ${sideVi(f['found'])} trong tệp tọa độ; BOM ghi ${sideVi(f['wanted'])}. Tính theo tệp tọa độ.`,
  sheetDesignatorNotPlaced: (f) =>
    `Ký hiệu ${f['designator']} có ở dòng này nhưng không có trong tệp tọa độ. Kiểm tra ở cả hai.`,
  designatorWithoutSlot: (f) =>
    `Ký hiệu ${f['designator']} (tệp tọa độ, dòng ${f['first']}, linh kiện ${f['part']}) không có ở dòng nào của bảng. Thêm vào dòng của slot, hoặc đánh dấu không gắn.`,
  sheetPartDiffers: (f) =>
    `Ký hiệu ${f['designator']}: linh kiện ${f['found']} ở dòng này, ${f['wanted']} trong tệp tọa độ hoặc BOM. Kiểm tra cái nào đúng.`,
  sheetDesignatorTwice: (f) => `Ký hiệu ${f['designator']} đã có ở dòng ${f['first']}. Tính ở đó.`,
  listPartEmpty: () => 'Dòng không có mã linh kiện, nhưng các ô khác có dữ liệu. Điền vào.',
  listPackingUnknown: (f) =>
    `“${f['found']}” không phải băng, băng cắt, khay, ống hay hàng rời nên bị bỏ qua. Sửa lại.`,
  listAgeUnreadable: (f) =>
    `Giới hạn tuổi “${f['found']}” không phải số tháng nên bị bỏ qua. Ghi 24 hoặc 2 năm.`,
  listPriceUnreadable: (f) =>
    `Giá “${f['found']}” không phải số lớn hơn 0 nên bị bỏ qua. Hãy ghi 0.012 hoặc 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `“${f['found']}” không cho biết giá cho bao nhiêu linh kiện. Hãy ghi Price each hoặc Price per 1000.`,
  listToleranceUnclear: (f) =>
    `“${f['found']}” có các số trần nhỏ hơn 1: tỉ lệ hay phần trăm? Chúng bị bỏ qua. Hãy đặt tên cột là Tolerance % hoặc ghi 1 % trong ô.`,
  listReelEmpty: () => 'Dòng không có ID cuộn nên bị bỏ qua. Điền vào.',
  listReelTwice: (f) => `Cuộn ${f['found']} đã có ở dòng ${f['first']}. Lấy số đếm cuối của nó.`,
  listCountUnreadable: (f) =>
    `Số lượng “${f['found']}” không phải số con nguyên nên bỏ qua dòng này. Sửa lại.`,
};

export const words: Sentences<typeof english> = { say: (problem) => vi[problem.code](problem.facts) };
