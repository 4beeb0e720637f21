import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';

const layoutsVi: Readonly<Record<Layout, string>> = {
  us: 'tiếng Anh (Mỹ)',
  uk: 'tiếng Anh (Anh)',
  german: 'tiếng Đức',
  'swiss-german': 'tiếng Đức (Thụy Sĩ)',
  french: 'tiếng Pháp',
  spanish: 'tiếng Tây Ban Nha',
  italian: 'tiếng Ý',
  swedish: 'tiếng Thụy Điển',
};

export const words: Sentences<typeof english> = {
  layouts: layoutsVi,
  title: 'Quét mã này bằng máy quét',
  help: 'Từ màn hình này, màn hình khác, hoặc tờ in. Khi trang này mở, lần quét không đi nơi nào khác.',
  codeLabel: 'Mã hiệu chỉnh',
  striped: 'Máy quét chỉ đọc mã vạch',
  stripedLabel: 'Mã vạch hiệu chỉnh',
  stripedHelp: 'Quá rộng cho màn hình nhỏ: khi đó hãy in tờ. Mã vạch chỉ có một dấu ngăn nên chỉ thử dấu đó.',
  stripedSheet: 'Cho máy quét chỉ đọc mã vạch:',
  print: 'In tờ này',
  waiting: 'Đang chờ quét…',
  right: 'Máy quét này đặt đúng.',
  rightText: 'Chữ, ký hiệu và dấu ngăn nhận được đúng như in.',
  plainOnly: 'Mã đơn đọc được; nhãn có dấu ngăn thì không.',
  plainOnlyText: 'Nhãn như vậy bị từ chối cho đến khi đặt máy quét như dưới đây.',
  wrong: 'Chưa thể tin máy quét này.',
  wrongText: 'Thứ quét bằng nó nhận được không đúng như in.',
  findings: {
    'all-equal': 'Mọi ký tự nhận được đúng như in.',
    'half-arrived': (found, wanted) =>
      `Chỉ nhận được ${found}/${wanted} ký tự: lần quét bị cắt. Đặt độ trễ giữa các ký tự về không, hoặc đem máy quét lại gần đế.`,
    'layout-differs': (scanner, tablet) =>
      `Máy quét gõ theo bàn phím ${scanner}, tablet chờ ${tablet}. Đặt bàn phím của máy quét thành ${tablet}, hoặc của tablet thành ${scanner}.`,
    'characters-differ':
      'Ký tự nhận được bị đổi, và không kiểu bàn phím nào biết ở đây giải thích được. Đặt bàn phím của máy quét theo tablet rồi quét lại.',
    'case-inverted': 'Chữ hoa và thường bị đảo. Tắt Caps Lock, và đặt máy quét giữ nguyên chữ như in.',
    'separators-lost': (names) =>
      `Không nhận được dấu ngăn (${names}). Đặt máy quét gửi ký tự điều khiển, dạng Ctrl với một phím hoặc Alt với phím số.`,
    'separator-replaced': (name, by) =>
      `Dấu ngăn ${name} nhận được là “${by}”. Đặt máy quét gửi nguyên ký tự điều khiển.`,
    'terminator-missing':
      'Không có Enter ở cuối nên chỉ đoán được lúc quét xong. Đặt hậu tố máy quét là Enter.',
    'unknown-key': (key) => `Phím “${key}” xuất hiện giữa lần quét. Bỏ các phím đó khỏi cài đặt máy quét.`,
    slow: (pace) => `${pace} ms giữa hai ký tự là chậm. Đặt độ trễ giữa các ký tự về không.`,
    'symbology-id-sent': (id) => `Máy quét gửi loại mã ở đầu (${id}). Điều này hiểu được và có thể để vậy.`,
  },
  wanted: 'bản in',
  found: 'nhận được',
  label: {
    title: 'Quét một nhãn đã in',
    help: 'Của slot, feeder, thẻ hoặc cuộn.',
    read: 'Đọc được nhãn này.',
    unknown: 'Tablet này không biết nhãn này.',
    unknownHelp: 'Quét lại. Nếu vẫn không được, in nhãn lớn hơn, hoặc thêm vào nhà máy trước.',
  },
  arrived: 'Nhận được gì',
  none: 'Chưa có gì. Quét bất cứ thứ gì: nó hiện ở đây, cả ký tự điều khiển.',
  characters: (count) => `${count} ký tự`,
  pace: (ms) => `${ms} ms mỗi ký tự`,
  endedBy: { Enter: 'rồi Enter', Tab: 'rồi Tab', silence: 'không Enter' },
  reads: 'đọc là',
  readsNothing: 'không phải nhãn đã biết',
  settingsTitle: 'Cách đặt máy quét',
  settings: [
    'Chạy như bàn phím (HID).',
    'Nước của bàn phím: giống tablet.',
    'Gửi ký tự điều khiển, dạng Ctrl với một phím hoặc Alt với phím số.',
    'Hậu tố: Enter. Không tiền tố.',
    'Chữ như in: không đổi hoa thường.',
    'Không trễ giữa các ký tự.',
  ],
  keep: 'Lưu nhịp của máy quét này trên tablet',
  keptNow: 'Đã lưu. Tablet này phân biệt quét với gõ tay theo nhịp này.',
  isKept: 'Tablet này đã lưu nhịp của máy quét.',
  forget: 'Dùng nhịp thường',
  sheetTitle: 'Hiệu chỉnh máy quét',
  sheetText: 'Mở Nhà máy, Máy quét trên tablet, rồi quét mã này.',
  sheetHolds: 'Mã này chứa:',
  fields: {
    part: 'linh kiện',
    supplierPart: 'mã nhà cung cấp',
    quantity: 'số lượng',
    lot: 'lô',
    dateCode: 'date code',
    reel: 'cuộn',
  },
};
