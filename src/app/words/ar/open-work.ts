import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';
import { counted } from './counted.ts';

const saidAr: Said = {
  misfit: () => 'الإعداد لا يناسب هذا الخط',
  move: (count) => `نقلات مغذيات باقية: ${count}`,
  'slot-empty': (count) => `بلا بكرته: ${counted.slots(count)}`,
  'slot-other': (count) => `عليه قطعة أخرى: ${counted.slots(count)}`,
  'slot-held': (count) => `تنتظر مشرفًا: ${counted.reels(count)}`,
  'measured-wrong': (count) => `قياسه خاطئ: ${counted.kinds(count)}`,
  'looked-wrong': (count) => `يبدو خاطئًا: ${counted.kinds(count)}`,
  'cannot-tell': (count) => `قريب من الحد أكثر مما يميّزه جهاز القياس: ${counted.kinds(count)}`,
  unchecked: (count) => `لم يُفحص بعد: ${counted.kinds(count)}`,
  step: (count) => `في قائمة التحقق: ${counted.steps(count)}`,
  'no-checklist': () => 'لم تُفتح قائمة التحقق',
};

export const words: Sentences<typeof english> = {
  said: saidAr,
  on: (part, slot) => `${part} على ${slot}`,
  reelOn: (reel, slot) => `البكرة ${reel} على ${slot}`,
  reel: (reel) => `البكرة ${reel}`,
  more: (count) => `و${count} غيرها`,
  isWrong: 'خاطئ',
  isOpen: 'ما زال مفتوحًا',
  nothing: 'لا شيء مفتوح.',
};
