import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fields: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: '社内品番',
  supplierPart: '仕入先品番',
  quantity: '数量',
  lot: 'ロット',
  dateCode: 'デートコード',
  made: '製造週',
  expires: '使用期限',
  reel: 'リール',
  supplier: '仕入先',
  country: '国',
  msl: '吸湿レベル',
  order: '注文番号',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `「${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}」`;
}

function sayIt(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'このラベルからコードを読めませんでした';
    case 'no-part-number':
      return 'このラベルに品番がありません。別の方法で得る必要があります';
    case 'header-damaged':
      return `コードの先頭が壊れています：${quote(warning.found)}`;
    case 'separators-replaced':
      return `スキャナーが区切り文字（GS）の代わりに${quote(warning.found)}を送りました。制御文字を送る設定にしてください`;
    case 'separators-mixed':
      return `区切り文字がそろっていません（${warning.found.map(quote).join('、')}）。スキャナーとキーボード配列を確認してください`;
    case 'separators-lost':
      return `${quote(warning.text)}に区切り文字がありません。確かな部分だけ読みました。スキャナーを制御文字を送る設定にしてください`;
    case 'trailer-uncertain':
      return `${quote(warning.text)}の最後の文字はコードの終わりの印かもしれません`;
    case 'keyboard-layout':
      return `スキャナーが別のキーボード（${warning.layout}）用に打っています。${quote(warning.text)}は採用しません。配列を設定して読み直してください`;
    case 'identifier-lower-case':
      return `識別子${quote(warning.id)}が小文字で届き、${warning.id.toUpperCase()}として読みました`;
    case 'identifier-unlisted':
      return `識別子${warning.id}は不明です。値は保存しますが使いません`;
    case 'no-identifier':
      return `${quote(warning.text)}に識別子がありません。文字として保存しました`;
    case 'format-unread':
      return `形式${warning.format}はここでは読みません。文字として保存しました`;
    case 'tags-not-mh10':
      return `データ識別子ではなく2文字の目印（${warning.tags.join('、')}）です`;
    case 'one-letter-tags':
      return '1文字の目印を次のように読みました：R リール、P 社内品番、D 日付、L ロット、V 仕入先、Q 数量、S 仕入先品番';
    case 'blank-separated':
      return `空白で区切って読みました。${quote(warning.text)}の品番に空白があれば、そこも切れています`;
    case 'value-may-go-on':
      return `${quote(warning.text)}は${warning.id}の後の値の続きかもしれません。読んでいません`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)}は識別子で始まるか、ただの番号かもしれません。人が指定してください`;
    case 'confirmed-by-setup':
      return `${fields[warning.field]}${quote(warning.value)}は段取り表のとおりです`;
    case 'conflict':
      return `ラベルに${fields[warning.field]}の値が複数あります：${warning.values.map(quote).join('、')}`;
    case 'second-lot':
      return `ラベルに2つ目のロット${quote(warning.text)}があります。リールには両方が入っています`;
    case 'quantity-unreadable':
      return `数量${quote(warning.text)}は推測なしには読めません。数えるか入力してください`;
    case 'quantity-marks':
      return `数量${quote(warning.text)}を${warning.quantity}と読みました`;
    case 'date-code-unclear':
      return `デートコード${quote(warning.text)}（${warning.id}）がはっきりしません。印字のまま保存しました`;
    case 'no-such-week':
      return `デートコード${quote(warning.text)}（${warning.id}）はどの年の週でもありません。印字のまま保存しました`;
    case 'no-such-date':
      return `${quote(warning.text)}（${warning.id}）は日付ではありません`;
    case 'day-not-printed':
      return `${quote(warning.text)}（${warning.id}）に日がありません。月末日とみなします`;
    case 'country-unlisted':
      return `${quote(warning.text)}は国コードではありません`;
    case 'msl-unlisted':
      return `${quote(warning.text)}は吸湿レベルではありません`;
    case 'rule-unclear':
      return `ラベル規則${quote(warning.rule)}は2通り以上に当てはまります。使いません`;
    case 'full-ascii':
      return `${quote(warning.text)}はフルASCIIのCode 39のようです。本来は${quote(warning.meant)}です。スキャナーをそう設定してください`;
    case 'gs1-unread':
      return `${quote(warning.text)}にはここで不明な GS1 識別子があります。文字として保存しました`;
    case 'gs1-check-digit':
      return `${quote(warning.text)}のチェックデジットが違います`;
  }
}

export const words: Sentences<typeof english> = {
  say: sayIt,
};
