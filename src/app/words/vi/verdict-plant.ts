// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Đo được: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Cần: ${f['nominal']} ${f['unit']}, từ ${f['least']} đến ${f['most']}. Với dải bảo vệ ${f['guard']}: từ ${f['from']} đến ${f['to']}.`;

export const plantReasonsVi: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder chưa biết',
    say: (f) => `Feeder ${f['feeder']} không có trong danh sách nhà máy nên không kiểm được khổ.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'feeder-type': {
    title: 'Sai loại feeder',
    say: (f) => `Feeder ${f['feeder']} là ${f['found']}; slot này cần ${f['wanted']}.`,
    act: 'Lấy feeder đúng loại đó.',
  },
  'feeder-drive': {
    title: 'Sai truyền động',
    say: (f) => `Feeder ${f['feeder']} có truyền động ${f['found']}; slot này cần ${f['wanted']}.`,
    act: 'Lấy feeder đúng truyền động.',
  },
  'feeder-height': {
    title: 'Hốc quá sâu với feeder',
    say: (f) => `Hốc của băng sâu ${f['wanted']} mm; feeder ${f['feeder']} cho qua ${f['found']} mm.`,
    act: 'Lấy feeder cho hốc sâu hơn.',
  },
  'maker-not-listed': {
    title: 'Hãng không có trong danh sách sản phẩm này',
    say: (f) =>
      `${f['supplierPart']} chưa được duyệt cho ${f['part']} ở sản phẩm này.${f['listed'] ? ` Đã duyệt: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Được duyệt ở ${f['approvedFor']}.` : ''}`,
    act: 'Lấy cuộn của hãng có trong danh sách, hoặc để trưởng ca quyết định.',
  },
  'date-code-old': {
    title: 'Quá cũ theo date code',
    say: (f) => `Sản xuất ${f['made']}. Giới hạn tuổi của chuyền cho linh kiện này đã hết vào ${f['last']}.`,
    act: 'Trưởng ca phải quyết định.',
  },
  'date-code-unknown': {
    title: 'Chưa biết tuổi',
    say: (f) =>
      f['dateCode']
        ? `Không đọc chắc được date code ${f['dateCode']}. Chuyền giới hạn tuổi của linh kiện này.`
        : 'Nhãn không có date code. Chuyền giới hạn tuổi của linh kiện này.',
    act: 'Trưởng ca phải quyết định.',
  },
  'value-outside': {
    title: 'Sai trị số',
    say: measured,
    act: 'Không lắp. Để cuộn riêng ra, rồi quét cuộn khác.',
  },
  'value-unsure': {
    title: 'Trị số chưa rõ',
    say: (f) => `${measured(f)} Quá sát giới hạn với máy đo này.`,
    act: 'Quét lại cuộn để đo lại, hoặc để trưởng ca quyết định.',
  },
  'value-unmeasured': {
    title: 'Chưa đo trị số',
    say: (f) => `Chuyền yêu cầu đo một linh kiện ${f['part']} trước khi cuộn cấp liệu.`,
    act: 'Quét lại cuộn để đo, hoặc để trưởng ca quyết định.',
  },
  'value-unknown': {
    title: 'Không có trị số để kiểm',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `Danh sách linh kiện cho ${f['part']} trị số mà không có dung sai.`
        : `Danh sách linh kiện không cho trị số của ${f['part']}.`,
    act: 'Trưởng ca phải quyết định. Nhập trị số ở mục Linh kiện.',
  },
  'value-within': { title: 'Đã kiểm trị số', say: measured, act: '' },
  'feeder-care': {
    title: 'Feeder đến hạn bảo dưỡng',
    say: (f) =>
      `Feeder ${f['feeder']} đã gắn khoảng ${f['placed']} con; nhà máy đặt bảo dưỡng sau ${f['after']} con. Khi tháo ra, hãy đưa đi bảo dưỡng.`,
    act: '',
  },
  'older-in-store': {
    title: 'Trong kho có cuộn cũ hơn',
    say: (f) =>
      f['by'] === 'expires'
        ? `Cuộn ${f['reel']} ở ${f['place']} có hạn dùng ${f['expires']}, sớm hơn cuộn này.`
        : `Cuộn ${f['reel']} ở ${f['place']} có date code ${f['dateCode']}, cũ hơn cuộn này.`,
    act: '',
  },
};
