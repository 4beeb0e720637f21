// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableVi: TableWords = {
  own: 'Bảng: bản riêng của nhà máy. ',
  copy: 'Bảng: đã so với bản công bố. ',
  memory: 'Bảng: theo trí nhớ. ',
};

export const moistureReasonsVi: MoistureReasons = {
  'bake-hours-over': {
    title: 'Tổng thời gian sấy quá lâu',
    say: (f) => `Đến giờ ${f['hours']} h trên 90 °C; giới hạn là ${f['most']} h. Chân có thể hàn không tốt.`,
    act: 'Trưởng ca phải quyết định. Hỏi hãng linh kiện.',
  },
  'label-time-missing': {
    title: 'Mức 6: thời gian trên nhãn?',
    say: () => 'Sau khi sấy, cuộn mức 6 dùng được như nhãn túi ghi. Chưa ai nhập.',
    act: 'Sấy, nhập số giờ ở Túi / lò sấy, rồi quét lại.',
  },
  'reel-unnamed': {
    title: 'Không có ID, và có thể là cuộn đã mở',
    say: (f) =>
      `Một cuộn của linh kiện này${f['lot'] ? `, lô ${f['lot']},` : ''} đã rời chuyền trước đó${f['left'] ? ` khi còn ${f['left']}` : ''}. Không có ID thì không phân biệt được hai cuộn nên không biết ${f['floorLife'] === 'true' ? 'hạn ngoài bao' : 'số lượng'}.`,
    act: 'Cấp ID cho cuộn, hoặc để trưởng ca quyết định.',
  },
  'reel-gone': {
    title: 'Theo nhật ký, đã dùng hết từ lâu',
    say: (f) =>
      `Theo nhật ký, cuộn ${f['reel']} hoặc một phần của nó đã dùng hết từ lâu. Tablet này không biết nó đã ở ngoài bao bao lâu.`,
    act: 'Tìm lô của nó trong Truy vết. Trưởng ca phải quyết định.',
  },
  'floor-life-short': {
    title: 'Hạn ngoài bao hết trước cuộn',
    say: (f) => `Hạn ngoài bao còn ${f['leftSeconds']}, cuộn đủ ${f['neededSeconds']}.`,
    act: 'Trưởng ca phải quyết định.',
  },
};
