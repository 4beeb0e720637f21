import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  stale: 'هذا التدريب من بدء سابق للعرض التجريبي.',
  fresh: 'البدء من جديد',
  failed: (why) => sentence`تعذّر تحميل مصنع العرض التجريبي: ${why}`,
};
