import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import type { Sentences } from '../words.ts';

const kindsVi: Readonly<Record<StepKind, string>> = {
  tick: 'đánh dấu',
  measure: 'giá trị đo',
  scan: 'quét',
  choice: 'chọn',
  photo: 'ảnh',
  note: 'ghi chú',
  sign: 'chữ ký',
  known: 'ứng dụng kiểm',
};

const conditionsVi: Readonly<Record<StepCondition, string>> = {
  always: 'luôn luôn',
  'side-changes': 'nếu đổi mặt',
  'stencil-changes': 'nếu đổi stencil',
  'product-changes': 'nếu đổi sản phẩm',
  'program-changes': 'nếu đổi chương trình',
};

const faultsVi: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'Đặt tên cho checklist.',
  'no-steps': 'Checklist không có bước nào.',
  'step-twice': 'Cùng một bước có hai lần.',
  'no-text': 'Thiếu nội dung.',
  'limits-crossed': 'Giới hạn dưới cao hơn giới hạn trên.',
  'no-options': 'Câu chọn cần từ hai lựa chọn.',
  'right-not-listed': 'Có câu đúng không nằm trong các lựa chọn.',
  'no-unit': 'Giá trị đo cần có đơn vị.',
  'nothing-known': 'Chọn điều phải đúng. Chỉ checklist đổi sản phẩm mới hỏi được.',
  'signatures-differ': 'Mỗi chữ ký cần một vai trò.',
};

export const words: Sentences<typeof english> = {
  kinds: kindsVi,
  conditions: conditionsVi,
  faults: faultsVi,
  times: { running: 'khi chuyền chạy', stopped: 'khi chuyền dừng' },
  version: (version, steps) => `phiên bản ${version} · ${steps} bước`,
  edit: 'Sửa',
  title: 'Tên',
  language: 'Thêm ngôn ngữ',
  noLanguage: 'không thêm',
  text: 'Nội dung',
  group: 'Tiêu đề',
  caution: 'Lưu ý an toàn',
  kind: 'Trả lời bằng',
  time: 'Khi nào',
  condition: 'Điều kiện',
  mandatory: 'Bắt buộc',
  least: 'Ít nhất',
  most: 'Nhiều nhất',
  unit: 'Đơn vị',
  expects: 'Chữ mà lần quét phải cho',
  options: 'Các lựa chọn, cách nhau bằng dấu phẩy',
  right: 'Câu đúng, cách nhau bằng dấu phẩy',
  signature: (number) => `Chữ ký ${number}`,
  noSignature: 'không có',
  wants: 'Quét cái gì',
  wantNames: {
    stencil: 'một stencil',
    paste: 'một hũ kem hàn',
    program: 'một chương trình',
    feeder: 'một feeder của nhà máy này',
    slot: 'một slot của chuyền này',
    reel: 'một cuộn của nhà máy này',
    other: 'mã khác của nhà máy',
  },
  knows: 'Điều phải đúng',
  factNames: {
    moves: 'không còn lần chuyển feeder nào',
    slots: 'mọi slot có cuộn đã xác nhận',
    'first-panel': 'panel đầu đã kiểm và đúng',
  },
  up: 'Sớm hơn',
  down: 'Muộn hơn',
  remove: 'Xóa',
  add: 'Thêm bước',
  done: 'Xong',
  save: (version) => `Lưu thành phiên bản ${version}`,
  saved: (version) => `Đã lưu phiên bản ${version}. Checklist đang mở giữ nguyên.`,
  help: 'Một phiên bản không bao giờ đổi. Checklist đang mở và đã đóng giữ phiên bản lúc được mở.',
  newGroup: 'Thêm',
};
