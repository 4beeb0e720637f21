import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => sentence`رجعت ساعة هذا الجهاز ${span} عند ${clock}: صحّحها.`,
  ahead: (span, clock) =>
    sentence`نام هذا الجهاز ${span} عند ${clock}، أو تقدّمت ساعته. إن كانت خاطئة الآن، فصحّحها.`,
  'behind-log': (span) => sentence`ساعة هذا الجهاز متأخرة ${span} عن أحدث قيد: صحّحها.`,
  'behind-server': (span) => sentence`ساعة هذا الجهاز متأخرة ${span} عن الخادم: صحّحها.`,
  'ahead-of-server': (span) => sentence`ساعة هذا الجهاز متقدمة ${span} على الخادم: صحّحها.`,
  goesOn: 'التحذيرات والأوقات تستمر من آخر وقت صحيح.',
  short: 'افحص الساعة',
  isRight: 'تأكيد: الساعة صحيحة',
};
