// Which data identifier stands in front of a text, what it means, and which question of a reel label it answers.
// Method: an identifier of ANSI MH10.8.2 is up to three digits (no leading zero) and one capital letter, so the longest
// digits-and-letter prefix is the only possible one inside an envelope; a table gives the meaning.
// Refused: a list of prefixes tried by length, which reads `31P` as `3`, `1P` when the table has a gap.

import type { LabelFieldName } from './reading.ts';

/** What kind of value follows an identifier. */
export type IdentifierKind = 'text' | 'quantity' | 'date' | 'country' | 'msl';

/** One identifier: meaning in short words, and the field of a reading that it fills. */
export interface Identifier {
  readonly id: string;
  readonly title: string;
  readonly kind: IdentifierKind;
  /** Which field it fills, or null. */
  readonly field: LabelFieldName | null;
  /** Order of preference among identifiers that fill the same field; 0 first. */
  readonly rank: number;
  /** Length of the value where the standard fixes it, else 0. */
  readonly length: number;
  /** Whether a separate code may carry it: it is one of reel labels whose look is not that of a common part number. */
  readonly separate: boolean;
}

type Row = readonly [
  id: string,
  title: string,
  kind?: IdentifierKind,
  field?: LabelFieldName | undefined,
  rank?: number,
  length?: number,
];

// Meanings after the public MH10.8.2 list (https://www.mhi.org/standards/mh10/dataidentifiers), in our words.
const ROWS: readonly Row[] = [
  ['B', 'container type'],
  ['1B', 'returnable container id'],
  ['C', 'continuation of the item code'],
  ['5C', "continuation of the supplier's item code"],
  ['D', 'date YYMMDD', 'date', 'dateCode', 6, 6],
  ['1D', 'date DDMMYY', 'date', 'dateCode', 7, 6],
  ['2D', 'date MMDDYY', 'date', 'dateCode', 8, 6],
  ['3D', 'date YDDD', 'date', undefined, 0, 4],
  ['4D', 'date YYDDD', 'date', 'dateCode', 9, 5],
  ['5D', 'date YYMMDD with qualifier'],
  ['6D', 'date YYYYMMDD with qualifier', 'date'],
  ['7D', 'date MMYY', 'date', undefined, 0, 4],
  ['8D', 'event date and time'],
  ['9D', 'date code', 'date', 'dateCode', 2],
  ['10D', 'date code, year and week YYWW', 'date', 'dateCode', 0, 4],
  ['11D', 'date code, year and week YYYYWW', 'date', 'dateCode', 1, 6],
  ['12D', 'date YYYYMMDD', 'date', 'dateCode', 3, 8],
  ['13D', 'oldest and newest week of making YYWWYYWW', 'date', 'dateCode', 10, 8],
  ['14D', 'expiry date YYYYMMDD', 'date', 'expires', 0, 8],
  ['15D', 'expiry date DDMMYYYY', 'date', 'expires', 1, 8],
  ['16D', 'production date YYYYMMDD', 'date', 'dateCode', 4, 8],
  ['17D', 'production date DDMMYYYY', 'date', 'dateCode', 5, 8],
  ['20D', 'inspection date DDMMYYYY', 'date', undefined, 0, 8],
  ['21D', 'required delivery date'],
  ['25D', 'best before date YYYYMMDD', 'date', 'expires', 2, 8],
  ['E', 'restricted substances category'],
  ['13E', 'moisture sensitivity level', 'msl', 'msl'],
  ['H', 'employee name or number'],
  ['I', 'vehicle identification number'],
  ['J', 'licence plate'],
  ['1J', 'licence plate, lowest level of packing'],
  ['2J', 'licence plate, holds other packages'],
  ['3J', 'licence plate, lowest level, with messages exchanged'],
  ['4J', 'licence plate, holds other packages, with messages exchanged'],
  ['5J', 'licence plate, mixed load'],
  ['6J', 'licence plate, same items'],
  ['K', "customer's purchase order", 'text', 'order', 0],
  ['1K', "supplier's order number", 'text', 'order', 1],
  ['2K', 'bill of lading'],
  ['3K', 'manifest number'],
  ['4K', 'line of the purchase order'],
  ['6K', 'shipment number'],
  ['7K', 'delivery sequence number'],
  ['8K', 'contract number'],
  ['10K', 'invoice number'],
  ['11K', 'packing list number'],
  ['14K', 'order number with line'],
  ['15K', 'kanban number'],
  ['16K', 'delivery document number'],
  ['L', 'storage location'],
  ['1L', 'location'],
  ['2L', 'ship-to location'],
  ['3L', 'ship-from location'],
  ['4L', 'country of origin', 'country', 'country', 0, 2],
  ['5L', 'ship-for location'],
  ['20L', 'location, first level'],
  ['21L', 'location, second level'],
  ['22L', 'location, third level'],
  ['23L', 'location, fourth level'],
  ['N', 'industry code'],
  ['P', 'part number assigned by the customer', 'text', 'part', 0],
  ['1P', 'part number assigned by the supplier', 'text', 'supplierPart', 0],
  ['2P', 'revision of the item'],
  ['3P', 'item code of manufacturer and item'],
  ['4P', 'item code'],
  ['5P', 'freight classification'],
  ['6P', 'combined item and quantity'],
  ['10P', 'hazardous material code'],
  ['20P', 'additional item code assigned by the customer'],
  ['21P', 'additional item code assigned by the customer with revision'],
  ['25P', 'item code with issuing agency'],
  ['30P', 'item id assigned by the supplier, first level'],
  ['31P', 'item id assigned by the supplier, second level'],
  ['32P', 'item id assigned by the supplier, third level'],
  ['33P', 'item id assigned by the supplier, fourth level (bin code)'],
  ['Q', 'quantity', 'quantity', 'quantity', 0],
  ['1Q', 'theoretical length or weight'],
  ['2Q', 'actual weight'],
  ['3Q', 'unit of measure'],
  ['4Q', 'gross amount'],
  ['5Q', 'net amount'],
  ['6Q', 'number of containers'],
  ['7Q', 'quantity with unit, as agreed'],
  ['8Q', 'container rated weight'],
  ['9Q', 'piece weight'],
  ['12Q', 'unit of measure and quantity'],
  ['13Q', 'number of packages'],
  ['S', 'serial number', 'text', 'reel', 3],
  ['1S', 'additional serial number'],
  ['2S', 'shipping notice number'],
  ['3S', 'unique package id', 'text', 'reel', 0],
  ['4S', 'package id, master pack of like items', 'text', 'reel', 1],
  ['5S', 'package id, master pack of unlike items', 'text', 'reel', 2],
  ['12S', 'label version or document type'],
  ['18S', 'unique item id: company and serial'],
  ['25S', 'unique item id: party and serial'],
  ['T', 'lot assigned by the customer', 'text', 'lot', 1],
  ['1T', 'lot assigned by the supplier', 'text', 'lot', 0],
  ['2T', 'lot code as agreed'],
  ['20T', 'count of lots'],
  ['30T', 'lot, first level, assigned by the supplier'],
  ['31T', 'lot, second level, assigned by the supplier'],
  ['V', 'supplier code assigned by the customer', 'text', 'supplier', 0],
  ['1V', 'supplier code assigned by the supplier', 'text', 'supplier', 1],
  ['2V', 'supplier by universal product code'],
  ['3V', 'manufacturer by company prefix'],
  ['4V', 'carrier'],
  ['10V', 'manufacturer location'],
  ['12V', 'manufacturer number'],
  ['18V', 'party id: issuing agency and company', 'text', 'supplier', 2],
  ['Z', 'as agreed between the parties'],
  ['1Z', 'as agreed between the parties'],
  ['2Z', 'as agreed between the parties'],
];

const SEPARATE: ReadonlySet<string> = new Set(
  'P 1P 2P 30P 31P 33P Q 7Q 13Q S 3S 4S 5S T 1T K 1K 4K 11K 15K 16K V 1V 18V L 4L 20L 21L 22L 23L D 6D 9D 10D 11D 12D 13D 14D 15D 16D 17D E 13E'.split(
    ' ',
  ),
);

/** The identifiers of MH10.8.2 known here, by id. */
export const IDENTIFIERS: ReadonlyMap<string, Identifier> = new Map(
  ROWS.map(([id, title, kind = 'text', field, rank = 0, length = 0]) => [
    id,
    { id, title, kind, field: field ?? null, rank, length, separate: SEPARATE.has(id) },
  ]),
);

/** A number for an identifier: its digits and its letter. A lookup by it needs no text cut out of the label. */
function numberOf(text: string, at: number, length: number): number {
  let digits = 0;
  for (let index = at; index < at + length - 1; index += 1)
    digits = digits * 10 + text.charCodeAt(index) - 48;
  return digits * 128 + text.charCodeAt(at + length - 1);
}

const BY_NUMBER: ReadonlyMap<number, Identifier> = new Map(
  [...IDENTIFIERS.values()].map((identifier) => [
    numberOf(identifier.id, 0, identifier.id.length),
    identifier,
  ]),
);

/** The known identifier of this length at `at`, as identifierLength() found it; undefined = it is not in the table. */
export function identifierAt(text: string, at: number, length: number): Identifier | undefined {
  return BY_NUMBER.get(numberOf(text, at, length));
}

/**
 * Length of the identifier that stands at `at`: up to three digits without a leading zero, then one capital letter
 * (also a small one where `anyCase`). 0 = none there.
 */
export function identifierLength(text: string, at: number, anyCase = false): number {
  let end = at;
  let char = text.charCodeAt(end);
  if (char === 48) return 0;
  while (end - at < 3 && char >= 48 && char <= 57) {
    end += 1;
    char = text.charCodeAt(end);
  }
  if (char >= 65 && char <= 90) return end - at + 1;
  return anyCase && char >= 97 && char <= 122 ? end - at + 1 : 0;
}

const CATEGORIES: Readonly<Record<string, string>> = {
  B: 'container',
  C: 'continuation',
  D: 'date',
  E: 'environment',
  F: 'looping',
  H: 'people',
  I: 'vehicle',
  J: 'licence plate',
  K: 'transaction',
  L: 'location',
  M: 'military',
  N: 'industry code',
  P: 'item',
  Q: 'measure',
  R: 'other',
  S: 'traceable entity',
  T: 'traceability of a lot',
  U: 'postal',
  V: 'party',
  W: 'activity',
  Y: 'internal use',
  Z: 'as agreed',
};

/** Title of an identifier; one that is not in the table gets its category's. `id` as MH10.8.2 writes it. */
export function identifierTitle(id: string): string {
  const known = IDENTIFIERS.get(id);
  if (known !== undefined) return known.title;
  const category = CATEGORIES[id.slice(-1)];
  return category === undefined ? 'identifier not in the table' : `${category} (not in the table)`;
}
