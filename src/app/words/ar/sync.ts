import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  live: 'متزامن',
  syncing: 'يزامن…',
  toSend: (count) => sentence`للإرسال: ${count}`,
  unreached: (span) => (span === null ? 'لا وصول إلى الخادم' : sentence`لا وصول إلى الخادم منذ ${span}`),
  waits: 'الخادم يطلب الانتظار',
  refused: 'رفضه الخادم',
  quarantined: (count) => sentence`معزول: ${counted.entries(count)}`,
  rolledBack: 'ربما رجع سجل الخادم إلى الوراء',
  headFault: 'سجل الخادم موضع شك',
  clocksOff: (count) => sentence`ساعات غير مضبوطة: ${counted.tablets(count)}`,
  history: (share) => sentence`يُحمّل السجل القديم: ${share}`,
  historyChecked: 'يُفحص السجل القديم',
  historyTitle: 'السجل القديم',
  stillMissing: (missing, of) => sentence`ليس هنا بعد: ${missing} من ${countedAfter.entries(of)} أقدم.`,
  checkedHelp: 'كل القيود هنا. يحسب هذا الجهاز الآن كل شيء بنفسه ويقارن.',
  historyHelp:
    'بدأ هذا الجهاز مما حسبه جهاز آخر. التحميل والفحص يعملان كالمعتاد. السجل وتصديره وتتبّعه ناقص هنا حتى يصل الباقي.',
  notWhole: (missing) =>
    sentence`ما زالت قيود أقدم في الطريق: ${counted.entries(missing)}. ستكون الإجابة ناقصة. هي كلها عند الخادم.`,
};
