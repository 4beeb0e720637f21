import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsHu: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'saját cikkszám',
  supplierPart: 'szállítói cikkszám',
  quantity: 'mennyiség',
  lot: 'tétel',
  dateCode: 'dátumkód',
  made: 'gyártási hét',
  expires: 'lejárat',
  reel: 'tekercs',
  supplier: 'szállító',
  country: 'ország',
  msl: 'MSL-szint',
  order: 'rendelés',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `„${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayHu(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'erről a címkéről nem lett kód beolvasva';
    case 'no-part-number':
      return 'nincs cikkszám ezen a címkén: máshonnan kell származnia';
    case 'header-damaged':
      return `a kód eleje sérült: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `az olvasó ezt küldte az elválasztók (GS) helyett: ${quote(warning.found)}; állítsa vezérlőkarakterek küldésére`;
    case 'separators-mixed':
      return `az elválasztók nem egyformák (${warning.found.map(quote).join(', ')}): ellenőrizze az olvasót és a billentyűzetkiosztását`;
    case 'separators-lost':
      return `hiányoznak elválasztók: ${quote(warning.text)}; csak a biztos rész lett beolvasva; állítsa az olvasót vezérlőkarakterek küldésére`;
    case 'trailer-uncertain':
      return `az utolsó karakter a kód záró jele is lehet: ${quote(warning.text)}`;
    case 'keyboard-layout':
      return `az olvasó más billentyűzethez ír (${warning.layout}): ${quote(warning.text)} nem lett elfogadva; állítsa be a kiosztást, és olvassa be újra`;
    case 'identifier-lower-case':
      return `az azonosító ${quote(warning.id)} kisbetűvel érkezett, és így lett beolvasva: ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `az azonosító nem ismert: ${warning.id}; értéke megmarad, de nem használt`;
    case 'no-identifier':
      return `${quote(warning.text)}: nincs azonosítója, szövegként megmarad`;
    case 'format-unread':
      return `ez a formátum itt nem olvasható: ${warning.format}; szövegként megmarad`;
    case 'tags-not-mh10':
      return `kétbetűs jelek (${warning.tags.join(', ')}) adatazonosítók helyett`;
    case 'one-letter-tags':
      return 'egybetűs jelek, így olvasva: R tekercs, P saját cikkszám, D dátum, L tétel, V szállító, Q mennyiség, S szállítói cikkszám';
    case 'blank-separated':
      return `részekben olvasva, szóközöknél vágva: ha egy cikkszámban van szóköz, az is el lett vágva: ${quote(warning.text)}`;
    case 'value-may-go-on':
      return `${quote(warning.text)} talán az előző értékhez tartozik (${warning.id}): nem lett beolvasva`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} talán azonosítóval kezdődik, vagy puszta szám: egy embernek kell megmondania`;
    case 'confirmed-by-setup':
      return `${fieldsHu[warning.field]} ${quote(warning.value)}: ezt várja a setup`;
    case 'conflict':
      return `a címkén eltérő értékek vannak, ${fieldsHu[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `a címkén egy második tétel is van, ${quote(warning.text)}: a tekercsen mindkettő rajta van`;
    case 'quantity-unreadable':
      return `a mennyiség ${quote(warning.text)} találgatás nélkül nem olvasható: számolja meg vagy írja be`;
    case 'quantity-marks':
      return `a mennyiség ${quote(warning.text)} így lett beolvasva: ${warning.quantity}`;
    case 'date-code-unclear':
      return `a dátumkód ${quote(warning.text)} (${warning.id}) nem egyértelmű: marad, ahogy nyomtatva van`;
    case 'no-such-week':
      return `a dátumkód ${quote(warning.text)} (${warning.id}) egyik évben sem hét: marad, ahogy nyomtatva van`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) nem dátum`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}): nincs nap; a hónap utolsó napja számít`;
    case 'country-unlisted':
      return `${quote(warning.text)} nem országkód`;
    case 'msl-unlisted':
      return `${quote(warning.text)} nem MSL-szint`;
    case 'rule-unclear':
      return `a címkeszabály ${quote(warning.rule)} többféleképpen is illik: nem használt`;
    case 'full-ascii':
      return `${quote(warning.text)} teljes ASCII Code 39-nek látszik: ${quote(warning.meant)} lenne; állítsa be így a szkennert`;
    case 'gs1-unread':
      return `${quote(warning.text)}: itt nem ismert GS1-azonosító; szövegként megmarad`;
    case 'gs1-check-digit':
      return `hibás ellenőrző számjegy: ${quote(warning.text)}`;
  }
}

export const words: Sentences<typeof english> = { say: sayHu };
