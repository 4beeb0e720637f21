import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsDe: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'eigene Teilenummer',
  supplierPart: 'Teilenummer des Lieferanten',
  quantity: 'Menge',
  lot: 'Charge',
  dateCode: 'Datumscode',
  made: 'Herstellungswoche',
  expires: 'Verfalldatum',
  reel: 'Rolle',
  supplier: 'Lieferant',
  country: 'Land',
  msl: 'MSL-Stufe',
  order: 'Bestellung',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `„${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}“`;
}

function sayDe(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'von diesem Etikett wurde kein Code gelesen';
    case 'no-part-number':
      return 'keine Teilenummer auf diesem Etikett: sie muss von anderswo kommen';
    case 'header-damaged':
      return `der Anfang des Codes ist beschädigt: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `der Scanner sandte ${quote(warning.found)} anstelle der Trennzeichen (GS): so einstellen, dass er Steuerzeichen sendet`;
    case 'separators-mixed':
      return `die Trennzeichen sind verschieden (${warning.found.map(quote).join(', ')}): Scanner und Tastaturbelegung prüfen`;
    case 'separators-lost':
      return `in ${quote(warning.text)} fehlen Trennzeichen: nur Sicheres wurde gelesen; Scanner so einstellen, dass er Steuerzeichen sendet`;
    case 'trailer-uncertain':
      return `das letzte Zeichen von ${quote(warning.text)} kann die Endmarke des Codes sein`;
    case 'keyboard-layout':
      return `der Scanner tippt für eine andere Tastatur (${warning.layout}): ${quote(warning.text)} wurde nicht angenommen; Belegung einstellen und neu scannen`;
    case 'identifier-lower-case':
      return `der Bezeichner ${quote(warning.id)} kam in Kleinbuchstaben und wurde als ${warning.id.toUpperCase()} gelesen`;
    case 'identifier-unlisted':
      return `der Bezeichner ${warning.id} ist nicht bekannt: sein Wert wird behalten, nicht verwendet`;
    case 'no-identifier':
      return `${quote(warning.text)} hat keinen Bezeichner: als Text behalten`;
    case 'format-unread':
      return `Format ${warning.format} wird hier nicht gelesen: als Text behalten`;
    case 'tags-not-mh10':
      return `Kürzel aus zwei Buchstaben (${warning.tags.join(', ')}) anstelle von Datenbezeichnern`;
    case 'one-letter-tags':
      return 'Kürzel aus einem Buchstaben, gelesen als: R Rolle, P eigene Teilenummer, D Datum, L Charge, V Lieferant, Q Menge, S Teilenummer des Lieferanten';
    case 'blank-separated':
      return `in Stücken gelesen, an Leerzeichen getrennt: hat eine Teilenummer in ${quote(warning.text)} Leerzeichen, wird auch sie getrennt`;
    case 'value-may-go-on':
      return `${quote(warning.text)} gehört vielleicht zum Wert nach ${warning.id}: nicht gelesen`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} beginnt vielleicht mit einem Bezeichner oder ist eine bloße Nummer: eine Person muss sagen, was`;
    case 'confirmed-by-setup':
      return `${fieldsDe[warning.field]} ${quote(warning.value)} ist, wie die Rüstung es erwartet`;
    case 'conflict':
      return `das Etikett hat verschiedene Werte für ${fieldsDe[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `das Etikett hat eine zweite Charge, ${quote(warning.text)}: die Rolle trägt beide`;
    case 'quantity-unreadable':
      return `die Menge ${quote(warning.text)} lässt sich nicht ohne Raten lesen: zählen oder tippen`;
    case 'quantity-marks':
      return `die Menge ${quote(warning.text)} wurde als ${warning.quantity} gelesen`;
    case 'date-code-unclear':
      return `der Datumscode ${quote(warning.text)} (${warning.id}) ist nicht eindeutig: bleibt wie gedruckt`;
    case 'no-such-week':
      return `der Datumscode ${quote(warning.text)} (${warning.id}) ist keine Woche eines Jahres: bleibt wie gedruckt`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) ist kein Datum`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) hat keinen Tag: der letzte des Monats zählt`;
    case 'country-unlisted':
      return `${quote(warning.text)} ist kein Ländercode`;
    case 'msl-unlisted':
      return `${quote(warning.text)} ist keine MSL-Stufe`;
    case 'rule-unclear':
      return `die Etikettenregel ${quote(warning.rule)} passt auf mehr als eine Weise: nicht verwendet`;
    case 'full-ascii':
      return `${quote(warning.text)} sieht nach Code 39 in Full ASCII aus: Es wäre ${quote(warning.meant)}; Scanner darauf einstellen`;
    case 'gs1-unread':
      return `${quote(warning.text)} hat einen GS1-Bezeichner, der hier nicht bekannt ist: als Text behalten`;
    case 'gs1-check-digit':
      return `die Prüfziffer von ${quote(warning.text)} ist falsch`;
  }
}

export const words: Sentences<typeof english> = { say: sayDe };
