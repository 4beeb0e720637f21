// The table of months whose texts left the store.

import type { Kysely } from 'kysely';
import { columnTypes, type Dialect } from './column-types.ts';

/** A row of it; `pieces`: as JSON. */
export interface MonthFilesTable {
  month: string;
  after_pos: number;
  until_pos: number;
  file: string;
  bytes: number;
  sha256: string;
  pieces: string;
  texts: number;
  left_ms: number;
}

/** Makes it, empty. A program that does not know it is kept out with the first text that leaves, not before. */
export async function monthTables<T>({ schema }: Kysely<T>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  await schema
    .createTable('month_files')
    .addColumn('month', text, (c) => c.primaryKey())
    .addColumn('after_pos', whole, (c) => c.notNull())
    .addColumn('until_pos', whole, (c) => c.notNull())
    .addColumn('file', text, (c) => c.notNull())
    .addColumn('bytes', whole, (c) => c.notNull())
    .addColumn('sha256', text, (c) => c.notNull())
    .addColumn('pieces', text, (c) => c.notNull())
    .addColumn('texts', whole, (c) => c.notNull())
    .addColumn('left_ms', whole, (c) => c.notNull())
    .execute();
}
