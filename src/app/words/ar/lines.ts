import type { words as english } from '../en/lines.ts';
import { plural, type Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  add: 'إضافة خط',
  edit: 'تغيير',
  editOf: (name) => sentence`تغيير ${name}`,
  machines: (count) => counted.machines(count),
  slots: (count) => counted.slots(count),
  fromSheets: 'بعض المواضع معروف من أوراق الإعداد فقط. افتح الخط لتسميتها كما كُتبت.',
  newTitle: 'خط جديد',
  // A name to be saved: it holds no marks of direction.
  newName: (number) => `الخط ${number}`,
  name: 'الاسم',
  zone: 'المنطقة الزمنية',
  zoneHelp: 'حيث يقع الخط، مثلًا \u2066Africa/Cairo\u2069.',
  help: 'لكل صف، أدخل أول موضع وآخر موضع كما كُتبا على الآلة.',
  bankOf: (number) => sentence`الصف ${number}`,
  removeOf: (number) => sentence`حذف الصف ${number}`,
  first: 'أول موضع',
  last: 'آخر موضع',
  addAcross: (slot) => sentence`إضافة الجانب الآخر: ${slot}`,
  addMachine: (slot) => sentence`إضافة الآلة التالية: ${slot}`,
  addBank: 'إضافة صف',
  holdsTrays: 'صوانٍ دون مغذيات',
  trays: 'صوانٍ',
  lanes: {
    title: 'المسارات',
    help: 'قد يحمل الناقل منتجين معًا. لكل مسار تشغيله، وكلها تأخذ من المواضع نفسها.',
    add: 'إضافة مسار',
    name: (number) => sentence`اسم المسار ${number}`,
    // A name to be saved: it holds no marks of direction.
    called: (line, number) => sentence`${line}، المسار ${number}`,
    removeOf: (number) => sentence`حذف المسار ${number}`,
    held: {
      runs: (lane) => sentence`${lane} يعمل الآن. أنهِ تشغيله أولاً.`,
      reels: (slots) => sentence`أخرج أولاً ما يحتاجه هذا المسار وحده: ${slots}.`,
      open: 'لهذا المسار أمر مفتوح: بكرة محجوزة، تسليم، تبديل، قائمة تحقق، فحص الخط، معجون، محطة عدّ، مغذٍ جاهز أو عربة. أنهِ ذلك أولًا.',
    },
  },
  picture: 'كيف يبدو الخط',
  save: 'حفظ الخط',
  saved: (name) => sentence`حُفظ ${name}.`,
  faults: {
    'no-number': 'يجب أن ينتهي كلاهما برقم: \u2066M1-F-001\u2069 و\u2066M1-F-025\u2069.',
    differs: 'لا يختلف إلا الرقم في النهاية.',
    'not-from-one': 'يجب أن يكون رقم أول موضع 1.',
    backwards: 'الرقم الأخير أصغر من الأول.',
    'too-many': 'في الصف 500 موضع على الأكثر.',
    twice: 'هذا الصف موجود من قبل.',
  },
  obstacles: {
    ranges: (count) =>
      plural(count, 'أصلح الصف المعلّم أعلاه.', sentence`أصلح الصفوف المعلّمة أعلاه (${count}).`),
    'name-missing': 'أدخل اسمًا.',
    'lanes-alike': 'أعط كل مسار اسمًا خاصًا به.',
    'zone-unknown': 'اختر منطقة زمنية من القائمة.',
    'no-banks': 'أدخل مواضع صف واحد أولًا.',
    lost: (slots, count) =>
      plural(
        count,
        sentence`الموضع ${slots} مستخدم. أبقِه.`,
        sentence`ستزول مواضع مستخدمة (${count}): ${slots}. أبقِها.`,
      ),
  },
};
