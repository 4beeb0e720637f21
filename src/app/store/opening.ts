// The databases of a store, opened: what a start does first. What folds the log and writes to it is fetched meanwhile.

import type { Entry } from '../../../shared/log/entry.ts';
import type { Clock } from '../device/clock.ts';
import { CacheDatabase, LogDatabase, StoreError, type StoreFault, storeFault } from './database.ts';
import { type Identity, openIdentity, type Remembered } from './identity.ts';
import { type Preferences, readPreferences } from './preferences.ts';
import { type ReadAhead, readAhead } from './read-ahead.ts';

/** What the store is opened with. */
export interface StoreOptions {
  readonly clock: Clock;
  readonly appVersion: string;
  readonly tabletName: string;
  readonly name?: string;
  /** True for a store that is thrown away on purpose: this device remembers nothing of it. */
  readonly isPassing?: boolean;
}

/** How a database was found: whose it is, whether that is new, and what chain was lost before it. */
export interface Found {
  readonly identity: Identity;
  readonly fresh: boolean;
  readonly lost: Remembered | null;
}

/** What windows of a tablet tell each other: entries that were written, or that all is to be read anew. */
export type PeerMessage = readonly Entry[] | 'borrowed' | 'given-back' | 'righted' | 'trusted';

/** The databases of a store, what was read of them meanwhile, and who is told of faults. */
export interface OpenDatabases {
  readonly log: LogDatabase;
  readonly cache: CacheDatabase;
  /** The other windows of this tablet. */
  readonly peers: BroadcastChannel;
  /** What they told since before anything was read, until somebody else listens. */
  readonly heard: readonly PeerMessage[];
  readonly ahead: Promise<ReadAhead>;
  readonly preferences: Promise<Preferences>;
  readonly faultListeners: Set<(fault: StoreFault) => void>;
  readonly found: Found;
}

/** Opens the databases and finds whose they are. Rejects with `StoreError`. */
export async function openDatabases(options: StoreOptions): Promise<OpenDatabases> {
  const log = new LogDatabase(options.name);
  const cache = new CacheDatabase(options.name === undefined ? undefined : `${options.name}-cache`);
  // Listening starts before the log is read: what another window writes meanwhile would be missed.
  const peers = new BroadcastChannel(`${log.name}-entries`);
  const heard: PeerMessage[] = [];
  peers.onmessage = ({ data }: MessageEvent<PeerMessage>) => heard.push(data);
  const faultListeners: OpenDatabases['faultListeners'] = new Set();
  log.on('versionchange', () => {
    // A newer version of the app upgrades the database in another window: this one must not write with old code.
    log.close({ disableAutoOpen: true });
    tellFault({ faultListeners }, 'closed-by-newer');
    return false; // else the library's own handler follows, which lets the next write open the database again
  });
  // Small and asked for first. Both are asked for once the databases are open, whoever opens them.
  const preferences = readPreferences(cache);
  const ahead = readAhead(log, cache);
  ahead.catch(() => undefined); // thrown where it is waited for
  try {
    await log.open();
    const found = await openIdentity(log, options.isPassing);
    return { log, cache, peers, heard, ahead, preferences, faultListeners, found };
  } catch (error) {
    closeDatabases({ log, cache, peers });
    throw new StoreError(storeFault(error), error);
  }
}

/** Closes what a store works on: nothing is heard or held open any more. */
export function closeDatabases({ log, cache, peers }: Pick<OpenDatabases, 'log' | 'cache' | 'peers'>): void {
  peers.close();
  log.close();
  cache.close();
}

/** Tells of a fault that stops work. */
export function tellFault(
  { faultListeners }: Pick<OpenDatabases, 'faultListeners'>,
  fault: StoreFault,
): void {
  for (const listener of [...faultListeners]) listener(fault);
}
