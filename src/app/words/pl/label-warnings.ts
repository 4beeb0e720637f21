import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsPl: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'indeks własny',
  supplierPart: 'indeks dostawcy',
  quantity: 'ilość',
  lot: 'partia',
  dateCode: 'date code',
  made: 'tydzień produkcji',
  expires: 'termin zużycia',
  reel: 'rolka',
  supplier: 'dostawca',
  country: 'kraj',
  msl: 'poziom MSL',
  order: 'zamówienie',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `„${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayPl(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'z tej etykiety nie odczytano żadnego kodu';
    case 'no-part-number':
      return 'na tej etykiecie nie ma indeksu: musi przyjść skądinąd';
    case 'header-damaged':
      return `początek kodu jest uszkodzony: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `skaner wysłał ${quote(warning.found)} zamiast separatorów (GS): ustaw go, by wysyłał znaki sterujące`;
    case 'separators-mixed':
      return `separatory się różnią (${warning.found.map(quote).join(', ')}): sprawdź skaner i jego układ klawiatury`;
    case 'separators-lost':
      return `w ${quote(warning.text)} brakuje separatorów: odczytano tylko to, co pewne; ustaw skaner, by wysyłał znaki sterujące`;
    case 'trailer-uncertain':
      return `ostatni znak ${quote(warning.text)} może być znakiem końca kodu`;
    case 'keyboard-layout':
      return `skaner pisze dla innej klawiatury (${warning.layout}): ${quote(warning.text)} nie przyjęto; ustaw układ i zeskanuj ponownie`;
    case 'identifier-lower-case':
      return `identyfikator ${quote(warning.id)} przyszedł małymi literami i odczytano go jako ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `identyfikator ${warning.id} jest nieznany: jego wartość jest zachowana, nieużywana`;
    case 'no-identifier':
      return `${quote(warning.text)} nie ma identyfikatora: zachowano jako tekst`;
    case 'format-unread':
      return `format ${warning.format} nie jest tu czytany: zachowano jako tekst`;
    case 'tags-not-mh10':
      return `znaczniki dwuliterowe (${warning.tags.join(', ')}) zamiast identyfikatorów danych`;
    case 'one-letter-tags':
      return 'znaczniki jednoliterowe, czytane tak: R rolka, P indeks własny, D data, L partia, V dostawca, Q ilość, S indeks dostawcy';
    case 'blank-separated':
      return `czytane w kawałkach, cięte na spacjach: jeśli indeks w ${quote(warning.text)} ma spacje, też jest cięty`;
    case 'value-may-go-on':
      return `${quote(warning.text)} może należeć do wartości po ${warning.id}: nieodczytane`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} może zaczynać się od identyfikatora albo być samą liczbą: człowiek musi powiedzieć, co to`;
    case 'confirmed-by-setup':
      return `${fieldsPl[warning.field]} ${quote(warning.value)}: tak, jak oczekuje setup`;
    case 'conflict':
      return `etykieta ma różne wartości (${fieldsPl[warning.field]}): ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `etykieta ma drugą partię, ${quote(warning.text)}: rolka zawiera obie`;
    case 'quantity-unreadable':
      return `ilości ${quote(warning.text)} nie da się odczytać bez zgadywania: policz ją lub wpisz`;
    case 'quantity-marks':
      return `ilość ${quote(warning.text)} odczytano jako ${warning.quantity}`;
    case 'date-code-unclear':
      return `date code ${quote(warning.text)} (${warning.id}) nie jest jasny: zachowano jak wydrukowano`;
    case 'no-such-week':
      return `date code ${quote(warning.text)} (${warning.id}) nie jest tygodniem żadnego roku: zachowano jak wydrukowano`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) to nie data`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) nie ma dnia: liczy się ostatni dzień miesiąca`;
    case 'country-unlisted':
      return `${quote(warning.text)} to nie kod kraju`;
    case 'msl-unlisted':
      return `${quote(warning.text)} to nie poziom MSL`;
    case 'rule-unclear':
      return `reguła etykiety ${quote(warning.rule)} pasuje na więcej niż jeden sposób: nieużyta`;
    case 'full-ascii':
      return `${quote(warning.text)} wygląda na Code 39 w pełnym ASCII: byłoby ${quote(warning.meant)}; ustaw tak skaner`;
    case 'gs1-unread':
      return `${quote(warning.text)} ma identyfikator GS1, który tu jest nieznany: zachowano jako tekst`;
    case 'gs1-check-digit':
      return `cyfra kontrolna ${quote(warning.text)} jest błędna`;
  }
}

export const words: Sentences<typeof english> = { say: sayPl };
