import type { words as english } from '../en/held.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Sai cuộn, phát hiện muộn',
    cleared: 'Duyệt nhầm cuộn bị giữ',
    blocked: 'Vật liệu bị chặn',
    'floor-life': 'Đã hết hạn ngoài bao',
  },
  hold: 'Giữ các panel này',
  holdTitle: (panels) => `Giữ ${panels} panel?`,
  holdHelp:
    'Giữ mọi panel có thể có vật liệu đó, kể cả panel còn trong chuyền. Chúng bị giữ đến khi trưởng ca ký.',
  goesOn: 'Vẫn còn ở slot. Tháo ra trước, nếu không các panel sau sẽ không bị giữ.',
  cause: 'Vì sao giữ?',
  lifeHelp: 'Giữ các panel kể từ lúc hết hạn ngoài bao.',
  noLifeOver: 'Theo nhật ký, chưa lúc nào làm panel khi đã hết hạn ngoài bao.',
  reason: 'Phát hiện gì?',
  codes: (codes) => `Biết ${codes} mã panel.`,
  sure: (panels) => (panels === 0 ? 'Chưa chắc panel nào có.' : `${panels} panel chắc chắn có.`),
  done: (panels) => `Đang giữ ${panels} panel.`,
  none: 'Không giữ panel nào.',
  span: (first, last) => `Panel ${first} đến ${last}`,
  still: (held, all) => `Chưa ký: ${held}/${all}`,
  noCodes: 'Không có mã panel. Tìm các panel này theo số thứ tự.',
  signed: (who, when) => `${who} đã ký, ${when}`,
  sign: 'Ký',
  signAll: 'Ký tất cả',
  signTitle: 'Đã xử lý các panel này thế nào?',
  signHelp: 'Chọn từng panel, hoặc ký tất cả.',
  signWhy: 'Đã làm gì? Ví dụ: sửa lại, loại bỏ, thấy đúng.',
  signDone: 'Đã ký.',
  save: 'Lưu mã thành CSV',
  which: 'Panel nào?',
};
