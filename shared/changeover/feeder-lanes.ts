// Which reels hang on one feeder? A feeder with several lanes stands on one position, and each lane is a slot with a reel of its own: out of the machine
// they come together, while a reel on one of them may be changed with the feeder where it is.

import { feederKey, sortByWalk } from '../floor/address.ts';

/** A lane that goes with the one named: its slot and the part on it. */
export interface LaneOf {
  readonly slot: string;
  readonly part: string;
}

/** What stands on slots, put together by feeder: lanes side by side, all else alone; both in walking order. */
export function byFeeder<T extends { readonly slot: string }>(
  placed: readonly T[],
): readonly (readonly T[])[] {
  const feeders = new Map<string, T[]>();
  for (const each of sortByWalk(placed, ({ slot }) => slot)) {
    const key = feederKey(each.slot);
    const there = feeders.get(key);
    if (there) there.push(each);
    else feeders.set(key, [each]);
  }
  return [...feeders.values()];
}
