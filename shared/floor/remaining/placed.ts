// How many placements has a slot given so far? Private to the door `remaining.ts`.

import { feedersOf, type LaneMark, runsBuilding } from '../lanes.ts';
import type { FloorState, SlotState } from '../state.ts';
import { takenFrom } from '../turns.ts';
import { perPanelOf } from '../wanted.ts';
import type { Placed } from './finished.ts';
import { addDoubt, noDoubt, noSkips, type PlacedDoubt, panelsBuilt } from './skips.ts';

/** Placements taken from a slot's tapes since its figures were set, by every lane that builds from it, and what is not known of them. */
function placedSince(state: FloorState, slot: SlotState): { placed: number; doubt: PlacedDoubt } {
  const own = { run: slot.sinceRun, done: slot.sinceDone, skips: slot.sinceSkips };
  const built = [own, ...(slot.sinceLanes ?? [])].flatMap((mark) => {
    const run = mark.run === null ? undefined : state.runs.get(mark.run);
    return run ? [{ setup: run.setup, ...panelsBuilt(state, run, mark) }] : [];
  });
  const doubt = built.reduce((sum, each) => {
    const perPanel = perPanelOf(state, each.setup, slot.slot);
    const { variance, sd, unknown } = each.doubt;
    return addDoubt(sum, {
      variance: perPanel * perPanel * variance,
      sd: perPanel * sd,
      unknown: unknown && perPanel > 0,
    });
  }, noDoubt);
  return { placed: takenFrom(state, slot, built), doubt };
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

/** Where the counts of a line and of the lanes beside it stand now: from there on a slot's use is computed. */
export function countMark(
  state: FloorState,
  line: string,
): Pick<SlotState, 'sinceRun' | 'sinceDone' | 'sinceSkips' | 'sinceLanes'> {
  const host = feedersOf(line);
  const building = runsBuilding(state, host);
  const run = building.find((each) => each.line === host);
  const beside = building
    .filter((each) => each !== run)
    .map((each): LaneMark => ({ run: each.run, done: each.done, skips: each.skips }));
  return {
    sinceRun: run?.run ?? state.current.get(host) ?? null,
    sinceDone: run?.done ?? 0,
    sinceSkips: run?.skips ?? noSkips,
    sinceLanes: beside,
  };
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
