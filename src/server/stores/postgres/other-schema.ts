// Does another schema of the database hold a plant? Locks, notices and sizes are the database's, not a schema's: two plants in one database would
// take turns at their appends, share one leader, and keep each other's restore away. So every plant has a database of its own.

import { type Kysely, sql } from 'kysely';
import type { Tables } from '../tables.ts';

/** The name of a schema beside the one in use that holds a store; null where none does. */
export async function findOtherSchema(db: Kysely<Tables>): Promise<string | null> {
  const { rows } = await sql<{ name: string }>`
    select nspname as name from pg_class join pg_namespace on pg_namespace.oid = relnamespace
      where relkind = 'r' and relname in ('entries', 'chains', 'tablet_keys') and nspname <> current_schema()
      group by nspname having count(*) = 3`.execute(db);
  return rows[0]?.name ?? null;
}
