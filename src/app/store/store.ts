// The tablet's log and the floor as it says: opened once, appended to, folded, told to the other windows of this tablet.
// A screen that shows a verdict awaits `append`; lists read `floor` and are told of changes by `onChange`.

import type { Draft } from '../../../shared/floor/draft.ts';
import type { Trust } from '../../../shared/floor/rights.ts';
import type { FloorState, FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import type { ChainEnd } from './bootstrap.ts';
import type { CacheDatabase, LogDatabase, StoreFault } from './database.ts';
import type { Identity } from './identity.ts';
import { closeDatabases, openDatabases, type StoreOptions } from './opening.ts';
import type { BootstrapPack } from './pack.ts';
import type { Preferences } from './preferences.ts';
import type { Right } from './wrong-clocks.ts';

export { StoreError } from './database.ts';
export { foldName } from './this-fold.ts';

/** The open store. */
export interface Store {
  /** Another one after clocks were put right: a copy of the store that reads it once goes stale. */
  readonly identity: Identity;
  /** True where this tablet was let in as a wall screen, when the store was opened: it takes in what others wrote, and every write of its own is refused. */
  readonly isScreen: boolean;
  readonly log: LogDatabase;
  readonly cache: CacheDatabase;
  /** This tablet's preferences as they were when it was opened. */
  readonly preferences: Preferences;
  /** What the log says now. Read only. */
  readonly floor: () => FloorState;
  /** Entries in the log, folded or not. */
  readonly count: () => number;
  /** Where the newest entry folded stands in the folding order; null before any. */
  readonly position: () => FoldPosition | null;
  /** Writes entries, all or none; resolves when they are durable and folded. Rejects with `StoreError`, or with `TypeError` on a wall screen. */
  readonly append: (drafts: readonly Draft[], who: string | null) => Promise<readonly Entry[]>;
  /** Takes in entries of other tablets; those already here change nothing. Resolves when durable and folded. */
  readonly takeIn: (entries: readonly Entry[]) => Promise<void>;
  /** The folded state for another tablet, `heads` being the ends of all chains here; null where it is not whole just now. */
  readonly giveBootstrap: (heads: () => Promise<readonly ChainEnd[]>) => Promise<BootstrapPack | null>;
  /** Goes on from a state folded elsewhere; false where it does not suit. Resolves when durable and in use. */
  readonly takeBootstrap: (handed: BootstrapPack) => Promise<boolean>;
  /** Whose tickets prove a right; null while the plant gives none, as far as this tablet has heard. */
  readonly trust: () => Trust | null;
  /** Names the fold: only a state of the same name can be gone on from or handed on. */
  readonly foldName: () => string;
  /** From where on the plant gives tickets, a note whose signature was checked; what is here is folded anew where that is news. */
  readonly trustTickets: (start: { readonly note: string; readonly serverKey: string }) => Promise<void>;
  /** While a bootstrap snapshot stands in for history: how much of that is not here yet; null where the log is whole and was folded here. */
  readonly behind: () => Behind | null;
  /** Keeps what came and is no part of the log, once each; answers how many are kept so in all. */
  readonly quarantine: (
    found: readonly { readonly value: unknown; readonly fault: string }[],
  ) => Promise<number>;
  /** The true time is known: what is dated beyond the limit ahead of it is quarantined, and own entries are told again. Resolves when durable and folded. */
  readonly rightClocks: (
    draft: Pick<Right, 'acked'> & { readonly nowMs: number; readonly offMs: number },
  ) => Promise<void>;
  /** The server holds another chain under this name: where it is the present one, all of it is told again in a new life, durable and folded; else false. */
  readonly beginNewLife: (chain: { readonly epoch: string }) => Promise<boolean>;
  readonly onChange: (listener: (entries: readonly Entry[]) => void) => () => void;
  /** A fault that stops work until somebody acts, told once to each listener. */
  readonly onFault: (listener: (fault: StoreFault) => void) => () => void;
  /** Entries in folding order, newest first, from before a position; at most `limit`. */
  readonly newest: (limit: number, before?: FoldPosition) => Promise<readonly Entry[]>;
  /** One entry by tablet, epoch and number; null where it is not here. */
  readonly entry: (key: readonly [tablet: string, epoch: string, seq: number]) => Promise<Entry | null>;
  /** Reads the whole log in folding order, chunk by chunk. */
  readonly readAll: (each: (entries: readonly Entry[]) => void | Promise<void>) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** History that a bootstrap snapshot stands in for. */
export interface Behind {
  /** Entries of it that are not here yet; 0 while all are, and are being folded here. */
  readonly missing: number;
  /** Entries in the bootstrap snapshot. */
  readonly of: number;
}

/** Opens the store: identity, head, folded state. Rejects with `StoreError` where the database cannot be opened. */
export async function openStore(options: StoreOptions): Promise<Store> {
  // What folds the log and writes to it is fetched while the databases open.
  const starting = import('./start-store.ts');
  starting.catch(() => undefined); // told below
  const databases = await openDatabases(options);
  try {
    return await (await starting).startStore(databases, options);
  } catch (error) {
    // No store stands on them: what other windows write would be heard, and kept for it, as long as the fault is shown.
    closeDatabases(databases);
    throw error;
  }
}
