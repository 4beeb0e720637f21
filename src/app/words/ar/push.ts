import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  title: 'رسائل والتطبيق مغلق',
  promise:
    'للمشرفين: تحذيرات بلا رد، وبكرات محظورة قيد الاستخدام، وخطوط متوقفة. قد تتأخر رسالة أو لا تصل: أبقِ جهازًا مفتوحًا.',
  way: 'تمر مشفّرة عبر خدمة صانع هذا المتصفح. يجب أن يصل إليها خادم المصنع.',
  noBrowser: 'هذا المتصفح لا يقبل رسائل.',
  noServer: 'لا خادم يجيب. انضم أولًا، أو حاول لاحقًا.',
  off: 'خادم المصنع غير مهيأ لهذا.',
  unreached: 'لا يصل خادم المصنع إلى الخدمة. لا رسائل هنا.',
  denied: 'المتصفح يمنع الرسائل. اسمح بها في إعداداته لهذه الصفحة.',
  turnOn: 'تشغيل الرسائل',
  turnOff: 'إيقاف الرسائل',
  isOn: 'تصل الرسائل إلى هنا.',
  isOff: 'الرسائل متوقفة هنا.',
  wrong: 'لم ينجح ذلك. حاول ثانية.',
  first: 'تصل الرسائل إلى هنا.',
  warning: (line, slot) => sentence`${line}: لا أحد يرد على التحذير عند ${slot}.`,
  blocked: (line, slot) => sentence`${line}: بكرة محظورة قيد الاستخدام على ${slot}.`,
  stood: (line) => sentence`${line} متوقف.`,
};
