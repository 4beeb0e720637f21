// The slots of a setup as the log's state holds them.

import type { SetupSlot } from '../shared/floor/kinds.ts';
import type { FloorState } from '../shared/floor/state.ts';

/** The slots that a setup wants; throws for a setup that the plant does not have. */
export function placesOf(state: FloorState, setup: string): readonly SetupSlot[] {
  const taken = state.setups.get(setup);
  if (!taken) throw new RangeError(`Cannot list slots as setup must be known: current value is ${setup}`);
  return taken.slots;
}
