import type { words as english } from '../en/walks.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'الجولات',
  walkSplices: (count) =>
    count === 1 ? counted.splices(count) : sentence`${counted.splices(count)}، جولة واحدة`,
  walkMore: (count) => sentence`لاحقًا: ${counted.walks(count)}`,
  crew: 'العاملون على هذا الخط',
  missTitle: 'غير ممكن في الوقت',
  miss: {
    windowTooShort: (moment) => sentence`الوصل قبل ${moment}: الوقت لا يكفي له`,
    closesTooSoon: (moment) => sentence`الوصل قبل ${moment}: لا أحد يصل في الوقت`,
    crowdedOut: (moment) => sentence`الوصل قبل ${moment}: الجميع مشغولون بوصلات أخرى`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      sentence`اقطع الشريط القديم مبكرًا عند ${moment}: يضيع نحو ${countedAfter.parts(parts)}`,
    secondPerson: (moment) => sentence`يذهب شخص ثانٍ قبل ${moment}`,
    secondSlot: (moment) => sentence`حمّل القطعة على موضع ثانٍ قبل ${moment}`,
  },
  orRemedy: (remedy) => sentence`أو: ${remedy}`,
  missMore: (count) => sentence`لاحقًا: ${count}`,
  noRemedy: 'سيتوقف الخط. جهّز البكرة التالية.',
};
