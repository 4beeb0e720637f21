import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Tin nhắn khi ứng dụng đóng',
  promise:
    'Cho trưởng ca: cảnh báo chưa ai trả lời, cuộn bị chặn đang dùng, chuyền đứng. Tin có thể trễ hoặc không tới: hãy để một tablet mở.',
  way: 'Tin đi mã hóa qua dịch vụ của hãng trình duyệt này. Máy chủ của nhà máy phải tới được nó.',
  noBrowser: 'Trình duyệt này không nhận tin nhắn.',
  noServer: 'Không máy chủ nào trả lời. Hãy vào trước, hoặc thử lại sau.',
  off: 'Máy chủ của nhà máy chưa được thiết lập cho việc này.',
  unreached: 'Máy chủ của nhà máy không tới được dịch vụ. Ở đây không có tin nhắn.',
  denied: 'Trình duyệt chặn tin nhắn. Hãy cho phép trong cài đặt cho trang này.',
  turnOn: 'Bật tin nhắn',
  turnOff: 'Tắt tin nhắn',
  isOn: 'Tin nhắn tới đây.',
  isOff: 'Tin nhắn đang tắt ở đây.',
  wrong: 'Không được. Hãy thử lại.',
  first: 'Tin nhắn tới được đây.',
  warning: (line, slot) => `${line}: chưa ai trả lời cảnh báo cho ${slot}.`,
  blocked: (line, slot) => `${line}: cuộn bị chặn đang dùng trên ${slot}.`,
  stood: (line) => `${line} đang đứng.`,
};
