import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'TẬP',
  tells: 'Ở đây không tính gì. Chuyền thật vẫn chạy.',
  end: 'Kết thúc tập',
  real: (slot, told) => `Trên chuyền thật: ${slot} ${told}`,
  title: 'Tập mà không đụng đến chuyền',
  about:
    'Bạn có bản sao của chuyền như hiện giờ. Cứ quét, nối liệu, đổi sản phẩm, làm sai: không gì đến chuyền thật, nhật ký hay số đếm của nó. Bản sao bị xóa khi kết thúc tập, hoặc sau mười hai giờ.',
  aboutNew:
    'Nhà máy này chưa có chuyền nên bạn có một chuyền nhỏ bịa ra. Cứ quét, lắp, nối liệu, làm sai. Nó bị xóa khi kết thúc tập, hoặc sau mười hai giờ.',
  warns: 'Cảnh báo của chuyền thật vẫn hiện.',
  start: 'Bắt đầu tập',
  taken: 'Buổi tập đang mở ở cửa sổ khác của tablet này. Kết thúc ở đó trước.',
  notSaved: (name) => `Tập: không lưu tệp nào. Trên chuyền thật sẽ là ${name}.`,
  labels: 'Nhãn để tập',
  labelsHelp: 'Chạm nhãn thay vì quét: slot, feeder của nó nếu cần, cuộn của nó.',
  print: 'In nhãn',
  groups: {
    load: 'Để lắp',
    splice: 'Để nối tiếp theo',
    wrong: 'Để bị từ chối hoặc giữ lại',
    panels: 'Panel',
  },
  slot: (slot) => `Slot ${slot}`,
  wants: (part) => `cần ${part}`,
  right: (slot) => `cuộn đúng cho ${slot}`,
  wrong: (slot, asked) => `thuộc ${slot}; thử ở ${asked}`,
  foreign: (asked) => `không slot nào cần; thử ở ${asked}`,
  bare: (slot) => `nhãn không có số lượng; cho ${slot}`,
  free: (slot) => `feeder trống cho ${slot}`,
  panel: 'đếm một panel',
  nothing: 'Chọn setup trước đã. Nhãn của nó sẽ hiện ở đây.',
  names: {
    line: 'Chuyền tập',
    machine: 'máy đầu',
    bank: 'trước',
    product: 'Bo tập',
  },
};
