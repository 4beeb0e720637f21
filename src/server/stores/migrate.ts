// Brings a database to this program's schema: forward only, backed up first. A newer one is refused, but to a server that can live with what it lacks.

import { randomBytes } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Kysely, sql, type Transaction } from 'kysely';
import { findOtherSchema } from './postgres/other-schema.ts';
import { neededName, neededOf, type Step } from './step.ts';
import { type Dialect, steps, type Tables } from './tables.ts';

/** The store was made by a newer program, or a step failed: the server must not start. */
export class StoreRefused extends Error {}

/** A store was brought forward to this program's schema. */
export interface Migrated {
  readonly from: number;
  readonly to: number;
  /** The copy of what was there before. */
  readonly keptAt: string | null;
}

/** How a database is brought forward. */
export interface MigrateOptions {
  /** Called before the first step on a database that holds something already; returns where the copy lies. */
  readonly backup: (fromVersion: number) => Promise<string | null>;
  /** Told once a database that held something has been brought forward by this process. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** The steps to take; a test hands in its own. */
  readonly steps?: readonly Step[];
  /** True for a process that serves beside newer ones: it goes on where what it does not know are additions. An act is refused there: it would copy half. */
  readonly isServing?: boolean;
  /** Takes the store until the transaction ends or for longer, before a step that is no addition; false where a server runs on it. Absent where the caller has it alone. */
  readonly takeAlone?: (tx: Transaction<Tables>) => Promise<boolean>;
}

/** Key of the lock of whoever takes steps: any number that nothing else in the database uses. */
const STEPS_LOCK = 7_236_001;

/** How long a step waits for a table that somebody works with, ms: everybody else waits behind it. */
const LOCK_MS = 4_000;

/** Takes the steps that are missing, all in one transaction with the version row. Where they cannot be taken nothing is left of the copy either. */
export async function migrate(
  db: Kysely<Tables>,
  dialect: Dialect,
  options: MigrateOptions,
): Promise<{ readonly from: number; readonly to: number }> {
  const wanted = options.steps ?? steps;
  const from = await schemaVersion(db, dialect);
  if (from > wanted.length) {
    if (options.isServing && (await neededBy(db)) <= wanted.length) return { from, to: from };
    throw new StoreRefused(
      `the store has schema ${from}, this program knows up to ${wanted.length}: start the newer program, or restore a backup`,
    );
  }
  if (from === wanted.length) return { from, to: from };
  if (dialect === 'sqlite') await takeSteps(db, { dialect, wanted, options });
  // Several processes may start on one PostgreSQL at once: one copies and takes the steps, the others wait here and find nothing to do.
  else
    await db.connection().execute(async (held) => {
      await sql`select pg_advisory_lock(${sql.lit(STEPS_LOCK)})`.execute(held);
      try {
        await takeSteps(db, { dialect, wanted, options });
      } finally {
        await sql`select pg_advisory_unlock(${sql.lit(STEPS_LOCK)})`.execute(held);
      }
    });
  return { from, to: wanted.length };
}

interface Taking {
  readonly dialect: Dialect;
  readonly wanted: readonly Step[];
  readonly options: MigrateOptions;
}

async function takeSteps(db: Kysely<Tables>, { dialect, wanted, options }: Taking): Promise<void> {
  const from = await schemaVersion(db, dialect);
  const missing = wanted.slice(from);
  if (missing.length === 0) return;
  const way = { at: from, dialect, takeAlone: options.takeAlone };
  let keptAt: string | null = null;
  if (from === 0 && dialect === 'postgres') await refuseOtherSchema(db);
  if (from > 0) {
    // Asked before as well: a start that is refused is tried again every few seconds, and would copy the whole store each time.
    await db.transaction().execute((tx) => makeWay(tx, missing, way));
    keptAt = await options.backup(from);
  }
  try {
    await db.transaction().execute(async (tx) => {
      if (from > 0) await makeWay(tx, missing, way);
      for (const step of missing) await step(tx, dialect);
      const needed = await neededRow(tx);
      await tx
        .insertInto('meta')
        .values(versionRows(wanted, needed))
        .onConflict((conflict) =>
          conflict.column('key').doUpdateSet((eb) => ({ value: eb.ref('excluded.value') })),
        )
        .execute();
    });
  } catch (error) {
    // A connection that breaks at the end leaves open whether the steps were taken: the copy is let go of only where they surely were not.
    const isAsBefore = await schemaVersion(db, dialect).then(
      (now) => now === from,
      () => false,
    );
    if (keptAt !== null && isAsBefore) rmSync(keptAt, { force: true });
    throw busy.has(String((error as { readonly code?: unknown }).code)) ? new StoreRefused(busyWords) : error;
  }
  if (from > 0) options.onMigrated?.({ from, to: wanted.length, keptAt });
}

/** Somebody holds a table for long, or wanted it at the same moment: `lock_not_available`, `deadlock_detected`. */
const busy = new Set(['55P03', '40P01']);
const busyWords =
  'the store has to be brought forward, and something long works with it, as a backup or an export does: nothing was changed; start again when that is done';

/** The rows of `meta` that say what a store has taken and what it needs of a program: no less than it needed before, as what it holds may need more than its steps. */
export function versionRows(
  taken: readonly Step[],
  before: number | null,
): { readonly key: string; readonly value: string }[] {
  return [
    { key: 'schema', value: String(taken.length) },
    { key: neededName, value: String(Math.max(neededOf(taken), before ?? 0)) },
  ];
}

/** Before steps are taken on a store that others may work with. */
async function makeWay(
  tx: Transaction<Tables>,
  missing: readonly Step[],
  parts: {
    readonly at: number;
    readonly dialect: Dialect;
    readonly takeAlone: MigrateOptions['takeAlone'] | undefined;
  },
): Promise<void> {
  const { at, dialect, takeAlone } = parts;
  if (dialect === 'postgres') await sql`set local lock_timeout = ${sql.lit(LOCK_MS)}`.execute(tx);
  if (missing.every(({ isAddition }) => isAddition === true) || !takeAlone || (await takeAlone(tx))) return;
  throw new StoreRefused(
    `the store has schema ${at}, and a server runs on it that cannot live with the next: stop every server on it, then start the new ones`,
  );
}

/** The schema that a program has to know at least to serve this store; Infinity where none but the newest may. */
export async function neededBy(db: Pick<Kysely<Tables>, 'selectFrom'>): Promise<number> {
  return (await neededRow(db)) ?? Number.POSITIVE_INFINITY;
}

/** The same as it is written down; null where it is not. */
export async function neededRow(db: Pick<Kysely<Tables>, 'selectFrom'>): Promise<number | null> {
  const row = await db.selectFrom('meta').select('value').where('key', '=', neededName).executeTakeFirst();
  return row ? Number(row.value) : null;
}

/** How many steps a database has taken; 0 for an empty one. */
export async function schemaVersion(db: Kysely<Tables>, dialect: Dialect): Promise<number> {
  if (!(await tableNames(db, dialect)).has('meta')) return 0;
  const row = await db.selectFrom('meta').select('value').where('key', '=', 'schema').executeTakeFirst();
  return Number(row?.value ?? 0);
}

/** Before a store is made on PostgreSQL: another plant's in the same database is told. */
export async function refuseOtherSchema(db: Kysely<Tables>): Promise<void> {
  const name = await findOtherSchema(db);
  if (name === null) return;
  throw new StoreRefused(
    `--database: schema ${name} of this database holds a plant already; each plant has a database of its own: make one with createdb`,
  );
}

/** Names of the tables that a database has: one of an older schema has fewer. */
export async function tableNames(db: Kysely<Tables>, dialect: Dialect): Promise<ReadonlySet<string>> {
  const { rows } =
    dialect === 'sqlite'
      ? await sql<{ name: string }>`select name from sqlite_master where type = 'table'`.execute(db)
      : await sql<{ name: string }>`select table_name as name from information_schema.tables
          where table_schema = current_schema()`.execute(db);
  return new Set(rows.map(({ name }) => name));
}

/** A new random server epoch: at creation, and after a backup was put back. */
export function newEpoch(): string {
  return randomBytes(12).toString('base64url');
}

/** A file name of its own for a copy made before something: two processes may do the same thing at once. */
export function newBackupFile(folder: string, before: string, nowMs: number): string {
  const backups = join(folder, 'backups');
  mkdirSync(backups, { recursive: true, mode: 0o700 });
  const moment = new Date(nowMs).toISOString().replaceAll(':', '-');
  return join(backups, `before-${before}-${moment}-${randomBytes(3).toString('hex')}.sqlite`);
}
