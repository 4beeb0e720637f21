import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  title: 'تدريب موجّه',
  about: 'خطوة واحدة كل مرة. غادر متى لزم: يُستأنف من الخطوة نفسها.',
  guides: {
    operator: 'ثلاث بكرات إحداها خاطئة. وصلة. تحذير.',
    lead: 'بكرة محجوزة للبتّ فيها. تصدير.',
    engineer: 'إعداد للاستيراد.',
  },
  start: 'بدء الدليل',
  goOn: (at, of) => sentence`المتابعة من الخطوة ${at} من ${of}`,
  again: 'البدء من الخطوة 1',
  step: (at, of) => sentence`الخطوة ${at} من ${of}`,
  leave: 'مغادرة الدليل',
  go: 'عرض المكان',
  skip: 'تخطي هذه الخطوة',
  still: 'كان ذلك شيئًا آخر. الخطوة ما زالت مفتوحة.',
  over: 'تمت كل الخطوات. تابع كما تشاء أو أنهِ التدريب.',
  noLead: 'لا مشرف في هذا المصنع بعد. أضف واحدًا أولًا.',
  example: 'استخدام ورقة المثال',
  steps: {
    first: {
      ask: 'المس ملصق موضع ثم بكرته الصحيحة.',
      seen: (slot) => sentence`${slot}: مقبولة.`,
    },
    wrong: {
      ask: (group) => sentence`المس ملصق موضع ثم بكرة خاطئة. انظر «${group}».`,
      seen: (slot) => sentence`${slot}: مرفوضة. لا يجوز تركيب هذه البكرة.`,
    },
    second: {
      ask: 'المس موضعًا آخر ثم بكرته الصحيحة.',
      seen: (slot) => sentence`${slot}: مقبولة.`,
    },
    splice: {
      ask: (group) => sentence`الوصل: تحت «${group}» المس موضعًا ثم بكرته.`,
      seen: (slot) => sentence`${slot}: تم الوصل.`,
    },
    run: {
      ask: 'ابدأ التشغيل على الخط.',
      seen: 'بدأ التشغيل.',
    },
    warning: {
      ask: 'عدّ اللوحات على الخط حتى يحذّر موضع.',
      seen: (slot) => sentence`${slot}: تحذير.`,
    },
    answer: {
      ask: (act) => sentence`المس «${act}» بجانب التحذير، أو صِل ذلك الموضع.`,
      seen: 'للتحذير ردّ الآن.',
    },
    hold: {
      ask: 'المس ملصق موضع ثم البكرة التي بلا كمية.',
      seen: (slot) => sentence`${slot}: محجوزة. يقرر مشرف.`,
    },
    clear: {
      ask: 'قرّر بصفتك مشرفًا: الشارة وPIN والسبب.',
      seen: 'تم القرار، واسمك في السجل.',
    },
    export: {
      ask: (act) => sentence`في السجل المس «${act}» ثم CSV. لا يُحفظ ملف في التدريب.`,
      seen: 'طُلب التصدير. لم يُحفظ أي ملف.',
    },
    open: {
      ask: (page) => sentence`افتح «${page}».`,
      seen: (page) => sentence`«${page}» مفتوحة.`,
    },
    take: {
      ask: (example, act) => sentence`المس «${example}». انظر ما يتغير ثم المس «${act}».`,
      seen: (product) => sentence`${product}: تم الاستيراد.`,
    },
    look: {
      ask: (page) => sentence`ابحث عنه تحت «${page}».`,
      seen: 'إنه في القائمة.',
    },
  },
};
