// Brings a database to this program's schema: forward only, backed up first, refused when it is newer than the program.

import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Kysely, sql } from 'kysely';
import { type Dialect, type Step, steps, type Tables } from './tables.ts';

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
  /** Told once a database that held something has been brought forward. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** The steps to take; a test hands in its own. */
  readonly steps?: readonly Step[];
}

/** Takes the steps that are missing, all in one transaction with the version row. */
export async function migrate(
  db: Kysely<Tables>,
  dialect: Dialect,
  options: MigrateOptions,
): Promise<{ readonly from: number; readonly to: number }> {
  const wanted = options.steps ?? steps;
  const from = await schemaVersion(db, dialect);
  if (from > wanted.length) {
    throw new StoreRefused(
      `the store has schema ${from}, this program knows up to ${wanted.length}: start the newer program, or restore a backup`,
    );
  }
  if (from === wanted.length) return { from, to: from };
  const keptAt = from > 0 ? await options.backup(from) : null;
  await db.transaction().execute(async (tx) => {
    // Two processes may start on one PostgreSQL at once: the second waits here and then finds nothing to do.
    if (dialect === 'postgres') await sql`select pg_advisory_xact_lock(7236001)`.execute(tx);
    for (let at = await schemaVersion(tx, dialect); at < wanted.length; at += 1) {
      const step = wanted[at];
      if (!step) throw new RangeError(`Cannot migrate as step ${at} must exist: current value is undefined`);
      await step(tx, dialect);
      await tx
        .insertInto('meta')
        .values({ key: 'schema', value: String(at + 1) })
        .onConflict((conflict) => conflict.column('key').doUpdateSet({ value: String(at + 1) }))
        .execute();
    }
  });
  if (from > 0) options.onMigrated?.({ from, to: wanted.length, keptAt });
  return { from, to: wanted.length };
}

/** How many steps a database has taken; 0 for an empty one. */
export async function schemaVersion(db: Kysely<Tables>, dialect: Dialect): Promise<number> {
  if (!(await tableNames(db, dialect)).has('meta')) return 0;
  const row = await db.selectFrom('meta').select('value').where('key', '=', 'schema').executeTakeFirst();
  return Number(row?.value ?? 0);
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
