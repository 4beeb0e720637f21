// Which feeders stand on a line, with the positions that each takes, and what is each good for in the setup to come? Method: whether
// a slot is right is asked where every screen asks it (slot-right.ts); a feeder that is not may move where its reel and it serve.

import { feederNature } from '../floor/feeder-fits.ts';
import { takenAs } from '../floor/fits.ts';
import { standingAt } from '../floor/lanes.ts';
import { feederPositions, feederServes, isBlocked, slotRight } from '../floor/slot-right.ts';
import { type FloorState, type SlotState, slotKey } from '../floor/state.ts';
import { wantedOn } from '../floor/wanted.ts';
import type { FeederRule, PlacedFeeder } from './diff.ts';

/** The feeders on a line; 1 position where neither a record nor the setup that it was loaded for tells the width. */
export function loadedFeeders(floor: FloorState, line: string): readonly PlacedFeeder[] {
  return standingAt(floor, line).map((loaded) => {
    const tape = loaded.tapes.at(-1);
    // An alternate or a cleared reel counts as what its slot wanted.
    const part = tape?.forPart ?? tape?.part ?? '';
    return { slot: loaded.slot, part, width: feederPositions(floor, loaded) ?? 1 };
  });
}

/**
 * The feeders on a line as a setup sees them, for `diffSetups`: one that is right for its slot takes the positions wanted there; the
 * others carry the part that their reel is. `kept`: slots that another lane's setup wants there, which is asked then.
 */
export function loadedFor(
  floor: FloorState,
  line: string,
  chosen: string,
  kept: readonly { readonly slot: string; readonly setup: string }[] = [],
): { readonly loaded: readonly PlacedFeeder[]; readonly rule: FeederRule } {
  const setups = new Map(kept.map((each) => [each.slot, each.setup]));
  const setupOf = (slot: string) => (wantedOn(floor, chosen, slot) ? chosen : (setups.get(slot) ?? chosen));
  const loaded = standingAt(floor, line).map((one): PlacedFeeder => {
    const wanted = wantedOn(floor, setupOf(one.slot), one.slot);
    if (wanted && slotRight(floor, line, setupOf(one.slot), one.slot) === 'right')
      return { slot: one.slot, part: wanted.part, width: wanted.positions };
    const part = one.tapes.at(-1)?.part ?? '';
    const width = feederPositions(floor, one) ?? wanted?.positions ?? 1;
    return { slot: one.slot, part, width, kind: kindOnFloor(floor, one, width) };
  });
  const stateOf = ({ slot }: PlacedFeeder) => floor.slots.get(slotKey(line, slot));
  return {
    loaded,
    rule: {
      stays: (there, { slot }) =>
        there.slot === slot && slotRight(floor, line, setupOf(slot), slot) === 'right',
      serves: (there, { slot }) => {
        const state = stateOf(there);
        const wanted = wantedOn(floor, setupOf(slot), slot);
        if (!state || !wanted || isBlocked(floor, state)) return false;
        return takenAs(floor, line, wanted, there.part) !== null && feederServes(floor, state, wanted);
      },
    },
  };
}

/** Positions of a feeder on a cart: as its record says, else as the first of the setups that wants the slot says, else 1. */
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

/** Feeders that answer every question of `serves` alike: the part, the width, what is asked of the feeder, whether the part is blocked. */
function kindOnFloor(floor: FloorState, loaded: SlotState, width: number): string {
  return JSON.stringify([
    loaded.tapes.at(-1)?.part ?? '',
    width,
    isBlocked(floor, loaded),
    feederNature(floor, loaded.feeder),
    feederPositions(floor, loaded),
  ]);
}
