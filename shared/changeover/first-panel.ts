// Is the first panel right? Which parts are looked at or measured; what a measurement proves says floor/measured.ts.

import { compareSlots } from '../floor/address.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { expectedValues } from '../floor/part-value.ts';
import type { Changeover, Setup } from '../floor/state.ts';

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
