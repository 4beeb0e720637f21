import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Bản ghi trên giấy',
  asking: 'Đang hỏi máy chủ về bằng chứng…',
  proven: (place, size) =>
    `Đã chứng minh: mục ${place} trong ${size} của nhật ký nhà máy, ký bằng khóa của nhà máy.`,
  holds: 'Mã mang bằng chứng. “reelward log verify --record” kiểm tra được mà không cần nhật ký.',
  seen: (count, names) => `${count} tablet đã kiểm tra và ký: ${names}.`,
  since: (when) => `Chưa chứng minh: không có máy chủ từ ${when}.`,
  never: 'Chưa chứng minh: chưa kết nối được máy chủ.',
  waiting: 'Chưa chứng minh: máy chủ chưa có mục này.',
  noProof: 'Chưa chứng minh: máy chủ không đưa bằng chứng.',
  later: 'In lại khi máy chủ đã có mục này. Khi đó giấy mang bằng chứng.',
  key: (fingerprint) => `Khóa của nhà máy: ${fingerprint}`,
  brought: {
    'one-log': 'Giấy này cùng nhật ký với tablet này.',
    'not-one-log': 'Giấy này và máy chủ cho thấy hai nhật ký khác nhau. Gọi trưởng nhóm chất lượng.',
    'not-the-plants': 'Giấy này không được ký bằng khóa của nhà máy này.',
    'no-server': 'Không có máy chủ. Giấy sẽ được kiểm tra khi máy chủ trả lời.',
    'not-checked': 'Giấy chưa được kiểm tra. Hãy quét trên tablet đã đồng bộ.',
  },
};
