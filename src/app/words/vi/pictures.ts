import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Ảnh nhãn',
  ruleHelp: 'Giữ ảnh mỗi nhãn mà camera đọc khi lắp hoặc nối liệu.',
  keep: 'Giữ ảnh',
  days: 'Số ngày giữ',
  megabytes: 'Dung lượng trên mỗi tablet, MB',
  fault: 'Ảnh cần 1 đến 3650 ngày và 1 đến 10000 MB.',
  shown: 'Ảnh của nhãn',
  notHere: 'Ảnh không có trên tablet này. Hãy xem ở tablet đã đọc nhãn.',
  none: 'Không tìm thấy ảnh.',
  broken: 'Đây không phải ảnh đã giữ. Hãy báo trưởng ca.',
  failed: 'Ảnh nhãn không được giữ. Kết quả vẫn có hiệu lực.',
  exported: 'Lưu cả ảnh nhãn',
  saved: (name) => `Đã lưu thành ${name}.`,
};
