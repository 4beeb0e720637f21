// What the floor is at a start: read from the log, with as little folding as what was kept allows.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import { createReplica, foldIn, type Replica, type Snapshot } from '../../../shared/floor/replica.ts';
import type { FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Bootstrap, countMissing, readBootstrap } from './bootstrap.ts';
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

/** A snapshot with the fold that made it. */
interface KeptSnapshot {
  readonly version: number;
  readonly name: string;
  readonly snapshot: Snapshot;
}

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

/** Folds the whole log, or what comes after a bootstrap snapshot. */
export async function foldAll(
  log: LogDatabase,
  bootstrap: Bootstrap | null,
  fold: FoldVersion,
): Promise<Replica> {
  // Made by an older fold it is of no use: what is here is folded, and the rest once all is.
  const from = bootstrap?.fold === fold.name ? bootstrap : null;
  const replica = createReplica(from ?? undefined, fold.trust);
  await readFrom(log, from?.position ?? null, async (entries) => {
    await fold.trust?.look(entries);
    foldIn(replica, entries);
  });
  return replica;
}

/** What a start found. */
export interface Loaded {
  readonly replica: Replica;
  /** Entries in the snapshot gone on from. */
  readonly keptCount: number;
  readonly bootstrap: Bootstrap | null;
  readonly missing: number;
}

/** Goes on from a bootstrap snapshot while there is one, else from the snapshot where it still fits the log, else folds all. */
export async function loadReplica(
  log: LogDatabase,
  cache: CacheDatabase,
  fold: FoldVersion,
): Promise<Loaded> {
  const whole = { bootstrap: null, missing: 0 };
  const bootstrap = await readBootstrap(log);
  if (bootstrap) return loadFrom(log, bootstrap, fold);
  const kept = await cache.kept
    .get('snapshot')
    .then((row) => row?.value as KeptSnapshot | undefined) // written by keepSnapshot only
    .catch(() => undefined); // a broken cache is no reason not to start
  if (kept?.version !== FOLD_VERSION || kept.name !== fold.name)
    return { replica: await foldAll(log, null, fold), keptCount: 0, ...whole };
  const { position, count } = kept.snapshot;
  const before = await countUpTo(log, position);
  if (before !== count) return { replica: await foldAll(log, null, fold), keptCount: 0, ...whole }; // entries came in late after it was kept
  const replica = createReplica(kept.snapshot, fold.trust);
  await readFrom(log, position, async (entries) => {
    await fold.trust?.look(entries);
    foldIn(replica, [...entries].sort(compareEntries));
  });
  return { replica, keptCount: count, ...whole };
}

/** Goes on from a bootstrap snapshot. */
export async function loadFrom(log: LogDatabase, bootstrap: Bootstrap, fold: FoldVersion): Promise<Loaded> {
  const missing = await countMissing(log, bootstrap);
  const replica = await foldAll(log, bootstrap, fold);
  return { replica, keptCount: replica.count, bootstrap, missing };
}
