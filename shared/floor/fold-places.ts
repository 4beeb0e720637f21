// Where a reel lies in the store, as people last said. A reel that goes onto a slot leaves its place; coming off the line it has none
// until somebody puts it away; and what else is known of a reel alone: its last day, what was measured of it. A list of places that must exist first was refused: a shelf is named by the first reel put there.

import { backInUse, reelSeen } from './gone-reels.ts';
import type { EntryOf } from './kinds.ts';
import { reelByLabel } from './reel-places.ts';
import type { FloorState } from './state.ts';

/** Applies one entry to reels' places. A reel on a slot stays there: it must come off first. */
export function foldPlaces(
  state: FloorState,
  entry: EntryOf<'reel.put' | 'reel.dated' | 'reel.measured'>,
): void {
  if (entry.kind === 'reel.dated') {
    state.expiries.set(entry.payload.reel, entry.payload.expires);
    return;
  }
  if (entry.kind === 'reel.measured') {
    // A reel without an id is measured for one verdict; nothing could find it again.
    if (entry.payload.reel !== null) state.values.set(entry.payload.reel, entry.payload);
    return;
  }
  const { place, reel } = entry.payload;
  const known = reelSeen(state, reelByLabel(entry.payload));
  if (known.at !== null) return;
  backInUse(state, reel);
  state.reels.set(reel, { ...known, place });
}

/** True where a reel lies at a place of this name. */
export function isPlaceInUse(state: FloorState, text: string): boolean {
  for (const reel of state.reels.values()) if (reel.place === text) return true;
  return false;
}

/** Where a reel lies, null where nobody said or it stands on a slot. */
export function placeOf(reel: { readonly at: unknown; readonly place?: string }): string | null {
  return reel.at === null ? (reel.place ?? null) : null;
}
