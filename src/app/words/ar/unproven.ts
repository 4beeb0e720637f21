import type { words as english } from '../en/unproven.ts';
import type { Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  page: 'غير المثبت',
  none: 'لا شيء غير مثبت: لكل قيد يحتاج مشرفًا تذكرة من الخادم.',
  noTickets: 'هذا المصنع لا يعطي تذاكر بعد. تبدأ حين يُدخل مشرف PIN حيث يجيب الخادم.',
  help: 'هذه القيود تحتاج مشرفًا أو مهندسًا وكُتبت دون تذكرة من الخادم. هي سارية في الصالة. يؤكدها أو يرفضها مشرف يعلم بها.',
  stands: {
    proven: 'مثبت بتذكرة',
    passkey: 'مثبت بمفتاح مرور',
    unproven: 'غير مثبت',
    confirmed: 'أكده مشرف',
    rejected: 'رفضه مشرف',
    'before-tickets': 'كُتب قبل التذاكر',
  },
  right: 'الصلاحية',
  why: {
    'no-ticket': (role) => sentence`لا تذكرة من الخادم: لا شيء يثبت أن شخصًا بدور «${role}» فعل ذلك.`,
    'ticket-over': () => 'لم تشمل التذكرة هذا الوقت.',
    role: (role) => sentence`التذكرة لدور أدنى. المطلوب: ${role}.`,
    passkey: () => 'وقّع مفتاح المرور شيئًا آخر، أو ليس لهذا الشخص.',
  },
  before: 'لم يكن هذا المصنع يعطي تذاكر حين كُتب هذا.',
  by: (name) => sentence`من ${name}`,
  nobody: 'لم يُذكر أحد',
  confirm: 'تأكيد',
  reject: 'رفض',
  confirmAll: (count) => (count === 1 ? 'تأكيده' : sentence`تأكيد الكل (${count})`),
  confirmTitle: (count) => (count === 1 ? 'هل تم كما يقول؟' : sentence`هل تمت كلها كما تقول (${count})؟`),
  rejectTitle: 'ألم يفعله هذا الشخص؟',
  rejectHelp: 'يبقى القيد، معلّمًا بأنه مرفوض. وما غيّره في الصالة يبقى أيضًا: صحّحه بنفسك.',
  rejectPerson: 'عند الخادم لا يسري تغيير هذا الشخص. راجع الأشخاص في «المصنع» وصحّح القائمة.',
  reason: 'كيف عرفت؟',
  needsServer: 'يجب أن يجيب الخادم لهذا: عندها فقط يثبت من يقرر.',
  notProven: 'حُفظ ذلك، لكن دون تذكرة، فلا يحسم شيئًا. حاول من جديد حيث يجيب الخادم.',
  confirmed: (count) => sentence`مؤكد: ${counted.entries(count)}.`,
  rejected: 'رُفض القيد.',
  engineerOnly: (count) => sentence`يحتاج مهندسًا: ${counted.entries(count)}.`,
  badgeAlone: (name) =>
    sentence`سجّل ${name} الدخول بالشارة وحدها. ما يحتاج مشرفًا يبقى غير مثبت. سجّل الدخول بالاسم ورمز PIN لإثباته.`,
  settled: { confirmed: 'مؤكد', rejected: 'مرفوض' },
};
