import type { words as english } from '../en/shell.ts';
import type { Sentences } from '../words.ts';
import { countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'الخط',
    load: 'التحميل',
    change: 'التبديل',
    stock: 'البكرات',
    log: 'السجل',
    plant: 'المصنع',
    search: 'البحث',
    lines: 'كل الخطوط',
    wall: 'شاشة الحائط',
  },
  noLine: 'لا يوجد خط بعد',
  nowOn: (line) => sentence`الآن على ${line}`,
  noSetup: 'لم يُختر إعداد',
  side: { top: 'الوجه العلوي', bottom: 'الوجه السفلي' },
  revision: (revision) => sentence`مراجعة ${revision}`,
  run: (done, wanted) => sentence`${done} من ${countedAfter.panels(wanted)}`,
  signIn: 'تسجيل الدخول',
  signInFirst: 'امسح شارتك أولًا',
  needsRole: (role) => sentence`يلزم: ${role}`,
  signInHelp: 'امسح شارتك، أو اختر اسمك.',
  signedInAs: (name) => sentence`سجّل الدخول: ${name}`,
  signOut: 'تسجيل الخروج',
  roles: { operator: 'مشغّل', lead: 'مشرف الوردية', engineer: 'مهندس' },
  offlineReady: 'جاهز للعمل دون اتصال',
  gettingReady: 'يستعد للعمل دون اتصال…',
  toSend: (count) => sentence`للإرسال: ${count}`,
  skipToDock: 'الانتقال إلى الكتابة والكاميرا',
  done: 'تم',
  cancel: 'إلغاء',
  detailsOf: (what) => sentence`المزيد: ${what}`,
  lessOf: (what) => sentence`أقل: ${what}`,
  close: 'إغلاق',
  newVersion: 'إصدار جديد جاهز.',
  update: 'التحديث الآن',
  updateLater: 'ينتظر حتى لا تبقى مهمة مفتوحة.',
  languageLater: 'هذه اللغة ليست على هذا الجهاز بعد. صِله بالشبكة، ثم اختر من جديد.',
  leftAlone: (name, minutes) =>
    sentence`سُجّل خروج ${name}: لم يُلمس الجهاز منذ ${countedAfter.minutes(minutes)}. العمل المفتوح محفوظ.`,
  shiftOver: (name) => sentence`سُجّل خروج ${name}: مرّت وردية. العمل المفتوح محفوظ.`,
  notInPractice: 'غير متاح في التدريب',
  fault: {
    'disk-full': {
      title: 'هذا الجهاز ممتلئ',
      text: 'لا يمكن كتابة شيء أو التحقق منه هنا بعد الآن. كل ما قُبل في أمان. اعمل على جهاز آخر. أفرغ مساحة على هذا الجهاز، ثم حاول من جديد.',
    },
    'closed-by-newer': {
      title: 'إصدار أحدث مفتوح في نافذة أخرى',
      text: 'هذه النافذة إصدار أقدم وقد توقفت. كل ما قُبل في أمان. أعد التحميل للمتابعة.',
    },
    lost: {
      title: 'لا يمكن فتح السجل على هذا الجهاز',
      text: 'اعمل على جهاز آخر واتصل بمن يعتني بالأجهزة. لا تمسح بيانات المتصفح: قد تكون فيها قيود لم تُرسل بعد.',
    },
    unknown: {
      title: 'تعذّرت كتابة السجل',
      text: 'ما ظهر أنه تم في أمان. آخر إجراء لم يُكتب. أعد تحميل الصفحة وراجع السجل قبل المتابعة.',
    },
  },
  reload: 'إعادة تحميل الصفحة',
  tryAgain: 'المحاولة من جديد',
  muted: 'الصوت مغلق حتى تلمس الشاشة',
  storageLow: (megabytes) => sentence`لم يبق للسجل على هذا الجهاز إلا \u2066${megabytes} MB\u2069.`,
};
