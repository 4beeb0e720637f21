import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsVi: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'mã nội bộ',
  supplierPart: 'mã nhà cung cấp',
  quantity: 'số lượng',
  lot: 'lô',
  dateCode: 'date code',
  made: 'tuần sản xuất',
  expires: 'hạn dùng',
  reel: 'cuộn',
  supplier: 'nhà cung cấp',
  country: 'nước',
  msl: 'mức ẩm',
  order: 'đơn hàng',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `“${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayVi(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'không đọc được mã nào từ nhãn này';
    case 'no-part-number':
      return 'nhãn này không có mã linh kiện: phải lấy từ nơi khác';
    case 'header-damaged':
      return `đầu mã bị hỏng: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `máy quét gửi ${quote(warning.found)} thay cho dấu ngăn (GS): đặt nó gửi ký tự điều khiển`;
    case 'separators-mixed':
      return `các dấu ngăn khác nhau (${warning.found.map(quote).join(', ')}): kiểm tra máy quét và kiểu bàn phím của nó`;
    case 'separators-lost':
      return `thiếu dấu ngăn trong ${quote(warning.text)}: chỉ đọc phần chắc chắn; đặt máy quét gửi ký tự điều khiển`;
    case 'trailer-uncertain':
      return `ký tự cuối của ${quote(warning.text)} có thể là dấu kết thúc mã`;
    case 'keyboard-layout':
      return `máy quét gõ theo bàn phím khác (${warning.layout}): không nhận ${quote(warning.text)}; đặt lại kiểu bàn phím rồi quét lại`;
    case 'identifier-lower-case':
      return `mã định danh ${quote(warning.id)} đến bằng chữ thường và được đọc là ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `không biết mã định danh ${warning.id}: giá trị được giữ, không dùng`;
    case 'no-identifier':
      return `${quote(warning.text)} không có mã định danh: giữ dạng chữ`;
    case 'format-unread':
      return `định dạng ${warning.format} không đọc ở đây: giữ dạng chữ`;
    case 'tags-not-mh10':
      return `thẻ hai chữ (${warning.tags.join(', ')}) thay cho mã định danh dữ liệu`;
    case 'one-letter-tags':
      return 'thẻ một chữ, đọc là: R cuộn, P mã nội bộ, D ngày, L lô, V nhà cung cấp, Q số lượng, S mã nhà cung cấp';
    case 'blank-separated':
      return `đọc từng đoạn, cắt ở dấu cách: nếu mã linh kiện trong ${quote(warning.text)} có dấu cách thì cũng bị cắt`;
    case 'value-may-go-on':
      return `${quote(warning.text)} có thể thuộc giá trị sau ${warning.id}: không đọc`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} có thể bắt đầu bằng mã định danh hoặc chỉ là một số: phải có người cho biết`;
    case 'confirmed-by-setup':
      return `${fieldsVi[warning.field]} ${quote(warning.value)} đúng như setup cần`;
    case 'conflict':
      return `nhãn có các giá trị khác nhau cho ${fieldsVi[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `nhãn có lô thứ hai, ${quote(warning.text)}: cuộn chứa cả hai`;
    case 'quantity-unreadable':
      return `không đọc được số lượng ${quote(warning.text)} nếu không đoán: đếm hoặc gõ`;
    case 'quantity-marks':
      return `số lượng ${quote(warning.text)} được đọc là ${warning.quantity}`;
    case 'date-code-unclear':
      return `date code ${quote(warning.text)} (${warning.id}) không rõ: giữ như in`;
    case 'no-such-week':
      return `date code ${quote(warning.text)} (${warning.id}) không phải tuần của năm nào: giữ như in`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) không phải ngày`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) không có ngày: tính ngày cuối tháng`;
    case 'country-unlisted':
      return `${quote(warning.text)} không phải mã nước`;
    case 'msl-unlisted':
      return `${quote(warning.text)} không phải mức ẩm`;
    case 'rule-unclear':
      return `quy tắc nhãn ${quote(warning.rule)} khớp theo nhiều cách: không dùng`;
    case 'full-ascii':
      return `${quote(warning.text)} giống Code 39 dạng ASCII đầy đủ: sẽ là ${quote(warning.meant)}; hãy đặt máy quét như vậy`;
    case 'gs1-unread':
      return `${quote(warning.text)} có mã định danh GS1 chưa biết ở đây: giữ dạng chữ`;
    case 'gs1-check-digit':
      return `chữ số kiểm tra của ${quote(warning.text)} sai`;
  }
}

export const words: Sentences<typeof english> = { say: sayVi };
