// Steps of the schema after its first tables. A released step never changes.

import type { Kysely } from 'kysely';
import { columnTypes } from './column-types.ts';
import type { Dialect, Tables } from './tables.ts';

/** PINs apart from the log, tries by tablet and person, and who brought the chains of tablets that were never let in. */
export async function secretTables({ schema }: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  await schema
    .createTable('pins')
    .addColumn('pin', text, (c) => c.primaryKey())
    .addColumn('salt', text, (c) => c.notNull())
    .addColumn('rounds', whole, (c) => c.notNull())
    .addColumn('verifier', text, (c) => c.notNull())
    .addColumn('set_ms', whole, (c) => c.notNull())
    .execute();
  // Tries were counted by person alone: one tablet could lock everybody out.
  await schema.dropTable('tries').execute();
  await schema
    .createTable('pin_tries')
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('person', text, (c) => c.notNull())
    .addColumn('wrong', whole, (c) => c.notNull())
    .addColumn('locks', whole, (c) => c.notNull())
    .addColumn('locked_until_ms', whole, (c) => c.notNull())
    .addColumn('last_ms', whole, (c) => c.notNull())
    .addPrimaryKeyConstraint('pin_tries_name', ['tablet', 'person'])
    .execute();
  await schema
    .createTable('brought')
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('epoch', text, (c) => c.notNull())
    .addColumn('seq', whole, (c) => c.notNull())
    .addColumn('hash', text, (c) => c.notNull())
    .addColumn('via', text, (c) => c.notNull())
    .addColumn('sig', text, (c) => c.notNull())
    .addColumn('at_ms', whole, (c) => c.notNull())
    .addPrimaryKeyConstraint('brought_name', ['tablet', 'epoch', 'seq', 'hash'])
    .execute();
}

/**
 * The order of folding by its clock alone: entries of one moment are few, and put in order as they are read. From here on a row keeps its
 * text without what its other columns say (`packed.ts`), which a program of before could not read.
 */
export async function shorterOrder({ schema }: Kysely<Tables>): Promise<void> {
  await schema.dropIndex('entries_order').execute();
  await schema.createIndex('entries_order').on('entries').columns(['hlc_ms', 'hlc_n']).execute();
}

/** Wall screens among the tablets. */
export async function wallScreens({ schema }: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole } = columnTypes(dialect);
  await schema
    .alterTable('tablets')
    .addColumn('screen', whole, (c) => c.notNull().defaultTo(0))
    .execute();
}
