import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => sentence`MSL ${msl}`,
  left: (span) => sentence`باقٍ ${span} من مهلة التعرض`,
  leftUntil: (span, clock) => sentence`باقٍ ${span} من مهلة التعرض، حتى ${clock}`,
  unopened: (span) => sentence`لم تُفتح بعد: مهلة التعرض ${span}`,
  noLimit: 'بلا حد في هذا الهواء',
  over: 'انتهت مهلة التعرض',
  overSince: (clock) => sentence`انتهت مهلة التعرض ${clock}`,
  baking: 'في الفرن',
  bakeShort: 'جُففت أقل مما يقول الجدول',
  bakeLet: (name) => sentence`يُحتسب التجفيف القصير: ${name}`,
  letBake: 'احتساب التجفيف',
  letBakeTitle: (reel) => sentence`هل يُحتسب تجفيف ${reel}؟`,
  letBakeWhat: (f) =>
    sentence`جُففت \u2066${f.hours} h\u2069${f.celsius === null ? '' : sentence` عند \u2066${f.celsius} °C\u2069`}. ${f.wanted === null ? 'لا سطر لذلك في الجدول.' : sentence`الجدول يطلب \u2066${f.wanted} h\u2069.`}`,
  letBakeHelp:
    'عندها تبدأ مهلة التعرض من جديد عند نهاية هذا التجفيف، ولا يعود التجفيف يحجز البكرة. يُحتسب مرة واحدة: أي تجفيف قصير آخر يُحجز من جديد.',
  letBakeWhy: 'لماذا يُحتسب؟',
  letBakeDone: (reel) => sentence`${reel}: احتُسب التجفيف.`,
  letBakeFor: 'التجفيف',
  letBakeOnce: 'هذه المرة فقط',
  letBakeAlways: 'يُحتسب من الآن',
  hotOver: (hours) => sentence`\u2066${hours} h\u2069 فوق \u206690 °C\u2069 في المجموع`,
  labelTime: 'المستوى 6: جفّفها حراريًا، ثم أدخل المدة التي على ملصقها',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: 'شريحة صغيرة (chip)',
    other: 'لا شيء من هذه',
  },
  sources: {
    own: 'نسخة المصنع الخاصة',
    copy: 'قورن بنسخة منشورة',
    memory: 'من الذاكرة، لم يُقارن',
  },
  restsOn: (f) =>
    sentence`${f.classes.length === 1 ? sentence`الفئة ${f.classes[0]}` : sentence`الفئة ${[...f.classes].sort().join(' أو ')} (يُعتمد الأقصر)`} · \u2066${f.celsius} °C\u2069، ${f.humidity} % · ${f.edition}`,
  classOpen: 'الغلاف غير معروف تمامًا، لذلك تُعتمد أسوأ فئة. يمكن لمهندس إدخاله في «المصنع»، «القطع».',
  labelHours: 'المدة على ملصقها، بالساعات',
  labelHoursHelp: 'المستوى 6: مهلة التعرض المطبوعة على الكيس، محسوبة من نهاية التجفيف.',
  badLabelHours: 'أدخل ساعات الملصق: من 1 إلى 9999.',
  hotSoFar: (hours, most) =>
    sentence`جُففت \u2066${hours} h\u2069 فوق \u206690 °C\u2069 حتى الآن. الحد \u2066${most} h\u2069 في المجموع.`,
  hotLimit: 'هذا الحد من الذاكرة',
  bakeAdvice: (f) => sentence`الجدول يطلب ${f.options} (${f.source}).`,
  bakeOption: (hours, celsius) => sentence`\u2066${hours} h\u2069 عند \u2066${celsius} °C\u2069`,
  or: 'أو',
  bakeLarge:
    'سطر \u206696 h\u2069 عند \u2066125 °C\u2069 لأغلفة BGA الكبيرة والشرائح المكدّسة. يُعتمد ما دام الغلاف غير معروف.',
  dry: 'في حفظ جاف',
  open: 'الكيس / الفرن',
  title: (reel) => sentence`مهلة التعرض للبكرة ${reel}`,
  where: 'أين هي؟',
  airs: { floor: 'مفتوحة في الصالة', dry: 'خزانة أو كيس محكم', bake: 'في الفرن' },
  hours: 'قبل كم ساعة؟',
  hoursHelp: '0 = الآن. إن كان أسبق: الساعات منذ ذلك الحين.',
  humidity: 'الرطوبة النسبية هناك',
  humidities: { 5: '5 % أو أقل', 10: '10 % أو أقل' },
  ovenAir: 'الرطوبة النسبية في الفرن',
  ovenAirs: { dry: '5 % أو أقل', moist: 'أكثر، أو لا أحد يعرف' },
  ovenAirHelp:
    'تحت \u2066125 °C\u2069 الجدول للهواء الجاف فقط. في هواء آخر يجب أن يسمح مشرف باحتساب التجفيف.',
  ovenAirMissing: 'اختر مدى جفاف الفرن',
  celsius: 'الفرن، بالدرجة المئوية',
  celsiusHelp: 'كثير من الأشرطة والبكرات لا يتحمل أكثر من \u206640 °C\u2069: راجع ملصق الكيس.',
  bakeCaution: 'ساخن: البس قفازين عند الفرن. ملصق الكيس وقواعدكم المحلية أولًا.',
  resetHelp:
    'أدخله هنا عندما تخرج البكرة. يعطي الجدول الساعات بحسب الجسم والمستوى. التجفيف الأقصر لا يعيد مهلة التعرض: عندها يجب أن يقرر مشرف.',
  badHours: 'أدخل من 0 إلى 9999 ساعة.',
  badCelsius: 'أدخل من 30 إلى \u2066150 °C\u2069.',
  climate: (f) =>
    f.computed !== f.entered
      ? sentence`مناخ الصالة \u2066${f.entered.celsius} °C\u2069 و${f.entered.humidity} % خارج الجدول. يُعتمد أسوأ سطر فيه: \u2066${f.computed.celsius} °C\u2069 و${f.computed.humidity} %. اسأل مهندس العمليات.`
      : f.isEntered
        ? sentence`لصالة حتى \u2066${f.entered.celsius} °C\u2069 ورطوبة ${f.entered.humidity} %، من قواعد الخط.`
        : sentence`لصالة حتى \u2066${f.entered.celsius} °C\u2069 ورطوبة ${f.entered.humidity} %: لم يُدخل أحد مناخ الخط.`,
  yes: 'حفظ',
  written: (reel) => sentence`${reel}: حُفظ.`,
  ends: (slot, life, out) => sentence`${slot}: تنتهي مهلة التعرض ${life}، والبكرة تكفي حتى ${out}.`,
  isOver: (slot, life) => sentence`${slot}: انتهت مهلة التعرض ${life}.`,
  endsAct: 'ضع بكرة أخرى قبل ذلك. احفظ هذه جافة أو جفّفها حراريًا بحسب قواعدكم.',
  overAct: 'توقف عن استخدامها. يقرر مشرف بشأن القطع الموضوعة منذ ذلك الحين.',
  toBake: (reels) => sentence`انتهت مهلة التعرض، جفّفها حراريًا أولًا: ${reels}`,
};
