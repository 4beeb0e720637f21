// The store's questions about pictures of labels.

import type { Kysely } from 'kysely';
import type { PictureStore } from './picture-store.ts';
import type { Tables } from './tables.ts';

/** Pictures of labels, by the verdict that was made on them. */
export function pictureQueries(db: Kysely<Tables>): PictureStore {
  return {
    putPicture: async ({ sha256, of, untilMs, bytes }) => {
      await db
        .insertInto('pictures')
        .values({ sha256, of_entry: of, until_ms: untilMs, bytes: Buffer.from(bytes) })
        .onConflict((conflict) => conflict.column('sha256').doNothing())
        .execute();
    },
    pictureOf: async (entry) => {
      const row = await db
        .selectFrom('pictures')
        .selectAll()
        .where('of_entry', '=', entry)
        .orderBy('sha256')
        .limit(1)
        .executeTakeFirst();
      return row ? { sha256: row.sha256, of: row.of_entry, untilMs: row.until_ms, bytes: row.bytes } : null;
    },
  };
}
