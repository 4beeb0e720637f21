import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Tìm bằng camera',
  sweep: 'Rà chuyền bằng camera',
  title: 'Tìm cuộn',
  help: 'Di tablet chậm dọc theo các nhãn.',
  sweepHelp: 'Giữ nhãn của slot và nhãn cuộn của nó trong hình.',
  on: (slot) => `ở ${slot}`,
  to: (slots) => `đến ${slots}`,
  told: (wanted, barred, read) => `Cần: ${wanted} · không dùng: ${barred} · đã đọc: ${read}`,
  swept: (seen, all) => `Đã thấy: ${seen} trên ${all}`,
  other: 'Hiện không cần',
  unknown: 'Chưa biết',
  reading: 'Đang đọc…',
  none: 'Chưa đọc được gì.',
  missing: 'Chưa thấy',
  several: (slot) => `${slot}: có hơn một cuộn ở gần. Lại gần hơn, hoặc quét slot và cuộn.`,
  unsure: (slot) => `${slot}: nhãn không cho biết đó là cuộn nào.`,
  check: 'Kiểm tra slot này',
  times: (count) => `${count} × trong hình`,
  kept: (count) => `Cuộn đã thấy: ${count}. Đã ghi vào nhật ký.`,
  notKept: 'Những gì đã thấy chưa vào nhật ký. Hãy đăng nhập trước.',
  barred: 'Không dùng',
};
