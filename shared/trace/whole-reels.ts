// What the floor's state lets go of, the trace keeps: a reel that was used up long ago stays whole in its index, with its lot and its floor life, since
// quality asks years later. And of a reel that came back, and whose label told no lot, the lot is the one that the log has of it from before.

import { idSince } from '../floor/fold-print.ts';
import type { FloorEntry } from '../floor/kinds.ts';
import type { FloorState } from '../floor/state.ts';

/** Applies an entry by `apply`, so that no reel leaves the state and no lot that was known of a reel it touches (`reels`) is lost. */
export function applyWhole(
  state: FloorState,
  of: { readonly entry: FloorEntry; readonly reels: readonly string[] },
  apply: () => void,
): void {
  const puts =
    of.entry.kind === 'reel.verified' || of.entry.kind === 'hold.cleared' || of.entry.kind === 'cart.docked';
  const lots = puts ? of.reels.map((name) => [name, lotOf(state, name)] as const) : [];
  // A reel leaves by what was noted of it at the starts of runs before (floor/gone-reels.ts): the trace notes nothing.
  apply();
  state.usedUp.clear();
  for (const [name, lot] of lots) {
    const now = state.reels.get(idSince(state, name));
    if (now && now.lot === null && lot !== null) state.reels.set(now.reel, { ...now, lot });
  }
}

const lotOf = (state: FloorState, name: string) => state.reels.get(idSince(state, name))?.lot ?? null;
