import type { words as english } from '../en/passkeys.ts';
import type { Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  open: (count) => counted.passkeys(count),
  openOf: (shown, name) => sentence`${name}: ${shown}`,
  title: (name) => sentence`مفاتيح مرور ${name}`,
  help: 'مفتاح المرور يثبت من قرر: قفل هذا الجهاز نفسه، أو مفتاح يُقرّب منه. بدونه يقرر PIN.',
  none: 'لا مفتاح مرور بعد.',
  where: {
    unsafe: 'تحتاج مفاتيح المرور صفحة آمنة. افتح التطبيق بعنوانه الذي يبدأ بـ https. هنا يقرر PIN.',
    'by-number': 'تحتاج مفاتيح المرور عنوان التطبيق بالاسم لا بالأرقام. هنا يقرر PIN.',
    none: 'لا مفاتيح مرور في هذا المتصفح. هنا يقرر PIN.',
  },
  who: (name) => sentence`هذا لـ ${name} أو لمهندس فقط. امسح الشارة، ثم أدخل PIN.`,
  notThem: (name) => sentence`لـ ${name} أو لمهندس فقط.`,
  add: 'إضافة مفتاح مرور',
  name: 'ما اسمه؟',
  nameHelp: 'مثل «المفتاح الأزرق» أو «جهاز مقدمة الخط».',
  nameMissing: 'أدخل اسمًا.',
  make: 'إنشاؤه الآن',
  made: (name) => sentence`أُضيف مفتاح المرور «${name}».`,
  notMade: 'لم يُنشأ مفتاح مرور. قرّب المفتاح من الجهاز أو افتح قفله، وحاول من جديد.',
  remove: 'حذف',
  removeOf: (name) => sentence`حذف مفتاح المرور ${name}`,
  removed: (name) => sentence`حُذف مفتاح المرور «${name}».`,
  addedBy: (name, host) => sentence`أضافه ${name}، للصفحة على ${host}`,
  fell: 'نقص عدّاده: ربما نُسخ. احذفه وأنشئ غيره.',
  unproven: 'لا شيء يثبت من أضافه. لا يثبت شيئًا حتى يؤكد مشرف ذلك في «السجل».',
  signed: 'وُقّع',
  byPasskey: (name) => sentence`مثبت بمفتاح مرور ${name}`,
  pinOnly: 'PIN فقط، كما يقول الجهاز',
  refused: 'لا يثبته مفتاح المرور: وقّع شيئًا آخر، أو ليس لهذا الشخص.',
  checking: 'يفحص…',
};
