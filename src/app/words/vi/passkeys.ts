import type { words as english } from '../en/passkeys.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => `${count} khóa đăng nhập`,
  openOf: (shown, name) => `${shown} của ${name}`,
  title: (name) => `Khóa đăng nhập của ${name}`,
  help: 'Khóa đăng nhập chứng thực ai đã quyết định: khóa màn hình của tablet này, hoặc một chìa khóa áp vào nó. Không có thì PIN quyết định.',
  none: 'Chưa có khóa đăng nhập.',
  where: {
    unsafe: 'Khóa đăng nhập cần trang an toàn. Mở ứng dụng bằng địa chỉ https. Ở đây PIN quyết định.',
    'by-number': 'Khóa đăng nhập cần địa chỉ ứng dụng bằng tên, không bằng số. Ở đây PIN quyết định.',
    none: 'Trình duyệt này không có khóa đăng nhập. Ở đây PIN quyết định.',
  },
  who: (name) => `Chỉ ${name} hoặc kỹ sư làm được việc này. Quét thẻ, rồi nhập PIN.`,
  notThem: (name) => `Chỉ ${name} hoặc kỹ sư.`,
  add: 'Thêm khóa đăng nhập',
  name: 'Gọi là gì?',
  nameHelp: 'Ví dụ “chìa xanh” hoặc “tablet đầu chuyền”.',
  nameMissing: 'Nhập tên.',
  make: 'Tạo ngay',
  made: (name) => `Đã thêm khóa đăng nhập “${name}”.`,
  notMade: 'Chưa tạo được khóa đăng nhập. Áp chìa khóa vào tablet hoặc mở khóa tablet, rồi thử lại.',
  remove: 'Xóa',
  removeOf: (name) => `Xóa khóa đăng nhập ${name}`,
  removed: (name) => `Đã xóa khóa đăng nhập “${name}”.`,
  addedBy: (name, host) => `${name} thêm, cho trang ở ${host}`,
  fell: 'Số đếm của nó giảm: có thể đã bị sao chép. Xóa nó và tạo khóa khác.',
  unproven:
    'Không gì chứng thực ai đã thêm. Nó không chứng thực được gì cho đến khi trưởng ca công nhận ở Nhật ký.',
  signed: 'Đã ký',
  byPasskey: (name) => `chứng thực bằng khóa đăng nhập của ${name}`,
  pinOnly: 'chỉ PIN, theo tablet báo',
  refused: 'Khóa đăng nhập không chứng thực việc này: nó ký thứ khác, hoặc không phải của người này.',
  checking: 'Đang kiểm…',
};
