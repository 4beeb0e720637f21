// What a store holds, asked without opening it as a server would: nothing is made, and nothing is brought forward.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { neededBy, refuseOtherSchema, schemaVersion } from './migrate.ts';
import { readMonths } from './month-queries.ts';
import type { LeftMonth } from './month-store.ts';
import type { StoreChoice } from './open.ts';
import { readPlantName } from './present.ts';
import { fileBytes, logFile, lookInside } from './sqlite/open.ts';
import { neededOf } from './step.ts';
import { type Dialect, monthsSchema, steps, type Tables } from './tables.ts';

/** What was found. */
export interface StoreLook {
  /** Steps of the schema that it has taken, and that this program knows. */
  readonly schema: number;
  readonly known: number;
  /** True where servers of both schemas can serve it, one beside the other. */
  readonly isRolling: boolean;
  /** What its plant is called; null where nobody named it. */
  readonly plant: string | null;
  readonly entries: number;
  /** When its newest entry came in, ms since 1970; null where there is none. */
  readonly newestMs: number | null;
  /** Months whose texts left for files. */
  readonly months: readonly LeftMonth[];
  /** Size on the disk, bytes. */
  readonly bytes: number;
}

/** Looks; null where there is no store. Rejects with the driver's error where nobody can look. */
export async function lookAtStore({
  folder,
  database,
}: Pick<StoreChoice, 'folder' | 'database'>): Promise<StoreLook | null> {
  if (database !== null) {
    // Loaded when wanted only, with the driver.
    const { askDatabase } = await import('./postgres/open.ts');
    return askDatabase(database, (db) => look(db, 'postgres'));
  }
  const file = join(folder, logFile);
  if (!existsSync(file)) return null;
  const found = await lookInside(file, (db) => look(db, 'sqlite'));
  return found && { ...found, bytes: fileBytes(file) };
}

/** True where whichever knows less of a store and this program can live with what it does not know. */
async function areCompatible(db: Kysely<Tables>, schema: number): Promise<boolean> {
  return schema > steps.length ? (await neededBy(db)) <= steps.length : neededOf(steps) <= schema;
}

async function look(db: Kysely<Tables>, dialect: Dialect): Promise<StoreLook | null> {
  const schema = await schemaVersion(db, dialect);
  if (schema === 0) {
    if (dialect === 'postgres') await refuseOtherSchema(db);
    return null;
  }
  const row = await db
    .selectFrom('entries')
    .select(['pos', 'received_ms'])
    .orderBy('pos', 'desc')
    .limit(1)
    .executeTakeFirst();
  const plant = await readPlantName(db);
  return {
    schema,
    known: steps.length,
    isRolling: dialect === 'postgres' && (await areCompatible(db, schema)),
    plant,
    entries: row?.pos ?? 0,
    newestMs: row?.received_ms ?? null,
    months: schema < monthsSchema || schema > steps.length ? [] : await readMonths(db),
    bytes: 0,
  };
}
