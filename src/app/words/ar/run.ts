import type { words as english } from '../en/run.ts';
import { formatCount, type Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) => sentence`غير صحيح بعد: ${counted.slots(count)}. انظر «التحميل».`,
  startTitle: 'بدء تشغيل',
  panelSecondsHelp: 'يُستخدم حتى يُقاس إيقاع الخط نفسه.',
  panelPrefix: 'رموز اللوحات تبدأ بـ',
  panelPrefixHelp: 'اتركه فارغًا إن لم يكن للوحات رمز. عندها المس للعدّ.',
  wrongNumber: 'أدخل رقمًا أكبر من صفر.',
  startAnyway: 'البدء مع مواضع خالية',
  stopTitle: 'لماذا توقف الخط؟',
  endTitle: 'هل تنهي هذا التشغيل؟',
  endText: (done, wanted) =>
    sentence`عُدّت ${done} من ${countedAfter.panels(wanted)}. تبقى البكرات على مواضعها.`,
  plusManyTitle: 'كم لوحة أخرى؟',
  skippedTitle: 'أي بطاقات اللوحة التالية تُتخطى؟',
  skippedHelp: 'المس كل بطاقة معلّمة بأنها معيبة. يشملها العدّ التالي.',
  skippedUse: (count) => (count === 0 ? 'لا بطاقة متخطاة' : sentence`تخطي ${countedAfter.boards(count)}`),
  skippedManyTitle: (panels) =>
    panels === 1
      ? 'كم بطاقة تُخطّيت في هذه اللوحة؟'
      : sentence`كم بطاقة تُخطّيت في هذه اللوحات (${formatCount(panels)})؟`,
  skippedMost: (boards) => sentence`لا يوجد إلا ${counted.boards(boards)}. أدخل أقل.`,
  skippedNotKnown: 'غير معروف',
  scrapTitle: 'كم لوحة تُتلف؟',
  scrapHelp: 'تبقى معدودة: قطعها مستهلكة. ويصنع التشغيل بدلًا منها.',
  scrapMost: (panels) => sentence`اللوحات السليمة المعدودة فقط: ${panels}. أدخل أقل.`,
  setRightTitle: 'كم لوحة أُنجزت؟',
  setRightHelp: 'يصبح هذا عدد التشغيل. ومن يعدّ يتابع منه.',
  setRightWhy: 'لماذا يتغيّر العدد؟',
  setRightYes: (panels) => sentence`ضبط على ${panels}`,
  setRightMissing: 'أدخل عددًا آخر، والسبب.',
  stoodSince: 'متوقف منذ',
  stoodLast: (clock, span) => sentence`${clock}، آخر لوحة، قبل ${span}`,
  stoodNow: (clock) => sentence`الآن، ${clock}`,
};
