// The tablet's log and the floor as it says: opened once, appended to, folded, told to the other windows of this tablet.
// A screen that shows a verdict awaits `append`; lists read `floor` and are told of changes by `onChange`.

import type { Draft } from '../../../shared/floor/draft.ts';
import type { FloorState, FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import type { ChainEnd } from './borrowed.ts';
import {
  type CacheDatabase,
  type LogDatabase,
  orderIndex,
  orderKey,
  type StoreFault,
  storeFault,
} from './database.ts';
import { openingWish } from './drafts.ts';
import { append, checkWhereWhole, fold, takeIn } from './folding.ts';
import type { Identity } from './identity.ts';
import { borrow, lend } from './lending.ts';
import { loadReplica, readFrom } from './load.ts';
import type { Handed } from './pack.ts';
import { putBoundsRight, putRight } from './put-right.ts';
import { keepSoon } from './snapshots.ts';
import {
  goOnFrom,
  guarded,
  inTurn,
  openState,
  reload,
  StoreError,
  type StoreOptions,
  type StoreState,
  tellFault,
  thisFold,
} from './state.ts';
import type { Right } from './wrong-clocks.ts';

export { foldName, StoreError } from './state.ts';

/** The open store. */
export interface Store {
  readonly identity: Identity;
  readonly log: LogDatabase;
  readonly cache: CacheDatabase;
  /** What the log says now. Read only. */
  readonly floor: () => FloorState;
  /** Entries in the log, folded or not. */
  readonly count: () => number;
  /** Writes entries, all or none; resolves when they are durable and folded. Rejects with `StoreError`. */
  readonly append: (drafts: readonly Draft[], who: string | null) => Promise<readonly Entry[]>;
  /** Takes in entries of other tablets; those already here change nothing. Resolves when durable and folded. */
  readonly takeIn: (entries: readonly Entry[]) => Promise<void>;
  /** The folded state for another tablet, `heads` being the ends of all chains here; null where it is not whole just now. */
  readonly handOn: (heads: () => Promise<readonly ChainEnd[]>) => Promise<Handed | null>;
  /** Goes on from a state folded elsewhere; false where it does not suit. Resolves when durable and in use. */
  readonly borrow: (handed: Handed) => Promise<boolean>;
  /** While a borrowed state stands in for history: how much of that is not here yet; null where the log is whole and was folded here. */
  readonly behind: () => Behind | null;
  /** Keeps what came and is no part of the log, once each; answers how many are kept so in all. */
  readonly setAside: (
    found: readonly { readonly value: unknown; readonly fault: string }[],
  ) => Promise<number>;
  /** The true time is known: what is dated beyond the limit ahead of it goes aside, and own entries are told again. Resolves when durable and folded. */
  readonly rightClocks: (
    wish: Pick<Right, 'acked'> & { readonly nowMs: number; readonly offMs: number },
  ) => Promise<void>;
  readonly onChange: (listener: (entries: readonly Entry[]) => void) => () => void;
  /** A fault that stops work until somebody acts, told once to each listener. */
  readonly onFault: (listener: (fault: StoreFault) => void) => () => void;
  /** Entries in folding order, newest first, from before a position; at most `limit`. */
  readonly newest: (limit: number, before?: FoldPosition) => Promise<readonly Entry[]>;
  /** Reads the whole log in folding order, chunk by chunk. */
  readonly readAll: (each: (entries: readonly Entry[]) => void | Promise<void>) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** History that a borrowed state stands in for. */
export interface Behind {
  /** Entries of it that are not here yet; 0 while all are, and are being folded here. */
  readonly missing: number;
  /** Entries in the borrowed state. */
  readonly of: number;
}

/** Opens the store: identity, head, folded state. Rejects with `StoreError` where the database cannot be opened. */
export async function openStore(options: StoreOptions): Promise<Store> {
  const { state, opened } = await openState(options);
  const { log, cache, peers } = state;
  // Listening starts before the log is read: what another window writes meanwhile waits in `folding`, else it would be missed.
  peers.onmessage = (message: MessageEvent<readonly Entry[] | 'borrowed' | 'given-back' | 'righted'>) => {
    const { data } = message;
    const work = typeof data === 'string' ? inTurn(state, () => reload(state)) : fold(state, data, true);
    work.catch((error) => tellFault(state, storeFault(error)));
  };
  const loading = loadReplica(log, cache, thisFold);
  state.folding = loading.catch(() => undefined); // thrown below
  try {
    goOnFrom(state, await loading);
  } catch (error) {
    peers.close();
    throw new StoreError(storeFault(error), error);
  }
  keepSoon(state);
  if (opened.fresh) {
    const { appVersion, tabletName } = options;
    const wish = await openingWish(state.identity, { appVersion, tabletName, lost: opened.lost });
    await append(state, [wish], null);
  } else await putBoundsRight(state);
  checkWhereWhole(state);
  return storeOf(state);
}

function storeOf(state: StoreState): Store {
  const { log, cache, options, changeListeners, faultListeners } = state;
  return {
    get identity() {
      return state.identity;
    },
    log,
    cache,
    floor: () => state.replica.state,
    count: () => state.replica.count,
    append: (drafts, who) => append(state, drafts, who),
    takeIn: (entries) => takeIn(state, entries),
    handOn: (heads) => lend(state, heads),
    borrow: (handed) => borrow(state, handed),
    setAside: async (found) => {
      // Before what is guarded: a part of the app out of reach is no fault of the database, and sync asks again.
      const { asideRow } = await import('./aside.ts');
      return guarded(state, async () => {
        const atMs = options.clock.nowMs();
        await log.aside.bulkPut(found.map(({ value, fault }) => asideRow(value, fault, atMs)));
        return log.aside.count();
      });
    },
    rightClocks: async ({ nowMs, offMs, acked }) => {
      await import('./righted.ts'); // as above
      return guarded(state, () => putRight(state, { nowMs, wallMs: nowMs - offMs, acked }));
    },
    behind: () => {
      const { borrowed, missing } = state;
      return borrowed && { missing: Math.max(0, missing), of: borrowed.count };
    },
    onChange: (listener) => {
      changeListeners.add(listener);
      return () => changeListeners.delete(listener);
    },
    onFault: (listener) => {
      faultListeners.add(listener);
      return () => faultListeners.delete(listener);
    },
    newest: async (limit, before) => {
      const rows = before
        ? log.entries.where(orderIndex).below(orderKey(before))
        : log.entries.orderBy(orderIndex);
      return (await rows.reverse().limit(limit).toArray()).map((row) => row.entry);
    },
    readAll: (each) => readFrom(log, null, each),
    close: () => closeState(state),
  };
}

async function closeState(state: StoreState): Promise<void> {
  const { log, cache, peers } = state;
  state.isClosed = true;
  clearTimeout(state.keeping);
  await state.checking;
  // What is still being kept comes to its end first: its connection would hold up whoever throws the store away.
  await cache.kept.count().catch(() => undefined);
  peers.close();
  log.close();
  cache.close();
}
