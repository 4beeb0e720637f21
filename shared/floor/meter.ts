// What did a meter show, and what does that prove of a part? Method: the text as it was typed, by a hand or by the meter; its last place says how fine
// it reads. The reading is judged with the meter's uncertainty and the plant's guard band (measured.ts). Refused: a bare number without its text,
// of which nobody can tell 3.5 from 3.50.

import { twelveFigures } from '../kit/figures.ts';
import { judgeReading, uncertaintyOf } from './measured.ts';
import { type ValueUnit, valueUnits } from './part-value.ts';
import { guardOf, type MeasuredPart, type ValueCheck, type WantedValue } from './value-check.ts';
import type { Source } from './vocabulary.ts';

/** What a meter showed, in `unit`; `step`: what its last place stands for, in that unit. */
export interface Shown {
  readonly quantity: number;
  readonly unit: ValueUnit;
  readonly step: number;
}

/** Judges a reading for a wanted value; null where it is of another quantity: farads where ohms are wanted. */
export function judgePart(
  { part, rule }: ValueCheck,
  wanted: WantedValue,
  shown: Shown,
  via: Source,
): MeasuredPart | null {
  const scale = scaleTo(shown.unit, wanted.unit);
  if (scale === null) return null;
  const quantity = twelveFigures(shown.quantity * scale);
  const fixed = twelveFigures(rule.digits * shown.step * scale);
  const uncertainty = uncertaintyOf(quantity, { percent: rule.percent, fixed });
  const guard = guardOf(uncertainty, rule);
  const verdict = judgeReading({ value: quantity, uncertainty }, wanted, guard);
  return { part, ...wanted, quantity, uncertainty, guard, verdict, via };
}

/** What one of a unit is in another of the same quantity; null where they are not. */
function scaleTo(unit: ValueUnit, other: ValueUnit): number | null {
  return unit.at(-1) === other.at(-1) ? valueUnits[unit] / valueUnits[other] : null;
}

const bases: Readonly<Record<string, ValueUnit>> = { Ω: 'Ω', F: 'µF', H: 'mH', V: 'V' };
const prefixes: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  µ: 1e-6,
  m: 1e-3,
  '': 1,
  k: 1e3,
  K: 1e3,
  M: 1e6,
  G: 1e9,
};
const METER =
  /^([+-]?)\s*(\d{1,12})(?:[.,](\d{1,12}))?(?:[eE]([+-]?\d{1,3}))?\s*([pnuµmkKMG]?)\s*([ΩFHV]|[Oo]hms?|OHMS?)?$/;

/** From here on a figure is no reading: over their range bench meters type 9.9E+37 (SCPI, from memory). */
const NO_READING = 1e30;

function meterParts(text: string): RegExpExecArray | null {
  return METER.exec(text.normalize('NFKC').replaceAll('\u03bc', 'µ').replaceAll('\u2126', 'Ω').trim());
}

/** True for a text that looks like a meter's, a reading or not: `10.02`, `9.9E37`. */
export function isMeterText(text: string): boolean {
  return meterParts(text) !== null;
}

/** True where a text names its unit beyond doubt: `10.02 kΩ`, `99 nF`. `2432F` may as well be a lot. */
export function namesUnit(text: string): boolean {
  const [, , , part, power, prefix = '', word = ''] = meterParts(text) ?? [];
  if (word === '') return false;
  return part !== undefined || power !== undefined || /^[pnuµmk]$/.test(prefix) || !/^[FHV]$/.test(word);
}

/**
 * What a meter typed, or a person read off it: `10.02`, `10,02 kΩ`, `+1.00200E+04`, `99.1 nF`. A bare figure is in `unit`; one with an exponent
 * and nothing behind it in ohms, farads or henries, as meters type them. Null where the text is no
 * reading, or says that the meter is over its range.
 */
export function readMeter(text: string, unit: ValueUnit): Shown | null {
  const match = meterParts(text);
  if (match === null) return null;
  const [, sign = '', whole = '', part = '', power, prefix = '', word = ''] = match;
  const tens = Number(power ?? 0);
  const figure = Number(`${sign}${whole}.${part === '' ? '0' : part}e${tens}`);
  const last = Number(`1e${tens - part.length}`);
  const letter = word === '' ? unit.at(-1) : /^[Oo]/.test(word) ? 'Ω' : word;
  const base = bases[letter ?? ''];
  if (base === undefined || !(Math.abs(figure) < NO_READING) || !(last > 0 && last < NO_READING)) return null;
  const isBare = word === '' && prefix === '' && power === undefined;
  if (isBare) return { quantity: figure, unit, step: last };
  const scale = (prefixes[prefix] ?? 1) / valueUnits[base];
  return { quantity: twelveFigures(figure * scale), unit: base, step: twelveFigures(last * scale) };
}
