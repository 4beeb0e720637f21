import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  word: 'تدريب',
  tells: 'لا شيء هنا يُحسب. الخط الحقيقي مستمر.',
  end: 'إنهاء التدريب',
  real: (slot, told) => sentence`على الخط الحقيقي: ${slot} ${told}`,
  title: 'تدرّب دون أن تمس الخط',
  about:
    'تحصل على نسخة من هذا الخط كما هو الآن. امسح وصِل وبدّل المنتج وأخطئ: لا شيء يصل إلى الخط الحقيقي ولا إلى سجله أو أعداده. تُحذف النسخة عند إنهاء التدريب، أو بعد اثنتي عشرة ساعة.',
  aboutNew:
    'لا خط في هذا المصنع بعد، لذلك تحصل على خط صغير متخيَّل. امسح وحمّل وصِل وأخطئ. يُحذف عند إنهاء التدريب، أو بعد اثنتي عشرة ساعة.',
  warns: 'تحذيرات الخط الحقيقي تظل ظاهرة.',
  start: 'بدء التدريب',
  taken: 'التدريب مفتوح في نافذة أخرى من هذا الجهاز. أنهه هناك أولًا.',
  notSaved: (name) => sentence`تدريب: لا يُحفظ أي ملف. على الخط الحقيقي كان سيصبح ${name}.`,
  labels: 'ملصقات للتدريب',
  labelsHelp: 'المس ملصقًا بدل المسح: الموضع، ومغذيه إن طُلب، وبكرته.',
  print: 'طباعة الملصقات',
  groups: { load: 'للتحميل', splice: 'للوصل بعد ذلك', wrong: 'تُرفض أو تُحجز', panels: 'اللوحات' },
  slot: (slot) => sentence`الموضع ${slot}`,
  wants: (part) => sentence`يطلب ${part}`,
  right: (slot) => sentence`البكرة الصحيحة للموضع ${slot}`,
  wrong: (slot, asked) => sentence`مكانها ${slot}؛ جرّبها على ${asked}`,
  foreign: (asked) => sentence`لا يطلبها أي موضع؛ جرّبها على ${asked}`,
  bare: (slot) => sentence`لا كمية على الملصق؛ للموضع ${slot}`,
  free: (slot) => sentence`مغذٍ متاح للموضع ${slot}`,
  panel: 'تعدّ لوحة واحدة',
  nothing: 'اختر إعدادًا أولًا. ثم تظهر ملصقاته هنا.',
  names: { line: 'خط التدريب', machine: 'الآلة الأولى', bank: 'أمامي', product: 'بطاقة التدريب' },
};
