// What a GS1 element string says, and back.
// Method: the application identifier's length follows from its first digits, the value's length is predefined for a
// closed list of identifiers (GS1 General Specifications, "element strings with predefined length"); all others end at
// FNC1, which scanners send as GS (0x1D), or at the end. Refused: guessing where a value ends after a lost FNC1.

import { isDigit, isDigits } from './characters.ts';
import type { Basket, ElementKind, LabelElement } from './elements.ts';
import type { LabelFieldName } from './reading.ts';

const GS = '\x1d';

interface Application {
  readonly title: string;
  readonly max: number;
  readonly field: LabelFieldName | null;
  readonly rank: number;
  readonly kind: ElementKind;
  readonly digits: boolean;
}

type Row = readonly [
  ai: string,
  title: string,
  max: number,
  digits?: boolean,
  field?: LabelFieldName,
  rank?: number,
  kind?: ElementKind,
];

// Structure after the GS1 list of application identifiers as generated at
// https://arthurdejong.org/git/python-stdnum/plain/stdnum/gs1_ai.dat (from gs1.org, 2024-03-17); titles in our words.
const ROWS: readonly Row[] = [
  ['00', 'logistic unit (SSCC)', 18, true, 'reel', 5],
  ['01', 'trade item (GTIN)', 14, true],
  ['02', 'contained trade item (GTIN)', 14, true],
  ['10', 'batch or lot', 20, false, 'lot', 0],
  ['11', 'production date YYMMDD', 6, true, 'dateCode', 4, 'gs1-date'],
  ['12', 'due date YYMMDD', 6, true],
  ['13', 'packaging date YYMMDD', 6, true],
  ['15', 'best before date YYMMDD', 6, true, 'expires', 1, 'gs1-date'],
  ['16', 'sell by date YYMMDD', 6, true],
  ['17', 'expiry date YYMMDD', 6, true, 'expires', 0, 'gs1-date'],
  ['20', 'variant', 2, true],
  ['21', 'serial number', 20, false, 'reel', 4],
  ['22', 'consumer product variant', 20],
  ['235', 'third party extension of the GTIN', 28],
  ['240', 'additional id assigned by the maker', 30, false, 'supplierPart', 0],
  ['241', 'part number assigned by the customer', 30, false, 'part', 0],
  ['242', 'made-to-order variation', 6, true],
  ['243', 'packaging component', 20],
  ['250', 'secondary serial number', 30],
  ['251', 'source entity', 30],
  ['253', 'document id', 30],
  ['254', 'location extension', 20],
  ['30', 'count of items', 8, true, 'quantity', 0, 'quantity'],
  ['37', 'count of items in the logistic unit', 8, true, 'quantity', 1, 'quantity'],
  ['400', "customer's purchase order", 30, false, 'order', 0],
  ['401', 'consignment', 30],
  ['402', 'shipment', 17, true],
  ['403', 'routing code', 30],
  ['410', 'ship to (GLN)', 13, true],
  ['411', 'bill to (GLN)', 13, true],
  ['412', 'purchased from (GLN)', 13, true],
  ['413', 'ship for (GLN)', 13, true],
  ['414', 'physical location (GLN)', 13, true],
  ['415', 'invoicing party (GLN)', 13, true],
  ['416', 'production location (GLN)', 13, true],
  ['417', 'party (GLN)', 13, true],
  ['420', 'ship to postal code', 20],
  ['422', 'country of origin, ISO 3166 numeric', 3, true],
  ['7003', 'expiry date and time', 10, true],
  ['8005', 'price per unit', 6, true],
  ['8008', 'production date and time', 12, true],
  ['8020', 'payment slip reference', 25],
];

const APPLICATIONS: ReadonlyMap<string, Application> = new Map(
  ROWS.map(([ai, title, max, digits = false, field, rank = 0, kind = 'text']) => [
    ai,
    { title, max, digits, field: field ?? null, rank, kind },
  ]),
);

/** Length of the identifier that begins with these two digits (GS1 General Specifications); 0 = not assigned. */
function applicationLength(two: number): 0 | 2 | 3 | 4 {
  if (two <= 3 || (two >= 10 && two <= 22) || two === 30 || two === 37 || two >= 90) return 2;
  if ((two >= 23 && two <= 25) || (two >= 40 && two <= 42) || two === 71) return 3;
  if ((two >= 31 && two <= 36) || two === 39 || two === 43) return 4;
  return two === 70 || two === 72 || (two >= 80 && two <= 82) ? 4 : 0;
}

/** Length of the value where it is predefined, so that no FNC1 follows; 0 = it ends at FNC1 or at the end. */
function predefinedLength(two: number): number {
  if (two === 0) return 18;
  if (two >= 1 && two <= 3) return 14;
  if (two === 4) return 16;
  if (two >= 11 && two <= 19) return 6;
  if (two === 20) return 2;
  if (two >= 31 && two <= 36) return 6;
  return two === 41 ? 13 : 0;
}

/** Whether a GTIN, SSCC or GLN ends in the check digit that GS1 prescribes (weights 3, 1 from the right). */
export function hasGs1CheckDigit(digits: string): boolean {
  if (!isDigits(digits)) return false;
  let sum = 0;
  for (let at = 0; at < digits.length - 1; at += 1) {
    sum += (digits.charCodeAt(digits.length - 2 - at) - 48) * (at % 2 === 0 ? 3 : 1);
  }
  return (10 - (sum % 10)) % 10 === digits.charCodeAt(digits.length - 1) - 48;
}

/** What of an element string could be read: the elements, and from where on it could not (its length if all was). */
export interface Gs1Parse {
  readonly elements: readonly LabelElement[];
  readonly end: number;
}

/** Reads an element string without its leading symbology identifier or FNC1. Stops where it follows no rule. */
export function parseGs1(text: string): Gs1Parse {
  const elements: LabelElement[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] === GS) {
      at += 1;
      continue;
    }
    const read = readElement(text, at);
    if (read === null) break;
    elements.push(read.element);
    at = read.end;
  }
  return { elements, end: at };
}

function readElement(text: string, at: number): { element: LabelElement; end: number } | null {
  if (!isDigit(text.charCodeAt(at)) || !isDigit(text.charCodeAt(at + 1))) return null;
  const two = Number(text.slice(at, at + 2));
  const length = applicationLength(two);
  const ai = text.slice(at, at + length);
  if (length === 0 || ai.length !== length || !isDigits(ai)) return null;
  const from = at + length;
  const fixed = predefinedLength(two);
  let end = text.indexOf(GS, from);
  if (end === -1) end = text.length;
  if (fixed > 0) {
    if (end - from < fixed) return null;
    end = from + fixed;
  }
  const element = gs1Element(ai, text.slice(from, end), fixed > 0);
  return element === null ? null : { element, end };
}

/** Makes an element of an application identifier and its value; null where the value breaks the identifier's rule. */
export function gs1Element(ai: string, value: string, predefined = false): LabelElement | null {
  const known = APPLICATIONS.get(ai);
  const max = known?.max ?? (predefined ? value.length : 90);
  if (value === '' || value.length > max) return null;
  if ((known?.digits === true || predefined) && !isDigits(value)) return null;
  return {
    id: ai,
    title: known?.title ?? 'application identifier not in the table',
    value,
    field: known?.field ?? null,
    rank: known?.rank ?? 0,
    kind: known?.kind ?? 'text',
  };
}

/** Puts what of an element string was read into the basket; what follows no rule is kept as text, with a warning. */
export function collectGs1(text: string, { elements, end }: Gs1Parse, basket: Basket): void {
  for (const element of elements) {
    const checked = element.id === '00' || element.id === '01' || element.id === '02';
    if (checked && !hasGs1CheckDigit(element.value)) {
      basket.warnings.push({ code: 'gs1-check-digit', text: element.value });
    }
    basket.elements.push(element);
  }
  if (end < text.length) {
    const rest = text.slice(end);
    basket.warnings.push({ code: 'gs1-unread', text: rest });
    basket.unidentified.push(rest);
  }
}

/**
 * Reads the human-readable form, `(01)09501101530003(10)LOT`, as people type it. null where it is not one: a bracket
 * that opens no known identifier belongs to the value before it.
 */
export function parseGs1Brackets(text: string): readonly LabelElement[] | null {
  const marks: { at: number; ai: string; from: number }[] = [];
  for (let at = text.indexOf('('); at !== -1; at = text.indexOf('(', at + 1)) {
    const close = at + text.slice(at, at + 6).indexOf(')');
    const ai = text.slice(at + 1, close);
    if (close < at || !isDigits(ai) || applicationLength(Number(ai.slice(0, 2))) !== ai.length) continue;
    marks.push({ at, ai, from: close + 1 });
  }
  if (marks[0]?.at !== 0) return null;
  const elements: LabelElement[] = [];
  for (const [index, mark] of marks.entries()) {
    const element = gs1Element(mark.ai, text.slice(mark.from, marks[index + 1]?.at ?? text.length).trim());
    if (element === null) return null;
    elements.push(element);
  }
  return elements;
}

/** Writes an element string: FNC1 as GS after every value whose length is not predefined, except the last. */
export function formatGs1(fields: readonly { readonly id: string; readonly value: string }[]): string {
  let text = '';
  for (const [index, { id, value }] of fields.entries()) {
    const fixed = predefinedLength(Number(id.slice(0, 2)));
    text += id + value;
    if (fixed === 0 && index < fields.length - 1) text += GS;
  }
  return text;
}
