// Backup and restore between any two stores. A backup is one SQLite file whichever the store, so that a plant can move
// from one to the other by restoring, and needs no other program to look inside.

import { existsSync, renameSync, rmSync } from 'node:fs';
import { Kysely, SqliteDialect, type Transaction } from 'kysely';
import { putMeta } from './meta.ts';
import {
  migrate,
  neededRow,
  newEpoch,
  StoreRefused,
  schemaVersion,
  tableNames,
  versionRows,
} from './migrate.ts';
import type { Present } from './present.ts';
import { openDatabase } from './sqlite/open.ts';
import {
  backupTables,
  passingTables,
  plantRowName,
  serverKeyName,
  steps,
  type Tables,
  ticketStartName,
  timelineName,
  traceTableNames,
  treeEdgeName,
  treeTableName,
} from './tables.ts';

const ROWS_AT_ONCE = 500;

/** Rows of `meta` that are made out of another log. */
const ofOneLog = [treeEdgeName, timelineName] as const;

/** The column that orders each table for copying, and names a row in it. */
const keys = {
  meta: ['key'],
  entries: ['pos'],
  chains: ['tablet', 'epoch'],
  aside: ['id', 'hash'],
  tablets: ['tablet'],
  tablet_keys: ['tablet', 'public_key'],
  pins: ['pin'],
  pin_tries: ['tablet', 'person'],
  brought: ['tablet', 'epoch', 'seq', 'hash'],
  snapshots: ['fold'],
  pictures: ['sha256'],
  month_files: ['month'],
} as const satisfies Record<(typeof backupTables)[number], readonly string[]>;

/** Copies a whole PostgreSQL store, as of one moment, to a new SQLite file; the file appears under its name only when whole. */
export async function copyAll(db: Kysely<Tables>, file: string): Promise<void> {
  if (existsSync(file)) throw new Error(`${file} exists already: name a file that does not`);
  const part = `${file}.part`;
  rmSync(part, { force: true });
  const target = new Kysely<Tables>({ dialect: new SqliteDialect({ database: openDatabase(part) }) });
  try {
    // Repeatable read: the whole copy sees the store as it was when the copy began.
    await db
      .transaction()
      .setIsolationLevel('repeatable read')
      .execute(async (source) => {
        // Of the source's own schema, older where it is about to be brought forward: the program of before reads the copy.
        const version = await schemaVersion(source, 'postgres');
        await migrate(target, 'sqlite', { backup: async () => null, steps: steps.slice(0, version) });
        const there = await tableNames(source, 'postgres');
        await target.transaction().execute(async (tx) => {
          // The key is never written there: what is taken out of a file again stays in its free pages.
          await copyTables(source, tx, { there, without: [serverKeyName, ...ofOneLog] });
        });
      });
    await target.destroy();
    renameSync(part, file);
  } catch (error) {
    await target.destroy();
    for (const end of ['', '-wal', '-shm']) rmSync(part + end, { force: true });
    throw error;
  }
}

/** What a backup brought. */
export interface Filled {
  readonly entries: number;
  /** Tablets that may sync now and might not before: somebody has to look at each. */
  readonly letIn: readonly { readonly tablet: string; readonly name: string }[];
}

/** Puts a backup into an empty store, under a new epoch so that every tablet offers again what it holds. */
export async function fillFrom(file: string, target: Kysely<Tables>, present: Present): Promise<Filled> {
  if (!existsSync(file)) throw new StoreRefused(`${file}: no such file`);
  const raw = openBackup(file);
  const source = new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) });
  try {
    const version = await schemaVersion(source, 'sqlite').catch(() => 0);
    if (version === 0) throw new StoreRefused(`${file}: not a backup of this program`);
    if (version > steps.length)
      throw new StoreRefused(`${file}: made by a newer program (schema ${version})`);
    const count = await source
      .selectFrom('entries')
      .select((eb) => eb.fn.countAll<number>().as('n'))
      .executeTakeFirstOrThrow();
    // A backup of an older schema has fewer tables.
    const there = await tableNames(source, 'sqlite');
    const missing = backupTables.filter((table) => !there.has(table));
    await target.transaction().execute(async (tx) => {
      await copyTables(source, tx, { there, without: ofOneLog });
      // Made out of another log, or good for a moment that is over.
      for (const table of [...traceTableNames, treeTableName, ...passingTables, ...missing])
        await tx.deleteFrom(table).execute();
      await carryOver(tx, present);
      // The backup may be of an older schema; the tables that it was put into are this program's.
      const versions = versionRows(steps, await neededRow(tx));
      for (const { key, value } of [{ key: 'server_epoch', value: newEpoch() }, ...versions])
        await putMeta(tx, key, value);
    });
    const before = new Set(present.tablets.filter((row) => row.revoked_ms === null).map((row) => row.tablet));
    const active = await target
      .selectFrom('tablets')
      .select(['tablet', 'name'])
      .where('revoked_ms', 'is', null)
      .orderBy('tablet')
      .execute();
    return { entries: Number(count.n), letIn: active.filter(({ tablet }) => !before.has(tablet)) };
  } finally {
    await source.destroy();
  }
}

/** Of each tablet that was known here, what is known here counts: above all, that it was shut out. */
async function carryOver(tx: Transaction<Tables>, { tablets, keys, ...named }: Present): Promise<void> {
  for (const row of tablets) {
    const { tablet, ...rest } = row;
    await tx
      .insertInto('tablets')
      .values(row)
      .onConflict((conflict) => conflict.column('tablet').doUpdateSet(rest))
      .execute();
  }
  for (const row of keys) {
    await tx
      .insertInto('tablet_keys')
      .values(row)
      .onConflict((conflict) => conflict.columns(['tablet', 'public_key']).doNothing())
      .execute();
  }
  const kept = [
    [serverKeyName, named.serverKey],
    [ticketStartName, named.ticketStart],
    [plantRowName, named.plant],
  ] as const;
  for (const [key, value] of kept) {
    if (value !== null) await putMeta(tx, key, value);
  }
}

function openBackup(file: string) {
  try {
    return openDatabase(file);
  } catch (error) {
    throw new StoreRefused(`${file}: not a backup of this program (${(error as Error).message})`);
  }
}

type Reader = Pick<Kysely<Tables>, 'selectFrom'>;

/** Puts the source's rows in place of the target's, in the tables that are there. `without`: rows of `meta` that stay behind. */
async function copyTables(
  source: Reader,
  target: Transaction<Tables>,
  { there, without }: { readonly there: ReadonlySet<string>; readonly without: readonly string[] },
): Promise<void> {
  for (const table of backupTables.filter((each) => there.has(each))) {
    await target.deleteFrom(table).execute();
    const order: readonly string[] = keys[table];
    let last: Record<string, unknown> | null = null;
    for (;;) {
      const rows = await readRows(source, { table, order, last, without: table === 'meta' ? without : [] });
      if (rows.length === 0) break;
      // Rows go back in under the table that they came from.
      await target
        .insertInto(table)
        .values(rows as never)
        .execute();
      last = rows.at(-1) ?? null;
    }
  }
}

/** The next rows by key: no offset, so that a long table costs no more at its end than at its start. */
async function readRows(
  source: Reader,
  at: {
    table: (typeof backupTables)[number];
    order: readonly string[];
    last: Record<string, unknown> | null;
    /** Values of the first column whose rows are not read. */
    without: readonly string[];
  },
): Promise<readonly Record<string, unknown>[]> {
  // Column names are this file's own constants; the union of all tables is more than the compiler can follow.
  const open = source as unknown as Kysely<Record<string, Record<string, unknown>>>;
  const { last, order, without } = at;
  const [first = ''] = order;
  let query = open.selectFrom(at.table).selectAll().limit(ROWS_AT_ONCE);
  for (const column of order) query = query.orderBy(column);
  if (without.length > 0) query = query.where(first, 'not in', without);
  if (last) {
    query = query.where((eb) =>
      eb.or(
        order.map((column, index) =>
          eb.and([
            ...order.slice(0, index).map((before) => eb(before, '=', last[before])),
            eb(column, '>', last[column]),
          ]),
        ),
      ),
    );
  }
  return query.execute();
}
