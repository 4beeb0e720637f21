// What the floor is at a start: read from the log, with as little folding as what was kept allows.

import { createReplica, foldIn, type Replica, type Snapshot } from '../../../shared/floor/replica.ts';
import type { FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Borrowed, countMissing, readBorrowed } from './borrowed.ts';
import {
  type CacheDatabase,
  countUpTo,
  type EntryRow,
  type LogDatabase,
  orderIndex,
  orderKey,
} from './database.ts';
import type { FoldVersion } from './this-fold.ts';

const READ_CHUNK = 2000;

/** Reads the log in folding order after a place, chunk by chunk. */
export async function readFrom(
  log: LogDatabase,
  after: FoldPosition | null,
  each: (entries: readonly Entry[]) => void | Promise<void>,
): Promise<void> {
  let from = after === null ? null : orderKey(after);
  for (;;) {
    const rows: EntryRow[] = await (from === null
      ? log.entries.orderBy(orderIndex)
      : log.entries.where(orderIndex).above(from)
    )
      .limit(READ_CHUNK)
      .toArray();
    const last = rows.at(-1);
    if (!last) return;
    await each(rows.map((row) => row.entry));
    if (rows.length < READ_CHUNK) return;
    from = [last.ms, last.n, last.tablet, last.epoch, last.seq];
  }
}

/** Folds the whole log, or what comes after a borrowed state. */
export async function foldAll(
  log: LogDatabase,
  borrowed: Borrowed | null,
  fold: FoldVersion,
): Promise<Replica> {
  // Borrowed of an older fold it is of no use: what is here is folded, and the rest once all is.
  const from = borrowed?.fold === fold.name ? borrowed : null;
  const replica = from ? createReplica(from) : createReplica();
  await readFrom(log, from?.position ?? null, (entries) => {
    foldIn(replica, entries);
  });
  return replica;
}

/** What a start found. */
export interface Loaded {
  readonly replica: Replica;
  /** Entries in the snapshot gone on from. */
  readonly keptCount: number;
  readonly borrowed: Borrowed | null;
  readonly missing: number;
}

/** Goes on from a borrowed state while there is one, else from the snapshot where it still fits the log, else folds all. */
export async function loadReplica(
  log: LogDatabase,
  cache: CacheDatabase,
  fold: FoldVersion,
): Promise<Loaded> {
  const whole = { borrowed: null, missing: 0 };
  const borrowed = await readBorrowed(log);
  if (borrowed) return loadFrom(log, borrowed, fold);
  const kept = await cache.kept
    .get('snapshot')
    .then((row) => row?.value as { version: number; snapshot: Snapshot } | undefined) // written by keepSnapshot only
    .catch(() => undefined); // a broken cache is no reason not to start
  if (kept?.version !== fold.version)
    return { replica: await foldAll(log, null, fold), keptCount: 0, ...whole };
  const { position, count } = kept.snapshot;
  const before = await countUpTo(log, position);
  if (before !== count) return { replica: await foldAll(log, null, fold), keptCount: 0, ...whole }; // entries came in late after it was kept
  const replica = createReplica(kept.snapshot);
  await readFrom(log, position, (entries) => {
    foldIn(replica, [...entries].sort(compareEntries));
  });
  return { replica, keptCount: count, ...whole };
}

/** Goes on from a borrowed state. */
export async function loadFrom(log: LogDatabase, borrowed: Borrowed, fold: FoldVersion): Promise<Loaded> {
  const missing = await countMissing(log, borrowed);
  const replica = await foldAll(log, borrowed, fold);
  return { replica, keptCount: replica.count, borrowed, missing };
}
