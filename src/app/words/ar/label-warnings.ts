import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';
import { sentence } from './counted.ts';

const fieldsAr: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'رقم القطعة في المصنع',
  supplierPart: 'رقم قطعة المورّد',
  quantity: 'الكمية',
  lot: 'الدفعة',
  dateCode: 'رمز التاريخ',
  made: 'أسبوع الصنع',
  expires: 'تاريخ الانتهاء',
  reel: 'البكرة',
  supplier: 'المورّد',
  country: 'البلد',
  msl: 'مستوى الرطوبة',
  order: 'الطلبية',
};

/** A text in quotes, cut to what a line holds and kept from left to right; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return sentence`«\u2066${plain.length > 60 ? sentence`${plain.slice(0, 57)}…` : plain}\u2069»`;
}

function sayAr(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'لم يُقرأ أي رمز من هذا الملصق';
    case 'no-part-number':
      return 'لا رقم قطعة على هذا الملصق: يجب أن يأتي من مصدر آخر';
    case 'header-damaged':
      return sentence`بداية الرمز تالفة: ${quote(warning.found)}`;
    case 'separators-replaced':
      return sentence`أرسل الماسح ${quote(warning.found)} بدل الفواصل (GS): اضبطه ليرسل رموز التحكم`;
    case 'separators-mixed':
      return sentence`الفواصل مختلفة (${warning.found.map(quote).join('، ')}): افحص الماسح وتخطيط لوحة مفاتيحه`;
    case 'separators-lost':
      return sentence`تنقص فواصل في ${quote(warning.text)}: قُرئ المؤكد فقط؛ اضبط الماسح ليرسل رموز التحكم`;
    case 'trailer-uncertain':
      return sentence`قد يكون آخر حرف في ${quote(warning.text)} علامة نهاية الرمز`;
    case 'keyboard-layout':
      return sentence`الماسح يكتب للوحة مفاتيح أخرى (${warning.layout}): لم يُقبل ${quote(warning.text)}؛ اضبط التخطيط وامسح من جديد`;
    case 'identifier-lower-case':
      return sentence`جاء المعرّف ${quote(warning.id)} بأحرف صغيرة وقُرئ ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return sentence`المعرّف ${warning.id} غير معروف: تُحفظ قيمته ولا تُستخدم`;
    case 'no-identifier':
      return sentence`لا معرّف في ${quote(warning.text)}: يُحفظ نصًا`;
    case 'format-unread':
      return sentence`الصيغة ${warning.format} لا تُقرأ هنا: تُحفظ نصًا`;
    case 'tags-not-mh10':
      return sentence`علامات من حرفين (${warning.tags.join('، ')}) بدل معرّفات البيانات`;
    case 'one-letter-tags':
      return 'علامات من حرف واحد، قُرئت هكذا: R البكرة، P رقم القطعة في المصنع، D التاريخ، L الدفعة، V المورّد، Q الكمية، S رقم قطعة المورّد';
    case 'blank-separated':
      return sentence`قُرئ أجزاءً مقطوعة عند المسافات: إن كان في رقم قطعة داخل ${quote(warning.text)} مسافات، قُطع أيضًا`;
    case 'value-may-go-on':
      return sentence`قد يكون ${quote(warning.text)} جزءًا من القيمة بعد ${warning.id}: لم يُقرأ`;
    case 'identifier-unconfirmed':
      return sentence`قد يبدأ ${quote(warning.text)} بمعرّف أو يكون رقمًا فقط: يجب أن يقرر شخص`;
    case 'confirmed-by-setup':
      return sentence`${fieldsAr[warning.field]} ${quote(warning.value)} هو ما يطلبه الإعداد`;
    case 'conflict':
      return sentence`يعطي الملصق قيمًا مختلفة لـ ${fieldsAr[warning.field]}: ${warning.values.map(quote).join('، ')}`;
    case 'second-lot':
      return sentence`يعطي الملصق دفعة ثانية، ${quote(warning.text)}: تحمل البكرة الدفعتين`;
    case 'quantity-unreadable':
      return sentence`لا تُقرأ الكمية ${quote(warning.text)} دون تخمين: عُدّها أو اكتبها`;
    case 'quantity-marks':
      return sentence`قُرئت الكمية ${quote(warning.text)} على أنها ${warning.quantity}`;
    case 'date-code-unclear':
      return sentence`رمز التاريخ ${quote(warning.text)} (${warning.id}) غير واضح: يبقى كما طُبع`;
    case 'no-such-week':
      return sentence`رمز التاريخ ${quote(warning.text)} (${warning.id}) ليس أسبوعًا في أي سنة: يبقى كما طُبع`;
    case 'no-such-date':
      return sentence`${quote(warning.text)} (${warning.id}) ليس تاريخًا`;
    case 'day-not-printed':
      return sentence`لا يوم في ${quote(warning.text)} (${warning.id}): يُحسب آخر يوم في الشهر`;
    case 'country-unlisted':
      return sentence`${quote(warning.text)} ليس رمز بلد`;
    case 'msl-unlisted':
      return sentence`${quote(warning.text)} ليس مستوى رطوبة`;
    case 'rule-unclear':
      return sentence`القاعدة ${quote(warning.rule)} تنطبق بأكثر من طريقة: لا تُستخدم`;
    case 'full-ascii':
      return `${quote(warning.text)} يبدو Code 39 بترميز ASCII الكامل: سيكون ${quote(warning.meant)}؛ اضبط الماسح عليه`;
    case 'gs1-unread':
      return sentence`في ${quote(warning.text)} معرّف GS1 غير معروف هنا: يُحفظ نصًا`;
    case 'gs1-check-digit':
      return sentence`رقم التحقق في ${quote(warning.text)} غير صحيح`;
  }
}

export const words: Sentences<typeof english> = { say: sayAr };
