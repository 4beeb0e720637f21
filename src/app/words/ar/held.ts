import type { words as english } from '../en/held.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'بكرة خاطئة اكتُشفت متأخرًا',
    cleared: 'رُفع الحجز خطأً',
    blocked: 'مادة محظورة',
    'floor-life': 'انتهت مهلة التعرض',
  },
  hold: 'حجز هذه اللوحات',
  holdTitle: (panels) => sentence`هل تحجز ${countedAfter.panels(panels)}؟`,
  holdHelp: 'تُحجز كل اللوحات التي قد تحملها، وما زال منها في الخط أيضًا. تبقى محجوزة حتى يوقّع عليها مشرف.',
  goesOn: 'ما زالت على موضع. ارفعها أولًا، وإلا فلن تُحجز اللوحات التالية.',
  cause: 'لماذا تُحجز؟',
  lifeHelp: 'تُحجز كل اللوحات منذ لحظة انتهاء مهلة التعرض.',
  noLifeOver: 'بحسب السجل لم تُصنع لوحة بعد انتهاء مهلة التعرض.',
  reason: 'ماذا وُجد؟',
  codes: (codes) => sentence`رموز اللوحات المعروفة: ${codes}.`,
  sure: (panels) =>
    panels === 0 ? 'لا لوحة تحملها يقينًا.' : sentence`تحملها يقينًا: ${counted.panels(panels)}.`,
  done: (panels) => sentence`محجوز: ${counted.panels(panels)}.`,
  none: 'لا لوحات محجوزة.',
  span: (first, last) => sentence`اللوحات من ${first} إلى ${last}`,
  still: (held, all) => sentence`لم يُوقّع بعد: ${held} من ${all}`,
  noCodes: 'لا رموز للوحات. ابحث عن هذه اللوحات بأرقامها.',
  signed: (who, when) => sentence`وقّع ${who}، ${when}`,
  sign: 'توقيع',
  signAll: 'توقيع الكل',
  signTitle: 'ماذا فُعل بهذه اللوحات؟',
  signHelp: 'اختر لوحات بعينها، أو وقّع عليها كلها.',
  signWhy: 'ماذا فُعل؟ مثلًا أُصلحت، أُتلفت، وُجدت سليمة.',
  signDone: 'وُقّع.',
  save: 'حفظ الرموز بصيغة CSV',
  which: 'أي لوحات؟',
};
