// The embedded default: one SQLite file in the data folder, write-ahead log, every commit on the disk before it is answered.
// `synchronous=NORMAL` was refused: with it an acknowledged entry may be gone after a power cut.

import { chmodSync, closeSync, existsSync, mkdirSync, openSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, SqliteDialect, sql, type Transaction } from 'kysely';
import { rowOf } from '../append.ts';
import { type Migrated, migrate, newBackupFile, StoreRefused } from '../migrate.ts';
import { createStore } from '../queries.ts';
import type { Step } from '../step.ts';
import type { Signal, Store } from '../store.ts';
import { entryColumns, passingTables, serverKeyName, type Tables } from '../tables.ts';
import { lockFolder } from './lock.ts';
import { quickCheck } from './quick-check.ts';

/** Name of the log's file in the data folder. */
export const logFile = 'log.sqlite';

const PAGE_BYTES = 16_384;
const JOURNAL_BYTES = 65_536_000;

export interface SqliteOptions {
  /** The data folder; made when missing. */
  readonly folder: string;
  readonly nowMs: () => number;
  /** A test hands in its own. */
  readonly steps?: readonly Step[];
  /** A test makes a disk that is soon full of it. */
  readonly mostPages?: number;
  /** Told where the schema was brought forward. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** The caller has the folder's lock already. */
  readonly isAlone?: boolean;
  /** Where the files of months lie whose texts left. */
  readonly months?: string | null;
}

/** Opens the store, bringing its schema forward. */
export async function openSqlite(options: SqliteOptions): Promise<Store> {
  mkdirSync(options.folder, { recursive: true, mode: 0o700 });
  const raw = openDatabase(join(options.folder, logFile));
  if (options.mostPages !== undefined) raw.pragma(`max_page_count = ${options.mostPages}`);
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) });
  const unlocks: (() => void)[] = [];
  const takeAlone = async () => {
    const unlock = unlocks.length > 0 ? null : lockFolder(options.folder);
    if (unlock) unlocks.push(unlock);
    return unlocks.length > 0;
  };
  try {
    await migrate(db, 'sqlite', {
      ...(options.isAlone ? {} : { takeAlone }),
      ...(options.steps ? { steps: options.steps } : {}),
      ...(options.onMigrated ? { onMigrated: options.onMigrated } : {}),
      backup: async (from) => {
        const file = newBackupFile(options.folder, `schema-step-${from + 1}`, options.nowMs());
        copyInto(raw, file);
        return file;
      },
    });
  } catch (error) {
    await db.destroy();
    throw error;
  } finally {
    for (const unlock of unlocks) unlock();
  }
  return createSqliteStore(raw, db, options.months ?? null);
}

/** Opens a backup, or a copy, as the store that it is. `months`: where the files of months lie whose texts left, null where nobody said. */
export function openCopy(file: string, months: string | null): Store {
  const raw = openDatabase(file);
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) });
  return createSqliteStore(raw, db, months);
}

/** Opens one file with the settings that make a commit durable. */
export function openDatabase(file: string): Database.Database {
  makePrivate(file);
  const raw = new Database(file);
  // Of a new file only. Bytes; four times the usual: a backlog is written down in a quarter of the calls.
  raw.pragma(`page_size = ${PAGE_BYTES}`);
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  // In pages: the journal is put in its place rarely, since each time costs flushes of its own.
  raw.pragma(`wal_autocheckpoint = ${JOURNAL_BYTES / PAGE_BYTES}`);
  // In KiB: appends touch the ends of their indexes only, and reads pass once.
  raw.pragma('cache_size = -4096');
  raw.pragma('busy_timeout = 5000');
  raw.pragma('foreign_keys = ON');
  return raw;
}

/** Asks a file that may only be read; it stays as it is. */
export async function lookInside<T>(file: string, ask: (db: Kysely<Tables>) => Promise<T>): Promise<T> {
  const db = new Kysely<Tables>({
    dialect: new SqliteDialect({ database: new Database(file, { readonly: true, fileMustExist: true }) }),
  });
  try {
    return await ask(db);
  } finally {
    await db.destroy();
  }
}

/** Writes a whole copy of a database to a new file, as of one moment. */
export function copyInto(raw: Database.Database, file: string): void {
  if (existsSync(file)) throw new Error(`${file} exists already: name a file that does not`);
  makePrivate(file);
  try {
    raw.prepare('vacuum into ?').run(file);
    takeOut(file);
  } catch (error) {
    // Left there, half a copy would stand in the way of the next one, and pass for one.
    for (const end of ['', '-journal', '-wal', '-shm']) rmSync(file + end, { force: true });
    throw error;
  }
}

/** Takes out of a copy what no backup carries. */
function takeOut(file: string): void {
  const copy = new Database(file);
  try {
    // What is taken out is written over, not only let go of.
    copy.pragma('secure_delete = ON');
    copy.prepare('delete from meta where key = ?').run(serverKeyName);
    // A store that is about to be brought forward has fewer tables.
    const there = new Set(copy.prepare("select name from sqlite_master where type = 'table'").pluck().all());
    for (const table of passingTables) if (there.has(table)) copy.exec(`delete from ${table}`);
  } finally {
    copy.close();
  }
}

/** A database's file with what SQLite keeps beside it, bytes. */
export function fileBytes(file: string): number {
  return ['', '-wal'].reduce(
    (sum, end) => sum + (statSync(file + end, { throwIfNoEntry: false })?.size ?? 0),
    0,
  );
}

/** Makes the file, where it is not there, for its owner alone: what SQLite puts beside it is made alike. */
function makePrivate(file: string): void {
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
}

/** Runs `work` in a transaction on the one connection. */
function immediately<T>(
  raw: Database.Database,
  db: Kysely<Tables>,
  work: (tx: Transaction<Tables>) => Promise<T>,
): Promise<T> {
  return db.connection().execute(async (connection) => {
    // Immediate: takes the write lock before reading the chains' ends, so that two processes cannot both extend one.
    await sql`begin immediate`.execute(connection);
    try {
      // The connection is inside a transaction now; Kysely's type says so only for those that it began itself.
      const result = await work(connection as unknown as Transaction<Tables>);
      await sql`commit`.execute(connection);
      return result;
    } catch (error) {
      // On a full disk SQLite has rolled back by itself: a second time fails, and would hide the cause.
      if (raw.inTransaction) await sql`rollback`.execute(connection);
      throw error;
    }
  });
}

function createSqliteStore(raw: Database.Database, db: Kysely<Tables>, months: string | null): Store {
  const listeners = new Set<(signal: Signal) => void>();
  const nonces = createNonces();
  const marks = entryColumns.map(() => '?').join(', ');
  const insert = raw.prepare(`insert into entries (${entryColumns.join(', ')}) values (${marks})`);
  return createStore(db, {
    dialect: 'sqlite',
    months,
    appendTransaction: (work) => immediately(raw, db, work),
    aloneTransaction: async (work) => {
      const folder = dirname(raw.name);
      const unlock = lockFolder(folder);
      if (!unlock) throw new StoreRefused(`${folder}: a server runs on this data folder; stop it first`);
      try {
        return await immediately(raw, db, work);
      } finally {
        unlock();
      }
    },
    shrink: async () => {
      raw.exec('vacuum');
      raw.pragma('wal_checkpoint(TRUNCATE)');
    },
    // A prepared statement: the rows of a page as one built query cost twice as much to write down as to run.
    insertEntries: async (_, placed, receivedMs) => {
      for (const one of placed) insert.run(...rowOf(one, receivedMs));
    },
    claimNonce: nonces,
    tell: async (signal) => {
      for (const listener of listeners) listener(signal);
    },
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    // One process serves a data folder.
    leads: () => true,
    backupTo: async (file) => copyInto(raw, file),
    quickCheck: () => quickCheck(raw.name),
    bytes: async () => fileBytes(raw.name),
    close: () => db.destroy(),
  });
}

/** One process serves a data folder, so its nonces need no disk; requests older than the process are refused by their time. */
function createNonces(): Store['claimNonce'] {
  const until = new Map<string, number>();
  let sweptMs = 0;
  return async (nonce, nowMs, untilMs) => {
    if (nowMs - sweptMs > 10_000) {
      for (const [key, end] of until) if (end < nowMs) until.delete(key);
      sweptMs = nowMs;
    }
    if (until.has(nonce)) return false;
    until.set(nonce, untilMs);
    return true;
  };
}
