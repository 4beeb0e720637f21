// What an open store works on, and the small acts that all its parts share.

import { createReplica, type Replica } from '../../../shared/floor/replica.ts';
import type { ClockReading, Entry } from '../../../shared/log/entry.ts';
import type { Bootstrap } from './bootstrap.ts';
import { type CacheDatabase, type LogDatabase, StoreError, type StoreFault, storeFault } from './database.ts';
import type { Identity } from './identity.ts';
import { type Loaded, loadReplica } from './load.ts';
import { type OpenDatabases, type StoreOptions, tellFault } from './opening.ts';
import { type ReadAhead, readAhead } from './read-ahead.ts';
import { type FoldVersion, foldWith } from './this-fold.ts';
import { trustOf } from './trust.ts';
import type { Writer } from './writer.ts';

/** The state of an open store. */
export interface StoreState {
  readonly options: StoreOptions;
  readonly log: LogDatabase;
  readonly cache: CacheDatabase;
  /** The other windows of this tablet. */
  readonly peers: BroadcastChannel;
  readonly writing: Promise<Writer>;
  readonly changeListeners: Set<(entries: readonly Entry[]) => void>;
  readonly faultListeners: Set<(fault: StoreFault) => void>;
  identity: Identity;
  /** The end of what is being folded: the next waits for it. */
  folding: Promise<unknown>;
  /** By which fold the replica is made, and of which life of the log: set together with it, since a snapshot bears both. */
  fold: FoldVersion;
  life: string | null;
  replica: Replica;
  /** Entries in the snapshot that the next start goes on from. */
  keptCount: number;
  keeping: ReturnType<typeof setTimeout> | undefined;
  /** A snapshot is due, and waits for an idle moment. */
  isKeeping: boolean;
  bootstrap: Bootstrap | null;
  /** Entries of the bootstrap snapshot that are not here yet, and how many when listeners were last told. */
  missing: number;
  toldMissing: number;
  checking: Promise<void> | null;
  /** A wall screen: nothing new is written here. */
  isScreen: boolean;
  isClosed: boolean;
}

/** Makes the state of a store whose databases are open. The floor is an empty one until the log is read. */
export function makeState(
  { log, cache, peers, faultListeners, found }: OpenDatabases,
  options: StoreOptions,
): StoreState {
  const { identity } = found;
  // Sealing is fetched while the log is read: the first screen shows what was written, and writes nothing itself.
  const writing = import('./writer.ts').then(({ createWriter }) => createWriter(log, identity, options));
  writing.catch(() => undefined); // the first append tells
  return {
    options,
    log,
    cache,
    peers,
    writing,
    changeListeners: new Set(),
    faultListeners,
    identity,
    folding: Promise.resolve(),
    fold: foldWith(null),
    life: null,
    replica: createReplica(),
    keptCount: 0,
    keeping: undefined,
    isKeeping: false,
    bootstrap: null,
    missing: 0,
    toldMissing: 0,
    checking: null,
    isScreen: false,
    isClosed: false,
  };
}

/** Tells that the floor changed; no entries where it changed as a whole. */
export function tellChange({ changeListeners }: StoreState, entries: readonly Entry[]): void {
  for (const listener of [...changeListeners]) listener(entries);
}

/** In turn with appends: what was told before one counts for it. */
export function tellWriter({ writing }: StoreState, tell: (writer: Writer) => void): void {
  writing.then(tell).catch(() => undefined); // the first append tells
}

/** Own entries come after all that was ever seen here, also where this tablet's clock runs behind the others'. */
export function sawClock(state: StoreState, seen: ClockReading): void {
  tellWriter(state, (writer) => writer.sawClock(seen));
}

/** One after the other: a fold from the start must not overtake entries that come in while it reads. */
export function inTurn<T>(state: StoreState, work: () => Promise<T>): Promise<T> {
  const result = state.folding.then(work);
  state.folding = result.catch(() => undefined); // the caller gets the failure; the queue goes on
  return result;
}

/** Does what writes; a failure is told to listeners, and thrown as `StoreError`. */
export async function guarded<T>(state: StoreState, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const fault = storeFault(error);
    tellFault(state, fault);
    throw new StoreError(fault, error);
  }
}

/** The fold with the trust that is kept. */
export function foldAsKept({ trust }: Pick<ReadAhead, 'trust'>): FoldVersion {
  return foldWith(trust === undefined ? null : trustOf(trust));
}

/** Goes on from a floor that was read anew. */
export function goOnFrom(state: StoreState, loaded: Loaded): void {
  state.fold = loaded.fold;
  state.life = loaded.life;
  state.replica = loaded.replica;
  state.keptCount = loaded.keptCount;
  state.bootstrap = loaded.bootstrap;
  state.missing = loaded.missing;
  if (state.replica.position) sawClock(state, state.replica.position.hlc);
  tellChange(state, []);
}

/** Goes on in another life of this tablet's chain. */
export function goOnAs(state: StoreState, next: Identity): void {
  if (next.epoch === state.identity.epoch) return;
  state.identity = next;
  tellWriter(state, (writer) => writer.goOnAs(next));
}

/** Another window of this tablet took a bootstrap snapshot in or dropped it, put clocks right, or heard of tickets. */
export async function reload(state: StoreState): Promise<void> {
  const { log, cache } = state;
  const found = await log.meta.get('identity');
  if (found) goOnAs(state, found.value as Identity); // written by this store only
  const ahead = await readAhead(log, cache);
  const isSame = ahead.trust?.id === state.fold.trust?.id;
  goOnFrom(state, await loadReplica(log, isSame ? state.fold : foldAsKept(ahead), ahead));
}
