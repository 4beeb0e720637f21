import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  rule: 'صور الملصقات',
  ruleHelp: 'يحفظ صورة كل ملصق تقرأه الكاميرا عند التحميل أو الوصل.',
  keep: 'حفظ الصور',
  days: 'أيام الحفظ',
  megabytes: 'المساحة على كل جهاز، م.ب',
  fault: 'تحتاج الصور من 1 إلى 3650 يومًا ومن 1 إلى 10000 م.ب.',
  shown: 'صورة الملصق',
  notHere: 'الصورة ليست على هذا الجهاز. ابحث في الجهاز الذي قرأ الملصق.',
  none: 'لم يُعثر على صورة.',
  broken: 'هذه الصورة ليست التي حُفظت. أخبر مشرفًا.',
  failed: 'لم تُحفظ صورة الملصق. النتيجة سارية.',
  exported: 'حفظ صور الملصقات أيضًا',
  saved: (name) => sentence`حُفظ باسم ${name}.`,
};
