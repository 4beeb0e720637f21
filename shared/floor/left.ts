// How many parts a slot has left, counted down by placements. Method: label count less placements divided by the share of
// picks that end on a panel (design arithmetic: placements K of R parts ~ Binomial(R, 1 - loss), so U placements took about
// U / (1 - loss) parts with variance U loss / (1 - loss)^2, the negative binomial's).

import type { SetupSlot } from './kinds.ts';
import { type FloorState, type Setup, type SlotState, slotKey } from './state.ts';
import { takenInTurn, turnGroup } from './turns.ts';

/** What is left on a slot. `parts` null where a count is unknown. */
export interface SlotLeft {
  readonly parts: number | null;
  readonly sd: number;
  /** Parts left on the running tape alone. */
  readonly running: number | null;
  /** Index of the running tape in the slot's tapes, by the expected count. */
  readonly runningIndex: number;
  readonly used: number;
}

/** Placements per panel that a setup wants from a slot; 0 where it wants none. */
export function perPanelOf(state: FloorState, setup: string, slot: string): number {
  return wantedOn(state, setup, slot)?.perPanel ?? 0;
}

/** What a setup wants on a slot; null where it wants nothing there or is not known. */
export function wantedOn(state: FloorState, setup: string, slot: string): SetupSlot | null {
  const taken = state.setups.get(setup);
  if (!taken) return null;
  let index = slotsByAddress.get(taken);
  if (!index) {
    index = new Map(taken.slots.map((wanted) => [wanted.slot, wanted]));
    slotsByAddress.set(taken, index);
  }
  return index.get(slot) ?? null;
}

// A setup's record never changes, so its index is made once and goes with it.
const slotsByAddress = new WeakMap<Setup, ReadonlyMap<string, SetupSlot>>();

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

/** Parts left on a slot for a given loss (fraction of picks that end nowhere, 0 <= loss < 1). */
export function slotLeft(state: FloorState, slot: SlotState, loss: number): SlotLeft {
  const used = usedPlacements(state, slot);
  const taken = used / (1 - loss);
  let variance = (used * loss) / (1 - loss) ** 2;
  let total = 0;
  let known = true;
  for (const tape of slot.tapes) {
    if (tape.count === null) known = false;
    else total += tape.count;
    variance += tape.sd * tape.sd;
  }
  let runningIndex = 0;
  let before = 0;
  while (runningIndex < slot.tapes.length - 1) {
    const count = slot.tapes[runningIndex]?.count ?? null;
    if (count === null || before + count > taken) break;
    before += count;
    runningIndex += 1;
  }
  const runningCount = slot.tapes[runningIndex]?.count ?? null;
  return {
    parts: known ? Math.max(0, total - taken) : null,
    sd: Math.sqrt(variance),
    running: runningCount === null ? null : Math.max(0, before + runningCount - taken),
    runningIndex,
    used,
  };
}
