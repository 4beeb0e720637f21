// What do the other lanes of the conveyor need to stay while one changes over? Their feeders are no surplus of this lane's: each stays on its slot,
// and a slot that both want with parts that are not the same is wanted twice, which no changeover can do.

import { takenAs } from '../floor/fits.ts';
import { lanesTaking } from '../floor/lanes.ts';
import { slotLooker } from '../floor/slot-right.ts';
import type { FloorState, Setup } from '../floor/state.ts';
import { wantedOn } from '../floor/wanted.ts';
import type { PlacedFeeder } from './diff.ts';

/** A slot that is wanted, and the setup that wants it. */
export interface WantedFor extends PlacedFeeder {
  readonly setup: string;
  readonly line: string;
}

/** All that must stand on a line's slots once it has changed to a setup: what that wants, and what stands right for the other lanes. */
export function wantedWithLanes(floor: FloorState, line: string, setup: Setup): readonly WantedFor[] {
  const own = setup.slots.map(
    ({ slot, part, positions }): WantedFor => ({ slot, part, width: positions, setup: setup.setup, line }),
  );
  const others = lanesTaking(floor, line).flatMap((lane) => {
    const look = slotLooker(floor, lane.line, lane.setup);
    return (floor.setups.get(lane.setup)?.slots ?? []).flatMap((wanted): readonly WantedFor[] => {
      const { slot, part, positions } = wanted;
      const mine = wantedOn(floor, setup.setup, slot);
      const stays =
        mine === null ? look(wanted).is === 'right' : takenAs(floor, lane.line, wanted, mine.part) === null;
      return stays ? [{ slot, part, width: positions, setup: lane.setup, line: lane.line }] : [];
    });
  });
  // One thing stands on a slot, whatever numbers the lanes take it under; what the setup itself wants twice stays, and is its fault.
  const seen = new Set<string>();
  return [...own, ...others.filter(({ slot }) => !seen.has(slot) && seen.add(slot))];
}
