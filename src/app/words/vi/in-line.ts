import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Panel trong chuyền',
  help: 'Chỗ đổi cuộn, các panel này là nghi vấn. Nhập số nhiều nhất có thể có, kể cả panel dừng trước máy. Chỗ chưa ai nhập thì dùng số giả định.',
  behind: (machine) => `${machine}: panel đã xong ở đây mà chưa đếm, nhiều nhất`,
  before: (machine) => `${machine}: panel đã đếm trước khi tới máy, nhiều nhất`,
  missed: 'Panel đi qua không được đếm, nhiều nhất',
  guess: (most) => `Chưa nhập: giả định đến ${most} (thông lệ).`,
  seen: (panels, most) => `Đã quét ${panels} panel ở cả hai chỗ: giữa hai chỗ có đến ${most}.`,
  takeSeen: 'Dùng số từ lần quét',
  takeHelp:
    'Số đã thấy không phải giới hạn: nơi nào có thể nhiều hơn thì nhập nhiều hơn. Lần quét cho thấy hơn thế sẽ tự nới rộng.',
  scansHere: 'Panel quét ở tablet này',
  count: 'Được đếm',
  goInto: (machine) => `Đi vào ${machine}`,
  scansHelp: 'Quét vài panel trước máy và quét lại ở chỗ đếm: nhờ đó biết giữa hai chỗ có bao nhiêu.',
  save: 'Lưu panel trong chuyền',
  saved: 'Đã lưu. Từ giờ truy vết theo số này.',
  wrong: 'Nhập số nguyên từ 0 đến 500, và tỷ lệ dưới 50 %.',
  exitOpen: 'Mở màn hình đầu ra',
  exitTitle: 'Panel đã làm',
  exitHelp: 'Quét từng panel khi ra khỏi chuyền.',
  exitCounted: 'Đã đếm:',
  exitBefore: 'Đã quét trước đó, không cộng thêm:',
  exitOther: 'Không phải panel, không cộng thêm:',
  exitNoRun: 'Chuyền này chưa chạy. Hãy bắt đầu trước.',
  exitLost: 'Trang này mất bàn phím. Chạm vào đây trước khi quét.',
  exitLeave: 'Rời màn hình này',
};
