// Must a part be measured before its reel feeds, and what should it measure?
// Method: a class of parts is what their numbers begin with, as for age limits; the value is what the setup's note or the plant's list states, as a
// figure or as a code of IEC 60062. What a meter showed is read and judged in meter.ts.
// Refused: a nominal value typed at the slot; whoever holds the wrong reel would type what the meter shows.

import { twelveFigures } from '../kit/figures.ts';
import { judgeReading, type Limits, limitsOf, uncertaintyOf } from './measured.ts';
import type { ExpectedValue, ValueUnit } from './part-value.ts';
import type { FloorState } from './state.ts';
import { statedValues } from './stated-values.ts';
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
  // A voltage is what a part stands; no meter at the line shows it.
  const stated = statedValues(state, of).filter(({ unit }) => !unit.endsWith('V'));
  const wanted = stated.flatMap((value) => toWanted(value) ?? []);
  // Of a class that somebody named each part is checked; of all parts together only those that have a value.
  if (stated.length === 0 && classes.every((begins) => begins === '')) return null;
  const lack = wanted.length > 0 ? null : stated.length === 0 ? 'value' : 'tolerance';
  return { part: of.part, rule, wanted, lack };
}

/**
 * A measurement made before, judged by what is wanted now; null where it was made for another part, value or limits, so that it proves nothing of
 * these. Its uncertainty is never less than the meter's share by the rule of now; the band kept from the limits is that of now.
 */
export function judgedAnew({ part, rule, wanted }: ValueCheck, before: MeasuredPart): MeasuredPart | null {
  const isWanted = ({ nominal, unit, least, most }: WantedValue) =>
    nominal === before.nominal && unit === before.unit && least === before.least && most === before.most;
  const limits = wanted.find(isWanted);
  if (before.part !== part || limits === undefined) return null;
  const { quantity, via } = before;
  const share = uncertaintyOf(quantity, { percent: rule.percent, fixed: 0 });
  const uncertainty = Math.max(before.uncertainty, share);
  const guard = guardOf(uncertainty, rule);
  const verdict = judgeReading({ value: quantity, uncertainty }, limits, guard);
  return { part, ...limits, quantity, uncertainty, guard, verdict, via };
}

/** The band that a plant keeps from each limit, in the unit of the uncertainty. */
export function guardOf(uncertainty: number, { guard }: Pick<ValueRule, 'guard'>): number {
  return twelveFigures((uncertainty * guard) / 100);
}

/** Null where no tolerance is stated, or where a share of nothing leaves no room: 0 Ω ± 5 %. */
function toWanted({ nominal, unit, plusPercent, minusPercent }: ExpectedValue): WantedValue | null {
  if (plusPercent === null || minusPercent === null || nominal === 0) return null;
  return { nominal, unit, ...limitsOf(nominal, { plus: plusPercent, minus: minusPercent }) };
}
