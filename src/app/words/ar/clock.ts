import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `رجعت ساعة هذا الجهاز ${span} عند ${clock}: صحّحها.`,
  ahead: (span, clock) => `نام هذا الجهاز ${span} عند ${clock}، أو تقدّمت ساعته. إن كانت خاطئة الآن، فصحّحها.`,
  'behind-log': (span) => `ساعة هذا الجهاز متأخرة ${span} عن أحدث قيد: صحّحها.`,
  'behind-server': (span) => `ساعة هذا الجهاز متأخرة ${span} عن الخادم: صحّحها.`,
  'ahead-of-server': (span) => `ساعة هذا الجهاز متقدمة ${span} على الخادم: صحّحها.`,
  goesOn: 'التحذيرات والأوقات تستمر من آخر وقت صحيح.',
  short: 'افحص الساعة',
  isRight: 'تأكيد: الساعة صحيحة',
};
