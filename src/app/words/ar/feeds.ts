import type { Words } from '../areas.ts';
import { counted, sentence } from './counted.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: 'شريط', 'cut-tape': 'شريط مقصوص', tray: 'صينية', tube: 'أنبوب', bulk: 'سائب' },
  acts: { splice: 'وصل', exchange: 'استبدال', refill: 'إعادة ملء' },
  label: 'طباعة ملصقها',
  warns: {
    splice: (span, clock) => sentence`تنفد خلال ${span}، نحو ${clock}. أحضر الشريط المقصوص التالي.`,
    exchange: (span, clock) => sentence`تنفد خلال ${span}، نحو ${clock}. ثم تقف الآلة حتى الاستبدال.`,
    refill: (span, clock) => sentence`تنفد خلال ${span}، نحو ${clock}. أعد الملء قبل ذلك.`,
  },
  comesNext: { splice: 'البكرة الجديدة', exchange: 'ما يوضع بدلًا منه', refill: 'ما يُصب فوقه' },
  accepted: {
    exchange: 'ما كان هناك يُعدّ مُنزلًا. ليس وصلًا: تبقى الآلة واقفة حتى يوضع هذا.',
    refill: 'من هنا تُعدّ الدفعتان محتملتين، حتى يُفرغ المغذي.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'شريط مقصوص: لا نافذة وصل. ينتهي حيث ينتهي الشريط.',
    tray: 'صينية: إذا فرغت تقف الآلة حتى توضع صينية أخرى.',
    tube: 'أنبوب: إذا فرغ تقف الآلة حتى يوضع أنبوب آخر.',
    bulk: 'سائب: أعد الملء قبل أن يفرغ.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => sentence`${counted.cutTapes(count)}`,
    tray: (count) => sentence`${counted.trayStacks(count)}`,
    tube: (count) => sentence`${counted.tubeSets(count)}`,
    bulk: (count) => counted.packages(count),
  },
  dueNow: { splice: 'صِل الآن', exchange: 'استبدل الآن', refill: 'أعد الملء الآن' },
  forLane: (lane, part, count) => sentence`لـ ${lane}: ${part}، ${count} لكل لوحة.`,
};
