import type { words as english } from '../en/warning.ts';
import { formatCount, type Sentences } from '../words.ts';
import { counted, leftToRight, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => sentence`تنفد خلال ${span}، نحو ${clock}. أحضر البكرة التالية.`,
  due: (span, clock) => sentence`يمكن وصلها الآن؛ تنفد خلال ${span}، نحو ${clock}.`,
  late: (_span, clock) => sentence`فاتت نافذة الوصل؛ ينتهي الشريط نحو ${clock}.`,
  over: (clock, span) => sentence`كان يجب أن تنفد عند ${clock}، قبل ${span}. اذهب وانظر.`,
  ifPace: 'لم تُعدّ لوحات: إن حافظ على إيقاعه.',
  ifStarts: 'إن بدأ من جديد الآن.',
  backup: (slot) => sentence`ثم يغذّي ${slot}، فلا يتوقف الخط بعد.`,
  short: {
    soon: (span) => sentence`خلال ${span}`,
    due: () => 'صِل الآن',
    late: () => 'فات وقت الوصل',
    over: () => 'يُفترض أنها فارغة',
    blocked: () => 'بكرة محظورة',
  },
  shortPace: 'لم تُعدّ لوحات',
  shortStarts: 'الخط متوقف',
  shortMore: (count) => leftToRight(`+${count}`),
  more: (count) => sentence`ينتظر أيضًا: ${count}.`,
  show: 'عرض',
  nobody: (line) => sentence`${line}: لم يستجب أحد`,
  unanswered: {
    due: (line, span) => sentence`على ${line} تحتاج إلى وصل. لم يستجب أحد منذ ${span}.`,
    late: (line, span) => sentence`على ${line} توشك أن تنفد. لم يستجب أحد منذ ${span}.`,
  },
  showLine: (line) => sentence`عرض ${line}`,
  noSound: 'لا صوت بعد: المس لسماع صوت الاختبار',
  acknowledge: 'سأذهب',
  blocked: (what, reason) => sentence`يغذّي قطعًا محظورة: ${what} (${reason}).`,
  blockedAct: 'أوقف الخط وارفع تلك البكرة.',
  blockedPanels: (since, sinceBlock) =>
    sentence`صُنع بها في هذا التشغيل: ${counted.panels(since)}، منها منذ الحظر ${formatCount(sinceBlock)}.`,
  blockedBefore: 'كانت هناك في تشغيل سابق أيضًا.',
  blockedNone: 'لا تشغيل مفتوح هناك.',
  blockedMore: (slots) => sentence`محظور أيضًا: ${slots}.`,
  blockedTrace: 'عرض اللوحات',
  blockedOff: 'رفعها',
  letRun: 'السماح باستمرارها',
  letRunTitle: (slot) => sentence`بكرة محظورة على ${slot}: هل تستمر؟`,
  letRunHelp: 'هذه البكرة فقط، وعلى هذا الموضع فقط. يبقى الحظر نفسه، واسمك وسببك في السجل.',
  letRunWhy: 'لماذا يجوز أن تستمر؟',
  letRunDone: (slot) => sentence`${slot}: سمح مشرف باستمرارها. يبقى الحظر نفسه.`,
  blockedTape: (reason) => sentence`محظور: ${reason}`,
};
