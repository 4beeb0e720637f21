// A folded state handed on to another tablet, and one taken over from there: once in the life of a tablet.

import type { ChainEnd } from './borrowed.ts';
import { loadFrom } from './load.ts';
import type { Handed } from './pack.ts';
import { goOnFrom, guarded, inTurn, type StoreState, sawClock } from './state.ts';
import { foldName, thisFold } from './this-fold.ts';

/** The folded state for another tablet; null where it is not whole just now. */
export function lend(state: StoreState, heads: () => Promise<readonly ChainEnd[]>): Promise<Handed | null> {
  // In turn with folding: state and ends must speak of the same moment.
  return inTurn(state, async () => {
    if (state.borrowed) return null;
    const { handOn } = await import('./hand-on.ts');
    return handOn(foldName, state.replica, await heads());
  });
}

/** Goes on from a state folded elsewhere; false where it does not suit. */
export function borrow(state: StoreState, handed: Handed): Promise<boolean> {
  return guarded(state, () =>
    inTurn(state, async () => {
      sawClock(state, (handed.tail.at(-1) ?? handed.borrowed.position).hlc);
      const { keepBorrowed } = await import('./hand-on.ts');
      const { log, identity, borrowed } = state;
      const kept = borrowed ? null : await keepBorrowed(log, identity.tablet, handed);
      if (!kept) return false;
      // Not read back: a state of a year takes seconds to read.
      goOnFrom(state, await loadFrom(log, kept, thisFold));
      state.peers.postMessage('borrowed');
      return true;
    }),
  );
}
