// What does a reading prove? Its value with the meter's uncertainty against the limits of the part.
// Method: the decision rule of ISO 14253-1 (from memory): within limits is proven only where the value with its whole
// uncertainty lies inside them, outside only where it lies wholly outside; between, the meter cannot tell. A plant may keep more or less than
// the uncertainty from each limit: its guard band, as ILAC-G8 has it (from memory).
// Refused: comparing the bare reading with the limits; a reading next to a limit then passes by luck.

import { twelveFigures } from '../kit/figures.ts';
import type { Verdict } from './vocabulary.ts';

/** A reading with the meter's uncertainty (95 %, half width), both in one unit. */
export interface Reading {
  readonly value: number;
  /** >= 0. */
  readonly uncertainty: number;
}

/** What the part may measure, both included. */
export interface Limits {
  readonly least: number;
  readonly most: number;
}

/**
 * What a reading proves: `accepted` where value ± guard band fits the limits, `refused` where nothing of value ± uncertainty does,
 * `held` between. `guard`: the guard band in the unit of the reading, >= 0; the uncertainty where none is handed in. Throws where limits are
 * crossed or the uncertainty or the guard band is negative.
 */
export function judgeReading(
  { value, uncertainty }: Reading,
  { least, most }: Limits,
  guard: number = uncertainty,
): Verdict {
  if (!(least <= most))
    throw new RangeError(`Cannot judge as least must be <= most: current value is ${least}`);
  if (!(uncertainty >= 0))
    throw new RangeError(`Cannot judge as uncertainty must be >= 0: current value is ${uncertainty}`);
  if (!(guard >= 0))
    throw new RangeError(`Cannot judge as the guard band must be >= 0: current value is ${guard}`);
  if (twelveFigures(value - guard) >= least && twelveFigures(value + guard) <= most) return 'accepted';
  return twelveFigures(value + uncertainty) < least || twelveFigures(value - uncertainty) > most
    ? 'refused'
    : 'held';
}

/** How good a meter is: a share of the reading and a fixed part (its digits), as makers state it. */
export interface MeterAccuracy {
  /** Percent of the reading, >= 0. */
  readonly percent: number;
  /** In the unit of the reading, >= 0. */
  readonly fixed: number;
}

/** The uncertainty of a reading. The maker's limits are taken whole as the 95 % half width, which is on the safe side. */
export function uncertaintyOf(value: number, { percent, fixed }: MeterAccuracy): number {
  return twelveFigures((Math.abs(value) * percent) / 100 + fixed);
}

/** Limits around a nominal value, in its unit. */
export function limitsOf(
  nominal: number,
  percents: { readonly plus: number; readonly minus: number },
): Limits {
  const size = Math.abs(nominal);
  return {
    least: twelveFigures(nominal - (size * percents.minus) / 100),
    most: twelveFigures(nominal + (size * percents.plus) / 100),
  };
}
