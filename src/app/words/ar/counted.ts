// What every Arabic sentence needs. Things counted: the noun changes with its number, and the two of a thing change with their place in the
// sentence. Facts in Latin letters: they run from left to right within words that run from right to left.

import { byNumber, formatCount } from '../words.ts';

/** One of a thing, two of it as a subject and after a verb or preposition, three to ten, eleven to ninety-nine; a hundred is as one. */
type Noun = readonly [one: string, two: string, twoAfter: string, few: string, many: string];

const nouns = {
  actions: ['إجراء', 'إجراءان', 'إجراءين', 'إجراءات', 'إجراءً'],
  boards: ['بطاقة', 'بطاقتان', 'بطاقتين', 'بطاقات', 'بطاقة'],
  changeovers: ['تبديل', 'تبديلان', 'تبديلين', 'تبديلات', 'تبديلًا'],
  characters: ['حرف', 'حرفان', 'حرفين', 'أحرف', 'حرفًا'],
  codes: ['رمز', 'رمزان', 'رمزين', 'رموز', 'رمزًا'],
  columns: ['عمود', 'عمودان', 'عمودين', 'أعمدة', 'عمودًا'],
  comments: ['تعليق', 'تعليقان', 'تعليقين', 'تعليقات', 'تعليقًا'],
  cutTapes: ['شريط مقصوص', 'شريطان مقصوصان', 'شريطين مقصوصين', 'أشرطة مقصوصة', 'شريطًا مقصوصًا'],
  designators: ['مرجع', 'مرجعان', 'مرجعين', 'مراجع', 'مرجعًا'],
  digits: ['رقم', 'رقمان', 'رقمين', 'أرقام', 'رقمًا'],
  entries: ['قيد', 'قيدان', 'قيدين', 'قيود', 'قيدًا'],
  errors: ['خطأ', 'خطآن', 'خطأين', 'أخطاء', 'خطأً'],
  feeders: ['مغذٍ', 'مغذيان', 'مغذيين', 'مغذيات', 'مغذيًا'],
  kinds: ['صنف', 'صنفان', 'صنفين', 'أصناف', 'صنفًا'],
  labels: ['ملصق', 'ملصقان', 'ملصقين', 'ملصقات', 'ملصقًا'],
  lanes: ['مسار', 'مساران', 'مسارين', 'مسارات', 'مسارًا'],
  letters: ['حرف', 'حرفان', 'حرفين', 'أحرف', 'حرفًا'],
  machines: ['آلة', 'آلتان', 'آلتين', 'آلات', 'آلة'],
  minutes: ['دقيقة', 'دقيقتان', 'دقيقتين', 'دقائق', 'دقيقة'],
  months: ['شهر', 'شهران', 'شهرين', 'أشهر', 'شهرًا'],
  moves: ['نقلة', 'نقلتان', 'نقلتين', 'نقلات', 'نقلة'],
  packages: ['عبوة', 'عبوتان', 'عبوتين', 'عبوات', 'عبوة'],
  pairs: ['زوج', 'زوجان', 'زوجين', 'أزواج', 'زوجًا'],
  panels: ['لوحة', 'لوحتان', 'لوحتين', 'لوحات', 'لوحة'],
  parts: ['قطعة', 'قطعتان', 'قطعتين', 'قطع', 'قطعة'],
  passkeys: ['مفتاح مرور', 'مفتاحا مرور', 'مفتاحي مرور', 'مفاتيح مرور', 'مفتاح مرور'],
  pickFaults: ['خطأ التقاط', 'خطآ التقاط', 'خطأي التقاط', 'أخطاء التقاط', 'خطأ التقاط'],
  picks: ['التقاطة', 'التقاطتان', 'التقاطتين', 'التقاطات', 'التقاطة'],
  pins: ['طرف', 'طرفان', 'طرفين', 'أطراف', 'طرفًا'],
  placements: ['عملية وضع', 'عمليتا وضع', 'عمليتي وضع', 'عمليات وضع', 'عملية وضع'],
  places: ['مكان', 'مكانان', 'مكانين', 'أماكن', 'مكانًا'],
  positions: ['خانة', 'خانتان', 'خانتين', 'خانات', 'خانة'],
  reels: ['بكرة', 'بكرتان', 'بكرتين', 'بكرات', 'بكرة'],
  rows: ['سطر', 'سطران', 'سطرين', 'أسطر', 'سطرًا'],
  rules: ['قاعدة', 'قاعدتان', 'قاعدتين', 'قواعد', 'قاعدة'],
  runs: ['تشغيل', 'تشغيلان', 'تشغيلين', 'تشغيلات', 'تشغيلًا'],
  signatures: ['توقيع', 'توقيعان', 'توقيعين', 'توقيعات', 'توقيعًا'],
  slots: ['موضع', 'موضعان', 'موضعين', 'مواضع', 'موضعًا'],
  splices: ['وصلة', 'وصلتان', 'وصلتين', 'وصلات', 'وصلة'],
  stops: ['توقف', 'توقفان', 'توقفين', 'توقفات', 'توقفًا'],
  steps: ['بند', 'بندان', 'بندين', 'بنود', 'بندًا'],
  supplierNumbers: ['رقم مورّد', 'رقما مورّد', 'رقمي مورّد', 'أرقام مورّدين', 'رقم مورّد'],
  tablets: ['جهاز', 'جهازان', 'جهازين', 'أجهزة', 'جهازًا'],
  times: ['مرة', 'مرتان', 'مرتين', 'مرات', 'مرة'],
  totals: ['مجموع', 'مجموعان', 'مجموعين', 'مجاميع', 'مجموعًا'],
  trayStacks: ['رزمة صوانٍ', 'رزمتا صوانٍ', 'رزمتي صوانٍ', 'رزم صوانٍ', 'رزمة صوانٍ'],
  tries: ['محاولة', 'محاولتان', 'محاولتين', 'محاولات', 'محاولة'],
  tubeSets: ['مجموعة أنابيب', 'مجموعتا أنابيب', 'مجموعتي أنابيب', 'مجموعات أنابيب', 'مجموعة أنابيب'],
  walks: ['جولة', 'جولتان', 'جولتين', 'جولات', 'جولة'],
  warnings: ['تحذير', 'تحذيران', 'تحذيرين', 'تحذيرات', 'تحذيرًا'],
} as const satisfies Readonly<Record<string, Noun>>;

type Thing = keyof typeof nouns;

/** `count`: the number, or what `formatCount` made of it; only a text is shown as it came. */
function tell(noun: Noun, isAfter: boolean, count: number | string): string {
  const [one, two, twoAfter, few, many] = noun;
  const shown = typeof count === 'number' ? formatCount(count) : count;
  const single = one.split(' ')[0]?.endsWith('ة') ? 'واحدة' : 'واحد';
  return byNumber(count, {
    one: `${one} ${single}`,
    two: isAfter ? twoAfter : two,
    few: `${shown} ${few}`,
    many: `${shown} ${many}`,
    other: `${shown} ${one}`,
  });
}

function allOf(isAfter: boolean): Readonly<Record<Thing, (count: number | string) => string>> {
  const things = Object.keys(nouns) as Thing[]; // the keys of the table
  const told = things.map((thing) => [thing, (count: number | string) => tell(nouns[thing], isAfter, count)]);
  return Object.fromEntries(told) as Record<Thing, (count: number | string) => string>; // a key for each thing by construction
}

/** Things counted as a subject or on their own: `موضعان`, `3 مواضع`, `11 موضعًا`. */
export const counted = allOf(false);

/** Things counted after a verb or a preposition: `موضعين`. */
export const countedAfter = allOf(true);

/** A figure or code with signs in it, kept from left to right: `500 ± 12`, `17 × 17 mm`, a code beside an arrow. */
export function leftToRight(text: string): string {
  return `\u2066${text}\u2069`;
}

/**
 * A sentence with facts, each kept in a direction of its own: a code that begins with a figure, such as `22-0603-B`, would turn round
 * among Arabic words.
 */
export function sentence(
  parts: TemplateStringsArray,
  ...facts: readonly (string | number | undefined)[]
): string {
  return parts.reduce((said, part, at) => said + isolate(facts[at - 1]) + part);
}

function isolate(fact: string | number | undefined): string {
  return fact === '' ? '' : `\u2068${fact}\u2069`;
}
