import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';
import { leftToRight, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  title: (part) => sentence`قياس ${part}`,
  ask: 'قس قطعة واحدة من هذه البكرة قبل أن تغذي.',
  which: 'قد يعني الرمز عدة قيم. اختر الصحيحة.',
  wanted: (nominal, least, most, unit) =>
    sentence`المطلوب: ${leftToRight(`${nominal} ${unit}`)}، من ${least} إلى ${leftToRight(`${most} ${unit}`)}`,
  meter: (percent, digits, guard) =>
    sentence`الجهاز: ${leftToRight(`± ${percent} %`)} و${leftToRight(`± ${digits}`)} في آخر خانة. نطاق الحماية: ${leftToRight(`${guard} %`)} من ذلك.`,
  shows: (unit) => sentence`قراءة الجهاز بوحدة ${unit}`,
  help: 'اكتبها، أو دع الجهاز يكتبها.',
  wrong: 'أدخل رقمًا، مثل \u206610.02\u2069.',
  otherUnit: (unit) => sentence`يعرض الجهاز كمية أخرى. المطلوب رقم بوحدة ${unit}.`,
  check: 'فحص القيمة',
  cannot: 'اتركه دون قياس',
  rule: {
    title: 'قطع تُقاس قبل أن تغذي',
    help: 'سطر لكل فئة من القطع. تأتي القيمة من قائمة القطع أو من ملاحظة الإعداد. بلا سطر: بلا فحص.',
    begins: 'أرقام القطع تبدأ بـ (فارغ: كل ما له قيمة)',
    add: 'إضافة فئة قطع',
    percent: 'الجهاز: \u2066± %\u2069 من القراءة',
    digits: 'الجهاز: \u2066±\u2069 في آخر خانة',
    guard: 'نطاق الحماية، \u2066%\u2069 من ارتياب الجهاز',
    wrong: 'أدخل بيانات الجهاز أرقامًا، وكل فئة مرة واحدة.',
  },
};
