// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';
import { sentence } from './counted.ts';

/** On what a bake's hours rest. */
export const tableAr: TableWords = {
  own: 'الجدول: نسخة المصنع الخاصة. ',
  copy: 'الجدول: قورن بنسخة منشورة. ',
  memory: 'الجدول: من الذاكرة. ',
};

export const moistureReasonsAr: MoistureReasons = {
  'bake-hours-over': {
    title: 'جُففت أكثر من اللازم في المجموع',
    say: (f) =>
      sentence`\u2066${f['hours']} h\u2069 فوق \u206690 °C\u2069 حتى الآن؛ الحد \u2066${f['most']} h\u2069. قد لا تلتحم أطرافها جيدًا.`,
    act: 'يجب أن يقرر مشرف. اسأل صانع القطعة.',
  },
  'label-time-missing': {
    title: 'المستوى 6: كم المدة على الملصق؟',
    say: () => 'بعد تجفيفها تكفي بكرة المستوى 6 المدة التي يقولها ملصق كيسها. لم يُدخلها أحد.',
    act: 'جفّفها حراريًا، وأدخل الساعات في «الكيس / الفرن»، ثم امسح من جديد.',
  },
  'reel-unnamed': {
    title: 'بلا معرّف، وقد تكون بكرة مفتوحة',
    say: (f) =>
      sentence`نزلت عن الخط من قبل بكرة من هذه القطعة${f['lot'] ? sentence`، الدفعة ${f['lot']}` : ''}${f['left'] ? sentence`، وبقي فيها ${f['left']}` : ''}. دون معرّف لا يمكن التمييز بينهما، ${f['floorLife'] === 'true' ? 'فمهلة التعرض غير معروفة' : 'فالعدد غير معروف'}.`,
    act: 'أعط البكرة معرّفًا، أو دع مشرفًا يقرر.',
  },
  'reel-gone': {
    title: 'نفدت منذ زمن بحسب السجل',
    say: (f) =>
      sentence`البكرة ${f['reel']} أو بعض ما فيها نفد منذ زمن بحسب السجل. لا يعرف هذا الجهاز كم بقيت خارج كيسها.`,
    act: 'ابحث عن دفعتها في «التتبّع». يجب أن يقرر مشرف.',
  },
  'floor-life-short': {
    title: 'تنتهي مهلة التعرض قبل البكرة',
    say: (f) => sentence`تنتهي مهلة التعرض خلال ${f['leftSeconds']}، والبكرة تكفي ${f['neededSeconds']}.`,
    act: 'يجب أن يقرر مشرف.',
  },
};
