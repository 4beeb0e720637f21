import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'البحث بالكاميرا',
  sweep: 'الجولة بالكاميرا',
  title: 'البحث عن البكرات',
  help: 'حرّك الجهاز ببطء على طول الملصقات.',
  sweepHelp: 'أبقِ ملصق الموضع وملصق بكرته في الصورة.',
  on: (slot) => `على ${slot}`,
  to: (slots) => `إلى ${slots}`,
  told: (wanted, barred, read) => `مطلوب: ${wanted} · لا تستخدم: ${barred} · قُرئ: ${read}`,
  swept: (seen, all) => `شوهد ${seen} من ${all} موضعًا`,
  other: 'غير مطلوبة الآن',
  unknown: 'غير معروف',
  reading: 'جارٍ القراءة…',
  none: 'لم يُقرأ شيء بعد.',
  missing: 'لم تُرَ بعد',
  several: (slot) => `${slot}: أكثر من بكرة قريبة منه. اقترب، أو امسح الموضع والبكرة.`,
  otherReel: (slot, reel) => `${slot}: في السجل بكرة أخرى هناك، وليس ${reel}.`,
  check: 'تحقّق من هذا الموضع',
  times: (count) => `${count} × في الصورة`,
  kept: (count) => `البكرات التي شوهدت: ${count}. هي في السجل.`,
  notKept: 'ما شوهد ليس في السجل. سجّل الدخول أولاً.',
  barred: 'لا تستخدم',
};
