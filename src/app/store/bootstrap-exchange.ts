// A bootstrap snapshot given to another tablet, and one taken in from there: once in the life of a tablet.

import type { ChainEnd } from './bootstrap.ts';
import { loadFrom } from './load.ts';
import type { BootstrapPack } from './pack.ts';
import { goOnFrom, guarded, inTurn, type StoreState, sawClock } from './state.ts';

/** The folded state for another tablet; null where it is not whole just now. */
export function offerBootstrap(
  state: StoreState,
  heads: () => Promise<readonly ChainEnd[]>,
): Promise<BootstrapPack | null> {
  // In turn with folding: state and ends must speak of the same moment.
  return inTurn(state, async () => {
    if (state.bootstrap) return null;
    const { giveBootstrap } = await import('./bootstrap-handover.ts');
    return giveBootstrap(state.fold.name, state.replica, await heads());
  });
}

/** Goes on from a state folded elsewhere; false where it does not suit. */
export function takeBootstrap(state: StoreState, handed: BootstrapPack): Promise<boolean> {
  return guarded(state, () =>
    inTurn(state, async () => {
      sawClock(state, (handed.tail.at(-1) ?? handed.bootstrap.position).hlc);
      const { keepBootstrap } = await import('./bootstrap-handover.ts');
      const { log, identity, bootstrap } = state;
      const kept = bootstrap ? null : await keepBootstrap(log, identity.tablet, handed);
      if (!kept) return false;
      // Not read back: a state of a year takes seconds to read.
      goOnFrom(state, await loadFrom(log, kept, state));
      state.peers.postMessage('borrowed');
      return true;
    }),
  );
}
