// What an open store works on, and the small acts that all its parts share.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import { createReplica, type Replica } from '../../../shared/floor/replica.ts';
import type { ClockReading, Entry } from '../../../shared/log/entry.ts';
import type { Clock } from '../device/clock.ts';
import type { Bootstrap } from './bootstrap.ts';
import { CacheDatabase, LogDatabase, type StoreFault, storeFault } from './database.ts';
import { type Identity, openIdentity, type Remembered } from './identity.ts';
import { type Loaded, loadReplica } from './load.ts';
import type { Writer } from './writer.ts';

/** Names the fold: only a state of the same name can be a bootstrap snapshot. */
export const foldName = `floor-${FOLD_VERSION}`;
export const thisFold = { version: FOLD_VERSION, name: foldName };

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
  replica: Replica;
  /** Entries in the snapshot that the next start goes on from. */
  keptCount: number;
  keeping: ReturnType<typeof setTimeout> | undefined;
  bootstrap: Bootstrap | null;
  /** Entries of the bootstrap snapshot that are not here yet, and how many when listeners were last told. */
  missing: number;
  toldMissing: number;
  checking: Promise<void> | null;
  isClosed: boolean;
}

/** How a database was found: whose it is, whether that is new, and what chain was lost before it. */
export interface Opened {
  readonly identity: Identity;
  readonly fresh: boolean;
  readonly lost: Remembered | null;
}

/** Opens the databases. The floor is an empty one until the log is read. Rejects with `StoreError`. */
export async function openState(options: StoreOptions): Promise<{ state: StoreState; opened: Opened }> {
  const log = new LogDatabase(options.name);
  const cache = new CacheDatabase(options.name === undefined ? undefined : `${options.name}-cache`);
  const faultListeners: StoreState['faultListeners'] = new Set();
  log.on('versionchange', () => {
    // A newer version of the app upgrades the database in another window: this one must not write with old code.
    log.close({ disableAutoOpen: true });
    tellFault({ faultListeners }, 'closed-by-newer');
    return false; // else the library's own handler follows, which lets the next write open the database again
  });
  let opened: Opened;
  try {
    await log.open();
    opened = await openIdentity(log, options.isPassing);
  } catch (error) {
    throw new StoreError(storeFault(error), error);
  }
  const { identity } = opened;
  // Sealing is fetched while the log is read: the first screen shows what was written, and writes nothing itself.
  const writing = import('./writer.ts').then(({ createWriter }) => createWriter(log, identity, options));
  writing.catch(() => undefined); // the first append tells
  const state: StoreState = {
    options,
    log,
    cache,
    peers: new BroadcastChannel(`${log.name}-entries`),
    writing,
    changeListeners: new Set(),
    faultListeners,
    identity,
    folding: Promise.resolve(),
    replica: createReplica(),
    keptCount: 0,
    keeping: undefined,
    bootstrap: null,
    missing: 0,
    toldMissing: 0,
    checking: null,
    isClosed: false,
  };
  return { state, opened };
}

/** Tells of a fault that stops work. */
export function tellFault({ faultListeners }: Pick<StoreState, 'faultListeners'>, fault: StoreFault): void {
  for (const listener of [...faultListeners]) listener(fault);
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

/** Goes on from a floor that was read anew. */
export function goOnFrom(state: StoreState, loaded: Loaded): void {
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

/** Another window of this tablet took a bootstrap snapshot in or dropped it, or put clocks right. */
export async function reload(state: StoreState): Promise<void> {
  const { log, cache } = state;
  const found = await log.meta.get('identity');
  if (found) goOnAs(state, found.value as Identity); // written by this store only
  goOnFrom(state, await loadReplica(log, cache, thisFold));
}
