import type { words as english } from '../en/unproven.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Chưa chứng thực',
  none: 'Không có gì chưa chứng thực: mọi mục cần trưởng ca đều có phiếu của máy chủ.',
  noTickets: 'Nhà máy này chưa cấp phiếu. Phiếu bắt đầu khi trưởng ca nhập PIN ở nơi máy chủ trả lời.',
  help: 'Các mục này cần trưởng ca hoặc kỹ sư và được làm không có phiếu của máy chủ. Chúng vẫn tính ở xưởng. Trưởng ca biết về chúng thì công nhận hoặc bác bỏ.',
  stands: {
    proven: 'chứng thực bằng phiếu',
    unproven: 'chưa chứng thực',
    confirmed: 'trưởng ca công nhận',
    rejected: 'trưởng ca bác bỏ',
    'before-tickets': 'làm trước khi có phiếu',
  },
  right: 'Quyền',
  why: {
    'no-ticket': (role) =>
      `Không có phiếu của máy chủ: không gì chứng tỏ người ở vai trò “${role}” đã làm việc này.`,
    'ticket-over': () => 'Phiếu không phủ thời điểm này.',
    role: (role) => `Phiếu thuộc vai trò thấp hơn. Cần: ${role}.`,
  },
  before: 'Khi ghi mục này nhà máy chưa cấp phiếu.',
  by: (name) => `bởi ${name}`,
  nobody: 'không ghi ai',
  confirm: 'Công nhận',
  reject: 'Bác bỏ',
  confirmAll: (count) => (count === 1 ? 'Công nhận' : `Công nhận cả ${count}`),
  confirmTitle: (count) =>
    count === 1 ? 'Việc đó có được làm như ghi không?' : `Cả ${count} việc có được làm như ghi không?`,
  rejectTitle: 'Không phải người này làm?',
  rejectHelp: 'Mục vẫn còn, đánh dấu là bị bác. Những gì nó đổi ở xưởng cũng còn: hãy tự sửa lại.',
  rejectPerson: 'Ở máy chủ, thay đổi về người này không tính. Xem danh sách người ở Nhà máy và sửa lại.',
  reason: 'Vì sao biết?',
  needsServer: 'Máy chủ phải trả lời cho việc này: chỉ khi đó mới chứng thực được ai quyết định.',
  notProven: 'Đã ghi lại, nhưng không có phiếu nên không giải quyết gì. Thử lại ở nơi máy chủ trả lời.',
  confirmed: (count) => `Đã công nhận ${count} mục.`,
  rejected: 'Mục đã bị bác bỏ.',
  engineerOnly: (count) => `${count} mục trong đó cần lời của kỹ sư.`,
  badgeAlone: (name) =>
    `${name} chỉ đăng nhập bằng thẻ. Việc cần trưởng ca vẫn chưa chứng thực. Đăng nhập bằng tên và PIN để chứng thực.`,
  settled: { confirmed: 'công nhận', rejected: 'bác bỏ' },
};
