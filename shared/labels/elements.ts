// One identified piece of a label on its way into a reading, and the basket that parsers put what they find into.
// Parsers only identify; what the values mean together is decided in one place, gather.ts.

import { IDENTIFIERS, type Identifier, identifierTitle } from './identifiers.ts';
import type { LabelField, LabelFieldName, LabelQuestion } from './reading.ts';
import type { LabelWarning } from './warnings.ts';

/** How the value of an element is to be read: free text, a number of parts, a date in a format, or a closed list. */
export type ElementKind =
  | 'text'
  | 'quantity'
  | 'country'
  | 'msl'
  /** A date whose format the label does not name. */
  | 'code'
  | 'YYWW'
  | 'YYYYWW'
  | 'YYWWYYWW'
  | 'YYMMDD'
  | 'YYYYMMDD'
  | 'DDMMYY'
  | 'DDMMYYYY'
  | 'MMDDYY'
  | 'YYDDD'
  /** YYMMDD in which the day may be 00. */
  | 'gs1-date'
  /** YYYYMMDD, then an X12 qualifier that says which date. */
  | 'qualified-date';

/** One identified piece: what it is, and which field of the reading it fills, at which preference (0 first). */
export interface LabelElement extends LabelField {
  readonly field: LabelFieldName | null;
  readonly rank: number;
  readonly kind: ElementKind;
}

/** What parsers have found so far. */
export interface Basket {
  readonly elements: LabelElement[];
  readonly unidentified: string[];
  readonly ambiguous: LabelQuestion[];
  readonly warnings: LabelWarning[];
  readonly rules: string[];
}

/** An empty basket. */
export function emptyBasket(): Basket {
  return { elements: [], unidentified: [], ambiguous: [], warnings: [], rules: [] };
}

const DATE_KINDS: Readonly<Record<string, ElementKind>> = {
  D: 'YYMMDD',
  '1D': 'DDMMYY',
  '2D': 'MMDDYY',
  '4D': 'YYDDD',
  '6D': 'qualified-date',
  '9D': 'code',
  '10D': 'YYWW',
  '11D': 'YYYYWW',
  '12D': 'YYYYMMDD',
  '13D': 'YYWWYYWW',
  '14D': 'YYYYMMDD',
  '15D': 'DDMMYYYY',
  '16D': 'YYYYMMDD',
  '17D': 'DDMMYYYY',
  '25D': 'YYYYMMDD',
};

/** Makes an element of an MH10.8.2 identifier of the table and its value. */
export function identifiedElement(identifier: Identifier, value: string): LabelElement {
  const { id, title, field, rank, kind } = identifier;
  return { id, title, value, field, rank, kind: kind === 'date' ? (DATE_KINDS[id] ?? 'text') : kind };
}

/** Makes an element of an MH10.8.2 identifier and its value; one that is not in the table fills no field. */
export function mh10Element(id: string, value: string): LabelElement {
  const known = IDENTIFIERS.get(id);
  if (known !== undefined) return identifiedElement(known, value);
  return { id, title: identifierTitle(id), value, field: null, rank: 0, kind: 'text' };
}
