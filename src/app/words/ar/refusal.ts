import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';
import { counted } from './counted.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}، في السجل`,
  nothingLoaded: 'لا شيء محمّل.',
  closest: 'أقرب مطلوب',
  characters: (count) => `مختلف: ${counted.characters(count)}.`,
  belongsAt: 'مكان هذه البكرة',
  belongsNowhere: 'لا موضع هنا يطلبها.',
  lacksReel: 'لا بكرة هناك الآن.',
  hasReel: 'عليه بكرة الآن.',
  onLine: (slot, line) => `${slot} على ${line}`,
  rightReel: (slot) => `الموضع ${slot} يحتاج`,
  rightReelNone: 'لا بكرة منها في المخزن بحسب السجل.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} و${formatCount(more)} غيرها`),
  feederToFetch: 'المغذي المطلوب إحضاره',
  feederNone: 'لا مغذٍّ متاح بهذا المقاس في القائمة.',
  anotherFeeder: 'مسح مغذٍّ آخر',
  carryOn: (slot) => `خذها إلى ${slot}`,
  unload: (slot) => `إنزال ${slot}`,
  reachIn: 'أوقف الآلة قبل أن تُدخل يدك.',
  notNow: 'غير لازم بعد',
  cameBack: (clock) => `كان هذا المسح مفتوحًا عند ${clock}. تابعه، أو أفرغه.`,
  goOnWith: 'متابعة',
  leadWanted: 'يجب أن يقرر مشرف بشأن هذه البكرة.',
  runsHere: {
    title: 'هذه البكرة تعمل هنا أصلًا',
    text: (slot) => `هذا الملصق يطابق البكرة التي على ${slot}. هل هي بكرة ثانية بالملصق نفسه؟`,
    same: 'لا، هي تلك البكرة',
    second: 'نعم، بكرة ثانية',
  },
  cameBefore: {
    title: 'هل كانت هذه البكرة على الخط من قبل؟',
    text: (lot, left) =>
      `لا معرّف خاصًا على ملصقها. نزلت عن الخط بكرة مثلها${lot === null ? '' : ` من الدفعة ${lot}`} وبقي فيها ${left === null ? 'عدد غير معروف' : counted.parts(left)}.`,
    same: 'نعم، هي تلك البكرة',
    fresh: 'لا، بكرة جديدة',
  },
};
