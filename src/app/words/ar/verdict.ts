import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import type { Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';
import { moistureReasonsAr, tableAr } from './verdict-moisture.ts';
import { plantReasonsAr } from './verdict-plant.ts';

const reasonsAr: ReasonWords = {
  ...moistureReasonsAr,
  ...plantReasonsAr,
  'unknown-slot': {
    title: 'لا موضع كهذا',
    say: (f) => sentence`لا يوجد على هذا الخط الموضع ${f['slot']}.`,
    act: 'امسح رمز الموضع عند الآلة.',
  },
  'slot-not-in-setup': {
    title: 'الموضع غير مستخدم',
    say: (f) => sentence`لا يطلب هذا الإعداد شيئًا على ${f['slot']}.`,
    act: 'اتركه خاليًا. امسح الموضع الصحيح.',
  },
  'slot-loaded': {
    title: 'الموضع محمّل من قبل',
    say: (f) =>
      sentence`على ${f['slot']} من قبل ${f['part']}${f['reel'] ? sentence` (البكرة ${f['reel']})` : ''}.`,
    act: 'أنزل تلك البكرة أولًا.',
  },
  'slot-empty': {
    title: 'الموضع خالٍ',
    say: (f) => sentence`لا شيء محمّل على ${f['slot']}.`,
    act: 'حمّل بكرة هناك بدلًا من ذلك.',
  },
  'no-part': {
    title: 'لا رقم قطعة',
    say: (f) => sentence`لا رمز على هذا الملصق يذكر أي قطعة هي. المطلوب: ${f['wanted']}.`,
    act: 'امسح الملصق كله، أو اكتب رقم القطعة المطبوع.',
  },
  'wrong-part': {
    title: 'قطعة خاطئة',
    say: (f) =>
      f['goesTo'] ? sentence`مكان هذه البكرة ${f['goesTo']}.` : 'لا موضع في هذا الإعداد يطلب هذه القطعة.',
    act: 'أعدها. امسح بكرة أخرى.',
  },
  'wrong-for-lane': {
    title: 'خاطئة للمسار الآخر',
    say: (f) => sentence`${f['lane']} يأخذ ${f['wanted']} من هذا الموضع.`,
    act: 'أعدها. امسح بكرة تناسب المسارين.',
  },
  'kept-for-lane': {
    title: 'تبقى للمسار الآخر',
    say: (f) => sentence`على ${f['slot']} القطعة ${f['part']} للمسار ${f['lane']}.`,
    act: 'اترك تلك البكرة مكانها. لوصل بكرة بها، اختر المسار الآخر أولًا.',
  },
  'not-in-setup': {
    title: 'ليست في هذا الإعداد',
    say: (f) =>
      f['slot'] ? sentence`لا موضع يطلب هذه البكرة. الأقرب ${f['slot']}.` : 'لا موضع يطلب هذه البكرة.',
    act: 'اتركها على العربة، أو أعدها إلى المخزن.',
  },
  'bake-short': {
    title: 'التجفيف قصير',
    say: (f) =>
      sentence`جُففت \u2066${f['hours']} h\u2069${f['celsius'] ? sentence` عند \u2066${f['celsius']} °C\u2069` : ''}. ${f['wanted'] ? sentence`الجدول يطلب هناك \u2066${f['wanted']} h\u2069` : 'لا سطر لذلك في الجدول'}، فلا تعود مهلة التعرض: باقٍ ${f['leftSeconds']}. (${restsOn(f, tableAr)}الغلاف غير المعروف يُحسب الأسوأ.)`,
    act: 'يجب أن يقرر مشرف.',
  },
  'same-label': {
    title: 'بكرة ثانية بالملصق نفسه',
    say: () => 'أكد ذلك شخص: الملصق يطابق البكرة العاملة هنا.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'البكرة على موضع آخر',
    say: (f) => sentence`في السجل البكرة ${f['reel']} على ${f['slot']}.`,
    act: 'إن لم تعد على ذلك الموضع، فأنزلها هناك أولًا.',
  },
  'reel-on-cart': {
    title: 'البكرة على عربة',
    say: (f) => sentence`في السجل البكرة ${f['reel']} على العربة ${f['cart']}، جاهزة للموضع ${f['slot']}.`,
    act: 'خذ بكرة أخرى، أو ارفعها عن العربة أولًا في «التجهيز».',
  },
  'slot-on-cart': {
    title: 'الموضع مجهّز على عربة',
    say: (f) => sentence`على العربة ${f['cart']} بكرة جاهزة للموضع ${f['slot']} من قبل.`,
    act: 'امسح موضعًا آخر، أو ارفع ذلك المكان عن العربة أولًا.',
  },
  'reel-here': {
    title: 'البكرة هنا من قبل',
    say: (f) => sentence`البكرة ${f['reel']} على ${f['slot']} من قبل.`,
    act: 'امسح البكرة التالية.',
  },
  'reel-blocked': {
    title: 'البكرة محظورة',
    say: (f) => sentence`محظورة: ${f['reason']}.`,
    act: 'نحِّها جانبًا. أحضر المشرف.',
  },
  'feeder-elsewhere': {
    title: 'المغذي على موضع آخر',
    say: (f) => sentence`في السجل المغذي ${f['feeder']} على ${f['slot']}.`,
    act: 'افحص رمز المغذي، أو أنزله هناك أولًا.',
  },
  'feeder-aside': {
    title: 'المغذي منحّى جانبًا',
    say: (f) => `يجب ألا يُستعمل المغذي ${f['feeder']}: ${f['why']}.`,
    act: 'خذ مغذيًا آخر. بعد صيانته سجّل ذلك عند المغذي.',
  },
  'feeder-lanes': {
    title: 'لا مسار متبق في المغذي',
    say: (f) => sentence`مسارات المغذي ${f['feeder']}: ${f['lanes']}. هو في السجل على ${f['slots']} من قبل.`,
    act: 'افحص رمز المغذي، أو صحّح عدد مسارات نوعه.',
  },
  'feeder-on-cart': {
    title: 'المغذي على عربة',
    say: (f) => sentence`في السجل المغذي ${f['feeder']} على العربة ${f['cart']}، جاهز للموضع ${f['slot']}.`,
    act: 'افحص رمز المغذي، أو ارفعه عن العربة أولًا في «التجهيز».',
  },
  'feeder-width': {
    title: 'المغذي لا يناسب الشريط',
    say: (f) =>
      sentence`المغذي ${f['feeder']} لشريط \u2066${f['found']} mm\u2069؛ هذا الموضع يطلب \u2066${f['wanted']} mm\u2069.`,
    act: 'خذ مغذيًا بالعرض الصحيح.',
  },
  'feeder-pitch': {
    title: 'خطوة المغذي لا تناسب',
    say: (f) =>
      sentence`المغذي ${f['feeder']} يتقدم \u2066${f['found']} mm\u2069؛ هذا الشريط يطلب \u2066${f['wanted']} mm\u2069.`,
    act: 'اضبط الخطوة أو خذ مغذيًا آخر. الخطوة الخاطئة ترمي قطعًا دون أن يلاحظها أحد.',
  },
  'floor-life-over': {
    title: 'انتهت مهلة التعرض',
    say: () => 'بقيت هذه البكرة خارج كيسها الجاف أكثر من اللازم.',
    act: 'لا تستخدمها. أرسلها للتجفيف الحراري بحسب قواعدكم.',
  },
  'not-the-loaded-reel': {
    title: 'ليست البكرة التي في السجل',
    say: (f) => sentence`في السجل على ${f['slot']}: ${f['loaded'] || 'بكرة أخرى'}.`,
    act: 'اعرف من بدّلها. ثم أنزلها وحمّلها من جديد.',
  },
  'part-contradicts': {
    title: 'الملصق يناقض نفسه',
    say: (f) => sentence`يقول ${f['part']}، لكن ${f['supplierPart']} معتمدة لـ ${f['approvedFor']}.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'alternate-not-approved': {
    title: 'البديل غير معتمد هنا',
    say: (f) =>
      sentence`يجوز أن تحل ${f['found']} محل ${f['wanted']} على ${f['approvedFor']}، لكن ليس على هذا المنتج.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'supplier-part-not-approved': {
    title: 'قطعة المورّد غير معروفة',
    say: (f) => sentence`${f['supplierPart']} ليست في القائمة المعتمدة. المطلوب: ${f['wanted']}.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'no-quantity': {
    title: 'لا كمية',
    say: () => 'لا كمية على الملصق، فموعد النفاد غير معروف.',
    act: 'اكتب الكمية، أو دع مشرفًا يقرر.',
  },
  expired: {
    title: 'تجاوزت تاريخها',
    say: (f) => sentence`تُستخدم قبل ${f['expires']}.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'by-alternate': {
    title: 'بديل معتمد',
    say: (f) => sentence`${f['found']} بديل معتمد عن ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'برقم المورّد',
    say: (f) => sentence`${f['supplierPart']} معتمدة للقطعة ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'عُدّ الرقم نفسه',
    say: (f) => sentence`${f['found']} يُعدّ ${f['wanted']} بقاعدة المصنع عن ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'دفعة أخرى',
    say: (f) => sentence`تتغيّر الدفعة من ${f['from']} إلى ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'ليست كمية الملصق',
    say: (f) =>
      f['label'] === ''
        ? sentence`لا كمية على الملصق؛ يستخدم السجل ${f['quantity']}.`
        : sentence`الملصق يقول ${f['label']}؛ يستخدم السجل ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'صحيح للاستبدال',
    refill: 'صحيح لإعادة الملء',
    load: 'البكرة صحيحة',
    splice: 'البكرة صحيحة للوصل',
    sweep: 'شوهدت',
  },
  refused: 'مرفوضة',
  held: 'محجوزة للمشرف',
  wants: (slot) => sentence`الموضع ${slot} يطلب`,
  says: 'البكرة تقول',
  also: 'وأيضًا',
  goOn: 'متابعة',
  nextIs: (slot) => sentence`التالي: ${slot}`,
  another: 'مسح بكرة أخرى',
  callLead: 'طلب قرار المشرف',
  typeQuantity: 'كتابة الكمية',
  takeBack: 'تراجع',
  parts: (count) => counted.parts(count),
  lot: (lot) => sentence`الدفعة ${lot}`,
  reel: (reel) => sentence`البكرة ${reel}`,
  practice: 'مسح تدريب',
  allLoaded: 'كل المواضع محمّلة.',
  spliceCaution:
    'صِل الشريطين والآلة متوقفة، أو والمغذي خارج المنطقة المحمية كما يقول دليلها. اقطع بعيدًا عن أصابعك. القواعد المحلية أولًا.',
  loadCaution: 'أوقف الآلة وانتظر الرأس قبل أن تُدخل يدك. القواعد المحلية أولًا.',
  reasons: reasonsAr,
};
