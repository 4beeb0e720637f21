import type { words as english } from '../en/first-panel.ts';
import type { Sentences } from '../words.ts';
import { leftToRight, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  intro: 'قِس القطع الحرجة. انظر إلى كل قطعة يمكن أن توضع مقلوبة.',
  none: 'هذا الإعداد لا يذكر قطعًا حرجة أو قيمًا أو قطبية.',
  other: 'قياس قطعة أخرى',
  critical: 'القطع والقيم الحرجة',
  orientation: 'الاتجاه',
  left: (open) => sentence`ما زال مفتوحًا: ${open}`,
  all: 'كله صحيح',
  states: { open: 'للتنفيذ', accepted: 'صحيح', held: 'غير واضح', refused: 'خاطئ' },
  marks: { critical: 'حرج', perPanel: (count) => sentence`${count} لكل لوحة` },
  measure: 'قياس',
  again: 'قياس من جديد',
  right: 'صحيح',
  wrong: 'خاطئ',
  takeBack: 'النظر من جديد',
  title: (part) => sentence`قياس ${part}`,
  wanted: 'كم يجب أن تكون القيمة؟',
  code: 'القيمة أو رمزها',
  codeHelp:
    'مثلًا \u20664k7\u2069 أو \u2066104K\u2069 أو \u206610 kΩ\u2069 (IEC 60062). ثم اختر القراءة الصحيحة.',
  nominal: 'القيمة الاسمية',
  unit: 'الوحدة',
  tolerance: 'السماحية ± %',
  reading: (unit) => sentence`قراءة الجهاز بوحدة ${unit}`,
  meter: 'دقة جهاز القياس',
  percent: '\u2066± %\u2069 من القراءة',
  fixed: (unit) => sentence`± ثابت، بوحدة ${unit}`,
  meterHelp: 'انظر نشرة جهاز القياس. يتذكرها هذا الجهاز اللوحي.',
  limits: (least, most, unit) => sentence`المطلوب: من ${least} إلى ${leftToRight(`${most} ${unit}`)}`,
  result: (value, uncertainty, unit) => sentence`المقيس: ${leftToRight(`${value} ± ${uncertainty} ${unit}`)}`,
  why: {
    accepted: 'داخل الحدود، حتى مع خطأ جهاز القياس.',
    held: 'قريب من الحد أكثر مما يميّزه هذا الجهاز. استخدم جهازًا أدق، أو دع الجودة تقرر.',
    refused: 'خارج الحدود، حتى مع خطأ جهاز القياس. احجز اللوحة؛ وافحص البكرة والموضع.',
  },
  numbers: 'أدخل أرقامًا للقيمة والسماحية والقراءة.',
  keep: 'حفظ القياس',
  caution: 'اللوحة خارج الخط وبلا تغذية، والمكثفات مفرّغة. القطع المجاورة تغيّر ما يعرضه الجهاز داخل الدارة.',
  known: 'كما قيس من قبل',
};
