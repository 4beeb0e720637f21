// What does a setup want on a slot?
// Method: an index by address that goes with the setup. Refused: walking the setup's list at each question; every scan asks.

import type { SetupSlot } from './kinds.ts';
import { type LaneSetup, lanesTaking, linesFeeding } from './lanes.ts';
import type { FloorState, Setup } from './state.ts';

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

/** What another lane of the conveyor wants on a slot. */
export interface LaneWant extends LaneSetup {
  readonly wanted: SetupSlot;
}

/** Which other lanes of a line's conveyor want something on a slot, by id. `lanes`: from `lanesTaking`, for whoever asks of many slots. */
export function lanesWanting(
  state: FloorState,
  line: string,
  slot: string,
  lanes: readonly LaneSetup[] = lanesTaking(state, line),
): readonly LaneWant[] {
  return lanes.flatMap((lane) => {
    const wanted = wantedOn(state, lane.setup, slot);
    return wanted ? [{ ...lane, wanted }] : [];
  });
}

/** What is wanted on a slot by the setup chosen for its line, else by that of the first lane of its conveyor that wants something; null where none does. */
export function wantedByLanes(
  state: FloorState,
  { line, slot }: { readonly line: string; readonly slot: string },
): SetupSlot | null {
  for (const lane of linesFeeding(state, line)) {
    const wanted = wantedOn(state, state.chosen.get(lane) ?? '', slot);
    if (wanted) return wanted;
  }
  return null;
}

// A setup's record never changes, so its index is made once and goes with it.
const slotsByAddress = new WeakMap<Setup, ReadonlyMap<string, SetupSlot>>();
