import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  title: 'اللوحات داخل الخط',
  help: 'عند تغيّر البكرة تكون هذه اللوحات موضع شك. أدخل أكبر عدد يمكن أن يكون، ومعه لوحة تنتظر قبل آلة. ما لم يُدخله أحد يُفترض افتراضًا.',
  behind: (machine) => sentence`${machine}: لوحات أُنجزت هنا ولم تُعدّ بعد، على الأكثر`,
  before: (machine) => sentence`${machine}: لوحات عُدّت قبل أن تصل إليها، على الأكثر`,
  missed: 'لوحات تمر دون عدّ، على الأكثر',
  guess: (most) => sentence`لم يُدخل: يُفترض حتى ${most} (ممارسة شائعة).`,
  seen: (panels, most) => sentence`مُسح في المكانين: ${counted.panels(panels)}. كان بينهما حتى ${most}.`,
  takeSeen: 'استخدام ما أظهره المسح',
  takeHelp:
    'ما ظهر بالمسح ليس الحد: أدخل أكثر حيث يمكن أن يكون أكثر. وإن أظهر المسح أكثر، زاد العدد من نفسه.',
  scansHere: 'اللوحات الممسوحة على هذا الجهاز',
  count: 'تُعدّ',
  goInto: (machine) => sentence`تدخل ${machine}`,
  scansHelp: 'امسح بعض اللوحات قبل آلة، ثم امسحها حيث تُعدّ. هكذا يُعرف كم لوحة بينهما.',
  save: 'حفظ اللوحات داخل الخط',
  saved: 'حُفظ. يستخدمه التتبّع من الآن.',
  wrong: 'أدخل أعدادًا صحيحة من 0 إلى 500، ونسبة أقل من 50 %.',
  exitOpen: 'فتح شاشة المخرج',
  exitTitle: 'اللوحات المبنية',
  exitHelp: 'امسح كل لوحة عند خروجها من الخط.',
  exitCounted: 'عُدّت:',
  exitBefore: 'مُسحت من قبل، لم يُضف شيء:',
  exitOther: 'ليست لوحة، لم يُضف شيء:',
  exitNoRun: 'لا تشغيل على هذا الخط. ابدأه أولًا.',
  exitLost: 'فقدت هذه الصفحة لوحة المفاتيح. المس هنا قبل المسح.',
  exitLeave: 'مغادرة هذه الشاشة',
};
