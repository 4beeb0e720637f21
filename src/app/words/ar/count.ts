import type { words as english } from '../en/count.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, leftToRight, sentence } from './counted.ts';

/** A count with its spread, read from left to right. */
const spread = (parts: string, sd: string) => leftToRight(`${parts} ± ${sd}`);

export const words: Sentences<typeof english> = {
  title: (what) => sentence`كم قطعة: ${what}`,
  ways: { typed: 'كتابة', machine: 'عدّاد أو آلة', weighed: 'وزن', measured: 'قياس' },
  wayHelp: {
    typed: 'الرقم على الملصق، أو عدّك أنت.',
    machine: 'ما يعرضه عدّاد البكرات أو الآلة.',
    weighed: 'زِن هذه البكرة. وزن القطعة ممتلئة وفارغة محفوظ.',
    measured: 'قِس عبر الشريط الملفوف، لا عبر حافة البكرة.',
  },
  fields: {
    parts: 'القطع',
    massG: 'هذه البكرة، g',
    emptyG: 'البكرة الفارغة، g',
    fullMassG: 'البكرة الممتلئة، g',
    outerMm: 'قطر الشريط الملفوف D، mm',
    hubMm: 'قطر المحور d، mm',
    fullOuterMm: 'القطر D لبكرة ممتلئة، mm',
    thicknessMm: 'أو سُمك الشريط، mm',
    pitchMm: 'الخطوة، mm',
    fullParts: 'القطع على بكرة ممتلئة',
  },
  wrong: {
    missing: 'ما زال ناقصًا',
    notNumber: 'ليس رقمًا',
    tooSmall: 'أصغر مما تسمح به الأرقام الأخرى',
    tooLarge: 'أكبر من بكرة ممتلئة',
  },
  picture: 'بكرة من الجانب: D عبر الشريط الملفوف، وd عبر المحور. الحافة أعرض من الشريط.',
  flange: 'الحافة',
  wound: 'الشريط الملفوف',
  hub: 'المحور',
  remembered: (parts) => sentence`من بكرة ممتلئة فيها ${parts}، قيست من قبل.`,
  result: (parts, sd) => sentence`القطع: ${spread(parts, sd)}`,
  before: (parts, sd, basis) => sentence`في السجل ${spread(parts, sd)} (${basis}).`,
  beforeUnknown: 'لا عدد في السجل بعد.',
  printed: (share, least, isEntered) =>
    sentence`الأرقام المطبوعة أو المكتوبة تُحسب بخطأ ${leftToRight(`± ${share}`)}${isEntered ? ' (من قواعد الخط)' : ' (ممارسة شائعة)'}، وعلى الأقل ${leftToRight(`± ${least}`)} (ممارسة شائعة).`,
  agree: 'العددان متفقان. معًا:',
  contradicts: 'العددان لا يتفقان. افحص البكرة، ثم اختر.',
  takeNew: 'استخدام العدد الجديد',
  takeBoth: 'استخدام الاثنين معًا',
  take: 'استخدام هذا العدد',
  bases: {
    'one-by-one': 'عُدّت واحدة واحدة',
    label: 'الملصق',
    typed: 'كتابة',
    machine: 'عدّاد',
    weighed: 'وزن',
    measured: 'قياس',
    'counted-down': 'طرح المستهلك',
    combined: 'عدة أعداد',
  },
  saved: (slot, parts, sd) => sentence`${slot}: القطع الآن ${spread(parts, sd)}.`,
  leftTitle: (slot) => sentence`إنزال ${slot}: كم بقي؟`,
  leftHelp: 'ما بقي يبيّن ما فقده المغذي. عُدّه الآن، أو دع المخزن يعدّه لاحقًا.',
  offLanes: {
    ask: 'ماذا يُرفع؟',
    one: (slot) => sentence`البكرة على ${slot} وحدها`,
    all: (slots) => sentence`المغذي كله مع ${slots}`,
  },
  leftEmpty: 'لا شيء: هي فارغة',
  leftCount: 'عدّ ما بقي',
  leftUnknown: (parts) => sentence`لم تُعدّ: نحو ${parts}`,
  leftUnknownPlain: 'لم تُعدّ',
  lost: (feeder, lost, picks, share) =>
    sentence`فقد ${feeder} عدد ${lost} من ${countedAfter.picks(picks)} (${share}).`,
  moreThanGone: 'وُضع أكثر مما نقص: أحد الأعداد خاطئ. يبقى الفاقد كما كان.',
  unlikely: (feeder, share, bound) =>
    sentence`يكون ${feeder} قد فقد ${share}. هذا غير محتمل (أكثر من ${bound}): راجع الأعداد. يبقى الفاقد كما كان.`,
  leftOut: (count, bound) =>
    sentence`لم يُستخدم: ${count}. فاقد فوق ${bound} غير محتمل (المعتاد من 0.1 إلى 3 %، والحد من وضعنا).`,
  lossTitle: 'فاقد الالتقاط',
  lossNone: 'لم تنته بعد بكرة معروفة العدد. حتى ذلك الحين يُستخدم الفاقد المفترض للخط.',
  lossRow: (share, low, high) => sentence`${share} (من ${low} إلى ${high})`,
  skipsUnknown: (reels) =>
    sentence`البطاقات المتخطاة غير معروفة (${counted.reels(reels)}): قد يكون الفاقد أكبر.`,
  skipsUnknownReel: 'البطاقات المتخطاة غير معروفة',
  lossEvidence: (reels, lost, picks) =>
    sentence`انتهت ${reels}، وفُقد ${lost} من ${countedAfter.picks(picks)}`,
  rising: (feeder, share, others) => sentence`المغذي ${feeder} يرمي ${share}، والمغذيات الأخرى ${others}.`,
  risingAlone: (feeder, share) => sentence`المغذي ${feeder} يرمي ${share}، أكثر من قبل.`,
  pickFaults: (times, since) => sentence`أبلغت الآلة عن ${countedAfter.pickFaults(times)} منذ ${since}.`,
  pickFaultsTitle: 'أخطاء الالتقاط حيث لا يُعرف فاقد بعد',
  risingAct: 'عند التوقف التالي، افحص الفوهة ومسار الشريط وارتفاع الالتقاط.',
  feeder: 'المغذي',
  slot: 'الموضع',
  loss: 'الفاقد',
  evidence: 'مبني على',
  told: { count: 'عُدّت', splice: 'وُصلت', machine: 'أبلغت الآلة' },
  evidenceLine: (from, to, placed) => sentence`${from} في البداية، وبقي ${to}، ووُضع ${placed}`,
  showEvidence: 'عرض البكرات',
  hideEvidence: 'إخفاء البكرات',
  spliceDiffers: 'الوصلة والعدد لا يتفقان: كان عدد البكرة القديمة خاطئًا.',
};
