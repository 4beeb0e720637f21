import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Tên nhà máy',
  nameHelp: 'Có trên phiếu lắp liệu, thẻ và bản xuất.',
  zoneHelp: 'Chuyền mới bắt đầu với múi giờ này.',
  nameMissing: 'Nhập tên nhà máy.',
  zoneUnknown: 'Chọn múi giờ trong danh sách.',
  same: 'Không có gì thay đổi.',
  save: 'Lưu tên',
  saved: (name) => `Đã lưu ${name}.`,
  fileTitle: 'Tệp cho nhà máy thứ hai',
  fileHelp:
    'Có chuyền, máy, dãy, quy tắc, quy tắc linh kiện, checklist và quy tắc nhãn. Không có người, cuộn, setup và lịch sử.',
  noLine: 'Chưa có chuyền nào.',
  fileSave: 'Lưu tệp',
  fileSaved: (name) => `Đã lưu ${name}.`,
  beginTitle: 'Bắt đầu từ tệp của nhà máy khác',
  beginHelp: 'Tệp được lưu ở nhà máy kia, trên trang này hoặc bằng “reelward plant”.',
  notEmpty: 'Nhà máy này đã có chuyền. Tệp chỉ dành cho nhà máy chưa có chuyền.',
  begun: 'Đã có chuyền và quy tắc. Làm tiếp bước sau.',
  choose: 'Chọn tệp',
  brings: 'Tệp mang theo:',
  bringsOf: (name) => `Từ ${name}, tệp mang theo:`,
  counts: {
    lines: 'Chuyền',
    slots: 'Slot',
    parts: 'Quy tắc linh kiện',
    checklists: 'Checklist',
    labelRules: 'Quy tắc nhãn',
  },
  begin: 'Dùng tệp này',
  toSteps: 'Các bước đầu',
  faults: {
    'not-json': 'Đây không phải tệp của nhà máy. Chọn tệp mà nhà máy kia đã lưu.',
    'not-a-plant': 'Đây là loại tệp khác. Chọn tệp mà nhà máy kia đã lưu.',
    newer: 'Phiên bản mới hơn đã ghi tệp này. Cập nhật tablet này trước.',
    'no-lines': 'Tệp này không có chuyền. Lưu lại ở nhà máy kia.',
    kind: (at, what) => `Mục ${at} (${what}) không thuộc tệp này. Lưu lại ở nhà máy kia.`,
    payload: (at, what) => `Mục ${at} (${what}) bị hỏng. Lưu lại tệp ở nhà máy kia.`,
  },
};
