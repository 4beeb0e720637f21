// What the label of a package says: one message for a reader, the same facts for a person. Method: ISO/IEC 15434 format 06 with the data
// identifiers of ANSI MH10.8.2, as the labels of suppliers are written, so that whoever reads those reads these, this project's own reader first.
// Refused: a form of our own, which nobody else's reader would know.

import { parseWeek } from './dates.ts';
import { formatEnvelope } from './envelope.ts';
import type { LabelMsl } from './reading.ts';

/** What is known of a package when its label is printed; null: nobody said. */
export interface PrintedPackage {
  readonly reel: string;
  readonly part: string | null;
  readonly supplierPart: string | null;
  /** Parts left, whole. */
  readonly quantity: number | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  readonly msl: LabelMsl | null;
  /** Last day of use, `YYYY-MM-DD`. */
  readonly expires: string | null;
}

/** True for a value that an envelope can carry as it is: printable, no blank at either end, none of its separators. */
function fits(value: string | null): value is string {
  return (
    value !== null && value !== '' && value === value.trim() && !/[\u0000-\u001f\u007f-\u009f]/.test(value)
  );
}

/**
 * The elements of a package's label, in the order in which they are written. A value that an envelope cannot carry (control characters, blanks at an
 * end) is left out: the text beside the code still says it. P part, 1P supplier part, Q quantity, 1T lot, 10D week YYWW (9D: any other date
 * code), 13E moisture level, 14D last day of use, 3S package: by the public list of identifiers of MH10.8.2
 * (https://www.mhi.org/standards/mh10/dataidentifiers).
 */
export function packageElements(
  facts: PrintedPackage,
): readonly { readonly id: string; readonly value: string }[] {
  const { part, supplierPart, quantity, lot, dateCode, msl, expires, reel } = facts;
  const isWeek = dateCode !== null && /^\d{4}$/.test(dateCode) && parseWeek(dateCode, 'YYWW') !== null;
  const all = [
    ['3S', reel],
    ['P', part],
    ['1P', supplierPart],
    ['Q', quantity === null || !Number.isSafeInteger(quantity) || quantity < 0 ? null : String(quantity)],
    ['1T', lot],
    [isWeek ? '10D' : '9D', dateCode],
    ['13E', msl],
    ['14D', expires === null ? null : expires.replaceAll('-', '')],
  ] as const;
  return all.flatMap(([id, value]) => (fits(value) ? [{ id, value }] : []));
}

/** The message in the code of a package's label. */
export function packageMessage(facts: PrintedPackage): string {
  return formatEnvelope({ format: '06', fields: packageElements(facts) });
}
