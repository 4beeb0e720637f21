// How many placements has a slot given so far? Private to the door `remaining.ts`.

import { type FloorState, type SlotState, slotKey } from '../state.ts';
import { takenInTurn, turnGroup } from '../turns.ts';
import { perPanelOf } from '../wanted.ts';
import type { Placed } from './finished.ts';
import { addDoubt, noDoubt, noSkips, type PlacedDoubt, panelsBuilt, usageOf } from './skips.ts';

/** Placements taken from a slot's tapes since its figures were set, and what is not known of them. */
function placedSince(state: FloorState, slot: SlotState): { placed: number; doubt: PlacedDoubt } {
  const run = slot.sinceRun === null ? undefined : state.runs.get(slot.sinceRun);
  if (!run) return { placed: 0, doubt: noDoubt };
  const perPanel = perPanelOf(state, run.setup, slot.slot);
  const built = panelsBuilt(state, run, { done: slot.sinceDone, skips: slot.sinceSkips });
  const { variance, sd, unknown } = built.doubt;
  const doubt = {
    variance: perPanel * perPanel * variance,
    sd: perPanel * sd,
    unknown: unknown && perPanel > 0,
  };
  const all = perPanel * built.panels;
  const setup = state.setups.get(run.setup);
  const group = setup ? turnGroup(setup, slot.slot) : [];
  if (group.length === 0) return { placed: all, doubt };
  const usage = usageOf(state, run.setup, perPanel);
  return { placed: takenInTurn(state, slot, { group, all, perPanel: usage.perPanel }), doubt };
}

/** Placements taken from a slot's tapes so far; boards that were skipped take none. */
export function usedPlacements(state: FloorState, slot: SlotState): number {
  return slot.usedBefore + placedSince(state, slot).placed;
}

/** All placements since the slot's ledger began, and what is not known of them. */
export function placedSinceLedger(state: FloorState, slot: SlotState): Placed {
  return { count: slot.ledger.dropped + usedPlacements(state, slot), doubt: placedDoubt(state, slot) };
}

/** What is not known of all placements since the slot's ledger began, since skipped boards are not. */
export function placedDoubt(state: FloorState, slot: SlotState): PlacedDoubt {
  return addDoubt(slot.ledger.doubt, placedSince(state, slot).doubt);
}

/** Where a line's count stands now: from there on a slot's use is computed. */
export function countMark(
  state: FloorState,
  line: string,
): Pick<SlotState, 'sinceRun' | 'sinceDone' | 'sinceSkips'> {
  const run = state.runs.get(state.current.get(line) ?? '');
  if (!run) return { sinceRun: state.current.get(line) ?? null, sinceDone: 0, sinceSkips: noSkips };
  return { sinceRun: run.run, sinceDone: run.done, sinceSkips: run.skips };
}

/** The slot with what it has used so far as a plain figure, its doubt in the ledger. */
export function settleUse(state: FloorState, slot: SlotState): SlotState {
  return {
    ...slot,
    usedBefore: usedPlacements(state, slot),
    ledger: { ...slot.ledger, doubt: placedDoubt(state, slot) },
    ...countMark(state, slot.line),
  };
}

/**
 * Sets down what the other slots of a slot's group have used: called before its tapes change, since what they took until now depends on
 * what it had until now.
 */
export function settleTurns(state: FloorState, line: string, slot: string): void {
  const run = state.runs.get(state.current.get(line) ?? '');
  const setup = run && state.setups.get(run.setup);
  if (!run || !setup) return;
  const settled = turnGroup(setup, slot).flatMap((each) => {
    const other = each.slot === slot ? undefined : state.slots.get(slotKey(line, each.slot));
    return other ? [settleUse(state, other)] : [];
  });
  for (const other of settled) state.slots.set(slotKey(line, other.slot), other);
}
