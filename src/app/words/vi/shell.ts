import type { words as english } from '../en/shell.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Chuyền',
    load: 'Lắp',
    change: 'Đổi',
    stock: 'Cuộn',
    log: 'Nhật ký',
    plant: 'Nhà máy',
  },
  noLine: 'Chưa có chuyền',
  noSetup: 'chưa chọn setup',
  side: { top: 'mặt trên', bottom: 'mặt dưới' },
  revision: (revision) => `rev ${revision}`,
  run: (done, wanted) => `${done}/${wanted} panel`,
  signIn: 'Đăng nhập',
  signInFirst: 'Quét thẻ trước đã',
  needsRole: (role) => `Cần: ${role}`,
  signInHelp: 'Quét thẻ của mình hoặc chọn tên.',
  signedInAs: (name) => `Đang đăng nhập: ${name}`,
  signOut: 'Đăng xuất',
  roles: { operator: 'Vận hành viên', lead: 'Trưởng ca', engineer: 'Kỹ sư' },
  offlineReady: 'Sẵn sàng chạy không mạng',
  gettingReady: 'Đang chuẩn bị để chạy không mạng…',
  toSend: (count) => `${count} chờ gửi`,
  skipToDock: 'Đến thẳng Gõ và Camera',
  done: 'Xong',
  cancel: 'Hủy',
  detailsOf: (what) => `Thêm: ${what}`,
  lessOf: (what) => `Bớt: ${what}`,
  close: 'Đóng',
  newVersion: 'Đã có phiên bản mới.',
  update: 'Cập nhật ngay',
  updateLater: 'Sẽ chờ đến khi không còn việc nào đang mở.',
  languageLater: 'Ngôn ngữ đó chưa có trên tablet này. Nối mạng rồi chọn lại.',
  leftAlone: (name, minutes) =>
    `Đã đăng xuất ${name}: ${minutes} phút không ai chạm. Việc đang mở vẫn được giữ.`,
  shiftOver: (name) => `Đã đăng xuất ${name}: đã qua một ca. Việc đang mở vẫn được giữ.`,
  notInPractice: 'Không dùng khi tập',
  fault: {
    'disk-full': {
      title: 'Tablet này đã đầy',
      text: 'Không thể ghi hay xác nhận thêm gì ở đây. Mọi thứ đã nhận đều an toàn. Làm trên tablet khác. Giải phóng chỗ trên tablet này rồi thử lại.',
    },
    'closed-by-newer': {
      title: 'Phiên bản mới hơn đang mở ở cửa sổ khác',
      text: 'Cửa sổ này là phiên bản cũ và đã dừng. Mọi thứ đã nhận đều an toàn. Tải lại để tiếp tục.',
    },
    lost: {
      title: 'Không mở được nhật ký trên tablet này',
      text: 'Làm trên tablet khác và gọi người phụ trách tablet. Đừng xóa dữ liệu trình duyệt: các mục chưa gửi có thể vẫn cứu được.',
    },
    unknown: {
      title: 'Không ghi được nhật ký',
      text: 'Những gì đã báo xong thì an toàn. Thao tác cuối chưa được ghi. Tải lại và xem nhật ký trước khi làm tiếp.',
    },
  },
  reload: 'Tải lại',
  tryAgain: 'Thử lại',
  muted: 'Chưa có tiếng cho đến khi chạm màn hình',
  storageLow: (megabytes) => `Chỉ còn ${megabytes} MB cho nhật ký trên tablet này.`,
};
