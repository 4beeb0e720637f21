import type { words as english } from '../en/times.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  loading: 'يُقرأ السجل…',
  running: 'الخط يعمل. يُحسب الوقت من آخر لوحة سليمة.',
  stopped: 'الخط متوقف. يُحسب التوقف بعد تأكيد آخر لوحة سليمة.',
  madeReady: (span) => sentence`${span} تجهيز قبل ذلك`,
  standing: 'توقف الخط',
  external: 'جُهّز والخط يعمل',
  paused: (span) => sentence`لا تُحسب ${span} من الاستراحات والتوقفات المخططة.`,
  before: 'مقارنة بتبديلات سابقة من النوع نفسه',
  noneBefore: 'لا تبديل سابق بين هذين المنتجين في السجل.',
  thisOne: 'هذا التبديل',
  people: 'بحسب الشخص',
  nobody: 'لم يسجّل أحد الدخول',
  marks: (count) => counted.actions(count),
  steps: 'أطول الإجراءات',
  kinds: {
    step: 'قائمة التحقق',
    skip: 'تُخطّي',
    load: 'رُكّب',
    unload: 'أُخرج',
    measure: 'قيس',
    look: 'نُظر فيه',
  },
  none: 'لم يُعلَّم أو يُمسح شيء في هذا التبديل بعد.',
  where: 'أين ذهبت الدقائق',
  axis: 'min',
  legend: { act: 'إجراء', outside: 'كان يمكن قبل ذلك', stop: 'استراحة أو توقف مخطط' },
  median: (count, span) =>
    count === 1
      ? sentence`استغرق التبديل السابق ${span}.`
      : sentence`وسيط التبديلات السابقة (${count}) هو ${span}.`,
  longer: (span) => sentence`هذا التوقف أطول بـ ${span}.`,
  shorter: (span) => sentence`هذا التوقف أقصر بـ ${span}.`,
  asMedian: 'هذا التوقف بالطول نفسه تقريبًا.',
  medianMark: (span) => sentence`وسيط التبديلات السابقة، ${span}`,
  saved: (steps, span) =>
    sentence`كان يمكن تنفيذ ${countedAfter.steps(steps)} قبل آخر لوحة. كان التوقف يقصر حتى ${span}.`,
  outside: 'يمكن تنفيذه والخط يعمل',
  late: 'مقصود والخط يعمل، ونُفّذ أثناء التوقف',
  candidate: 'دون إدخال اليد: قرّر إن كان يمكن تنفيذه قبل ذلك',
  noneOutside: 'كل ما نُفّذ أثناء التوقف يحتاج توقف الخط.',
  how: 'كل وقت يُحسب من الإجراء السابق للشخص نفسه.',
};
