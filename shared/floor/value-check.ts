// Must a part be measured before its reel feeds, what should it measure, and what does a reading prove?
// Method: a class of parts is what their numbers begin with, as for age limits; the value is what the setup's note or the plant's list states, as a
// figure or as a code of IEC 60062; the reading is judged with the meter's uncertainty and the plant's guard band (measured.ts).
// Refused: a nominal value typed at the slot; whoever holds the wrong reel would type what the meter shows.

import { statedValues } from './look-alikes.ts';
import { judgeReading, type Limits, limitsOf, uncertaintyOf } from './measured.ts';
import { type ExpectedValue, type ValueUnit, valueUnits } from './part-value.ts';
import type { FloorState } from './state.ts';
import type { ValueRule } from './store-state.ts';
import type { Source, Verdict } from './vocabulary.ts';

/** A value that a part may have, with its limits; all in `unit`. */
export interface WantedValue extends Limits {
  readonly nominal: number;
  readonly unit: ValueUnit;
}

/** Why a value cannot be checked: nothing states it, or no tolerance is stated with it. */
export type ValueLack = 'value' | 'tolerance';

/** What the line wants measured of a part. */
export interface ValueCheck {
  readonly part: string;
  readonly rule: ValueRule;
  /** More than one where a code may be read in several ways: a person says which. Empty where `lack` says why. */
  readonly wanted: readonly WantedValue[];
  readonly lack: ValueLack | null;
}

/** What a meter showed, in `unit`; `step`: what its last place stands for, in that unit. */
export interface Shown {
  readonly quantity: number;
  readonly unit: ValueUnit;
  readonly step: number;
}

/** A measurement of a part, judged; all figures in `unit`, as the log has it. */
export interface MeasuredPart extends Omit<WantedValue, 'unit'> {
  readonly unit: string;
  readonly part: string;
  readonly quantity: number;
  readonly uncertainty: number;
  /** The band kept from each limit. */
  readonly guard: number;
  readonly verdict: Verdict;
  readonly via: Source;
}

/** The check that a line asks of a part; null where it asks none. `note`: what the setup says of the slot. */
export function valueCheckOf(
  state: FloorState,
  line: string,
  of: { readonly part: string; readonly note?: string | undefined },
): ValueCheck | null {
  const rule = state.valueRules.get(line);
  const number = of.part.toUpperCase();
  const classes = rule?.begins.filter((begins) => number.startsWith(begins.toUpperCase())) ?? [];
  if (rule === undefined || classes.length === 0) return null;
  const stated = statedValues(state, of);
  const wanted = stated.flatMap((value) => toWanted(value) ?? []);
  // Of a class that somebody named each part is checked; of all parts together only those that have a value.
  if (stated.length === 0 && classes.every((begins) => begins === '')) return null;
  const lack = wanted.length > 0 ? null : stated.length === 0 ? 'value' : 'tolerance';
  return { part: of.part, rule, wanted, lack };
}

/** Null where no tolerance is stated, or where a share of nothing leaves no room: 0 Ω ± 5 %. */
function toWanted({ nominal, unit, plusPercent, minusPercent }: ExpectedValue): WantedValue | null {
  if (plusPercent === null || minusPercent === null || nominal === 0) return null;
  return { nominal, unit, ...limitsOf(nominal, { plus: plusPercent, minus: minusPercent }) };
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
  const quantity = twelve(shown.quantity * scale);
  const fixed = twelve(rule.digits * shown.step * scale);
  const uncertainty = uncertaintyOf(quantity, { percent: rule.percent, fixed });
  const guard = twelve((uncertainty * rule.guard) / 100);
  const verdict = judgeReading({ value: quantity, uncertainty }, wanted, guard);
  return { part, ...wanted, quantity, uncertainty, guard, verdict, via };
}

function twelve(value: number): number {
  return Number(value.toPrecision(12));
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

/**
 * What a meter typed, or a person read off it: `10.02`, `10,02 kΩ`, `+1.00200E+04`, `99.1 nF`. A bare figure is in `unit`; one with an exponent
 * and nothing behind it in ohms, farads or henries, as meters type them. Null where the text is no reading.
 */
export function readMeter(text: string, unit: ValueUnit): Shown | null {
  const plain = text.normalize('NFKC').replaceAll('\u03bc', 'µ').replaceAll('\u2126', 'Ω').trim();
  const match = METER.exec(plain);
  if (match === null) return null;
  const [, sign = '', whole = '', part = '', power, prefix = '', word = ''] = match;
  const tens = Number(power ?? 0);
  const figure = Number(`${sign}${whole}.${part === '' ? '0' : part}e${tens}`);
  const last = Number(`1e${tens - part.length}`);
  const letter = word === '' ? unit.at(-1) : /^[Oo]/.test(word) ? 'Ω' : word;
  const base = bases[letter ?? ''];
  if (base === undefined || !Number.isFinite(figure)) return null;
  const isBare = word === '' && prefix === '' && power === undefined;
  if (isBare) return { quantity: figure, unit, step: last };
  const scale = (prefixes[prefix] ?? 1) / valueUnits[base];
  return { quantity: twelve(figure * scale), unit: base, step: twelve(last * scale) };
}
