import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Tập có hướng dẫn',
  about: 'Từng bước một. Cần thì cứ rời đi: sẽ tiếp ở đúng bước đó.',
  guides: {
    operator: 'Ba cuộn, một cuộn sai. Một lần nối liệu. Một cảnh báo.',
    lead: 'Một cuộn bị giữ cần quyết định. Một lần xuất.',
    engineer: 'Một setup cần nhập.',
  },
  start: 'Bắt đầu hướng dẫn',
  goOn: (at, of) => `Tiếp ở bước ${at} trên ${of}`,
  again: 'Làm lại từ bước 1',
  step: (at, of) => `Bước ${at} trên ${of}`,
  leave: 'Rời hướng dẫn',
  go: 'Cho xem ở đâu',
  skip: 'Bỏ qua bước này',
  still: 'Đó là việc khác. Bước này vẫn chưa xong.',
  over: 'Xong mọi bước. Cứ tập tiếp, hoặc kết thúc buổi tập.',
  noLead: 'Nhà máy chưa có trưởng ca. Hãy thêm trước.',
  example: 'Dùng bảng mẫu',
  steps: {
    first: {
      ask: 'Chạm nhãn slot, rồi cuộn đúng của nó.',
      seen: (slot) => `${slot}: nhận.`,
    },
    wrong: {
      ask: (group) => `Chạm nhãn slot, rồi một cuộn sai. Xem “${group}”.`,
      seen: (slot) => `${slot}: từ chối. Không được lắp cuộn đó.`,
    },
    second: {
      ask: 'Chạm thêm một slot, rồi cuộn đúng của nó.',
      seen: (slot) => `${slot}: nhận.`,
    },
    splice: {
      ask: (group) => `Nối liệu: ở “${group}”, chạm slot, rồi cuộn của nó.`,
      seen: (slot) => `${slot}: đã nối.`,
    },
    run: {
      ask: 'Bắt đầu đợt chạy trên chuyền.',
      seen: 'Đợt chạy đã bắt đầu.',
    },
    warning: {
      ask: 'Đếm panel trên chuyền đến khi một slot cảnh báo.',
      seen: (slot) => `${slot}: có cảnh báo.`,
    },
    answer: {
      ask: (act) => `Chạm “${act}” cạnh cảnh báo, hoặc nối liệu slot đó.`,
      seen: 'Cảnh báo đã có trả lời.',
    },
    hold: {
      ask: 'Chạm nhãn slot, rồi cuộn không có số lượng.',
      seen: (slot) => `${slot}: giữ lại. Trưởng ca phải quyết định.`,
    },
    clear: {
      ask: 'Quyết định như trưởng ca: thẻ, PIN, lý do.',
      seen: 'Đã quyết định, có tên trong nhật ký.',
    },
    export: {
      ask: (act) => `Ở nhật ký, chạm “${act}”, rồi CSV. Khi tập không lưu tệp nào.`,
      seen: 'Đã yêu cầu xuất. Không tệp nào được lưu.',
    },
    open: {
      ask: (page) => `Mở “${page}”.`,
      seen: (page) => `“${page}” đang mở.`,
    },
    take: {
      ask: (example, act) => `Chạm “${example}”. Xem những gì thay đổi, rồi chạm “${act}”.`,
      seen: (product) => `${product}: đã nhập.`,
    },
    look: {
      ask: (page) => `Tìm nó ở “${page}”.`,
      seen: 'Nó có trong danh sách.',
    },
  },
};
