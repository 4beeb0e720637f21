import type { words as english } from '../en/search.ts';
import { plural, type Sentences } from '../words.ts';
import { counted, sentence } from './counted.ts';

export const words: Sentences<typeof english> = {
  field: 'اكتب أو امسح أي شيء',
  help: 'بكرة أو قطعة أو دفعة أو لوحة أو موضع أو مغذٍ أو شخص أو منتج. ما يُمسح هنا يُبحث عنه ولا يُحمّل.',
  kinds: {
    reel: 'البكرات',
    slot: 'المواضع',
    part: 'القطع',
    'supplier-part': 'قطع المورّدين',
    lot: 'الدفعات',
    panel: 'اللوحات',
    feeder: 'المغذيات',
    person: 'الأشخاص',
    setup: 'الإعدادات',
    entry: 'قيود السجل',
  },
  more: (count) => sentence`عرض ${count} أخرى`,
  nothing: (text) => sentence`لا شيء هنا فيه «${text}».`,
  alike: (codes) => sentence`ليست متطابقة: ${codes}. افحص كل حرف.`,
  onLabel: 'على هذا الملصق أيضًا:',
  left: (count) => sentence`باقٍ ${count}`,
  slotIs: {
    right: 'صحيح',
    empty: 'لا شيء محمّل',
    held: 'ينتظر المشرف',
    'other-part': 'قطعة غير صحيحة',
    'wrong-feeder': 'مغذٍ غير صحيح',
    blocked: 'محظور',
  },
  notWanted: 'ليس في هذا الإعداد',
  chosen: 'مختار',
  reading: (entries) => sentence`يُقرأ السجل، حتى الآن: ${counted.entries(entries)}.`,
  searchedAll: (entries) =>
    plural(
      entries,
      'بُحث في القيد الوحيد على هذا الجهاز.',
      sentence`بُحث في كل القيود على هذا الجهاز (${entries}).`,
    ),
  searchedSince: (day) => sentence`بُحث في القيود منذ ${day}. الأقدم منها في السجل.`,
  askServer: 'سؤال الخادم',
  asking: 'يسأل الخادم…',
  noServer: 'لا إجابة من الخادم: ما يعرفه وحده لم يُبحث فيه.',
  serverNothing: (text) => sentence`لا شيء عند الخادم عن «${text}».`,
  serverHas: (kind, count) => sentence`${kind}: عند الخادم ${count}`,
};
