// What the floor is at a start: read from the log, with as little folding as what was kept allows.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import { createReplica, foldIn, type Replica } from '../../../shared/floor/replica.ts';
import type { FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Bootstrap, countMissing } from './bootstrap.ts';
import { type LogDatabase, READ_CHUNK, readAfter } from './database.ts';
import type { ReadAhead } from './read-ahead.ts';
import type { FoldVersion } from './this-fold.ts';

/** Reads the log in folding order after a place, chunk by chunk. */
export async function readFrom(
  log: LogDatabase,
  after: FoldPosition | null,
  each: (entries: readonly Entry[]) => void | Promise<void>,
): Promise<void> {
  for (let from = after; ; ) {
    const entries = await readAfter(log, from);
    const last = entries.at(-1);
    if (!last) return;
    await each(entries);
    if (entries.length < READ_CHUNK) return;
    from = last;
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

/** By which fold a replica is made, and of which life of the log: a snapshot of it is of use to no other. */
export interface FoldedAs {
  readonly fold: FoldVersion;
  readonly life: string | null;
}

/** What a start found. */
export interface Loaded extends FoldedAs {
  readonly replica: Replica;
  /** Entries in the snapshot gone on from. */
  readonly keptCount: number;
  readonly bootstrap: Bootstrap | null;
  readonly missing: number;
}

/** Goes on from a bootstrap snapshot while there is one, else from the snapshot where it still fits the log, else folds all. */
export async function loadReplica(
  log: LogDatabase,
  fold: FoldVersion,
  { bootstrap, kept, life }: ReadAhead,
): Promise<Loaded> {
  if (bootstrap) return loadFrom(log, bootstrap, { fold, life });
  const whole = { bootstrap: null, missing: 0, fold, life };
  const count = kept?.snapshot.count ?? 0;
  const isOfThis = kept?.version === FOLD_VERSION && kept.name === fold.name && (kept.life ?? null) === life;
  // Where more entries stand before it, some came in late after it was kept.
  if (!isOfThis || kept.before !== count)
    return { replica: await foldAll(log, null, fold), keptCount: 0, ...whole };
  const replica = createReplica(kept.snapshot, fold.trust);
  const each = async (entries: readonly Entry[]) => {
    await fold.trust?.look(entries);
    foldIn(replica, [...entries].sort(compareEntries));
  };
  const last = kept.after.at(-1);
  await each(kept.after);
  if (last && kept.after.length === READ_CHUNK) await readFrom(log, last, each);
  return { replica, keptCount: count, ...whole };
}

/** Goes on from a bootstrap snapshot. */
export async function loadFrom(
  log: LogDatabase,
  bootstrap: Bootstrap,
  { fold, life }: FoldedAs,
): Promise<Loaded> {
  const missing = await countMissing(log, bootstrap);
  const replica = await foldAll(log, bootstrap, fold);
  return { replica, keptCount: replica.count, bootstrap, missing, fold, life };
}
