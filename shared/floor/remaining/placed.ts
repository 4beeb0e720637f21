// How many placements has a slot given so far? Private to the door `remaining.ts`.

import { type FloorState, type SlotState, slotKey } from '../state.ts';
import { takenInTurn, turnGroup } from '../turns.ts';
import { perPanelOf } from '../wanted.ts';

/** Placements taken from a slot's tapes so far. */
export function usedPlacements(state: FloorState, slot: SlotState): number {
  const run = slot.sinceRun === null ? undefined : state.runs.get(slot.sinceRun);
  if (!run) return slot.usedBefore;
  const perPanel = perPanelOf(state, run.setup, slot.slot);
  const all = perPanel * Math.max(0, run.done - slot.sinceDone);
  const setup = state.setups.get(run.setup);
  const group = setup ? turnGroup(setup, slot.slot) : [];
  if (group.length === 0) return slot.usedBefore + all;
  return slot.usedBefore + takenInTurn(state, slot, { group, all, perPanel });
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
    return other ? [{ ...other, usedBefore: usedPlacements(state, other) }] : [];
  });
  for (const other of settled)
    state.slots.set(slotKey(line, other.slot), { ...other, sinceRun: run.run, sinceDone: run.done });
}
