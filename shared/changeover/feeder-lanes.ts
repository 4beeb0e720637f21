// Which reels hang on one feeder? A feeder with several lanes stands on one position, and each lane is a slot with a reel of its own: out of the machine
// they come together, while a reel on one of them may be changed with the feeder where it is.

import { parseSlot, placeKey, positionsUnder, sortByWalk } from '../floor/address.ts';

/** A lane that goes with the one named: its slot and the part on it. */
export interface LaneOf {
  readonly slot: string;
  readonly part: string;
}

/** One text for the feeder on a slot, whichever of its lanes the slot is. */
export function feederKey(slot: string): string {
  return positionsUnder(slot, 1)[0] ?? placeKey(slot);
}

/** True where the slot is a lane of a feeder that may have others. */
export function isLane(slot: string): boolean {
  return parseSlot(slot).lane !== null;
}

/** The same lane of another feeder: `A` of one and `A` of the next. */
export function isSameLane(a: string, b: string): boolean {
  return parseSlot(a).lane === parseSlot(b).lane;
}

/** What stands on slots, put together by feeder: lanes side by side, all else alone; both in walking order. */
export function byFeeder<T extends { readonly slot: string }>(
  placed: readonly T[],
): readonly (readonly T[])[] {
  const feeders = new Map<string, T[]>();
  for (const each of sortByWalk(placed, ({ slot }) => slot)) {
    const key = isLane(each.slot) ? feederKey(each.slot) : placeKey(each.slot);
    const there = feeders.get(key);
    if (there) there.push(each);
    else feeders.set(key, [each]);
  }
  return [...feeders.values()];
}
