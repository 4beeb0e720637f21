// Which feeders stand on a line, with the positions that each takes? Method: a feeder's own record first; else what the setup of its
// slot says: while a line changes over the one that it comes from, then the one chosen.

import { wantedOn } from '../setup/left.ts';
import type { FloorState, SlotState } from '../setup/state.ts';
import type { PlacedFeeder } from './diff.ts';

/** The feeders on a line as the difference wants them; 1 position where neither a record nor a setup tells the width. */
export function loadedFeeders(floor: FloorState, line: string): readonly PlacedFeeder[] {
  const from = floor.changeovers.get(floor.changing.get(line) ?? '')?.from;
  const setups = [from, floor.chosen.get(line)].filter((setup) => typeof setup === 'string');
  return [...floor.slots.values()]
    .filter((slot) => slot.line === line)
    .map((slot) => ({
      ...{ slot: slot.slot, part: standsFor(slot) },
      width: widthOf(floor, { feeder: slot.feeder, slot: slot.slot }, setups),
    }));
}

/** Positions of a feeder on a slot: as its record says, else as the first of the setups that wants the slot says, else 1. */
export function widthOf(
  floor: FloorState,
  placed: { readonly feeder: string | null; readonly slot: string },
  setups: readonly string[],
): number {
  const known = floor.feeders.get(placed.feeder ?? '')?.positions;
  if (known !== undefined) return known;
  for (const setup of setups) {
    const wanted = wantedOn(floor, setup, placed.slot);
    if (wanted !== null) return wanted.positions;
  }
  return 1;
}

/** The part that a slot's reel stands for: an alternate or a cleared reel counts as what its slot wanted. */
function standsFor(slot: SlotState): string {
  const tape = slot.tapes.at(-1);
  return tape?.forPart ?? tape?.part ?? '';
}
