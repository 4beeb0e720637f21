import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsVi, tableVi } from './verdict-moisture.ts';
import { plantReasonsVi } from './verdict-plant.ts';

const reasonsVi: ReasonWords = {
  ...moistureReasonsVi,
  ...plantReasonsVi,
  'unknown-slot': {
    title: 'Không có slot này',
    say: (f) => `Chuyền này không có slot ${f['slot']}.`,
    act: 'Quét mã của slot tại máy.',
  },
  'slot-not-in-setup': {
    title: 'Slot không dùng',
    say: (f) => `Setup này không cần gì ở ${f['slot']}.`,
    act: 'Để trống. Quét đúng slot.',
  },
  'slot-loaded': {
    title: 'Slot đã lắp rồi',
    say: (f) => `${f['slot']} đã có ${f['part']}${f['reel'] ? ` (cuộn ${f['reel']})` : ''}.`,
    act: 'Tháo cuộn đó trước.',
  },
  'slot-empty': {
    title: 'Slot trống',
    say: (f) => `Chưa lắp gì ở ${f['slot']}.`,
    act: 'Hãy lắp cuộn vào đó.',
  },
  'no-part': {
    title: 'Không có mã linh kiện',
    say: (f) => `Không mã nào trên nhãn cho biết là linh kiện gì. Cần: ${f['wanted']}.`,
    act: 'Quét cả nhãn, hoặc gõ mã linh kiện in trên đó.',
  },
  'wrong-part': {
    title: 'Sai linh kiện',
    say: (f) =>
      f['goesTo'] ? `Cuộn này thuộc ${f['goesTo']}.` : 'Không slot nào của setup này cần linh kiện này.',
    act: 'Trả lại. Quét cuộn khác.',
  },
  'wrong-for-lane': {
    title: 'Sai cho làn kia',
    say: (f) => `${f['lane']} lấy ${f['wanted']} từ slot này.`,
    act: 'Trả lại. Quét một cuộn dùng được cho cả hai làn.',
  },
  'kept-for-lane': {
    title: 'Giữ cho làn kia',
    say: (f) => `${f['slot']} có ${f['part']} cho ${f['lane']}.`,
    act: 'Để cuộn đó lại. Muốn nối liệu, hãy chọn làn kia trước.',
  },
  'not-in-setup': {
    title: 'Không thuộc setup này',
    say: (f) =>
      f['slot'] ? `Không slot nào cần cuộn này. Gần nhất là ${f['slot']}.` : 'Không slot nào cần cuộn này.',
    act: 'Để trên xe, hoặc trả về kho.',
  },
  'bake-short': {
    title: 'Sấy chưa đủ',
    say: (f) =>
      `Đã sấy ${f['hours']} h${f['celsius'] ? ` ở ${f['celsius']} °C` : ''}. ${f['wanted'] ? `Bảng yêu cầu ${f['wanted']} h` : 'Bảng không có dòng cho trường hợp này'} nên hạn ngoài bao không được khôi phục: còn ${f['leftSeconds']}. (${restsOn(f, tableVi)}Kiểu vỏ chưa biết tính là xấu nhất.)`,
    act: 'Trưởng ca phải quyết định.',
  },
  'same-label': {
    title: 'Cuộn thứ hai cùng nhãn',
    say: () => 'Đã có người xác nhận: nhãn khớp với cuộn đang chạy ở đây.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Cuộn đang ở slot khác',
    say: (f) => `Nhật ký ghi cuộn ${f['reel']} ở ${f['slot']}.`,
    act: 'Nếu đã rời slot đó, hãy tháo ở đó trước.',
  },
  'reel-on-cart': {
    title: 'Cuộn đang trên xe',
    say: (f) => `Nhật ký ghi cuộn ${f['reel']} trên xe ${f['cart']}, sẵn cho ${f['slot']}.`,
    act: 'Lấy cuộn khác, hoặc bỏ nó khỏi xe ở Chuẩn bị trước.',
  },
  'slot-on-cart': {
    title: 'Slot đã sẵn trên xe',
    say: (f) => `Xe ${f['cart']} đã có cuộn sẵn cho ${f['slot']}.`,
    act: 'Quét slot khác, hoặc bỏ chỗ đó khỏi xe trước.',
  },
  'reel-here': {
    title: 'Cuộn đã ở đây',
    say: (f) => `Cuộn ${f['reel']} đã ở ${f['slot']}.`,
    act: 'Quét cuộn tiếp theo.',
  },
  'reel-blocked': {
    title: 'Cuộn đang bị chặn',
    say: (f) => `Bị chặn: ${f['reason']}.`,
    act: 'Để riêng ra. Gọi trưởng ca.',
  },
  'feeder-elsewhere': {
    title: 'Feeder đang ở slot khác',
    say: (f) => `Nhật ký ghi feeder ${f['feeder']} ở ${f['slot']}.`,
    act: 'Kiểm tra mã feeder, hoặc tháo ở đó trước.',
  },
  'feeder-aside': {
    title: 'Bộ cấp liệu đã để riêng',
    say: (f) => `Không được dùng feeder ${f['feeder']}: ${f['why']}.`,
    act: 'Lấy feeder khác. Bảo dưỡng xong thì ghi ở feeder.',
  },
  'feeder-lanes': {
    title: 'Feeder không còn làn',
    say: (f) => `Feeder ${f['feeder']} có số làn: ${f['lanes']}. Nhật ký ghi nó đã ở ${f['slots']}.`,
    act: 'Kiểm tra mã feeder, hoặc sửa số làn của loại đó.',
  },
  'feeder-on-cart': {
    title: 'Feeder đang trên xe',
    say: (f) => `Nhật ký ghi feeder ${f['feeder']} trên xe ${f['cart']}, sẵn cho ${f['slot']}.`,
    act: 'Kiểm tra mã feeder, hoặc bỏ nó khỏi xe ở Chuẩn bị trước.',
  },
  'feeder-width': {
    title: 'Feeder không hợp băng',
    say: (f) => `Feeder ${f['feeder']} dành cho băng ${f['found']} mm; slot này cần ${f['wanted']} mm.`,
    act: 'Lấy feeder đúng khổ.',
  },
  'feeder-pitch': {
    title: 'Bước của feeder không hợp',
    say: (f) => `Feeder ${f['feeder']} tiến ${f['found']} mm; băng này cần ${f['wanted']} mm.`,
    act: 'Đặt lại bước hoặc lấy feeder khác. Bước sai làm vứt linh kiện mà không ai thấy.',
  },
  'floor-life-over': {
    title: 'Hết hạn ngoài bao',
    say: () => 'Cuộn này ở ngoài túi chống ẩm quá lâu.',
    act: 'Không dùng. Đem sấy theo quy định.',
  },
  'not-the-loaded-reel': {
    title: 'Không phải cuộn trong nhật ký',
    say: (f) => `Nhật ký ghi ${f['loaded'] || 'cuộn khác'} ở ${f['slot']}.`,
    act: 'Tìm xem ai đã đổi. Rồi tháo ra và lắp lại.',
  },
  'part-contradicts': {
    title: 'Nhãn tự mâu thuẫn',
    say: (f) => `Nhãn ghi ${f['part']}, nhưng ${f['supplierPart']} được duyệt cho ${f['approvedFor']}.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'alternate-not-approved': {
    title: 'Linh kiện thay thế chưa duyệt ở đây',
    say: (f) => `${f['found']} được thay ${f['wanted']} ở ${f['approvedFor']}, nhưng không ở sản phẩm này.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'supplier-part-not-approved': {
    title: 'Mã nhà cung cấp chưa biết',
    say: (f) => `${f['supplierPart']} không có trong danh sách đã duyệt. Cần: ${f['wanted']}.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'no-quantity': {
    title: 'Không có số lượng',
    say: () => 'Nhãn không có số lượng nên không biết khi nào hết cuộn.',
    act: 'Gõ số lượng, hoặc để trưởng ca quyết định.',
  },
  expired: {
    title: 'Quá hạn',
    say: (f) => `Hạn dùng ${f['expires']}.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'by-alternate': {
    title: 'Linh kiện thay thế đã duyệt',
    say: (f) => `${f['found']} là linh kiện thay thế đã duyệt của ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Theo mã nhà cung cấp',
    say: (f) => `${f['supplierPart']} được duyệt cho ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Coi là cùng mã',
    say: (f) => `${f['found']} tính là ${f['wanted']} theo quy tắc của nhà máy về ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Lô khác',
    say: (f) => `Lô đổi từ ${f['from']} sang ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Không phải số lượng trên nhãn',
    say: (f) =>
      f['label'] === ''
        ? `Nhãn không ghi; nhật ký dùng ${f['quantity']}.`
        : `Nhãn ghi ${f['label']}; nhật ký dùng ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Đúng để thay',
    refill: 'Đúng để đổ thêm',
    load: 'Đúng cuộn',
    splice: 'Đúng cuộn để nối',
    sweep: 'Đã thấy',
  },
  refused: 'Từ chối',
  held: 'Giữ lại chờ trưởng ca',
  wants: (slot) => `${slot} cần`,
  says: 'cuộn ghi',
  also: 'Ngoài ra',
  goOn: 'Làm tiếp',
  nextIs: (slot) => `Tiếp theo: ${slot}`,
  another: 'Quét cuộn khác',
  callLead: 'Để trưởng ca quyết định',
  typeQuantity: 'Gõ số lượng',
  takeBack: 'Rút lại',
  parts: (count) => `${formatCount(count)} con`,
  lot: (lot) => `lô ${lot}`,
  reel: (reel) => `cuộn ${reel}`,
  practice: 'quét tập',
  allLoaded: 'Mọi slot đã lắp.',
  spliceCaution:
    'Nối băng khi máy đã dừng, hoặc khi feeder ở ngoài vùng che chắn, đúng như tài liệu của nó. Cắt hướng ra xa ngón tay. Quy định tại chỗ là trên hết.',
  loadCaution: 'Dừng máy và chờ đầu gắn dừng rồi mới thò tay vào. Quy định tại chỗ là trên hết.',
  reasons: reasonsVi,
};
