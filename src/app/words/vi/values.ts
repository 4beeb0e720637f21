import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Đo ${part}`,
  ask: 'Đo một linh kiện của cuộn này trước khi cuộn cấp liệu.',
  which: 'Mã có thể mang nhiều trị số. Chọn trị số đúng.',
  wanted: (nominal, least, most, unit) => `Cần: ${nominal} ${unit}, từ ${least} đến ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Máy đo: ± ${percent} % và ± ${digits} chữ số. Dải bảo vệ: ${guard} % của mức đó.`,
  shows: (unit) => `Máy đo chỉ, ${unit}`,
  help: 'Tự gõ, hoặc để máy đo gõ.',
  wrong: 'Nhập một số, ví dụ 10,02.',
  otherUnit: (unit) => `Máy đo chỉ đại lượng khác. Cần số theo ${unit}.`,
  check: 'Kiểm trị số',
  cannot: 'Để không đo',
  rule: {
    title: 'Linh kiện phải đo trước khi cấp liệu',
    help: 'Mỗi dòng một nhóm linh kiện. Trị số lấy từ danh sách linh kiện hoặc ghi chú của setup. Không có dòng: không kiểm.',
    begins: 'Mã bắt đầu bằng (trống: mọi mã có trị số)',
    add: 'Thêm nhóm linh kiện',
    percent: 'Máy đo: ± % số đọc',
    digits: 'Máy đo: ± chữ số ở hàng cuối',
    guard: 'Dải bảo vệ, % độ không đảm bảo của máy đo',
    wrong: 'Nhập số liệu máy đo bằng số, và mỗi nhóm một lần.',
  },
};
