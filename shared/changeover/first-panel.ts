// Is the first panel right? Which parts are looked at or measured, and what a measurement proves.
// Method: the decision rule of ISO 14253-1 (from memory): within limits is proven only where the value with its whole
// uncertainty lies inside them, outside only where it lies wholly outside; between, the meter cannot tell.
// Refused: comparing the bare reading with the limits; a reading next to a limit then passes by luck.

import { compareSlots } from '../floor/address.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { expectedValues } from '../floor/part-value.ts';
import type { Changeover, Setup } from '../floor/state.ts';
import type { Verdict } from '../floor/vocabulary.ts';

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
 * What a reading proves: `accepted` where all of value ± uncertainty fits the limits, `refused` where none of it does,
 * `held` between. Throws where limits are crossed or the uncertainty is negative.
 */
export function judgeReading({ value, uncertainty }: Reading, { least, most }: Limits): Verdict {
  if (!(least <= most))
    throw new RangeError(`Cannot judge as least must be <= most: current value is ${least}`);
  if (!(uncertainty >= 0))
    throw new RangeError(`Cannot judge as uncertainty must be >= 0: current value is ${uncertainty}`);
  // Twelve figures, so that 9.95 - 0.05 is 9.9 and touches its limit.
  const low = Number((value - uncertainty).toPrecision(12));
  const high = Number((value + uncertainty).toPrecision(12));
  if (low >= least && high <= most) return 'accepted';
  return high < least || low > most ? 'refused' : 'held';
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
  return Number(((Math.abs(value) * percent) / 100 + fixed).toPrecision(12));
}

/** Limits around a nominal value, in its unit. */
export function limitsOf(
  nominal: number,
  percents: { readonly plus: number; readonly minus: number },
): Limits {
  const size = Math.abs(nominal);
  return {
    least: Number((nominal - (size * percents.minus) / 100).toPrecision(12)),
    most: Number((nominal + (size * percents.plus) / 100).toPrecision(12)),
  };
}

/** How one part of the first panel stands. */
export const panelCheckStates = ['open', 'accepted', 'held', 'refused'] as const;
export type PanelCheckState = (typeof panelCheckStates)[number];

/** One part to look at or to measure. */
export interface PanelCheck {
  readonly wanted: SetupSlot;
  /** The release counts it. */
  readonly isCritical: boolean;
  /** Its note states a value, or somebody measured it already. */
  readonly hasValue: boolean;
  readonly measured: Changeover['measured'][number] | null;
  readonly looked: Changeover['looked'][number] | null;
  readonly state: PanelCheckState;
}

/**
 * The parts of a setup that the first panel answers for, in walking order: critical ones, those whose note states a value, those
 * with a polarity. What this order does not place is left out.
 */
export function panelChecks(
  setup: Setup,
  changeover: Pick<Changeover, 'measured' | 'looked'>,
): readonly PanelCheck[] {
  return allChecks(setup, changeover)
    .filter((check) => check.isCritical || check.hasValue || check.wanted.polarity !== undefined)
    .sort((a, b) => compareSlots(a.wanted.slot, b.wanted.slot));
}

/** The parts that nothing asks for: any of them may be measured all the same, and then it is among the others. */
export function otherChecks(
  setup: Setup,
  changeover: Pick<Changeover, 'measured' | 'looked'>,
): readonly PanelCheck[] {
  const asked = new Set(panelChecks(setup, changeover).map((check) => check.wanted.slot));
  return allChecks(setup, changeover)
    .filter((check) => !asked.has(check.wanted.slot))
    .sort((a, b) => compareSlots(a.wanted.slot, b.wanted.slot));
}

function allChecks(setup: Setup, changeover: Pick<Changeover, 'measured' | 'looked'>): readonly PanelCheck[] {
  return setup.slots
    .filter((slot) => slot.perPanel > 0)
    .map((wanted): PanelCheck => {
      const measured = changeover.measured.find((each) => each.slot === wanted.slot) ?? null;
      const looked = changeover.looked.find((each) => each.slot === wanted.slot) ?? null;
      const hasValue = measured !== null || expectedValues(wanted.note ?? '', { isNote: true }).length > 0;
      const isCritical = wanted.critical === true;
      return { wanted, isCritical, hasValue, measured, looked, state: stateOf(wanted, { measured, looked }) };
    });
}

/** Orientation must be seen where the part has one; without one, looking or measuring settles it; a stated value must be measured. */
function stateOf(wanted: SetupSlot, done: Pick<PanelCheck, 'measured' | 'looked'>): PanelCheckState {
  const { measured, looked } = done;
  if (measured?.verdict === 'refused' || looked?.right === false) return 'refused';
  if (measured?.verdict === 'held') return 'held';
  const needsLook = wanted.polarity !== undefined;
  const needsValue = expectedValues(wanted.note ?? '', { isNote: true }).length > 0;
  const isSeen = looked !== null || !needsLook;
  const isMeasured = measured !== null || !needsValue;
  return isSeen && isMeasured && (looked !== null || measured !== null) ? 'accepted' : 'open';
}
