// What a start reads of both databases before what folds the log is here: asked all at once, the slow ones last. Counting a long log takes
// longer than all else; the browser counts beside the page's own work, as a small row tells where the snapshot stands before the
// snapshot itself, which is large, has been read. Refused: a count kept beside the log, which an older app would not keep right.

import type { Snapshot } from '../../../shared/floor/replica.ts';
import type { FoldPosition } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { isScreenIn } from '../sync/ports.ts';
import type { Bootstrap } from './bootstrap.ts';
import {
  bootstrapKey,
  type CacheDatabase,
  countUpTo,
  type LogDatabase,
  lifeKey,
  readAfter,
  snapshotKey,
  snapshotPlaceKey,
  syncKey,
  trustKey,
} from './database.ts';
import { readKept } from './preferences.ts';
import type { KeptTrust } from './trust.ts';

/** A snapshot with the fold that made it. */
export interface KeptSnapshot {
  readonly version: number;
  readonly name: string;
  /** Of the log that it was folded from; absent where an older app kept it. */
  readonly life?: string | null;
  readonly snapshot: Snapshot;
}

/** A snapshot, and what the log says about it. */
export interface FoundSnapshot extends KeptSnapshot {
  /** Entries in the log up to where it stands: as many as are in it, else some came in late after it was kept. */
  readonly before: number;
  /** The first entries after it, in folding order. */
  readonly after: readonly Entry[];
}

/** What a start goes on from. */
export interface ReadAhead {
  /** Whose tickets count, as it is kept; undefined where the plant gives none. */
  readonly trust: KeptTrust | undefined;
  /** Another one since entries were last put aside; null before any was. */
  readonly life: string | null;
  readonly isScreen: boolean;
  /** The bootstrap snapshot that this log still needs. */
  readonly bootstrap: Bootstrap | null;
  /** Null where none is kept, and beside a bootstrap snapshot. */
  readonly kept: FoundSnapshot | null;
}

/** Reads what a start goes on from. Rejects where the log cannot be read; a broken cache is as an empty one. */
export async function readAhead(log: LogDatabase, cache: CacheDatabase): Promise<ReadAhead> {
  const rows = log.meta.bulkGet([trustKey, bootstrapKey, lifeKey, syncKey]);
  const place = readKept<FoldPosition>(cache, snapshotPlaceKey);
  const snapshot = readKept<KeptSnapshot>(cache, snapshotKey);
  const [trust, bootstrap, life, memory] = (await rows).map((row) => row?.value);
  const told = {
    trust: trust as KeptTrust | undefined,
    life: (life as string | undefined) ?? null,
    isScreen: isScreenIn(memory),
    bootstrap: (bootstrap as Bootstrap | undefined) ?? null,
  }; // written by their keepers only
  if (told.bootstrap) return { ...told, kept: null };
  const position = await place;
  const looking = position && lookAt(log, position);
  looking?.catch(() => undefined); // thrown below
  const kept = await snapshot;
  if (!kept) return { ...told, kept: null };
  // An older app keeps the snapshot alone.
  const isThere = position && compareEntries(position, kept.snapshot.position) === 0;
  const { before, after } = await ((isThere && looking) || lookAt(log, kept.snapshot.position));
  return { ...told, kept: { ...kept, before, after } };
}

/** The few entries after a position are asked for before the count, behind which they would wait. */
async function lookAt(
  log: LogDatabase,
  position: FoldPosition,
): Promise<Pick<FoundSnapshot, 'before' | 'after'>> {
  const [after, before] = await Promise.all([readAfter(log, position), countUpTo(log, position)]);
  return { before, after };
}
