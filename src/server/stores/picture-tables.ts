// The table of pictures of labels that tablets keep as evidence.

import type { ColumnType, Kysely } from 'kysely';
import { columnTypes, type Dialect } from './column-types.ts';

/** Under the SHA-256 of its bytes (hex). */
export interface PicturesTable {
  sha256: string;
  /** The verdict's entry. */
  of_entry: string;
  until_ms: number;
  bytes: ColumnType<Uint8Array, Uint8Array, Uint8Array>;
}

/** Pictures of labels, beside the log. */
export async function pictureTables<T>({ schema }: Kysely<T>, dialect: Dialect): Promise<void> {
  const { whole, binary, text } = columnTypes(dialect);
  await schema
    .createTable('pictures')
    .addColumn('sha256', text, (c) => c.primaryKey())
    .addColumn('of_entry', text, (c) => c.notNull())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .addColumn('bytes', binary, (c) => c.notNull())
    .execute();
  await schema.createIndex('pictures_of_entry').on('pictures').columns(['of_entry', 'sha256']).execute();
  await schema.createIndex('pictures_until_ms').on('pictures').column('until_ms').execute();
}
