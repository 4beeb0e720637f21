import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  layouts: {
    us: 'الإنجليزية الأمريكية',
    uk: 'الإنجليزية البريطانية',
    german: 'الألمانية',
    'swiss-german': 'الألمانية السويسرية',
    french: 'الفرنسية',
    spanish: 'الإسبانية',
    italian: 'الإيطالية',
    swedish: 'السويدية',
  },
  title: 'امسح هذا الرمز بالماسح',
  help: 'من هذه الشاشة، أو من شاشة أخرى، أو من الورقة المطبوعة. ما دامت هذه الصفحة مفتوحة، لا يذهب المسح إلى مكان آخر.',
  codeLabel: 'رمز المعايرة',
  striped: 'ماسح لا يقرأ إلا الرموز الخطية',
  stripedLabel: 'رمز المعايرة الخطي',
  stripedHelp: 'أعرض من شاشة صغيرة: هناك اطبع الورقة. الرموز الخطية فيها فاصل واحد، لذلك يُختبر هو وحده.',
  stripedSheet: 'لماسح لا يقرأ إلا الرموز الخطية:',
  print: 'طباعة الورقة',
  waiting: 'في انتظار المسح…',
  right: 'هذا الماسح مضبوط جيدًا.',
  rightText: 'تصل الحروف والعلامات والفواصل كما طُبعت.',
  plainOnly: 'تُقرأ الرموز البسيطة؛ ولا تُقرأ ملصقات فيها فواصل.',
  plainOnlyText: 'تُرفض هذه الملصقات حتى يُضبط الماسح كما يلي.',
  wrong: 'لا يمكن الوثوق بهذا الماسح بعد.',
  wrongText: 'ما يُمسح به لا يصل كما طُبع.',
  findings: {
    'all-equal': 'وصل كل حرف كما طُبع.',
    'half-arrived': (found, wanted) =>
      sentence`وصل ${found} فقط من ${countedAfter.characters(wanted)}: انقطع المسح. اجعل التأخير بين الحروف صفرًا، أو قرّب الماسح من قاعدته.`,
    'layout-differs': (scanner, tablet) =>
      sentence`الماسح يكتب للوحة مفاتيح ${scanner}، والجهاز يتوقع ${tablet}. اضبط لوحة مفاتيح الماسح على ${tablet}، أو تخطيط الجهاز على ${scanner}.`,
    'characters-differ':
      'تصل الحروف متغيّرة، ولا يفسر ذلك أي تخطيط معروف هنا. اضبط لوحة مفاتيح الماسح على تخطيط الجهاز وامسح من جديد.',
    'case-inverted':
      'الأحرف الكبيرة والصغيرة تصل مقلوبة. أغلق Caps Lock، واضبط الماسح ليترك الحروف كما طُبعت.',
    'separators-lost': (names) =>
      sentence`الفواصل لا تصل (${names}). اضبط الماسح ليرسل رموز التحكم، بمفتاح Ctrl مع مفتاح أو Alt مع لوحة الأرقام.`,
    'separator-replaced': (name, by) =>
      sentence`الفاصل ${name} يصل «${by}». اضبط الماسح ليرسل رموز التحكم كما هي.`,
    'terminator-missing': 'لا Enter في النهاية، فنهاية المسح تخمين. اجعل لاحقة الماسح Enter.',
    'unknown-key': (key) => sentence`جاء المفتاح «${key}» وسط المسح. احذف هذه المفاتيح من ضبط الماسح.`,
    slow: (pace) => sentence`\u2066${pace} ms\u2069 بين حرفين بطيء. اجعل التأخير بين الحروف صفرًا.`,
    'symbology-id-sent': (id) => sentence`يرسل الماسح نوع الرمز في البداية (${id}). هذا مفهوم ويجوز بقاؤه.`,
  },
  wanted: 'مطبوع',
  found: 'وصل',
  arrived: 'ما وصل',
  none: 'لا شيء بعد. امسح أي شيء: يظهر هنا، ومعه رموز التحكم.',
  characters: (count) => counted.characters(count),
  pace: (ms) => sentence`\u2066${ms} ms\u2069 لكل حرف`,
  endedBy: { Enter: 'ثم Enter', Tab: 'ثم Tab', silence: 'بلا Enter' },
  reads: 'يُقرأ',
  readsNothing: 'لا ملصق معروف',
  settingsTitle: 'كيف يُضبط الماسح',
  settings: [
    'يعمل كلوحة مفاتيح (HID).',
    'بلد لوحة المفاتيح: كما في الجهاز.',
    'يرسل رموز التحكم، بمفتاح Ctrl مع مفتاح أو Alt مع لوحة الأرقام.',
    'اللاحقة: Enter. بلا بادئة.',
    'الحروف كما طُبعت: بلا تغيير بين كبيرة وصغيرة.',
    'بلا تأخير بين الحروف.',
  ],
  keep: 'حفظ سرعة هذا الماسح على هذا الجهاز',
  keptNow: 'حُفظت. يميّز هذا الجهاز المسح من الكتابة بهذه السرعة.',
  isKept: 'سرعة الماسح محفوظة على هذا الجهاز.',
  forget: 'استخدام السرعة المعتادة',
  sheetTitle: 'معايرة الماسح',
  sheetText: 'افتح «المصنع»، «الماسح» على الجهاز، ثم امسح هذا الرمز.',
  sheetHolds: 'يحتوي الرمز:',
  fields: {
    part: 'القطعة',
    supplierPart: 'قطعة المورّد',
    quantity: 'الكمية',
    lot: 'الدفعة',
    dateCode: 'رمز التاريخ',
    reel: 'البكرة',
  },
};
