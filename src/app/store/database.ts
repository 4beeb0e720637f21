// The only home of the browser's database. Two databases: the log (strict durability, no query cache: "saved" is true when the
// promise resolves, also after a battery pull) and a cache that may be lost at any time (snapshot of the fold, preferences).
// Quirks behind the options: browsers default to relaxed durability, and the library's query cache shows writes before they
// are durable.

import Dexie, { type Table } from 'dexie';
import type { Entry } from '../../../shared/log/entry.ts';
import type { OrderKey } from '../../../shared/log/order.ts';

/** An entry as it is stored: flat order keys beside it, since an index cannot look inside the clock. */
export interface EntryRow {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly ms: number;
  readonly n: number;
  readonly entry: Entry;
}

/** One named fact about this database: identity, head, keys, the cursor of sync. */
export interface MetaRow {
  readonly key: string;
  readonly value: unknown;
}

/** What came and is no part of the log, or was told anew: kept as it came, under the hash of its text. */
export interface QuarantineRow {
  readonly key: string;
  readonly fault: string;
  /** When it was quarantined, ms since 1970. */
  readonly atMs: number;
  readonly value: unknown;
}

/** The log's database. Steps are additive; every released version stays listed. */
export class LogDatabase extends Dexie {
  declare entries: Table<EntryRow, [string, string, number]>;
  declare meta: Table<MetaRow, string>;
  declare aside: Table<QuarantineRow, string>;

  constructor(name = 'reelward-log') {
    super(name, { chromeTransactionDurability: 'strict', cache: 'disabled' });
    this.version(1).stores({ entries: '[tablet+epoch+seq], [ms+n+tablet+epoch+seq]', meta: 'key' });
    this.version(2).stores({ aside: 'key' });
  }
}

/** What may be lost: the fold's snapshot and this tablet's preferences. */
export class CacheDatabase extends Dexie {
  declare kept: Table<MetaRow, string>;

  constructor(name = 'reelward-cache') {
    super(name, { chromeTransactionDurability: 'relaxed', cache: 'disabled' });
    this.version(1).stores({ kept: 'key' });
  }
}

/** The row for an entry. */
export function entryToRow(entry: Entry): EntryRow {
  const { tablet, epoch, seq, hlc } = entry;
  return { tablet, epoch, seq, ms: hlc.ms, n: hlc.n, entry };
}

/** Among the log's small things: whose tickets count, and a state folded elsewhere that stands in for history. */
export const trustKey = 'tickets';
export const bootstrapKey = 'borrowed';

/** What sync remembers. */
export const syncKey = 'sync';

/** Drawn anew whenever entries are put aside: a snapshot of before that is of no use, however well its count fits. */
export const lifeKey = 'life';

/** In the cache: the fold's snapshot, and where it stands. */
export const snapshotKey = 'snapshot';
export const snapshotPlaceKey = 'snapshot-place';

/** Index of the folding order. */
export const orderIndex = '[ms+n+tablet+epoch+seq]';

/** Where a position stands in that index. */
export function orderKey(position: OrderKey): (string | number)[] {
  return [position.hlc.ms, position.hlc.n, position.tablet, position.epoch, position.seq];
}

/** Entries up to and including a position of the folding order. */
export function countUpTo(log: LogDatabase, position: OrderKey): Promise<number> {
  return log.entries.where(orderIndex).between([Dexie.minKey], orderKey(position), true, true).count();
}

/** Entries read from the log at once. */
export const READ_CHUNK = 2000;

/** The next entries in folding order after a position, or the first of all: at most a chunk. */
export async function readAfter(log: LogDatabase, position: OrderKey | null): Promise<readonly Entry[]> {
  const rows =
    position === null
      ? log.entries.orderBy(orderIndex)
      : log.entries.where(orderIndex).above(orderKey(position));
  return (await rows.limit(READ_CHUNK).toArray()).map((row) => row.entry);
}

/** Why the store cannot go on, as far as people can do something about it. */
export const storeFaults = ['disk-full', 'closed-by-newer', 'lost', 'unknown'] as const;
export type StoreFault = (typeof storeFaults)[number];

/** Finds the real cause: a full disk comes wrapped in an abort, sometimes twice. */
export function storeFault(error: unknown): StoreFault {
  for (let cause = error, depth = 0; cause instanceof Object && depth < 5; depth++) {
    const { name, message, inner } = cause as { name?: string; message?: string; inner?: unknown }; // shape of the library's errors
    if (name === 'QuotaExceededError' || /quota|disk.?full|no space/i.test(message ?? '')) return 'disk-full';
    if (name === 'VersionError' || name === 'DatabaseClosedError') return 'closed-by-newer';
    if (name === 'UnknownError' || name === 'NotFoundError' || name === 'OpenFailedError') return 'lost';
    cause = inner;
  }
  return 'unknown';
}

/** A write that failed; nothing of it was kept. */
export class StoreError extends Error {
  readonly fault: StoreFault;
  constructor(fault: StoreFault, cause: unknown) {
    super(`Cannot write the log: ${fault}`, { cause });
    this.fault = fault;
  }
}
