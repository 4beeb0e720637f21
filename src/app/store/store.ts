// The tablet's log and the floor as it says: opened once, appended to, folded, told to the other windows of this tablet.
// A screen that shows a verdict awaits `append`; lists read `floor` and are told of changes by `onChange`.

import type { Draft } from '../../../shared/floor/draft.ts';
import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import type { Wish } from '../../../shared/floor/kinds.ts';
import { createReplica, foldIn, type Replica, snapshotOf } from '../../../shared/floor/replica.ts';
import type { FloorState, FoldPosition } from '../../../shared/floor/state.ts';
import { type ClockReading, chainId, type Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import type { Clock } from '../device/clock.ts';
import { type Borrowed, type ChainEnd, countMissing, giveBack, isIn } from './borrowed.ts';
import type { OwnFold } from './borrowed-check.ts';
import {
  CacheDatabase,
  countUpTo,
  LogDatabase,
  orderIndex,
  orderKey,
  type StoreFault,
  storeFault,
} from './database.ts';
import { addMissing, checkDraft, checkWish, openingWish } from './drafts.ts';
import { type Identity, openIdentity, type Remembered } from './identity.ts';
import { foldAll, type Loaded, loadFrom, loadReplica, readFrom } from './load.ts';
import type { Handed } from './pack.ts';
import { asideRow, type Right, rightClocks } from './righted.ts';
import type { Writer } from './writer.ts';

/** Names the fold: only a state of the same name can be handed on. */
export const foldName = `floor-${FOLD_VERSION}`;
const thisFold = { version: FOLD_VERSION, name: foldName };
/** A snapshot is written after this many entries; on a long log after this share of it, since the state to write grows too. */
const SNAPSHOT_EVERY = 200;
const SNAPSHOT_SHARE = 1 / 1000;
/** How far the history is, is told each time so many more of its entries are here. */
const TELL_EVERY = 5000;
/** How long after a start that folded much its snapshot is written: by then the first screen stands. */
const SNAPSHOT_AFTER_MS = 3000;

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
  /** Checks and seals as `append` does, and writes nothing: makes ready for the first append. */
  readonly rehearse: (wishes: readonly Wish[]) => Promise<void>;
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

/** A write that failed; nothing of it was kept. */
export class StoreError extends Error {
  readonly fault: StoreFault;
  constructor(fault: StoreFault, cause: unknown) {
    super(`Cannot write the log: ${fault}`, { cause });
    this.fault = fault;
  }
}

/** What the store is opened with. */
export interface StoreOptions {
  readonly clock: Clock;
  readonly appVersion: string;
  readonly tabletName: string;
  readonly name?: string;
  /** True for a store that is thrown away on purpose: this device remembers nothing of it. */
  readonly isPassing?: boolean;
}

/** Opens the store: identity, head, folded state. Rejects with `StoreError` where the database cannot be opened. */
export async function openStore(options: StoreOptions): Promise<Store> {
  const log = new LogDatabase(options.name);
  const cache = new CacheDatabase(options.name === undefined ? undefined : `${options.name}-cache`);
  const changeListeners = new Set<(entries: readonly Entry[]) => void>();
  const faultListeners = new Set<(fault: StoreFault) => void>();
  const tellFault = (fault: StoreFault) => {
    for (const listener of [...faultListeners]) listener(fault);
  };
  log.on('versionchange', () => {
    // A newer version of the app upgrades the database in another window: this one must not write with old code.
    log.close({ disableAutoOpen: true });
    tellFault('closed-by-newer');
    return false; // else the library's own handler follows, which lets the next write open the database again
  });

  let opened: { identity: Identity; fresh: boolean; lost: Remembered | null };
  try {
    await log.open();
    opened = await openIdentity(log, options.isPassing);
  } catch (error) {
    throw new StoreError(storeFault(error), error);
  }
  let { identity } = opened;
  // Sealing is fetched while the log is read: the first screen shows what was written, and writes nothing itself.
  const writing = import('./writer.ts').then(({ createWriter }) => createWriter(log, identity, options));
  writing.catch(() => undefined); // the first append tells
  /** In turn with appends: what was told before one counts for it. */
  const tellWriter = (tell: (writer: Writer) => void) => {
    writing.then(tell).catch(() => undefined); // as above
  };
  const sawClock = (seen: ClockReading) => tellWriter((writer) => writer.sawClock(seen));

  // Listening starts before the log is read: what another window writes meanwhile waits in `folding`, else it would be missed.
  let folding: Promise<unknown> = Promise.resolve();
  const peers = new BroadcastChannel(`${log.name}-entries`);
  peers.onmessage = (message: MessageEvent<readonly Entry[] | 'borrowed' | 'given-back' | 'righted'>) => {
    const work = typeof message.data === 'string' ? inTurn(reload) : fold(message.data, true);
    work.catch((error) => tellFault(storeFault(error)));
  };
  const loading = loadReplica(log, cache, thisFold);
  folding = loading.catch(() => undefined); // thrown below
  let replica: Replica;
  let keptCount: number;
  let borrowed: Borrowed | null;
  /** Entries of the borrowed state that are not here yet. */
  let missing: number;
  let toldMissing = 0;
  let checking: Promise<void> | null = null;
  let isClosed = false;
  try {
    ({ replica, keptCount, borrowed, missing } = await loading);
  } catch (error) {
    peers.close();
    throw new StoreError(storeFault(error), error);
  }
  // A start that had to fold much is slow once, not every time until enough is written.
  let keeping: ReturnType<typeof setTimeout> | undefined;
  if (isSnapshotDue()) keeping = setTimeout(keepSnapshot, SNAPSHOT_AFTER_MS);
  // Own entries come after all that was ever seen here, also where this tablet's clock runs behind the others'.
  if (replica.position) sawClock(replica.position.hlc);

  /** One after the other: a fold from the start must not overtake entries that come in while it reads. */
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = folding.then(work);
    folding = result.catch(() => undefined); // the caller gets the failure; the queue goes on
    return result;
  }

  function fold(entries: readonly Entry[], told: boolean): Promise<void> {
    return inTurn(() => foldNow(entries, told));
  }

  /** Another window of this tablet borrowed a state, or gave one back. */
  async function reload(): Promise<void> {
    const found = await log.meta.get('identity');
    if (found) goOnAs(found.value as Identity); // written by this store only
    goOnFrom(await loadReplica(log, cache, thisFold));
  }

  function goOnAs(next: Identity): void {
    if (next.epoch === identity.epoch) return;
    identity = next;
    tellWriter((writer) => writer.goOnAs(next));
  }

  /** Clocks put right, and all folded anew where that changed the log. */
  async function putRight(right: Right): Promise<void> {
    const next = await rightClocks(log, identity, right);
    if (!next) return;
    await cache.kept.delete('snapshot').catch(() => undefined); // of no use, and found so at a start
    tellWriter((writer) => writer.forgetClock());
    goOnAs(next);
    goOnFrom(await loadReplica(log, cache, thisFold));
    peers.postMessage('righted');
  }

  function goOnFrom(loaded: Loaded): void {
    ({ replica, keptCount, borrowed, missing } = loaded);
    if (replica.position) sawClock(replica.position.hlc);
    for (const listener of [...changeListeners]) listener([]);
  }

  /** The entries to fold: those that a borrowed state holds, or that belong before it, are only counted. */
  async function afterBorrowed(entries: readonly Entry[]): Promise<readonly Entry[]> {
    if (!borrowed) return entries;
    const { position } = borrowed;
    const behind = entries.filter((entry) => compareEntries(entry, position) <= 0);
    for (const entry of behind) if (isIn(borrowed, entry)) missing -= 1;
    // Told by another window while this one counted, some may have been taken off twice.
    if (missing <= 0) missing = await countMissing(log, borrowed);
    if (missing <= 0) checkLater();
    return entries.filter((entry) => compareEntries(entry, position) > 0);
  }

  /** The history is here: folds it beside the work in hand, and then goes on from what this tablet folded itself. */
  function checkLater(): void {
    const lent = borrowed;
    if (checking || !lent || isClosed) return;
    checking = checkBorrowed(lent)
      .catch((error) => tellFault(storeFault(error)))
      .finally(() => {
        checking = null;
      });
  }

  async function checkBorrowed(lent: Borrowed): Promise<void> {
    const isOver = () => isClosed || borrowed !== lent;
    const { foldBehind } = await import('./borrowed-check.ts');
    for (let isDone = false; !isDone && !isOver(); ) {
      const own = await foldBehind(log, lent, { isSameFold: lent.fold === foldName, isOver });
      if (!own) return;
      isDone = await inTurn(() => putInPlace(lent, own));
      if (isDone && own.differs.length > 0) await tellDifference(lent, own.differs);
    }
  }

  /** False where an entry came in late meanwhile, so that it must be folded once more. */
  async function putInPlace(lent: Borrowed, own: OwnFold): Promise<boolean> {
    if (isClosed || borrowed !== lent) return true;
    if ((await countUpTo(log, lent.position)) !== own.count) return false;
    replica = createReplica({ state: own.state, position: lent.position, count: own.count });
    await readFrom(log, lent.position, (entries) => {
      foldIn(replica, entries);
    });
    await giveBack(log);
    borrowed = null;
    peers.postMessage('given-back');
    keepSnapshot();
    for (const listener of [...changeListeners]) listener([]);
    return true;
  }

  /** What was lent was wrong: the log keeps who folded it and what was otherwise. */
  async function tellDifference({ from, count }: Borrowed, parts: readonly string[]): Promise<void> {
    const payload = { from: from ?? null, entries: count, parts: [...parts] };
    await store.append([{ kind: 'state.differed', payload }], null);
  }

  async function foldNow(entries: readonly Entry[], told: boolean): Promise<void> {
    if (!foldIn(replica, await afterBorrowed(entries))) replica = await foldAll(log, borrowed, thisFold);
    for (const entry of entries) if (entry.tablet !== identity.tablet) sawClock(entry.hlc);
    if (!told) peers.postMessage(entries);
    if (isSnapshotDue()) keepSnapshot();
    if (isOnlyHistory(entries)) return;
    for (const listener of [...changeListeners]) listener(entries);
  }

  /** Pages of history change nothing on the floor: how far they are is told now and then. */
  function isOnlyHistory(entries: readonly Entry[]): boolean {
    const lent = borrowed;
    if (!lent || missing <= 0 || entries.some((entry) => !isIn(lent, entry))) return false;
    if (toldMissing - missing < TELL_EVERY && toldMissing >= missing) return true;
    toldMissing = missing;
    return false;
  }

  function isSnapshotDue(): boolean {
    return replica.count - keptCount >= Math.max(SNAPSHOT_EVERY, replica.count * SNAPSHOT_SHARE);
  }

  function keepSnapshot(): void {
    if (borrowed) return; // a start goes on from that
    keptCount = replica.count;
    const snapshot = snapshotOf(replica);
    if (!snapshot) return;
    // Only a shortcut for the next start: if it cannot be kept, the log is folded instead.
    cache.kept.put({ key: 'snapshot', value: { version: FOLD_VERSION, snapshot } }).catch(() => undefined);
  }

  async function guarded<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      const fault = storeFault(error);
      tellFault(fault);
      throw new StoreError(fault, error);
    }
  }

  /** As `putRight`, while nothing is appended and nothing folded. */
  async function putRightAlone(told: Pick<Right, 'nowMs' | 'wallMs' | 'acked'>): Promise<void> {
    const right = { ...told, app: options.appVersion, name: nameNow() };
    await (await writing).alone(() => inTurn(() => putRight(right)));
  }

  const nameNow = () => replica.state.tablets.get(identity.tablet)?.name ?? options.tabletName;
  const store: Store = {
    get identity() {
      return identity;
    },
    log,
    cache,
    floor: () => replica.state,
    count: () => replica.count,
    append: (drafts, who) =>
      guarded(async () => {
        const entries = await (await writing).append(drafts.map(checkDraft), who);
        await fold(entries, false);
        return entries;
      }),
    rehearse: async (wishes) => (await writing).rehearse(wishes.map(checkWish)),
    takeIn: (entries) =>
      guarded(async () => {
        const fresh = await addMissing(log, entries);
        if (fresh.length > 0) await fold(fresh, false);
      }),
    handOn: (heads) =>
      // In turn with folding: state and ends must speak of the same moment.
      inTurn(async () => {
        if (borrowed) return null;
        const { handOn } = await import('./hand-on.ts');
        return handOn(foldName, replica, await heads());
      }),
    borrow: (handed) =>
      guarded(() =>
        inTurn(async () => {
          sawClock((handed.tail.at(-1) ?? handed.borrowed.position).hlc);
          const { keepBorrowed } = await import('./hand-on.ts');
          const kept = borrowed ? null : await keepBorrowed(log, identity.tablet, handed);
          if (!kept) return false;
          // Not read back: a state of a year takes seconds to read.
          goOnFrom(await loadFrom(log, kept, thisFold));
          peers.postMessage('borrowed');
          return true;
        }),
      ),
    setAside: (found) =>
      guarded(async () => {
        const atMs = options.clock.nowMs();
        await log.aside.bulkPut(found.map(({ value, fault }) => asideRow(value, fault, atMs)));
        return log.aside.count();
      }),
    rightClocks: ({ nowMs, offMs, acked }) =>
      guarded(() => putRightAlone({ nowMs, wallMs: nowMs - offMs, acked })),
    behind: () => borrowed && { missing: Math.max(0, missing), of: borrowed.count },
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
    close: async () => {
      isClosed = true;
      clearTimeout(keeping);
      await checking;
      // What is still being kept comes to its end first: its connection would hold up whoever throws the store away.
      await cache.kept.count().catch(() => undefined);
      peers.close();
      log.close();
      cache.close();
    },
  };

  if (opened.fresh) {
    const { appVersion, tabletName } = options;
    await store.append([await openingWish(identity, { appVersion, tabletName, lost: opened.lost })], null);
  } else {
    // Without anybody's time, readings out of all bounds are wrong for sure.
    const acked = { [chainId(identity)]: Number.MAX_SAFE_INTEGER - 1 }; // the head alone tells: not the whole chain is read
    await putRightAlone({ nowMs: null, wallMs: options.clock.nowMs(), acked });
  }
  if (borrowed && missing <= 0) checkLater();
  return store;
}
