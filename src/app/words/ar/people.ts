import type { words as english } from '../en/people.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'من يعمل؟',
  pinTitle: (name) => sentence`رمز PIN لـ ${name}`,
  pinHelp: 'من أربعة إلى ثمانية أرقام.',
  pinWrong: 'ليس هذا رمز PIN.',
  pinLeft: (left) => sentence`ليس هذا رمز PIN. باقٍ: ${counted.tries(left)}.`,
  pinLocked: (minutes) => sentence`محاولات كثيرة. مقفل مدة ${countedAfter.minutes(minutes)}.`,
  pinUnsafe: 'لا يُفحص PIN إلا على صفحة آمنة. افتح التطبيق بعنوانه الذي يبدأ بـ https.',
  notSeenHere: (name) => sentence`الخادم لا يجيب، ولم يتأكد هذا الجهاز من ${name} قط. حاول حيث يجيب الخادم.`,
  pinNotHere: (name) =>
    sentence`هذا الجهاز لا يعرف PIN لـ ${name} بعد. أدخله مرة حيث يجيب الخادم، أو على الجهاز الذي ضُبط عليه.`,
  seenTooLongAgo: (name) =>
    sentence`الخادم لا يجيب، وقد تأكد هذا الجهاز من ${name} قبل أكثر من ثلاثة أيام. حاول حيث يجيب الخادم.`,
  asking: 'يفحص…',
  enter: 'إدخال',
  erase: 'حذف',
  nobody: 'لا أشخاص على هذا الجهاز بعد. أضف مهندسًا أولًا؛ وهو يضيف الآخرين.',
  addFirst: 'إضافة أول مهندس',
  awayTitle: (name) => sentence`سُجّل خروج ${name}`,
  awayHelp: (name) => sentence`العمل المفتوح محفوظ. يسجّل ${name} الدخول للمتابعة. ويُغلق لأي شخص آخر.`,
  awayClose: 'إغلاق العمل المفتوح',
  badgeNeeded: (name) => sentence`لا PIN لـ ${name}: امسح الشارة.`,
  scanBadge: 'امسح الشارة',
  badgeHelp: 'بالماسح، أو اكتب ما طُبع تحت رمزها.',
  badgeUnknown: 'شارة غير معروفة. امسح غيرها.',
  noPin: (name) => sentence`لا PIN لـ ${name} بعد. يضبطه مهندس في «المصنع».`,
  clearTitle: 'يقرر مشرف',
  clearHelp: 'امسح شارة المشرف. ثم أدخل PIN والسبب.',
  clearReason: 'السبب',
  reasons: ['وافقت عليها الهندسة لهذه الدفعة', 'فُحصت وقيست يدويًا', 'الملصق تالف، والقطعة مؤكدة', 'عُدّت يدويًا'],
  otherReason: 'سبب آخر',
  accept: 'قبول البكرة',
  decline: 'رفض',
  cartKept: (f) =>
    sentence`على العربة ${f.cart} الآن ${f.carries} للموضع ${f.slot}. تبقى ${f.held} خارج العربة.`,
  cleared: (slot) => sentence`رُفع الحجز للموضع ${slot}.`,
  declined: 'رُفضت. تبقى البكرة خارج الخط.',
  needsRole: (role) => sentence`يلزم: ${role}`,
  quantityTitle: 'كم قطعة على البكرة؟',
  quantityHelp: 'كما طُبع أو عُدّ. يمكنك تصحيحه لاحقًا؛ يحفظ السجل كل تصحيح.',
  quantityWrong: 'أدخل عددًا صحيحًا أكبر من صفر.',
};
