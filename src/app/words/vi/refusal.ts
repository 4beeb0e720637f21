import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, trong nhật ký`,
  nothingLoaded: 'Chưa lắp gì.',
  closest: 'mã cần gần giống nhất',
  characters: (count) => `Khác ${formatCount(count)} ký tự.`,
  belongsAt: 'Cuộn này thuộc',
  belongsNowhere: 'Ở đây không slot nào cần.',
  lacksReel: 'Ở đó giờ chưa có cuộn.',
  hasReel: 'Ở đó giờ đang có cuộn.',
  onLine: (slot, line) => `${slot} ở ${line}`,
  rightReel: (slot) => `${slot} cần`,
  rightReelNone: 'Theo nhật ký, kho không có cuộn nào của linh kiện này.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} và ${formatCount(more)} cuộn nữa`),
  feederToFetch: 'Feeder cần lấy',
  feederNone: 'Danh sách không có feeder trống cỡ đó.',
  anotherFeeder: 'Quét feeder khác',
  carryOn: (slot) => `Đem đến ${slot}`,
  unload: (slot) => `Tháo ${slot}`,
  reachIn: 'Dừng máy trước khi thò tay vào.',
  runsHere: {
    title: 'Cuộn đó đang chạy ở đây rồi',
    text: (slot) => `Nhãn này khớp với cuộn ở ${slot}. Có phải cuộn thứ hai cùng nhãn không?`,
    same: 'Không, chính cuộn đó',
    second: 'Phải, cuộn thứ hai',
  },
  cameBefore: {
    title: 'Cuộn này đã từng ở trên chuyền?',
    text: (lot, left) =>
      `Nhãn của nó không có ID riêng. Một cuộn giống thế${lot === null ? '' : `, lô ${lot},`} đã rời chuyền ${left === null ? 'với số lượng không rõ' : `khi còn ${left} con`}.`,
    same: 'Phải, chính cuộn đó',
    fresh: 'Không, cuộn mới',
  },
};
