// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';
import { leftToRight, sentence } from './counted.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  sentence`المقيس: ${leftToRight(`${f['quantity']} ± ${f['uncertainty']} ${f['unit']}`)}. المطلوب: ${leftToRight(`${f['nominal']} ${f['unit']}`)}، من ${f['least']} إلى ${f['most']}. مع نطاق الحماية ${f['guard']}: من ${f['from']} إلى ${f['to']}.`;

export const plantReasonsAr: PlantReasons = {
  'feeder-unknown': {
    title: 'المغذي غير معروف',
    say: (f) => sentence`المغذي ${f['feeder']} ليس في قائمة المصنع، فلا يمكن فحص عرضه.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'feeder-type': {
    title: 'نوع المغذي خاطئ',
    say: (f) => sentence`المغذي ${f['feeder']} من نوع ${f['found']}؛ هذا الموضع يطلب ${f['wanted']}.`,
    act: 'خذ مغذيًا من ذلك النوع.',
  },
  'feeder-drive': {
    title: 'آلية الدفع خاطئة',
    say: (f) => sentence`آلية دفع المغذي ${f['feeder']} هي ${f['found']}؛ هذا الموضع يطلب ${f['wanted']}.`,
    act: 'خذ مغذيًا بآلية الدفع الصحيحة.',
  },
  'feeder-height': {
    title: 'الجيوب أعمق مما يمرره المغذي',
    say: (f) =>
      sentence`عمق جيوب الشريط \u2066${f['wanted']} mm\u2069؛ والمغذي ${f['feeder']} يمرر \u2066${f['found']} mm\u2069.`,
    act: 'خذ مغذيًا لجيوب أعمق.',
  },
  'maker-not-listed': {
    title: 'الصانع ليس في قائمة هذا المنتج',
    say: (f) =>
      sentence`${f['supplierPart']} غير معتمدة للقطعة ${f['part']} على هذا المنتج.${f['listed'] ? sentence` المعتمد: ${f['listed']}.` : ''}${f['approvedFor'] ? sentence` هي معتمدة على ${f['approvedFor']}.` : ''}`,
    act: 'خذ بكرة من صانع في القائمة، أو دع مشرفًا يقرر.',
  },
  'date-code-old': {
    title: 'أقدم من اللازم برمز التاريخ',
    say: (f) => sentence`صُنعت ${f['made']}. انتهى حد عمر هذه القطعة على الخط في ${f['last']}.`,
    act: 'يجب أن يقرر مشرف.',
  },
  'date-code-unknown': {
    title: 'العمر غير معروف',
    say: (f) =>
      f['dateCode']
        ? sentence`لا يُقرأ رمز التاريخ ${f['dateCode']} بيقين. يحد الخط عمر هذه القطعة.`
        : 'لا رمز تاريخ على الملصق. يحد الخط عمر هذه القطعة.',
    act: 'يجب أن يقرر مشرف.',
  },
  'value-outside': {
    title: 'قيمة خاطئة',
    say: measured,
    act: 'لا تحمّلها. ضع البكرة جانبًا، ثم امسح غيرها.',
  },
  'value-unsure': {
    title: 'القيمة غير واضحة',
    say: (f) => `${measured(f)} قريبة من الحد أكثر مما يميّزه هذا الجهاز.`,
    act: 'امسح البكرة مرة أخرى لإعادة القياس، أو دع مشرفًا يقرر.',
  },
  'value-unmeasured': {
    title: 'القيمة لم تُقس',
    say: (f) => sentence`يطلب الخط قياس قطعة واحدة من ${f['part']} قبل أن تغذي البكرة.`,
    act: 'امسح البكرة مرة أخرى لقياسها، أو دع مشرفًا يقرر.',
  },
  'value-unknown': {
    title: 'لا قيمة للفحص',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? sentence`قائمة القطع تعطي ${f['part']} قيمة بلا سماحية.`
        : sentence`قائمة القطع لا تعطي قيمة للقطعة ${f['part']}.`,
    act: 'يجب أن يقرر مشرف. أدخل القيمة في القطع.',
  },
  'value-within': { title: 'فُحصت القيمة', say: measured, act: '' },
  'feeder-care': {
    title: 'حانت صيانة المغذي',
    say: (f) =>
      sentence`وضع المغذي ${f['feeder']} من القطع نحو ${f['placed']}؛ وحد المصنع ${f['after']}. أرسله إلى الصيانة بعد إخراجه.`,
    act: '',
  },
  'older-in-store': {
    title: 'في المخزن بكرة أقدم',
    say: (f) =>
      f['by'] === 'expires'
        ? sentence`البكرة ${f['reel']} في المكان ${f['place']} تُستخدم قبل ${f['expires']}، أبكر من هذه.`
        : sentence`البكرة ${f['reel']} في المكان ${f['place']} رمز تاريخها ${f['dateCode']}، أقدم من هذه.`,
    act: '',
  },
};
