// What a column is called in each database.

import { sql } from 'kysely';

export type Dialect = 'sqlite' | 'postgres';

/** The columns' types in each database. */
export function columnTypes(dialect: Dialect) {
  const isSqlite = dialect === 'sqlite';
  return {
    // SQLite keeps every integer in 64 bits under the name `integer`; PostgreSQL's `integer` has 32.
    whole: isSqlite ? sql`integer` : sql`bigint`,
    binary: isSqlite ? sql`blob` : sql`bytea`,
    // Text is compared byte by byte in both, so that both sort alike.
    text: isSqlite ? sql`text` : sql`text collate "C"`,
  };
}
