import type { words as english } from '../en/warning.ts';
import { formatCount, type Sentences } from '../words.ts';
import { counted, leftToRight } from './counted.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `تنفد خلال ${span}، نحو ${clock}. أحضر البكرة التالية.`,
  due: (span, clock) => `يمكن وصلها الآن؛ تنفد خلال ${span}، نحو ${clock}.`,
  late: (_span, clock) => `فاتت نافذة الوصل؛ ينتهي الشريط نحو ${clock}.`,
  over: (clock, span) => `كان يجب أن تنفد عند ${clock}، قبل ${span}. اذهب وانظر.`,
  ifPace: 'لم تُعدّ لوحات: إن حافظ على إيقاعه.',
  ifStarts: 'إن بدأ من جديد الآن.',
  backup: (slot) => `ثم يغذّي ${slot}، فلا يتوقف الخط بعد.`,
  short: {
    soon: (span) => `خلال ${span}`,
    due: () => 'صِل الآن',
    late: () => 'فات وقت الوصل',
    over: () => 'يُفترض أنها فارغة',
    blocked: () => 'بكرة محظورة',
  },
  shortPace: 'لم تُعدّ لوحات',
  shortStarts: 'الخط متوقف',
  shortMore: (count) => leftToRight(`+${count}`),
  more: (count) => `ينتظر أيضًا: ${count}.`,
  show: 'عرض',
  acknowledge: 'سأذهب',
  blocked: (what, reason) => `يغذّي قطعًا محظورة: ${what}\u200f (${reason}).`,
  blockedAct: 'أوقف الخط وارفع تلك البكرة.',
  blockedPanels: (since, sinceBlock) =>
    `صُنع بها في هذا التشغيل: ${counted.panels(since)}، منها منذ الحظر ${formatCount(sinceBlock)}.`,
  blockedBefore: 'كانت هناك في تشغيل سابق أيضًا.',
  blockedNone: 'لا تشغيل مفتوح هناك.',
  blockedMore: (slots) => `محظور أيضًا: ${slots}.`,
  blockedTrace: 'عرض اللوحات',
  blockedOff: 'رفعها',
  letRun: 'السماح باستمرارها',
  letRunTitle: (slot) => `بكرة محظورة على ${slot}: هل تستمر؟`,
  letRunHelp: 'هذه البكرة فقط، وعلى هذا الموضع فقط. يبقى الحظر نفسه، واسمك وسببك في السجل.',
  letRunWhy: 'لماذا يجوز أن تستمر؟',
  letRunDone: (slot) => `${slot}: سمح مشرف باستمرارها. يبقى الحظر نفسه.`,
  blockedTape: (reason) => `محظور: ${reason}`,
};
