// What is left on a reel now, whether it stands on a slot or lies off the line.

import { labelShareOf, slotEstimate, tapeSd } from '../../shared/floor/remaining.ts';
import { type FloorState, type Reel, slotKey } from '../../shared/floor/state.ts';

/** What is left on a reel now: the newest tape of a slot carries what the whole slot still has. */
export function leftOn(
  floor: FloorState,
  reel: Reel,
): { readonly parts: number | null; readonly sd: number } {
  const slot = reel.at && floor.slots.get(slotKey(reel.at.line, reel.at.slot));
  if (!slot || slot.tapes.at(-1)?.reel !== reel.reel) {
    return { parts: reel.count, sd: tapeSd(reel, labelShareOf(floor, reel.at?.line ?? null)) };
  }
  const { parts, sd, running, runningIndex } = slotEstimate(floor, slot);
  if (runningIndex === slot.tapes.length - 1) return { parts, sd };
  return { parts: parts === null ? null : parts - (running ?? 0), sd };
}
