import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `Đồng hồ tablet này lùi ${span} lúc ${clock}: chỉnh lại cho đúng.`,
  ahead: (span, clock) =>
    `Tablet này ngủ ${span} lúc ${clock}, hoặc đồng hồ nhảy tới. Nếu giờ đang sai, chỉnh lại.`,
  'behind-log': (span) => `Đồng hồ tablet này chậm ${span} so với mục mới nhất: chỉnh lại.`,
  'behind-server': (span) => `Đồng hồ tablet này chậm ${span} so với máy chủ: chỉnh lại.`,
  'ahead-of-server': (span) => `Đồng hồ tablet này nhanh ${span} so với máy chủ: chỉnh lại.`,
  goesOn: 'Cảnh báo và giờ tính tiếp từ giờ đúng gần nhất.',
  short: 'Xem lại đồng hồ',
  isRight: 'Đồng hồ đúng rồi',
};
