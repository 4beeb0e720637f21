// A store whose databases are open: listens to the other windows, reads the log, and folds and writes from then on. Apart from the opening
// (`store.ts`), which the page's first file does while this one is fetched.

import { clockMsMost } from '../../../shared/log/entry.ts';
import { offerBootstrap, takeBootstrap } from './bootstrap-exchange.ts';
import { orderIndex, orderKey, StoreError, storeFault } from './database.ts';
import { openingDraft } from './drafts.ts';
import { append, checkWhereWhole, fold, takeIn, trustTickets } from './folding.ts';
import { loadReplica, readFrom } from './load.ts';
import {
  closeDatabases,
  type OpenDatabases,
  type PeerMessage,
  type StoreOptions,
  tellFault,
} from './opening.ts';
import type { Preferences } from './preferences.ts';
import { keepSoon } from './snapshots.ts';
import {
  foldAsKept,
  goOnFrom,
  guarded,
  inTurn,
  makeState,
  reload,
  type StoreState,
  tellWriter,
} from './state.ts';
import type { Store } from './store.ts';

/** Reads the log of open databases and goes on from there. Rejects with `StoreError` where it cannot be read; the caller closes them then. */
export async function startStore(databases: OpenDatabases, options: StoreOptions): Promise<Store> {
  const state = makeState(databases, options);
  const { log, peers } = state;
  const { fresh, lost } = databases.found;
  const loading = databases.ahead.then((ahead) => {
    state.isScreen = ahead.isScreen;
    return loadReplica(log, foldAsKept(ahead), ahead);
  });
  state.folding = loading.catch(() => undefined); // thrown below
  // What another window writes meanwhile waits in `folding`.
  const hear = (told: PeerMessage) => {
    const work = typeof told === 'string' ? inTurn(state, () => reload(state)) : fold(state, told, true);
    work.catch((error) => tellFault(state, storeFault(error)));
  };
  peers.onmessage = ({ data }: MessageEvent<PeerMessage>) => hear(data);
  for (const told of databases.heard) hear(told);
  try {
    goOnFrom(state, await loading);
  } catch (error) {
    throw new StoreError(storeFault(error), error);
  }
  keepSoon(state);
  if (fresh) {
    const { appVersion, tabletName } = options;
    const wish = await openingDraft(state.identity, { appVersion, tabletName, lost });
    await append(state, [wish], null);
  } else if (isOutOfBounds(state)) {
    const { putBoundsRight } = await import('./put-right.ts');
    await putBoundsRight(state);
  }
  checkWhereWhole(state);
  return storeOf(state, await databases.preferences);
}

/** True where something is out of all bounds: it stands last in the folding order, so that no start has to look for it in the log. */
function isOutOfBounds({ replica }: StoreState): boolean {
  return (replica.position?.hlc.ms ?? 0) > clockMsMost;
}

/** What puts clocks right is asked for seldom, and fetched then, with what it fetches itself. */
async function toPutRight(): Promise<typeof import('./put-right.ts')> {
  const [asked] = await Promise.all([import('./put-right.ts'), import('./righted.ts')]);
  return asked;
}

function storeOf(state: StoreState, preferences: Preferences): Store {
  const { log, cache, options, changeListeners, faultListeners } = state;
  return {
    get identity() {
      return state.identity;
    },
    isScreen: state.isScreen,
    log,
    cache,
    preferences,
    floor: () => state.replica.state,
    count: () => state.replica.count,
    position: () => state.replica.position,
    append: (drafts, who) => append(state, drafts, who),
    takeIn: (entries) => takeIn(state, entries),
    giveBootstrap: (heads) => offerBootstrap(state, heads),
    takeBootstrap: (handed) => takeBootstrap(state, handed),
    quarantine: async (found) => {
      // Before what is guarded: a part of the app out of reach is no fault of the database, and sync asks again.
      const { quarantineRow } = await import('./aside.ts');
      return guarded(state, async () => {
        const atMs = options.clock.nowMs();
        await log.aside.bulkPut(found.map(({ value, fault }) => quarantineRow(value, fault, atMs)));
        return log.aside.count();
      });
    },
    rightClocks: async ({ nowMs, offMs, acked }) => {
      const { putRight } = await toPutRight(); // as above
      return guarded(state, () => putRight(state, { nowMs, wallMs: nowMs - offMs, acked }));
    },
    beginNewLife: async ({ epoch }) => {
      if (epoch !== state.identity.epoch) return false;
      const { beginNewLife } = await toPutRight(); // as above
      await guarded(state, () => beginNewLife(state));
      return true;
    },
    trust: () => state.fold.trust,
    foldName: () => state.fold.name,
    trustTickets: async (start) => {
      const { trustFromNote } = await import('./tickets.ts'); // as above
      const kept = trustFromNote(start);
      if (kept) await guarded(state, () => trustTickets(state, kept));
    },
    behind: () => {
      const { bootstrap, missing } = state;
      return bootstrap && { missing: Math.max(0, missing), of: bootstrap.count };
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
    entry: async (key) => (await log.entries.get([...key]))?.entry ?? null,
    readAll: (each) => readFrom(log, null, each),
    close: () => closeState(state),
  };
}

async function closeState(state: StoreState): Promise<void> {
  state.isClosed = true;
  clearTimeout(state.keeping);
  tellWriter(state, (writer) => writer.stop());
  await state.checking;
  // What is still being kept comes to its end first: its connection would hold up whoever throws the store away.
  await state.cache.kept.count().catch(() => undefined);
  closeDatabases(state);
}
