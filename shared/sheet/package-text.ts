// Which package does a cell such as "LFBGA-256 17x17" or "48-QFN" name? Family, pins, body length and width.
// Method: the families' own short names, longest first, a number of pins beside the name, and two lengths with a cross between them. What the
// text does not say stays unknown: a house name says nothing here, and the worst class counts for it. Refused: looking package names up in a
// list of drawings, which no site's names follow.

import type { PackageFamily } from '../floor/vocabulary.ts';

/** What a text says of a package; null = it does not say. Lengths in mm. */
export interface PackageText {
  readonly family: PackageFamily | null;
  readonly pins: number | null;
  readonly bodyMm: readonly [number, number] | null;
}

// Longer names stand before those that they contain.
const names: readonly (readonly [name: RegExp, family: PackageFamily])[] = [
  [/[A-Z]{0,4}BGA|[A-Z]{0,3}CSP/, 'bga'],
  [/[A-Z]{0,2}LGA/, 'lga'],
  [/MQFP/, 'mqfp'],
  [/PQFP/, 'pqfp'],
  [/H?TQFP/, 'tqfp'],
  [/LQFP/, 'lqfp'],
  [/H?QFP/, 'qfp'],
  [/P?LCC/, 'plcc'],
  [/[A-Z]{0,3}(?:QFN|DFN|SON)|MLF/, 'qfn'],
  [/TSOP(?!P)/, 'tsop'],
  [/H?(?:SSOP|TSSOP|MSOP|VSSOP|SOP)/, 'sop'],
  [/SOICW?|SO(?=\W?\d)/, 'soic'],
  [/SOT|SC\W?70/, 'sot'],
];
const chipSizes = /^(?:CHIP|[RCLF])?\W?(?:01005|0201|0402|0603|0805|1206|1210|1812|2010|2220|2512)(?:\W|$)/;
const body = /(\d{1,3}(?:[.,]\d{1,3})?)\s*(?:MM)?\s*[X×*]\s*(\d{1,3}(?:[.,]\d{1,3})?)/;

/** Reads two lengths with a cross between ("17x17", "10,3 x 7,5 mm"); null where the text holds none, or none from 0.2 to 100 mm. */
export function parseBodySize(text: string): readonly [number, number] | null {
  const match = body.exec(text.toUpperCase());
  const sides = [match?.[1], match?.[2]].map((side) => Number((side ?? '').replace(',', '.')));
  const [length = 0, width = 0] = sides;
  return sides.every((side) => side >= 0.2 && side <= 100) ? [length, width] : null;
}

/** Reads a package's name; everything null where it names no family. */
export function parsePackageText(text: string): PackageText {
  const upper = text.toUpperCase();
  const bodyMm = parseBodySize(upper);
  // Lengths are no number of pins, even those that no body has.
  const bare = upper.replace(body, ' ');
  for (const [name, family] of names) {
    const around = `(?:(\\d{1,4})[-_ ]?)?(?<![A-Z])(?:${name.source})(?![A-Z])(?:[-_ ]?(\\d{1,4}))?`;
    const match = new RegExp(around).exec(bare);
    if (!match) continue;
    const pins = Number(match[2] ?? match[1] ?? 0);
    // The number behind a small-outline transistor names its outline.
    return { family, bodyMm, pins: family === 'sot' || pins === 0 ? null : pins };
  }
  return { family: chipSizes.test(upper) ? 'chip' : null, pins: null, bodyMm };
}
