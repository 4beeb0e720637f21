// How many placements has a slot given so far? Private to the door `remaining.ts`.

import { feedersOf, type LaneMark, runsBuilding } from '../lanes.ts';
import { type FloorState, type SlotState, slotKey } from '../state.ts';
import { takenInTurn, turnGroup } from '../turns.ts';
import { perPanelOf } from '../wanted.ts';
import type { Placed } from './finished.ts';
import {
  addDoubt,
  type CountMark,
  noDoubt,
  noSkips,
  type PlacedDoubt,
  panelsBuilt,
  usageOf,
} from './skips.ts';

/** Placements taken from a slot's tapes since its figures were set, by every lane that builds from it, and what is not known of them. */
function placedSince(state: FloorState, slot: SlotState): { placed: number; doubt: PlacedDoubt } {
  const own = { run: slot.sinceRun, done: slot.sinceDone, skips: slot.sinceSkips };
  const [first, ...more] = [own, ...(slot.sinceLanes ?? [])].map((mark) => placedFor(state, slot, mark));
  return more.reduce(
    (sum, each) => ({ placed: sum.placed + each.placed, doubt: addDoubt(sum.doubt, each.doubt) }),
    first ?? { placed: 0, doubt: noDoubt },
  );
}

function placedFor(
  state: FloorState,
  slot: SlotState,
  mark: CountMark & { readonly run: string | null },
): { placed: number; doubt: PlacedDoubt } {
  const run = mark.run === null ? undefined : state.runs.get(mark.run);
  if (!run) return { placed: 0, doubt: noDoubt };
  const perPanel = perPanelOf(state, run.setup, slot.slot);
  const built = panelsBuilt(state, run, mark);
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

/**
 * Sets down what the other slots of a slot's group have used: called before its tapes change, since what they took until now depends on
 * what it had until now.
 */
export function settleTurns(state: FloorState, line: string, slot: string): void {
  const host = feedersOf(line);
  const settled = new Map<string, SlotState>();
  for (const run of runsBuilding(state, host)) {
    const setup = state.setups.get(run.setup);
    for (const { slot: address } of setup ? turnGroup(setup, slot) : []) {
      const other = address === slot ? undefined : state.slots.get(slotKey(host, address));
      if (other) settled.set(slotKey(host, address), settleUse(state, other));
    }
  }
  for (const [key, other] of settled) state.slots.set(key, other);
}
