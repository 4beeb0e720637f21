import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Đã đồng bộ',
  syncing: 'Đang đồng bộ…',
  toSend: (count) => `${count} chờ gửi`,
  unreached: (span) => (span === null ? 'Không tới được máy chủ' : `Không tới được máy chủ, đã ${span}`),
  waits: 'Máy chủ yêu cầu chờ',
  refused: 'Máy chủ từ chối',
  quarantined: (count) => `${count} mục để riêng`,
  rolledBack: 'Nhật ký máy chủ có thể đã bị lùi',
  headFault: 'Nhật ký máy chủ bị nghi ngờ',
  clocksOff: (count) => `${count} tablet lệch giờ`,
  history: (share) => `Đang tải lịch sử: ${share}`,
  historyChecked: 'Đang kiểm lịch sử',
  historyTitle: 'Lịch sử',
  stillMissing: (missing, of) => `Còn thiếu ${missing}/${of} mục cũ ở đây.`,
  checkedHelp: 'Mọi mục đã có ở đây. Tablet này giờ tự tính lại tất cả và so.',
  historyHelp:
    'Tablet này bắt đầu từ kết quả của tablet khác. Lắp và kiểm vẫn như thường. Nhật ký, bản xuất và truy vết ở đây chưa đủ cho đến khi phần còn lại về.',
  notWhole: (missing) => `${missing} mục cũ còn đang về: câu trả lời sẽ chưa đủ. Máy chủ có đủ.`,
};
