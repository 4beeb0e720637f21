import type { words as english } from '../en/people.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Ai đang làm?',
  yourLanguage: 'Ngôn ngữ của bạn, trên mọi tablet',
  pinTitle: (name) => `PIN của ${name}`,
  pinHelp: 'Bốn đến tám chữ số.',
  pinWrong: 'Sai PIN.',
  pinLeft: (left) => `Sai PIN. Còn ${left} lần thử.`,
  pinLocked: (minutes) => `Thử quá nhiều lần. Khóa ${minutes} phút.`,
  pinUnsafe: 'Chỉ kiểm PIN được trên trang an toàn. Mở ứng dụng bằng địa chỉ https.',
  notSeenHere: (name) =>
    `Máy chủ không trả lời, và tablet này chưa từng xác nhận ${name}. Thử ở nơi máy chủ trả lời.`,
  pinNotHere: (name) =>
    `Tablet này chưa biết PIN của ${name}. Nhập một lần ở nơi máy chủ trả lời, hoặc ở tablet đã đặt PIN.`,
  seenTooLongAgo: (name) =>
    `Máy chủ không trả lời, và tablet này xác nhận ${name} đã hơn ba ngày. Thử ở nơi máy chủ trả lời.`,
  asking: 'Đang kiểm…',
  enter: 'Nhập',
  erase: 'Xóa',
  nobody: 'Tablet này chưa có ai. Thêm một kỹ sư trước; kỹ sư sẽ thêm những người khác.',
  addFirst: 'Thêm kỹ sư đầu tiên',
  awayTitle: (name) => `Đã đăng xuất ${name}`,
  awayHelp: (name) =>
    `Việc đang mở vẫn được giữ. ${name} đăng nhập để làm tiếp. Với người khác thì nó bị đóng.`,
  awayClose: 'Đóng việc đang mở',
  badgeNeeded: (name) => `${name} không có PIN: quét thẻ.`,
  scanBadge: 'Quét thẻ',
  badgeHelp: 'Bằng máy quét, hoặc gõ phần in dưới mã.',
  badgeUnknown: 'Thẻ lạ. Quét thẻ khác.',
  noPin: (name) => `${name} chưa có PIN. Kỹ sư đặt ở Nhà máy.`,
  clearTitle: 'Trưởng ca quyết định',
  clearHelp: 'Quét thẻ của trưởng ca. Rồi nhập PIN và lý do.',
  clearReason: 'Lý do',
  reasons: [
    'Kỹ thuật đã duyệt cho lô này',
    'Đã kiểm và đo bằng tay',
    'Nhãn hỏng, đã xác nhận linh kiện',
    'Đã đếm bằng tay',
  ],
  otherReason: 'Lý do khác',
  accept: 'Nhận cuộn',
  decline: 'Không duyệt',
  cartKept: (f) => `${f.cart} giờ có ${f.carries} cho ${f.slot}. ${f.held} không lên xe.`,
  cleared: (slot) => `Đã duyệt cho ${slot}.`,
  declined: 'Không duyệt. Cuộn không vào chuyền.',
  needsRole: (role) => `Cần: ${role}`,
  quantityTitle: 'Cuộn có bao nhiêu con?',
  quantityHelp: 'Như in hoặc như đếm. Có thể sửa sau; nhật ký giữ mọi lần sửa.',
  quantityWrong: 'Nhập số nguyên lớn hơn không.',
};
