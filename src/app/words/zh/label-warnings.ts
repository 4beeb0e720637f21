import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fields: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: '本厂料号',
  supplierPart: '供应商料号',
  quantity: '数量',
  lot: '批次',
  dateCode: '日期代码',
  made: '生产周',
  expires: '有效期',
  reel: '料盘',
  supplier: '供应商',
  country: '国家',
  msl: '湿敏等级',
  order: '订单',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `“${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayIt(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return '这张标签上没有读到码';
    case 'no-part-number':
      return '这张标签上没有料号：须从别处得到';
    case 'header-damaged':
      return `码的开头损坏：${quote(warning.found)}`;
    case 'separators-replaced':
      return `扫描枪用${quote(warning.found)}代替了分隔符（GS）：请设为发送控制字符`;
    case 'separators-mixed':
      return `分隔符不一致（${warning.found.map(quote).join('、')}）：请检查扫描枪及其键盘布局`;
    case 'separators-lost':
      return `${quote(warning.text)}中缺分隔符：只读了确定的部分；请把扫描枪设为发送控制字符`;
    case 'trailer-uncertain':
      return `${quote(warning.text)}的最后一个字符可能是码的结束符`;
    case 'keyboard-layout':
      return `扫描枪按另一种键盘输入（${warning.layout}）：${quote(warning.text)}未采用；请设好布局再扫`;
    case 'identifier-lower-case':
      return `标识符${quote(warning.id)}为小写，已按 ${warning.id.toUpperCase()} 读取`;
    case 'identifier-unlisted':
      return `标识符 ${warning.id} 未知：其值保存但不使用`;
    case 'no-identifier':
      return `${quote(warning.text)}没有标识符：按文本保存`;
    case 'format-unread':
      return `这里不读格式 ${warning.format}：按文本保存`;
    case 'tags-not-mh10':
      return `用了两字母标记（${warning.tags.join('、')}）而不是数据标识符`;
    case 'one-letter-tags':
      return '单字母标记，读作：R 料盘，P 本厂料号，D 日期，L 批次，V 供应商，Q 数量，S 供应商料号';
    case 'blank-separated':
      return `按空格分段读取：若${quote(warning.text)}中的料号含空格，也会被切开`;
    case 'value-may-go-on':
      return `${quote(warning.text)}可能属于 ${warning.id} 后面的值：未读取`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)}可能以标识符开头，也可能只是号码：须由人指明`;
    case 'confirmed-by-setup':
      return `${fields[warning.field]}${quote(warning.value)}与站位表一致`;
    case 'conflict':
      return `标签上的${fields[warning.field]}有不同的值：${warning.values.map(quote).join('、')}`;
    case 'second-lot':
      return `标签有第二个批次${quote(warning.text)}：料盘含两个批次`;
    case 'quantity-unreadable':
      return `数量${quote(warning.text)}不猜就读不出：请数一下或输入`;
    case 'quantity-marks':
      return `数量${quote(warning.text)}读作 ${warning.quantity}`;
    case 'date-code-unclear':
      return `日期代码${quote(warning.text)}（${warning.id}）不明确：按印刷原样保存`;
    case 'no-such-week':
      return `日期代码${quote(warning.text)}（${warning.id}）不是任何年份的周：按印刷原样保存`;
    case 'no-such-date':
      return `${quote(warning.text)}（${warning.id}）不是日期`;
    case 'day-not-printed':
      return `${quote(warning.text)}（${warning.id}）没有日：按当月最后一天算`;
    case 'country-unlisted':
      return `${quote(warning.text)}不是国家代码`;
    case 'msl-unlisted':
      return `${quote(warning.text)}不是湿敏等级`;
    case 'rule-unclear':
      return `标签规则${quote(warning.rule)}有多种匹配方式：不采用`;
    case 'full-ascii':
      return `${quote(warning.text)} 像是全 ASCII 的 Code 39：应为 ${quote(warning.meant)}；请这样设置扫描枪`;
    case 'gs1-unread':
      return `${quote(warning.text)}含有这里不认识的 GS1 标识符：按文本保存`;
    case 'gs1-check-digit':
      return `${quote(warning.text)}的校验位不对`;
  }
}

export const words: Sentences<typeof english> = {
  say: sayIt,
};
