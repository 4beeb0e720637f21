// What is left on a reel now, whether it stands on a slot or lies off the line.

import { isMixed } from '../../shared/floor/packs.ts';
import { labelShareOf, slotEstimate, tapeSd } from '../../shared/floor/remaining.ts';
import { type FloorState, type Reel, slotKey } from '../../shared/floor/state.ts';

/**
 * What is left on a reel now, parts and their deviation; null where nobody can know. Of tapes joined on a slot the running one has what is left of
 * itself, those behind it what they came with, and one before it is expected to be used up, as surely as the sum is known. Where a count is unknown
 * and nothing tells where the joint is, any of them may run. Lots poured over each other are one heap, which the newest stands for.
 */
export function leftOn(
  floor: FloorState,
  reel: Reel,
): { readonly parts: number | null; readonly sd: number } {
  const share = labelShareOf(floor, reel.at?.line ?? null);
  const slot = reel.at && floor.slots.get(slotKey(reel.at.line, reel.at.slot));
  const place = slot ? slot.tapes.findIndex((tape) => tape.reel === reel.reel) : -1;
  const tape = slot?.tapes[place];
  if (!slot || tape === undefined) return { parts: reel.count, sd: tapeSd(reel, share) };
  const { parts, sd, running, runningIndex } = slotEstimate(floor, slot);
  if (isMixed(slot)) return place === slot.tapes.length - 1 ? { parts, sd } : { parts: null, sd: 0 };
  if (parts === null && running === null && slot.tapes.length > 1) return { parts: null, sd: 0 };
  if (place < runningIndex) return { parts: 0, sd };
  if (place > runningIndex) return { parts: tape.count, sd: tapeSd(tape, share) };
  return { parts: running, sd };
}
