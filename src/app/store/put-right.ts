// Clocks put right (see righted.ts) in an open store: the chain goes on in its new life, and all is folded anew.

import { chainId } from '../../../shared/log/entry.ts';
import { snapshotKey } from './database.ts';
import type { Identity } from './identity.ts';
import { loadReplica } from './load.ts';
import { readAhead } from './read-ahead.ts';
import { goOnAs, goOnFrom, inTurn, type StoreState, tellWriter } from './state.ts';
import { findWrong, type Right } from './wrong-clocks.ts';

/** Puts clocks right while nothing is appended and nothing folded. */
export async function putRight(
  state: StoreState,
  told: Pick<Right, 'nowMs' | 'wallMs' | 'acked'>,
): Promise<void> {
  const { options, identity, replica, writing } = state;
  const name = replica.state.tablets.get(identity.tablet)?.name ?? options.tabletName;
  const right: Right = { ...told, app: options.appVersion, name };
  await (await writing).alone(() => inTurn(state, () => putRightNow(state, right)));
}

/** Without anybody's time, as at a start: readings out of all bounds are wrong for sure. */
const boundsOf = ({ identity, options }: StoreState): Pick<Right, 'nowMs' | 'wallMs' | 'acked'> => ({
  nowMs: null,
  wallMs: options.clock.nowMs(),
  acked: { [chainId(identity)]: Number.MAX_SAFE_INTEGER - 1 }, // the head alone tells: not the whole chain is read
});

/** Puts right what is out of all bounds. */
export async function putBoundsRight(state: StoreState): Promise<void> {
  await putRight(state, boundsOf(state));
}

async function putRightNow(state: StoreState, right: Right): Promise<void> {
  const { log } = state;
  const wrong = await findWrong(log, state.identity, right);
  if (!wrong) return;
  const { rightClocks } = await import('./righted.ts');
  await goOnRighted(state, await rightClocks(log, state.identity, { right, wrong }));
}

/** The server holds another chain under this one's name: all of it is told again in a new life of the chain. */
export async function beginNewLife(state: StoreState): Promise<void> {
  const { options, log, writing } = state;
  const { tellAllAgain } = await import('./righted.ts');
  await (await writing).alone(() =>
    inTurn(state, async () => {
      const name = state.replica.state.tablets.get(state.identity.tablet)?.name ?? options.tabletName;
      const right = { name, app: options.appVersion, wallMs: options.clock.nowMs() };
      await goOnRighted(state, await tellAllAgain(log, state.identity, right));
    }),
  );
}

async function goOnRighted(state: StoreState, next: Identity): Promise<void> {
  const { log, cache } = state;
  await cache.kept.delete(snapshotKey).catch(() => undefined); // of no use, and found so at a start
  tellWriter(state, (writer) => writer.forgetClock());
  goOnAs(state, next);
  goOnFrom(state, await loadReplica(log, state.fold, await readAhead(log, cache)));
  state.peers.postMessage('righted');
}
