import type { words as english } from '../en/walks.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Lượt đi',
  walkSplices: (count) => (count === 1 ? '1 lần nối' : `${count} lần nối, một lượt đi`),
  walkMore: (count) => `sau đó còn ${count} lượt`,
  crew: 'Người ở chuyền này',
  missTitle: 'Không kịp',
  miss: {
    windowTooShort: (moment) => `nối trước ${moment}: không đủ thời gian để nối`,
    closesTooSoon: (moment) => `nối trước ${moment}: không ai tới kịp`,
    crowdedOut: (moment) => `nối trước ${moment}: mọi người đang bận nối chỗ khác`,
  },
  remedies: {
    cutEarly: (parts, moment) => `Cắt băng cũ sớm, lúc ${moment}: bỏ khoảng ${formatCount(parts)} con`,
    secondPerson: (moment) => `Thêm một người đi trước ${moment}`,
    secondSlot: (moment) => `Lắp linh kiện vào slot thứ hai trước ${moment}`,
  },
  orRemedy: (remedy) => `hoặc: ${remedy}`,
  missMore: (count) => `sau đó còn ${count}`,
  noRemedy: 'Chuyền sẽ dừng. Chuẩn bị sẵn cuộn tiếp theo.',
};
