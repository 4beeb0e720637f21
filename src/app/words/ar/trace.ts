import type { words as english } from '../en/trace.ts';
import type { Sentences } from '../words.ts';
import { counted, countedAfter, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  entries: 'القيود',
  trace: 'التتبّع',
  held: 'اللوحات المحجوزة',
  conflicts: 'الاختلافات',
  title: 'أي لوحات تحملها؟',
  help: 'اكتب أو امسح دفعة أو بكرة أو قطعة أو مغذيًا أو موضعًا أو رمز لوحة، بأحرف صغيرة أو كبيرة. أو اختر شخصًا.',
  ask: 'تتبّع',
  kinds: {
    lot: 'دفعة',
    reel: 'بكرة',
    part: 'قطعة',
    feeder: 'مغذٍ',
    slot: 'موضع',
    person: 'شخص',
    panel: 'لوحة',
  },
  choosePerson: 'اختر من وضعها',
  putOn: (when, who) =>
    who === null ? sentence`موضوعة منذ ${when}` : sentence`موضوعة منذ ${when}، وضعها ${who}`,
  text: 'ما يُتتبّع',
  reading: (done) => sentence`يُقرأ السجل… ${counted.entries(done)}`,
  nothing: (text) => sentence`لا شيء في السجل عن «${text}».`,
  sure: (first, last) => sentence`يقينًا اللوحات من ${first} إلى ${last}`,
  possible: (first, last) => sentence`ربما اللوحات من ${first} إلى ${last}`,
  none: 'لم تُصنع لوحة وهي هناك',
  goesOn: 'ما زالت على الخط',
  serials: (count) => sentence`رموز اللوحات: ${count}`,
  onSlot: (slot, feeder) => (feeder === '' ? slot : sentence`${slot}، المغذي ${feeder}`),
  panelTitle: (panel, product) => sentence`اللوحة ${panel} من ${product}`,
  either: 'إحدى هذه أو كلتاهما',
  notSure: '(ربما)',
  builtTimes: (count) =>
    count === 1 ? 'عُدّت في تشغيل واحد:' : sentence`عُدّت في ${countedAfter.runs(count)}، الأقدم أولًا:`,
  noLot: 'لا دفعة على الملصق',
  save: 'حفظ بصيغة CSV',
  why: 'قرب الوصلة أو تغيير البكرة لا تُعرف اللوحة بالضبط، لذلك تُعرض الدفعتان. «يقينًا» تخطئ أقل من مرة في المليون بحسب التفاوتات المدخلة للخط.',
  guessed: {
    'in-line':
      'لم يُدخل أحد كم لوحة بين الآلة ومكان العدّ. يُفترض أوسع مدى. أدخل العدد في قواعد الخط فتقلّ اللوحات موضع الشك.',
    boards:
      'لا إعداد يذكر أي بطاقات اللوحة يخدمها الموضع. يُفترض أنه يخدمها كلها. إن كان يخدم بعضها فقط، فقد لا تحمل لوحة فيها بطاقات متخطاة شيئًا منه.',
    label: 'لم يُدخل أحد دقة الأعداد المطبوعة. يُفترض ربع في المئة (ممارسة شائعة).',
  },
  by: { server: 'أجاب الخادم.', tablet: 'الإجابة من السجل على هذا الجهاز.' },
  more: (count) => sentence`يُعرض الأقدم فقط (${count}). ضيّق البحث، مثلًا بدفعة أو بكرة.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => sentence`حمّل جهازان ${slots}`,
    'reel-on-two-slots': (slots) => sentence`بكرة واحدة على ${slots}`,
    'cleared-though-blocked': (slots) => sentence`رُفع حجز بكرة محظورة للموضع ${slots}`,
    'spliced-though-unloaded': (slots) => sentence`وُصل ${slots} على جهاز وأُنزل على آخر`,
  },
  noConflicts: 'الأجهزة متفقة.',
  settle: 'حسم',
  settleTitle: 'ماذا على الآلة؟',
  settleHelp: 'اذهب وانظر. ثم اختر ما هو هناك. يبقى القيد الآخر في السجل على أنه ملغى.',
  keep: (slot, what, when) => sentence`${slot}: ${what}، ${when}`,
  keepParts: (count) => counted.parts(count),
  keepBy: (who, tablet) => (who === '' ? sentence`على ${tablet}` : sentence`${who} على ${tablet}`),
  keepEmpty: 'الموضع خالٍ',
  neither: 'حللته بطريقة أخرى',
  reason: 'كيف عرفت؟',
  settled: 'حُسم.',
};
