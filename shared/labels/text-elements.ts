// Text element identifiers (envelope format 12): three letters, a blank, a value. From memory of ISO/IEC 15434 and of the
// public unique-identification guides that use it; the identifiers not listed keep their value and fill no field.

import type { Basket, ElementKind } from './elements.ts';
import type { LabelFieldName } from './reading.ts';

type Row = readonly [title: string, field?: LabelFieldName, rank?: number, kind?: ElementKind];

const TEXT_ELEMENTS: Readonly<Record<string, Row>> = {
  MFR: ['manufacturer code', 'supplier', 1],
  SPL: ['supplier code', 'supplier', 0],
  CAG: ['company code', 'supplier', 2],
  DUN: ['company by D-U-N-S number', 'supplier', 3],
  SER: ['serial number', 'reel', 3],
  SEQ: ['serial number within the part number', 'reel', 4],
  PNO: ['original part number', 'supplierPart', 0],
  PNR: ['current part number', 'supplierPart', 1],
  LOT: ['lot', 'lot', 0],
  LTN: ['lot', 'lot', 0],
  BAT: ['batch', 'lot', 0],
  QTY: ['quantity', 'quantity', 0, 'quantity'],
  DMF: ['date of manufacture YYYYMMDD', 'dateCode', 4, 'YYYYMMDD'],
  EXP: ['expiry date YYYYMMDD', 'expires', 0, 'YYYYMMDD'],
};

/** Reads the elements of a format 12 envelope into the basket. */
export function collectTextElements(texts: readonly string[], basket: Basket): void {
  for (const text of texts) {
    const id = text.slice(0, 3);
    const value = text.slice(4).trim();
    if (!/^[A-Z][A-Z0-9]{2}$/.test(id) || text[3] !== ' ') {
      basket.unidentified.push(text);
      basket.warnings.push({ code: 'no-identifier', text });
    } else if (value !== '') {
      const known = Object.hasOwn(TEXT_ELEMENTS, id) ? TEXT_ELEMENTS[id] : undefined;
      if (known === undefined) basket.warnings.push({ code: 'identifier-unlisted', id });
      const [title = 'text element not in the table', field = null, rank = 0, kind = 'text'] = known ?? [];
      basket.elements.push({ id, title, value, field, rank, kind });
    }
  }
}
