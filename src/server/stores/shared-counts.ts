// Counts that the servers on one database share: how often an address or a tablet asked within a window. Good for a minute, so they need no
// journal, and a crash of the database may forget them.

import { type Kysely, sql } from 'kysely';
import { columnTypes, type Dialect } from './column-types.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** How often something happened until its window ends. */
export interface RatesTable {
  name: string;
  n: number;
  until_ms: number;
}

/** The table of counts. */
export async function rateTables<T>(db: Kysely<T>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  await db.schema
    .createTable('rates')
    .addColumn('name', text, (c) => c.primaryKey())
    .addColumn('n', whole, (c) => c.notNull())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .execute();
  if (dialect === 'postgres') await sql`alter table rates set unlogged`.execute(db);
}

/** The query: one statement, so that what comes at the same moment at two servers is counted twice. */
export function rateQueries(db: Kysely<Tables>): Pick<Store, 'countRate'> {
  return {
    countRate: async (name, nowMs, windowMs) => {
      const untilMs = nowMs + windowMs;
      const row = await db
        .insertInto('rates')
        .values({ name, n: 1, until_ms: untilMs })
        .onConflict((conflict) =>
          conflict.column('name').doUpdateSet((eb) => {
            const isOver = eb('rates.until_ms', '<=', nowMs);
            return {
              n: eb
                .case()
                .when(isOver)
                .then(1)
                .else(eb('rates.n', '+', 1))
                .end(),
              until_ms: eb.case().when(isOver).then(untilMs).else(eb.ref('rates.until_ms')).end(),
            };
          }),
        )
        .returning(['n', 'until_ms'])
        .executeTakeFirstOrThrow();
      return { count: Number(row.n), untilMs: Number(row.until_ms) };
    },
  };
}
