import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'Từ tablet trống đến cuộn đúng đầu tiên. Dừng ở bước nào cũng được; làm tiếp ở đây hoặc ở tablet khác.',
  language: 'Ngôn ngữ của tablet này',
  done: 'xong',
  steps: {
    plant: {
      title: 'Nhà máy',
      text: 'Tên và múi giờ. Bản in và bản xuất mang tên này.',
      act: 'Đặt tên nhà máy',
    },
    engineer: {
      title: 'Kỹ sư đầu tiên',
      text: 'Tên, thẻ và PIN. Kỹ sư thêm mọi người khác.',
      act: 'Thêm kỹ sư',
    },
    line: {
      title: 'Chuyền',
      text: 'Các máy và dãy của chuyền, slot ghi đúng như trên máy.',
      act: 'Mô tả chuyền',
    },
    people: {
      title: 'Nhân sự và thẻ',
      text: 'Vận hành viên và trưởng ca. Thẻ in được ở đây.',
      act: 'Thêm người',
    },
    product: {
      title: 'Sản phẩm đầu tiên',
      text: 'Bảng setup, hoặc tệp tọa độ và BOM của bo.',
      act: 'Nhập sản phẩm',
    },
    labels: {
      title: 'Nhãn slot',
      text: 'Mỗi slot có một mã để quét. Nhãn feeder và xe cũng in ở đó.',
      act: 'In nhãn',
    },
    scanner: {
      title: 'Máy quét',
      text: 'Một lần thử cho biết tablet này đọc máy quét có đúng không.',
      act: 'Thử máy quét',
    },
    label: {
      title: 'Một nhãn đã in',
      text: 'Quét nhãn một slot: phải đọc ra đúng slot đó.',
      act: 'Thử nhãn',
    },
    practice: {
      title: 'Lần lắp đầu, để tập',
      text: 'Trên bản sao của chuyền. Ở đó không tính gì.',
      act: 'Bắt đầu tập',
    },
    load: {
      title: 'Cuộn đầu tiên',
      text: 'Quét slot, feeder và cuộn. Tablet cho biết chúng có khớp nhau không.',
      act: 'Lắp liệu cho chuyền',
    },
  },
  fromFile: 'Bắt đầu từ tệp của nhà máy khác',
  badges: 'In thẻ',
  more: 'Mở',
  openOf: (step) => `Mở: ${step}`,
};
