import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  about: 'من جهاز فارغ إلى أول بكرة صحيحة. توقف عند أي خطوة؛ وتابع هنا أو على جهاز آخر.',
  language: 'لغة هذا الجهاز',
  done: 'تم',
  steps: {
    engineer: {
      title: 'أول مهندس',
      text: 'اسم وشارة ورمز PIN. المهندس يضيف الآخرين.',
      act: 'إضافة المهندس',
    },
    line: {
      title: 'الخط',
      text: 'آلاته وصفوفه، والمواضع كما كُتبت على الآلات.',
      act: 'وصف الخط',
    },
    people: {
      title: 'الأشخاص والشارات',
      text: 'المشغّلون والمشرفون. يمكن طباعة الشارات هنا.',
      act: 'إضافة أشخاص',
    },
    product: {
      title: 'أول منتج',
      text: 'ورقة إعداد، أو ملف الوضع وقائمة المواد للبطاقة.',
      act: 'استيراد المنتج',
    },
    labels: {
      title: 'ملصقات المواضع',
      text: 'لكل موضع رمز يُمسح. ملصقات المغذيات والعربات تُطبع هناك أيضًا.',
      act: 'طباعة الملصقات',
    },
    scanner: {
      title: 'الماسح',
      text: 'اختبار واحد يبيّن هل يقرؤه هذا الجهاز صحيحًا.',
      act: 'اختبار الماسح',
    },
    practice: {
      title: 'تحميل أول، للتدريب',
      text: 'على نسخة من الخط. لا شيء يُحسب هناك.',
      act: 'بدء التدريب',
    },
    load: {
      title: 'أول بكرة',
      text: 'امسح الموضع والمغذي والبكرة. يقول الجهاز هل يناسب بعضها بعضًا.',
      act: 'تحميل الخط',
    },
  },
  badges: 'طباعة الشارات',
  more: 'فتح',
  openOf: (step) => sentence`فتح: ${step}`,
};
