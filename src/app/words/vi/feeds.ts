import type { words as english } from '../en/feeds.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  kinds: { tape: 'Băng', 'cut-tape': 'Băng cắt', tray: 'Khay', tube: 'Ống', bulk: 'Hàng rời' },
  acts: { splice: 'Nối liệu', exchange: 'Thay', refill: 'Đổ thêm' },
  label: 'In nhãn của nó',
  warns: {
    splice: (span, clock) => `còn ${span} là hết, khoảng ${clock}. Đem đoạn tiếp theo.`,
    exchange: (span, clock) => `còn ${span} là hết, khoảng ${clock}. Khi đó máy dừng cho đến khi thay.`,
    refill: (span, clock) => `còn ${span} là hết, khoảng ${clock}. Đổ thêm trước lúc đó.`,
  },
  comesNext: { splice: 'Cuộn mới', exchange: 'Lắp thay vào', refill: 'Đổ lên trên' },
  accepted: {
    exchange: 'Thứ ở đó trước tính là đã tháo. Không phải nối liệu: máy dừng cho đến khi lắp xong.',
    refill: 'Từ đây cả hai lô đều có thể, cho đến khi đổ hết feeder ra.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Băng cắt: không có khoảng nối liệu. Hết đoạn là hết.',
    tray: 'Khay: khi hết, máy dừng cho đến khi thay.',
    tube: 'Ống: khi hết, máy dừng cho đến khi thay.',
    bulk: 'Hàng rời: đổ thêm trước khi hết.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => `${count} đoạn`,
    tray: (count) => `${count} chồng khay`,
    tube: (count) => `${count} bộ ống`,
    bulk: (count) => `${count} gói`,
  },
  dueNow: { splice: 'nối ngay', exchange: 'thay ngay', refill: 'đổ thêm ngay' },
  forLane: (lane, part, count) => `Cho ${lane}: ${part}, ${count} mỗi panel.`,
};
