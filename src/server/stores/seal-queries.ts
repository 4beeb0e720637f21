// Entries with their seals and signatures, each by its place.

import type { Kysely } from 'kysely';
import { isTextFault } from './month-store.ts';
import type { MonthTexts } from './month-texts.ts';
import { packedColumns, wholeBody } from './packed.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** Entries with their seals, for whoever checks these. */
export function sealQueries(db: Kysely<Tables>, texts: MonthTexts): Pick<Store, 'signedPage' | 'sealedPage'> {
  return {
    signedPage: (pos, limit) =>
      db
        .selectFrom('entries')
        .select(['pos', 'tablet', 'epoch', 'seq', 'hash', 'sig'])
        .where('pos', '>', pos)
        .orderBy('pos')
        .limit(limit)
        .execute(),
    sealedPage: async (pos, limit) => {
      const rows = await db
        .selectFrom('entries')
        .select(['root', 'pos', 'hash', ...packedColumns])
        .where('pos', '>', pos)
        .orderBy('pos')
        .limit(limit)
        .execute();
      const read = await texts.read(rows);
      return rows.map((row, at) => {
        const found = read[at] ?? row;
        return { ...row, body: isTextFault(found) ? found : wholeBody(found) };
      });
    },
  };
}
