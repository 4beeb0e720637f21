// What came onto a slot that had too few parts left? Kept as it came, since nobody can tell later what the count said then.
// Method: the count of that moment against what all lanes had still to build from the slot. Refused: warnings as the measure, which are raised
// only where a tablet looks; to work it out in the report, which has the entries of a day and would need the floor before them.

import { panelsToGo } from './building.ts';
import type { PayloadOf } from './kinds.ts';
import { feedersOf, runsBuilding } from './lanes.ts';
import type { Mark } from './reel-places.ts';
import { countedLeft, usageOf } from './remaining.ts';
import { type FloorState, type SlotState, slotKey } from './state.ts';
import type { CameToSlot } from './state-run-outs.ts';
import { turnGroup } from './turns.ts';
import { perPanelOf } from './wanted.ts';

/** For how long it is kept, ms: a report asks for a day at most, and what begins there may be read an hour later. */
const KEPT_MS = 90_000_000;

/**
 * Notes what is joined to `there`, or takes its place, where the runs that are being built would take more than `there` and the slots used in turn
 * with it have left. Nothing where it would last them, or nothing is being built from it. To be asked before the slot changes.
 */
export function noteCame(
  state: FloorState,
  there: SlotState,
  by: {
    readonly facts: PayloadOf<'reel.verified'>;
    readonly mark: Mark;
    readonly cleared?: string | undefined;
  },
): void {
  const { facts, mark, cleared } = by;
  const last = there.tapes.at(-1);
  const runs = runsBuilding(state, there.line);
  const wanted = runs.reduce((sum, run) => {
    const { perPanel } = usageOf(state, run.setup, perPanelOf(state, run.setup, there.slot));
    return sum + panelsToGo(run) * perPanel;
  }, 0);
  const left = leftInTurn(
    state,
    there,
    runs.map(({ setup }) => setup),
  );
  if (!last || wanted <= 0 || (left !== null && left >= wanted)) return;
  const came: CameToSlot = {
    ...mark,
    line: facts.line,
    slot: there.slot,
    feeder: there.feeder,
    left: left === null ? null : Math.round(left),
    reel: last.reel,
    sinceMs: last.atMs,
    on: [...there.tapes.map(({ entry }) => entry), ...(cleared === undefined ? [] : [cleared])],
  };
  const host = feedersOf(there.line);
  const before = state.came.get(host) ?? [];
  state.came.set(host, [...before.filter(({ atMs }) => atMs > mark.atMs - KEPT_MS), came]);
}

/** Parts left by count on a slot, and on those that any of the setups uses in turn with it; null where one of them is unknown. */
function leftInTurn(state: FloorState, there: SlotState, setups: readonly string[]): number | null {
  const group = new Set([there.slot]);
  for (const setup of setups) {
    const taken = state.setups.get(setup);
    for (const { slot } of taken ? turnGroup(taken, there.slot) : []) group.add(slot);
  }
  let sum = 0;
  for (const slot of group) {
    const loaded = state.slots.get(slotKey(there.line, slot));
    const parts = loaded ? countedLeft(state, loaded) : 0;
    if (parts === null) return null;
    sum += parts;
  }
  return sum;
}

/** A lead said which of two entries holds: what came by the other did not come, and what it had put there was not left. */
export function settleCame(state: FloorState, { conflict: name, keep }: PayloadOf<'conflict.settled'>): void {
  const conflict = state.conflicts.get(name);
  if (!conflict || keep === null || !conflict.entries.includes(keep)) return;
  const isGone = (entry: string) => entry !== keep && conflict.entries.includes(entry);
  for (const line of new Set(conflict.lines)) {
    const came = state.came.get(line);
    if (!came?.some(({ entry, on }) => [entry, ...on].some(isGone))) continue;
    const stays = came.filter(({ entry }) => !isGone(entry));
    state.came.set(
      line,
      stays.map((each) => (each.on.some(isGone) ? { ...each, left: null } : each)),
    );
  }
}
