// What the floor's state lets go of, the trace keeps: a reel that was used up long ago stays whole in its index, with its lot and its floor life, since
// quality asks years later. And of a reel that came back, and whose label told no lot, the lot is the one that the log has of it from before.

import { applyFloorEntry } from '../floor/fold.ts';
import { idSince } from '../floor/fold-print.ts';
import type { FloorEntry } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';

/** Applies an entry, so that no reel leaves the state and no lot that was known of a reel it touches (`reels`) is lost. */
export function applyWhole(state: FloorState, entry: FloorEntry, reels: readonly string[]): void {
  const puts =
    entry.kind === 'reel.verified' || entry.kind === 'hold.cleared' || entry.kind === 'cart.docked';
  const lots = puts ? reels.map((name) => [name, lotOf(state, name)] as const) : [];
  applyFloorEntry(state, entry, null, true);
  for (const [name, lot] of lots) {
    const now = state.reels.get(idSince(state, name));
    if (now && now.lot === null && lot !== null) state.reels.set(now.reel, { ...now, lot });
  }
}

const lotOf = (state: FloorState, name: string) => state.reels.get(idSince(state, name))?.lot ?? null;
