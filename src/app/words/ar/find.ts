import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  open: 'البحث بالكاميرا',
  sweep: 'فحص الخط بالكاميرا',
  title: 'البحث عن البكرات',
  help: 'حرّك الجهاز ببطء على طول الملصقات.',
  sweepHelp: 'أبقِ ملصق الموضع وملصق بكرته في الصورة.',
  on: (slot) => sentence`على ${slot}`,
  to: (slots) => sentence`إلى ${slots}`,
  told: (wanted, barred, read) => sentence`مطلوب: ${wanted} · لا تستخدم: ${barred} · قُرئ: ${read}`,
  swept: (seen, all) => sentence`شوهد: ${seen} من ${all}`,
  other: 'غير مطلوبة الآن',
  unknown: 'غير معروف',
  reading: 'جارٍ القراءة…',
  none: 'لم يُقرأ شيء بعد.',
  missing: 'لم تُرَ بعد',
  several: (slot) => sentence`${slot}: أكثر من بكرة قريبة منه. اقترب، أو امسح الموضع والبكرة.`,
  unsure: (slot) => sentence`${slot}: الملصق لا يبيّن أي بكرة هي.`,
  check: 'تحقّق من هذا الموضع',
  times: (count) => sentence`${count} × في الصورة`,
  kept: (count) => sentence`البكرات التي شوهدت: ${count}. هي في السجل.`,
  notKept: 'ما شوهد ليس في السجل. سجّل الدخول أولًا.',
  barred: 'لا تستخدم',
};
