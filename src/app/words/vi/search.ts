import type { words as english } from '../en/search.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Gõ hoặc quét bất cứ gì',
  help: 'Cuộn, linh kiện, lô, panel, slot, feeder, người hoặc sản phẩm. Quét ở đây là để tìm, không phải để lắp.',
  kinds: {
    reel: 'Cuộn',
    slot: 'Slot',
    part: 'Linh kiện',
    'supplier-part': 'Mã nhà cung cấp',
    lot: 'Lô',
    panel: 'Panel',
    feeder: 'Feeder',
    person: 'Người',
    setup: 'Setup',
    entry: 'Mục nhật ký',
  },
  more: (count) => `Hiện thêm ${count}`,
  nothing: (text) => `Ở đây không có gì chứa “${text}”.`,
  alike: (codes) => `Không giống nhau: ${codes}. Kiểm tra từng ký tự.`,
  onLabel: 'Cũng trên nhãn này:',
  left: (count) => `còn ${count}`,
  slotIs: {
    right: 'đúng',
    empty: 'chưa lắp gì',
    held: 'chờ trưởng ca',
    'other-part': 'sai linh kiện',
    'wrong-feeder': 'sai feeder',
    blocked: 'bị chặn',
  },
  notWanted: 'không có trong setup này',
  chosen: 'đã chọn',
  reading: (entries) => `Đang đọc nhật ký: đến giờ ${entries} mục.`,
  searchedAll: (entries) =>
    `Đã tìm: ${entries === '1' ? entries : `cả ${entries}`} mục nhật ký trên tablet này.`,
  searchedSince: (day) => `Đã tìm: mục nhật ký từ ${day}. Mục cũ hơn ở trong nhật ký.`,
  askServer: 'Hỏi máy chủ',
  asking: 'Đang hỏi máy chủ…',
  noServer: 'Máy chủ không trả lời: phần chỉ máy chủ biết chưa được tìm.',
  serverNothing: (text) => `Máy chủ không có gì về “${text}”.`,
  serverHas: (kind, count) => `${kind}: ${count} ở máy chủ`,
};
