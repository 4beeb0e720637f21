import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Trợ giúp: ${screen}`,
  practise: 'Tập có hướng dẫn',
  lines: {
    line: [
      'Băng hết ở chỗ cuộn hết. Nối liệu trong khung ngoặc.',
      'Dải trên cùng ghi lượt đi kế tiếp. Chạm vào khi đi.',
      'Thanh phía trên bắt đầu, dừng và đếm đợt chạy.',
    ],
    load: [
      'Chạm một dãy để xem các slot. Chuyền cho biết còn gì phải lắp.',
      'Quét slot, rồi quét cuộn.',
      'Hình tròn: nhận. Bát giác: từ chối. Hình thoi: chờ trưởng ca.',
    ],
    change: [
      'Chọn sản phẩm kế tiếp. Mỗi lần chuyển có trong danh sách.',
      'Làm từng lần chuyển và quét thứ lắp vào.',
      'Xong checklist, kiểm panel đầu. Rồi cho chạy.',
    ],
    stock: [
      'Xem cuộn nào cần mang ra, và trước lúc nào.',
      'Mở một cuộn để đếm, cất hoặc chặn.',
      'Cuộn phải giữ khô cho biết hạn ngoài bao.',
    ],
    log: [
      'Mọi việc ở đây, có giờ và người. Không gì bị xóa.',
      'Từ lô đến panel, hoặc từ panel đến cuộn.',
      'Xem ca, bàn giao ca và xuất nhật ký.',
    ],
    plant: [
      'Nhập setup và chọn thứ sẽ chạy.',
      'Thêm người, nhãn và quy tắc của chuyền.',
      'Tập trên bản sao của chuyền. Ở đó không gì được tính.',
    ],
    search: ['Quét hoặc gõ mã, tên hay số bất kỳ.', 'Kết quả xếp theo loại.', 'Chạm một kết quả để mở.'],
    lines: [
      'Mỗi dòng là một chuyền, có đợt chạy và lượt đi kế tiếp.',
      'Chuông: có cảnh báo chờ. Hình thoi: có cuộn bị giữ.',
      'Chạm một dòng để làm trên chuyền đó.',
    ],
  },
};
