// Folded states that new tablets start from, one a fold: bytes that the server does not read.

import type { Kysely } from 'kysely';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** So long after its last one the state of another fold goes, ms: longer than a version takes to reach all tablets. Chosen here. */
const OTHER_FOLD_KEPT_MS = 60 * 24 * 3_600_000;

/** The newest folded state of each fold. */
export function snapshotQueries(db: Kysely<Tables>): Pick<Store, 'putSnapshot' | 'snapshot' | 'snapshotPos'> {
  return {
    putSnapshot: async ({ fold, cursor, tablet, atMs, bytes }) => {
      const row = { pos: cursor.pos, root: cursor.root, tablet, at_ms: atMs, bytes: Buffer.from(bytes) };
      await db
        .insertInto('snapshots')
        .values({ fold, ...row })
        .onConflict((conflict) =>
          conflict.column('fold').doUpdateSet(row).where('snapshots.pos', '<=', cursor.pos),
        )
        .execute();
      // Of a fold that no app has any more none would ever come again; while versions go round, both are wanted.
      await db
        .deleteFrom('snapshots')
        .where('fold', '!=', fold)
        .where('at_ms', '<', atMs - OTHER_FOLD_KEPT_MS)
        .execute();
    },
    snapshot: async (fold) => {
      const row = await db.selectFrom('snapshots').selectAll().where('fold', '=', fold).executeTakeFirst();
      if (!row) return null;
      const { pos, root, tablet, bytes } = row;
      return { fold: row.fold, cursor: { pos, root }, tablet, atMs: row.at_ms, bytes };
    },
    snapshotPos: async () => {
      const row = await db.selectFrom('snapshots').select('pos').orderBy('pos', 'desc').executeTakeFirst();
      return row?.pos ?? 0;
    },
  };
}
