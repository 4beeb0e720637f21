import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  title: 'سجل ورقي',
  asking: 'جارٍ طلب الإثبات من الخادم…',
  proven: (place, size) => sentence`مُثبت: القيد ${place} من ${size} في سجل المصنع، موقّع بمفتاح المصنع.`,
  holds: 'يحمل الرمز الإثبات. يتحقق منه “reelward log verify --record” دون السجل.',
  seen: (count, names) => sentence`عدد الأجهزة اللوحية التي تحققت ووقّعت: ${count} (${names}).`,
  since: (when) => sentence`غير مُثبت بعد: لا خادم منذ ${when}.`,
  never: 'غير مُثبت بعد: لم يتم الوصول إلى خادم.',
  waiting: 'غير مُثبت بعد: هذا القيد ليس لدى الخادم.',
  noProof: 'غير مُثبت: لم يعطِ الخادم إثباتًا.',
  later: 'اطبعه مرة أخرى عندما يصل القيد إلى الخادم، فتحمل الورقة الإثبات.',
  key: (fingerprint) => sentence`مفتاح المصنع: ${fingerprint}`,
  brought: {
    'one-log': 'هذه الورقة من السجل نفسه الذي لدى هذا الجهاز.',
    'not-one-log': 'تُظهر هذه الورقة والخادم سجلين مختلفين. اتصل بمسؤول الجودة.',
    'not-the-plants': 'هذه الورقة غير موقّعة بمفتاح هذا المصنع.',
    'no-server': 'لا خادم. تُفحص الورقة عندما يجيب الخادم.',
    'not-checked': 'لم تُفحص الورقة. امسحها على جهاز متزامن.',
  },
};
