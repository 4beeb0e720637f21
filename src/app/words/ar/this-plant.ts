import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  name: 'اسم المصنع',
  nameHelp: 'يظهر على أوراق التحميل والشارات والملفات المصدّرة.',
  zoneHelp: 'تبدأ بها الخطوط الجديدة.',
  nameMissing: 'أدخل اسم المصنع.',
  zoneUnknown: 'اختر منطقة زمنية من القائمة.',
  same: 'لم يتغير شيء.',
  save: 'حفظ الاسم',
  saved: (name) => sentence`حُفظ ${name}.`,
  fileTitle: 'ملف لمصنع ثانٍ',
  fileHelp:
    'فيه الخطوط والآلات والصفوف والقواعد وقواعد القطع وقوائم الفحص وقواعد الملصقات. وليس فيه أشخاص ولا بكرات ولا إعدادات ولا سجل.',
  noLine: 'لا يوجد خط بعد.',
  fileSave: 'حفظ الملف',
  fileSaved: (name) => sentence`حُفظ ${name}.`,
  beginTitle: 'البدء بملف مصنع آخر',
  beginHelp: 'حُفظ في المصنع الآخر، في هذه الصفحة أو بالأمر \u2066reelward plant\u2069.',
  notEmpty: 'في هذا المصنع خطوط. الملف لمصنع لا خطوط فيه فقط.',
  begun: 'الخطوط والقواعد هنا. تابع بالخطوة التالية.',
  choose: 'اختيار الملف',
  brings: 'فيه:',
  bringsOf: (name) => sentence`فيه من ${name}:`,
  counts: {
    lines: 'الخطوط',
    slots: 'المواضع',
    parts: 'قواعد القطع',
    checklists: 'قوائم الفحص',
    labelRules: 'قواعد الملصقات',
  },
  begin: 'استخدام هذا الملف',
  toSteps: 'الخطوات الأولى',
  faults: {
    'not-json': 'ليس هذا ملف مصنع. اختر الملف الذي حفظه المصنع الآخر.',
    'not-a-plant': 'هذا ملف من نوع آخر. اختر الملف الذي حفظه المصنع الآخر.',
    newer: 'كتبت هذا الملف نسخة أحدث. حدّث هذا الجهاز أولًا.',
    'no-lines': 'لا خط في هذا الملف. احفظه من جديد في المصنع الآخر.',
    kind: (at, what) => sentence`القيد ${at} (${what}) ليس مكانه هذا الملف. احفظه من جديد في المصنع الآخر.`,
    payload: (at, what) => sentence`القيد ${at} (${what}) تالف. احفظ الملف من جديد في المصنع الآخر.`,
  },
};
