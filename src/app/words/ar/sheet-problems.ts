import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';
import { countedAfter, sentence } from './counted.ts';

type Facts = SheetProblem['facts'];

const fieldsAr: Readonly<Record<SheetField, string>> = {
  slot: 'الموضع',
  machine: 'الآلة',
  bank: 'الصف',
  number: 'رقم الموضع',
  part: 'القطعة',
  perPanel: 'عمليات الوضع لكل لوحة',
  tapeWidth: 'عرض الشريط',
  pitch: 'الخطوة',
  sharing: 'التقاسم بين المواضع',
  alternates: 'البدائل',
  supplierParts: 'قطع المورّدين',
  description: 'الوصف',
  package: 'الغلاف',
  pins: 'الأطراف',
  bodySize: 'مقاس الجسم',
  bodyThickness: 'سُمك الجسم',
  msl: 'مستوى الرطوبة',
  polarity: 'القطبية',
  feederType: 'نوع المغذي',
  drive: 'آلية دفع المغذي',
  pocket: 'عمق الجيب',
  critical: 'حرج',
  positions: 'الخانات المشغولة',
  side: 'الوجه',
  designators: 'المراجع',
  fitted: 'مركّب',
  notFitted: 'غير مركّب',
  note: 'ملاحظة',
};

const arabicByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsAr[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return arabicByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sideAr(side: string | number | undefined): string {
  return side === 'bottom' ? 'السفلي' : 'العلوي';
}

/** A count as a fact has it. */
function number(fact: string | number | undefined): number | string {
  return fact ?? 0;
}

const ar: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'الملف ليس UTF-8، فقُرئ على أنه Windows-1252. راجع الحروف ذات العلامات، أو احفظه بصيغة UTF-8.',
  quoteBroken: (f) =>
    sentence`علامة اقتباس مفتوحة في السطر ${f['row']} لم تُغلق. قد يكون ما بعدها في خلية خاطئة. صحّح ذلك السطر.`,
  rowTooLong: (f) =>
    sentence`خلايا السطر ${f['found']}، وخلايا العناوين ${f['wanted']}. يبدو أن خلية فيها الفاصل: ضعها بين علامتي اقتباس.`,
  rowUnreadable: (f) =>
    sentence`خلايا السطر ${f['found']}، وخلايا العناوين ${f['wanted']}، ولا تتوافق. صحّح السطر.`,
  noRows: () => 'لا سطر تحت العناوين. صدّر الورقة من جديد مع أسطرها.',
  moreProblems: (f) => sentence`مشكلات أخرى غير مذكورة: ${f['count']}. صحّح هذه، ثم اقرأ الورقة من جديد.`,
  moreErrors: (f) =>
    sentence`مشكلات أخرى غير مذكورة، وبعضها أخطاء: ${f['count']}. صحّح هذه، ثم اقرأ الورقة من جديد.`,
  columnMissing: (f) => sentence`لا عمود لـ «${field(f['wanted'])}» بين: ${f['headers']}. اختر العمود يدويًا.`,
  columnAbsent: (f) =>
    sentence`لا عمود لـ «${field(f['wanted'])}» بين: ${f['headers']}. اختر العمود يدويًا، أو تابع دونه.`,
  columnNotFound: (f) =>
    sentence`لا عمود «${f['wanted']}» لـ «${field(f['field'])}» في هذه الورقة. فيها: ${f['headers']}. اختر العمود من جديد.`,
  columnUnknown: (f) => sentence`العمود «${f['found']}» غير مستخدم. إن احتاجه الإعداد، فاختر ما فيه يدويًا.`,
  columnTwice: (f) =>
    sentence`العمود «${f['found']}» يشبه «${field(f['field'])}» أيضًا؛ يُستخدم «${f['used']}». إن كان المقصود الآخر، فاختره يدويًا.`,
  usagePerBoard: (f) =>
    sentence`العمود «${f['found']}» يبدو معدودًا لكل بطاقة ويؤخذ لكل لوحة. إن كان في اللوحة عدة بطاقات، فاضربه.`,
  slotMissing: (f) => sentence`الموضع فارغ، لكن السطر يذكر القطعة ${f['part']}. املأ الموضع.`,
  textTooLong: (f) =>
    sentence`«${field(f['field'])}»: «${f['found']}…» أطول من ${countedAfter.characters(number(f['most']))}. اختصره.`,
  textCut: (f) => sentence`النص أطول من ${countedAfter.characters(number(f['most']))}. يُترك الباقي: اختصره.`,
  slotUnclear: (f) =>
    sentence`الموضع «${f['found']}» ليس مكتوبًا مثل M1-F-014، فلا يمكن فحص جيرانه. يؤخذ كما كُتب.`,
  slotNumberUnreadable: (f) => sentence`رقم الموضع «${f['found']}» ليس عددًا صحيحًا من 1 فأعلى. صحّحه.`,
  partMissing: (f) => sentence`لا رقم قطعة للموضع ${f['slot']}، لكن خلايا أخرى مملوءة. املأه.`,
  usageUnreadable: (f) => sentence`عمليات الوضع لكل لوحة «${f['found']}» ليست عددًا صحيحًا من 0 فأعلى. صحّحها.`,
  usageMissing: () =>
    'عمليات الوضع لكل لوحة فارغة، فلا أحد يعرف متى ينفد هذا الموضع. املأها، أو أضف ملف الوضع.',
  usageZero: () => 'عمليات الوضع لكل لوحة 0: الموضع محمّل ولا يُستخدم. إن كان كذلك، فاجعل السطر غير مركّب.',
  usageFromDesignators: (f) =>
    sentence`عمليات الوضع لكل لوحة فارغة، فتُحسب بعدد المراجع: ${f['count']}. تأكد أنها تشمل اللوحة كلها.`,
  designatorsDisagree: (f) =>
    sentence`المراجع ${f['found']}، لكن عمليات الوضع لكل لوحة ${f['wanted']}. راجع أيهما الصحيح.`,
  widthUnreadable: (f) => sentence`عرض الشريط «${f['found']}» ليس عددًا من mm. اكتب 8 أو \u20668 mm\u2069.`,
  widthUnknown: (f) =>
    sentence`\u2066${f['found']} mm\u2069 ليس عرض شريط بحسب EIA-481 (\u2066${f['wanted']} mm\u2069). صحّحه.`,
  widthMissing: () => 'لا عرض للشريط، فلا أحد يتحقق أن المغذي يناسب. املأه.',
  notTape: (f) => sentence`«${f['found']}» ليس شريطًا، فلا أطوال شريط ولا أوقات وصل لهذا الموضع.`,
  pitchUnreadable: (f) =>
    sentence`الخطوة «${f['found']}» ليست عددًا من mm أكبر من 0. اكتب 4 أو \u20664 mm\u2069.`,
  pitchUnusual: (f) =>
    sentence`لا يذكر EIA-481 خطوة \u2066${f['found']} mm\u2069 لشريط \u2066${f['width']} mm\u2069، بل \u2066${f['wanted']} mm\u2069 فقط. راجعها؛ بعض الأشرطة مختلف.`,
  pitchMissing: () => 'لا خطوة، فلا يُحوّل طول الشريط إلى قطع. املأها.',
  positionsUnreadable: (f) => sentence`الخانات المشغولة «${f['found']}» ليست عددًا صحيحًا من 1 إلى 60. صحّحها.`,
  pinsUnreadable: (f) => sentence`عدد الأطراف «${f['found']}» ليس عددًا صحيحًا من 1 فأكثر؛ يُترك. صحّحه.`,
  bodySizeUnreadable: (f) =>
    sentence`مقاس الجسم «${f['found']}» ليس طولًا وعرضًا بوحدة mm؛ يُترك. اكتبه هكذا: \u206617 x 17\u2069.`,
  thicknessUnreadable: (f) => sentence`سُمك الجسم «${f['found']}» ليس عددًا من mm أكبر من 0، فيُترك. صحّحه.`,
  pocketUnreadable: (f) => sentence`عمق الجيب «${f['found']}» ليس عددًا من mm أكبر من 0؛ يُترك. صحّحه.`,
  mslUnknown: (f) =>
    sentence`«${f['found']}» ليس مستوى رطوبة (\u20661, 2, 2a, 3, 4, 5, 5a, 6\u2069)، فيُترك. صحّحه.`,
  sharingUnknown: (f) =>
    sentence`«${f['found']}» لا يقول كيف تتقاسم المواضع هذه القطعة. اكتب "split" إن كان كل موضع يضع حصته، أو "in turn" إن كان أحدها يغذّي حتى يفرغ.`,
  turnUsageDiffers: (f) =>
    sentence`القطعة ${f['part']} تُستخدم بالدور: الموضع الذي يغذّي يضع ${f['wanted']} كلها. هذا السطر يقول ${f['found']}. اكتب العدد نفسه في كل سطر.`,
  sideUnknown: (f) => sentence`«${f['found']}» ليس وجهًا علويًا ولا سفليًا، فيُترك الوجه. صحّحه.`,
  flagUnreadable: (f) => sentence`«${f['found']}» ليس نعم ولا لا، ويُحسب ${f['taken']}. صحّحه.`,
  alternateIsPart: (f) => sentence`القطعة ${f['part']} مذكورة هنا بديلًا عن نفسها. يُترك ذلك.`,
  slotTwice: (f) =>
    sentence`الموضع ${f['slot']} في السطر ${f['first']} من قبل، مع القطعة ${f['part']}. للموضع قطعة واحدة: صحّح أحد السطرين.`,
  noRoom: (f) =>
    sentence`مغذي الموضع ${f['slot']} يشغل ${countedAfter.positions(number(f['wanted']))}. الموضع ${f['next']} (السطر ${f['nextRow']}) على بعد ${f['found']} فقط. انقل أحدهما.`,
  littleRoom: (f) =>
    sentence`مغذٍ \u2066${f['width']} mm\u2069 على الموضع ${f['slot']} يشغل عادة ${countedAfter.positions(number(f['wanted']))}. الموضع ${f['next']} (السطر ${f['nextRow']}) على بعد ${f['found']} فقط. تأكد أنه يناسب، أو املأ الخانات المشغولة.`,
  noApprovedReels: (f) =>
    sentence`لا قطعة مورّد معتمدة للقطعة ${f['part']}، فلا تُقبل إلا ملصقات برقم القطعة لديكم. املأها.`,
  partDiffers: (f) =>
    sentence`القطعة ${f['part']}: «${field(f['field'])}» هنا ${f['found']}، وفي السطر ${f['first']} ${f['wanted']}. راجع أيهما الصحيح.`,
  usageDisagrees: (f) =>
    sentence`القطعة ${f['part']}: عمليات الوضع لكل لوحة ${f['found']} في الورقة، و${f['wanted']} في ملف الوضع. راجع أيهما الصحيح.`,
  usageRatio: (f) =>
    sentence`في الورقة ${f['ratio']} أضعاف عمليات الوضع في ملف الوضع لكل قطعة. يبدو أن الملف لبطاقة واحدة من ${f['ratio']}: أدخل كم بطاقة في اللوحة.`,
  usageSplitUnknown: (f) =>
    sentence`القطعة ${f['part']}: عمليات الوضع ${f['wanted']} على مواضع عددها ${f['found']}، ولا يذكر ملف الوضع كم لكل منها. املأ عمليات الوضع لكل لوحة.`,
  partNotPlaced: (f) => sentence`للقطعة ${f['part']} موضع لكنها ليست في ملف الوضع. راجع رقم القطعة فيهما.`,
  partWithoutSlot: (f) =>
    sentence`توضع القطعة ${f['part']} ${countedAfter.times(number(f['found']))} (ملف الوضع، من السطر ${f['first']}) لكن لا موضع لها. أعطها موضعًا، أو اجعلها غير مركّبة.`,
  placementPartMissing: (f) => sentence`لا رقم قطعة للمرجع ${f['designator']}، فيُترك. املأه.`,
  placementTwice: (f) =>
    sentence`المرجع ${f['designator']} في المكان نفسه كما في السطر ${f['first']}. يُعدّ مرة.`,
  placementSideMissing: () => 'لا عمود للوجه في ملف الوضع. تُحسب كل عمليات الوضع على العلوي.',
  placementSideUnknown: (f) => sentence`«${f['found']}» ليس علويًا ولا سفليًا، فتُحسب العملية على العلوي. صحّحه.`,
  headerGuessed: (f) =>
    sentence`لا عناوين معروفة في الملف. بحسب ما فيها، الأعمدة هي: ${f['wanted']}. راجعها.`,
  columnByLook: (f) =>
    sentence`العمود «${f['found']}» يؤخذ على أنه «${field(f['field'])}» بحسب ما فيه. راجعه.`,
  genericParts: (f) =>
    sentence`في العمود «${f['found']}» اسم واحد لعدة قيم، فهو لأنواع لا لأرقام قطع. تُعتمد القيم. اختر عمود أرقام القطع يدويًا إن وُجد.`,
  partsAreDesignators: (f) =>
    sentence`في العمود «${f['found']}» مراجع، لا أرقام قطع. اختر عمود أرقام القطع يدويًا.`,
  sheetAdded: (f) =>
    sentence`أسطر الورقة «${f['found']}» لها العناوين نفسها وتُقرأ أيضًا؛ يستمر ترقيمها من السطر ${f['first']}.`,
  designatorTwice: (f) =>
    sentence`المرجع ${f['designator']} في السطر ${f['first']} من قبل، في مكان آخر. يُعدّ مرة. أعط كل قطعة على البطاقة اسمًا خاصًا.`,
  designatorSeldom: (f) =>
    sentence`المرجع ${f['designator']} مذكور في الملف ${countedAfter.times(number(f['found']))}، ومعظم غيره ${countedAfter.times(number(f['wanted']))}. تأكد أنه على كل بطاقة من اللوحة.`,
  placementSideFromName: (f) =>
    sentence`لا شيء في الملف يذكر الوجه. من اسمه «${f['found']}» تُحسب كل عمليات الوضع على ${sideAr(f['side'])}.`,
  throughHole: (f) => sentence`المرجع ${f['designator']} (${f['part']}) ينفذ في ثقوب، فلا يُعدّ موضوعًا.`,
  oddPlaced: (f) =>
    sentence`المرجع ${f['designator']} يشبه نقطة اختبار أو ثقبًا لكن له القطعة ${f['part']}. يُعدّ موضوعًا. إن لم يكن كذلك، فاجعله غير مركّب.`,
  valueInPackages: (f) =>
    sentence`القيمة ${f['part']} هنا في الغلاف ${f['found']}، وفي السطر ${f['first']} في ${f['wanted']}. تُعدّ قطعتين. أعطهما رقمي قطعة.`,
  partInPackages: (f) =>
    sentence`القطعة ${f['part']} هنا في الغلاف ${f['found']}، وفي السطر ${f['first']} في ${f['wanted']}. راجع رقم القطعة.`,
  valueWithoutPackage: (f) =>
    sentence`للمرجع ${f['designator']} القيمة ${f['part']} بلا غلاف ولا رقم قطعة. لا أحد يعرف أي قطعة هي: املأهما.`,
  xmlBroken: (f) => sentence`ملف XML مكسور هنا: ${f['found']}. ما بعده لا يُقرأ. صدّر الملف من جديد.`,
  noComponents: () => 'لا قطع في الملف. صدّره مع القطع وأماكنها.',
  panelOfFile: (f) =>
    sentence`في لوحة الملف بطاقات عددها ${f['found']}؛ تُعدّ بطاقة واحدة. أدخل كم بطاقة في اللوحة.`,
  billRowWithoutDesignators: (f) =>
    sentence`القطعة ${f['part']} لا تذكر مراجع، فلا يوضع شيء من هذا السطر. املأها إن كانت توضع.`,
  billPartMissing: (f) => sentence`لا رقم قطعة ولا قيمة في السطر الذي فيه ${f['designator']}. املأ أحدهما.`,
  billPartByOther: (f) => sentence`لا رقم قطعة في السطر، فتُسمّى قطعته ${f['part']}. املأ رقم القطعة.`,
  secondTable: (f) => sentence`يبدأ هنا جدول آخر (${f['headers']}). لا يُقرأ.`,
  boardsInFile: (f) =>
    sentence`في ملف الوضع بطاقات عددها ${f['found']} من قبل، فلا يُضرب من جديد في ${f['wanted']}. راجع كم بطاقة في اللوحة.`,
  quantityDiffers: (f) =>
    sentence`الكمية ${f['wanted']}، لكن عدد المراجع في السطر ${f['found']}. راجع أيهما الصحيح.`,
  quantityUnreadable: (f) => sentence`الكمية «${f['found']}» ليست رقمًا. تُعتمد المراجع. صحّحها.`,
  quantityRatio: (f) =>
    sentence`في كل سطر الكمية ${f['ratio']} أضعاف المراجع. يبدو أن القائمة تعدّ بطاقات عددها ${f['ratio']}.`,
  billDesignatorTwice: (f) =>
    sentence`المرجع ${f['designator']} في السطر ${f['first']} من قبل، مع القطعة نفسها. يُعدّ مرة.`,
  billDesignatorDiffers: (f) =>
    sentence`المرجع ${f['designator']} في السطر ${f['first']} من قبل، مع القطعة ${f['wanted']}؛ وهنا ${f['found']}. للمكان قطعة واحدة: صحّح أحد السطرين.`,
  variantOpen: (f) =>
    sentence`تختلف متغيّرات القائمة هنا: ${f['wanted']}. يُعدّ مركّبًا. اذكر أي متغيّر يُصنع، أو أحضر قائمة ذلك المتغيّر.`,
  variantNotFound: (f) => sentence`لا متغيّر «${f['found']}» في القائمة. فيها: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    sentence`قيمة القطعة ${f['part']} هنا ${f['found']}، وفي السطر ${f['first']} ${f['wanted']}. راجع رقم القطعة.`,
  markInRemark: (f) =>
    sentence`بحسب ملاحظته «${f['found']}» لا يُركّب شيء من هذا السطر. إن كانت لبعض المراجع فقط، فسمّها هناك.`,
  blankNotFitted: (f) =>
    sentence`في العمود «${f['found']}» علامة في بعض الأسطر وهو فارغ في ${f['count']}. الفارغ يُعدّ غير مركّب.`,
  designatorNotInBill: (f) =>
    sentence`المرجع ${f['designator']} في ملف الوضع وليس في أي سطر من القائمة، فلا يُعدّ. أضفه إلى القائمة، أو اجعله غير مركّب.`,
  designatorNotPlaced: (f) =>
    sentence`المرجع ${f['designator']} (القطعة ${f['part']}) في القائمة وليس في ملف الوضع، فلا يُعدّ.`,
  partOfFileDiffers: (f) =>
    sentence`المرجع ${f['designator']}: القطعة ${f['found']} في ملف الوضع، و${f['wanted']} في القائمة (السطر ${f['first']}). تُعتمد القائمة. راجع أيهما الصحيح.`,
  valueOfFileDiffers: (f) =>
    sentence`المرجع ${f['designator']}: القيمة ${f['found']} في ملف الوضع، و${f['wanted']} في القائمة (السطر ${f['first']}). تُعتمد القائمة. راجع أيهما الصحيح.`,
  sideOfFileDiffers: (f) =>
    sentence`المرجع ${f['designator']} على الوجه ${sideAr(f['found'])} في ملف الوضع، والقائمة تقول ${sideAr(f['wanted'])}. يُعتمد ملف الوضع.`,
  sheetDesignatorNotPlaced: (f) =>
    sentence`المرجع ${f['designator']} في هذا السطر وليس في ملف الوضع. راجعه فيهما.`,
  designatorWithoutSlot: (f) =>
    sentence`المرجع ${f['designator']} (ملف الوضع، السطر ${f['first']}، القطعة ${f['part']}) ليس في أي سطر من الورقة. أضفه إلى سطر موضعه، أو اجعله غير مركّب.`,
  sheetPartDiffers: (f) =>
    sentence`المرجع ${f['designator']}: القطعة ${f['found']} في هذا السطر، و${f['wanted']} في ملف الوضع أو القائمة. راجع أيهما الصحيح.`,
  sheetDesignatorTwice: (f) => sentence`المرجع ${f['designator']} في السطر ${f['first']} من قبل. يُعدّ هناك.`,
  listPartEmpty: () => 'لا رقم قطعة في السطر، لكن خلايا أخرى مملوءة. املأه.',
  listPackingUnknown: (f) =>
    sentence`«${f['found']}» ليس شريطًا ولا شريطًا مقصوصًا ولا صينية ولا أنبوبًا ولا سائبًا، فيُترك. صحّحه.`,
  listAgeUnreadable: (f) =>
    sentence`حد العمر «${f['found']}» ليس عددًا من الأشهر، فيُترك. اكتب 24 أو \u20662 years\u2069.`,
  listPriceUnreadable: (f) =>
    sentence`السعر «${f['found']}» ليس عددًا أكبر من 0، فيُترك. اكتب \u20660.012\u2069 أو \u20660.012 EUR\u2069.`,
  listPriceUnclear: (f) =>
    sentence`«${f['found']}» لا يبيّن عدد القطع التي يشملها السعر. اكتب \u2066Price each\u2069 أو \u2066Price per 1000\u2069.`,
  listToleranceUnclear: (f) =>
    sentence`«${f['found']}» فيه أرقام مجردة أقل من 1: نسب أم مئوية؟ تُركت. سمِّ العمود \u2066Tolerance %\u2069 أو اكتب \u20661 %\u2069 في الخلايا.`,
  listReelEmpty: () => 'لا معرّف بكرة في السطر، فيُترك. املأه.',
  listReelTwice: (f) => sentence`البكرة ${f['found']} في السطر ${f['first']} من قبل. يُعتمد آخر عدد لها.`,
  listCountUnreadable: (f) => sentence`العدد «${f['found']}» ليس عددًا صحيحًا من القطع، فيُترك السطر. صحّحه.`,
};

export const words: Sentences<typeof english> = { say: (problem) => ar[problem.code](problem.facts) };
