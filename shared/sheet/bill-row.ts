// What does one row of a bill of materials say: which part, at which designators, fitted or not?

import type { Side } from '../floor/vocabulary.ts';
import type { BillField } from './bill-fields.ts';
import { isBlankMark, parseList, parseNumber, parseSide } from './cells.ts';
import { listDesignators } from './designators.ts';
import { carriesNotFittedMark, isNotFittedMark, parseFitted, parseNotFitted } from './not-placed.ts';

/** What a part of a bill is called by: the site's number, a maker's number, an order number, or only its value. */
export const partNames = ['part', 'maker', 'order', 'value'] as const;

/** One of them. */
export type PartName = (typeof partNames)[number];

/** One row of a bill, with the rows that go on with it. */
export interface BillLine {
  readonly row: number;
  readonly designators: readonly string[];
  readonly part: string;
  readonly namedBy: PartName;
  readonly supplierParts: readonly string[];
  /** '' = not stated. */
  readonly value: string;
  readonly package: string;
  readonly description: string;
  readonly isFitted: boolean;
  readonly side: Side | null;
  /** Null = not stated, or not a number. */
  readonly quantity: number | null;
}

/** One row with its columns by field. */
export interface BillRowReader {
  readonly row: number;
  readonly text: (field: BillField) => string;
  readonly texts: (field: BillField) => readonly string[];
  readonly header: (field: BillField) => string | null;
  /** Whether empty cells of the column "fitted" mean no. */
  readonly blankIsNo: boolean;
  /** Whether the row stands under a heading that says "not fitted". */
  readonly isUnderNotFitted: boolean;
}

const filled = (text: string) => (isBlankMark(text) ? '' : text);

function isNotFitted(reader: BillRowReader): boolean {
  if (reader.isUnderNotFitted) return true;
  const fitted = reader.text('fitted');
  if (parseFitted(fitted) === false || (fitted === '' && reader.blankIsNo)) return true;
  if (parseNotFitted(reader.text('notFitted')) === true) return true;
  const marks = (['part', 'quantity', 'mount', 'item', 'value', 'note', 'description'] as const).map(
    reader.text,
  );
  return marks.concat(reader.texts('supplierParts')).some(isNotFittedMark);
}

/**
 * The text of a row that carries a mark of what is not fitted beside other words ("10k DNP", "R3: do not fit"); null where none does.
 */
export function carriedMark(
  reader: BillRowReader,
): { readonly field: BillField; readonly text: string } | null {
  for (const field of ['value', 'part', 'note', 'description'] as const) {
    const text = reader.text(field);
    if (carriesNotFittedMark(text)) return { field, text };
  }
  return null;
}

/** A quantity with a unit of pieces behind it ("12", "4,0", "3 pcs"); null where the cell is no number. */
export function parseCellQuantity(text: string): number | null {
  const plain = text.replace(/\s*(?:pcs?|pieces?|pzs?|uds?|stk|st(?:ü|ue)ck|ea(?:ch)?|x|×)\.?$/i, '');
  return parseNumber(plain, /^\d{1,3}[.,]0{1,2}$/.test(plain) ? 'length' : 'count');
}

function quantityOf(text: string): number | null {
  return text === '' || isBlankMark(text) ? null : parseCellQuantity(text);
}

/** Reads one row; `designators` empty where the row names none. */
export function readBillRow(reader: BillRowReader): BillLine {
  const lists = (field: 'supplierParts' | 'orderNumbers') => [
    ...new Set(
      reader
        .texts(field)
        .flatMap((text) => parseList(text, { careful: true }))
        .filter((entry) => !isNotFittedMark(entry)),
    ),
  ];
  const makers = lists('supplierParts');
  const orders = lists('orderNumbers');
  const value = filled(reader.text('value'));
  const names: readonly (readonly [PartName, string])[] = [
    ['part', filled(reader.text('part'))],
    ['maker', makers[0] ?? ''],
    ['order', orders[0] ?? ''],
    ['value', value],
    ['value', filled(reader.text('device')) || filled(reader.text('description'))],
  ];
  const [namedBy, part] = names.find(([, name]) => name !== '') ?? ['value', ''];
  const found = reader.texts('designators').filter((text) => !isNotFittedMark(text));
  const [first = [], ...more] = found.map(listDesignators);
  const others = new Set(more.flat().filter((name) => !first.includes(name)));
  const quantity = quantityOf(reader.text('quantity'));
  return {
    row: reader.row,
    designators: [...first, ...others],
    part,
    namedBy,
    supplierParts: makers.length > 0 ? makers : orders,
    value,
    package: filled(reader.text('package')),
    description: filled(reader.text('description')),
    isFitted: quantity !== 0 && !isNotFitted(reader),
    side: parseSide(reader.text('side')),
    quantity,
  };
}
