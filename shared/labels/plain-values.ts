// What a component's value says where it is printed in plain: a number, perhaps a prefix of the SI and a unit.
// Method: number, prefix and unit are told apart by one pattern; what is left open (no unit, `4,700`) gives every reading.
// Refused: a best guess for a number without a unit, which is ohms on a resistor and picofarads or microfarads on a capacitor.

import { seriesOf } from './series.ts';
import { readValueCode, type ValueKind, type ValueReading, type ValueTolerance } from './value-codes.ts';

/** Longer texts are no value. */
const LONGEST_TEXT = 32;

// Prefixes of the SI (ISO 80000-1). `K` for kilo and `U`, `N`, `P` in capitals are common practice; `MF` has stood for
// microfarads and for millifarads, so a capital M is no prefix of farads.
const OHM_POWERS: ReadonlyMap<string, number> = new Map([
  ['', 0],
  ['u', -6],
  ['\u00b5', -6],
  ['m', -3],
  ['k', 3],
  ['K', 3],
  ['M', 6],
  ['G', 9],
  ['T', 12],
]);
const FARAD_POWERS: ReadonlyMap<string, number> = new Map([
  ['', 0],
  ['p', -12],
  ['P', -12],
  ['n', -9],
  ['N', -9],
  ['u', -6],
  ['U', -6],
  ['\u00b5', -6],
  ['m', -3],
]);

/** A number without prefix and unit on a capacitor counts picofarads or microfarads (common practice). */
const BARE_FARAD_POWERS = [-12, -6];

const PLAIN =
  /^(\d{1,6})(?:([.,])(\d{1,6}))?(\s*)([pPnNuU\u00b5mkKMGT]?)\s*(\u03a9|[Oo]hms?|OHMS?|R|F)?(?:\s*\u00b1?\s*(\d{1,3}(?:[.,]\d{1,3})?)\s*%)?$/;

interface Printed {
  readonly prefix: string;
  readonly unit: string;
  readonly tolerance: ValueTolerance | null;
}

/** The text with one micro sign and one ohm sign of the two that each has. */
function withOneSign(text: string): string {
  return text.trim().replaceAll('\u03bc', '\u00b5').replaceAll('\u2126', '\u03a9');
}

function readingsOf(digits: number, power: number, printed: Printed): ValueReading[] {
  const { prefix, unit, tolerance } = printed;
  const readings: ValueReading[] = [];
  const add = (kind: ValueKind, si: 'Ω' | 'F', tens: number) => {
    // Through the decimal notation, so that 47 × 10^-10 is the nearest double to 4.7e-9.
    const value = Number(`${digits}e${power + tens}`);
    readings.push({ kind, value, unit: si, tolerance, code: 'plain', series: seriesOf(digits) });
  };
  const ohms = OHM_POWERS.get(prefix);
  if (unit !== 'F' && ohms !== undefined && !(unit === '' && prefix !== '' && ohms < -3)) {
    add('resistor', 'Ω', ohms);
  }
  if (unit !== 'F' && unit !== '') return readings;
  if (unit === '' && prefix === '') for (const tens of BARE_FARAD_POWERS) add('capacitor', 'F', tens);
  else {
    const farads = FARAD_POWERS.get(prefix);
    if (farads !== undefined) add('capacitor', 'F', farads);
  }
  return readings;
}

/**
 * Every reading of a value printed in plain: `47`, `4.7k`, `4,7 kΩ`, `100 nF`, `0.1uF`, `10 kOhm 5 %`. Empty where the text is
 * none, and for three digits and more without mark, prefix or unit, and for one letter right behind a whole number: those are
 * codes, which readValueCode() reads. A comma or point before exactly three digits may be a thousands mark: both readings.
 */
export function readPlainValue(text: string, kind?: ValueKind): readonly ValueReading[] {
  const printed = withOneSign(text);
  const match = printed.length > LONGEST_TEXT ? null : PLAIN.exec(printed);
  if (match === null) return [];
  const [, whole = '', mark, part = '', blank = '', prefix = '', unit = '', limit] = match;
  if (mark === undefined && limit === undefined) {
    const behind = prefix + unit;
    if (behind.length === 1 && blank === '' && unit !== '\u03a9') return [];
    if (behind === '' && (whole.length > 2 || whole.startsWith('0'))) return [];
  }
  const share = limit === undefined ? null : Number(limit.replace(',', '.'));
  const tolerance: ValueTolerance | null = share === null ? null : { plus: share, minus: share, unit: '%' };
  const rest: Printed = { prefix, unit, tolerance };
  const readings = readingsOf(Number(whole + part), -part.length, rest);
  // `4,700`: a group of three digits behind a number that needs no more of them.
  const grouped = part.length === 3 && whole.length <= 3 && !whole.startsWith('0');
  if (grouped) readings.push(...readingsOf(Number(whole + part), 0, rest));
  return readings.filter((reading) => kind === undefined || reading.kind === kind);
}

/** Why a text has no reading as a value. */
export type NoValueReason =
  | { readonly code: 'empty' }
  | { readonly code: 'too-long'; readonly longest: number }
  /** A value of something else, by its unit: henry, volt, ampere, watt, hertz. */
  | { readonly code: 'another-quantity'; readonly unit: string }
  /** It has readings, none of the kind asked for. */
  | { readonly code: 'another-kind'; readonly kind: ValueKind }
  | { readonly code: 'no-value' };

/** Says why neither readValueCode() nor readPlainValue() gave a reading of `kind` for this text. */
export function whyNoValue(text: string, kind?: ValueKind): NoValueReason {
  const printed = withOneSign(text);
  if (printed === '') return { code: 'empty' };
  if (printed.length > LONGEST_TEXT) return { code: 'too-long', longest: LONGEST_TEXT };
  const other = /^\d+(?:[.,]\d+)?\s*[pnu\u00b5mkM]?(Hz|[HVAW])(?![A-Za-z0-9])/.exec(printed)?.[1];
  if (other !== undefined) return { code: 'another-quantity', unit: other };
  const found = readValueCode(printed)[0] ?? readPlainValue(printed)[0];
  return found !== undefined && found.kind !== kind
    ? { code: 'another-kind', kind: found.kind }
    : { code: 'no-value' };
}
