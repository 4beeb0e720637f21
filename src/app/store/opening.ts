// The databases of a store, opened: what a start does first. What folds the log and writes to it is fetched meanwhile.

import type { Clock } from '../device/clock.ts';
import { CacheDatabase, LogDatabase, StoreError, type StoreFault, storeFault } from './database.ts';
import { type Identity, openIdentity, type Remembered } from './identity.ts';

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

/** The databases of a store, and who is told of faults. */
export interface OpenDatabases {
  readonly log: LogDatabase;
  readonly cache: CacheDatabase;
  readonly faultListeners: Set<(fault: StoreFault) => void>;
  readonly found: Found;
}

/** Opens the databases and finds whose they are. Rejects with `StoreError`. */
export async function openDatabases(options: StoreOptions): Promise<OpenDatabases> {
  const log = new LogDatabase(options.name);
  const cache = new CacheDatabase(options.name === undefined ? undefined : `${options.name}-cache`);
  const faultListeners: OpenDatabases['faultListeners'] = new Set();
  log.on('versionchange', () => {
    // A newer version of the app upgrades the database in another window: this one must not write with old code.
    log.close({ disableAutoOpen: true });
    tellFault({ faultListeners }, 'closed-by-newer');
    return false; // else the library's own handler follows, which lets the next write open the database again
  });
  try {
    await log.open();
    const found = await openIdentity(log, options.isPassing);
    return { log, cache, faultListeners, found };
  } catch (error) {
    throw new StoreError(storeFault(error), error);
  }
}

/** Tells of a fault that stops work. */
export function tellFault(
  { faultListeners }: Pick<OpenDatabases, 'faultListeners'>,
  fault: StoreFault,
): void {
  for (const listener of [...faultListeners]) listener(fault);
}
