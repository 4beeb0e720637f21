import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

const saidAr: Said = {
  misfit: () => 'الإعداد لا يناسب هذا الخط',
  move: (count) => sentence`نقلات مغذيات باقية: ${count}`,
  'slot-empty': (count) => sentence`بلا بكرته: ${counted.slots(count)}`,
  'slot-other': (count) => sentence`عليه قطعة أخرى: ${counted.slots(count)}`,
  'slot-held': (count) => sentence`تنتظر مشرفًا: ${counted.reels(count)}`,
  'measured-wrong': (count) => sentence`قياسه خاطئ: ${counted.kinds(count)}`,
  'looked-wrong': (count) => sentence`يبدو خاطئًا: ${counted.kinds(count)}`,
  'cannot-tell': (count) => sentence`قريب من الحد أكثر مما يميّزه جهاز القياس: ${counted.kinds(count)}`,
  unchecked: (count) => sentence`لم يُفحص بعد: ${counted.kinds(count)}`,
  step: (count) => sentence`في قائمة التحقق: ${counted.steps(count)}`,
  'no-checklist': () => 'لم تُفتح قائمة التحقق',
};

export const words: Sentences<typeof english> = {
  said: saidAr,
  on: (part, slot) => sentence`${part} على ${slot}`,
  reelOn: (reel, slot) => sentence`البكرة ${reel} على ${slot}`,
  reel: (reel) => sentence`البكرة ${reel}`,
  more: (count) => sentence`و${count} غيرها`,
  isWrong: 'خاطئ',
  isOpen: 'ما زال مفتوحًا',
  nothing: 'لا شيء مفتوح.',
};
