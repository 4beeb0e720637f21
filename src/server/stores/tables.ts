// The tables as the queries see them, and the steps that make them. Steps are append-only: a released step never changes.

import { type ColumnType, type Kysely, sql } from 'kysely';
import { columnTypes, type Dialect } from './column-types.ts';
import { type MonthFilesTable, monthTables } from './month-table.ts';
import { type PicturesTable, pictureTables } from './picture-tables.ts';
import { type PushTable, pushTable, type ToldTable } from './push-table.ts';
import { type RatesTable, rateTables } from './shared-counts.ts';
import { addition, type Step } from './step.ts';
import { secretTables, shorterOrder, wallScreens } from './steps-later.ts';

export interface EntriesTable {
  pos: number;
  tablet: string;
  epoch: string;
  seq: number;
  hash: string;
  sig: string | null;
  /** Running hash over all entries up to this one. */
  root: string;
  kind: string;
  hlc_ms: number;
  hlc_n: number;
  at_ms: number;
  ahead_ms: number;
  received_ms: number;
  via: string | null;
  body: string;
}

/** Columns of `entries` in the order in which rows are written. */
export const entryColumns = [
  'pos',
  'tablet',
  'epoch',
  'seq',
  'hash',
  'sig',
  'root',
  'kind',
  'hlc_ms',
  'hlc_n',
  'at_ms',
  'ahead_ms',
  'received_ms',
  'via',
  'body',
] as const satisfies readonly (keyof EntriesTable)[];

export interface Tables {
  meta: { key: string; value: string };
  entries: EntriesTable;
  chains: { tablet: string; epoch: string; seq: number; hash: string };
  aside: {
    id: string;
    hash: string;
    fault: string;
    received_ms: number;
    via: string;
    sig: string | null;
    body: string;
  };
  tablets: {
    tablet: string;
    name: string;
    public_key: string;
    enrolled_ms: number;
    seen_ms: number | null;
    revoked_ms: number | null;
    clock_off_ms: number | null;
    /** 1 for a wall screen, 0 for a tablet. */
    screen: number;
  };
  /** Every key that a tablet ever had: old entries were signed with old keys. */
  tablet_keys: { tablet: string; public_key: string; since_ms: number };
  one_time: { hash: string; purpose: string; detail: string; until_ms: number; used_ms: number | null };
  sessions: {
    hash: string;
    tablet: string;
    person: string;
    role: string;
    pin_checked: number;
    until_ms: number;
  };
  /** What checks a PIN: `pin` is the name that the log has for it. No backup carries it without what it is sealed with. */
  pins: { pin: string; salt: string; rounds: number; verifier: string; set_ms: number };
  /** Wrong PINs of a person on a tablet; of a tablet over all persons where `person` is empty. */
  pin_tries: {
    tablet: string;
    person: string;
    wrong: number;
    locks: number;
    locked_until_ms: number;
    last_ms: number;
  };
  /** Who brought the chain of a tablet that was never let in, up to where, signed by the one that brought it. */
  brought: {
    tablet: string;
    epoch: string;
    seq: number;
    hash: string;
    via: string;
    sig: string;
    at_ms: number;
  };
  nonces: { nonce: string; until_ms: number };
  snapshots: {
    fold: string;
    pos: number;
    root: string;
    tablet: string;
    at_ms: number;
    bytes: ColumnType<Uint8Array, Uint8Array, Uint8Array>;
  };
  pictures: PicturesTable;
  month_files: MonthFilesTable;
  push_subscriptions: PushTable;
  push_told: ToldTable;
  rates: RatesTable;
  /** Subtrees of the log's hash tree, every eighth level from the eighth on; `id` names level and index. */
  tree_nodes: { id: number; hash: string };
  trace_state: { part: string; key: string; value: string };
  trace_stretches: StretchesTable;
  trace_serials: { serial: string; run: string; panel: number; at: string };
}

/** Where material was, one row for each time: what a question may name, and the whole as JSON. */
export interface StretchesTable {
  id: number;
  run: string;
  slot: string;
  feeder: string | null;
  reel: string | null;
  part: string;
  lot: string | null;
  who: string | null;
  at_ms: number;
  body: string;
}

/** Tables that a backup carries, in the order in which they are copied. Codes, nonces and sessions are of one moment only; the trace's index is made anew. */
export const backupTables = [
  'meta',
  'entries',
  'chains',
  'aside',
  'tablets',
  'tablet_keys',
  'pins',
  'pin_tries',
  'brought',
  'snapshots',
  'pictures',
  'month_files',
] as const;

/** What is good for minutes, or with this server's key alone: no backup carries it, and nothing of it is left after a restore. */
export const passingTables = [
  'one_time',
  'sessions',
  'nonces',
  'push_subscriptions',
  'push_told',
  'rates',
] as const;

/** The row of `meta` that holds the server's private key: it stays where it was made. */
export const serverKeyName = 'server_key';
/** Under which the start of the plant's tickets lies in `meta`: a signed note, no secret. */
export const ticketStartName = 'tickets_start';

/** The row of `meta` that says what the store's plant is called. */
export const plantRowName = 'plant';

/** The row of `meta` that says in which of PostgreSQL's timelines the log was seen last. */
export const timelineName = 'log_timeline';

/** Tables of the trace's index: made out of `entries`. */
export const traceTableNames = ['trace_state', 'trace_stretches', 'trace_serials'] as const;

/** The table of the log's hash tree, and the row of `meta` that holds its right edge: made out of `entries` too. */
export const treeTableName = 'tree_nodes' as const; // one of the tables, and no other text
/** That row. */
export const treeEdgeName = 'tree_edge';

export type { Dialect };

/**
 * Every step, oldest first; the schema's version is how many were taken. One that is no addition ends what servers of before can do: a table that they read is gone, rows
 * are written in another way, or there is something to heed that they do not know, as that a tablet is a wall screen and may only read.
 */
export const steps: readonly Step[] = [
  firstTables,
  addition(traceTables),
  serialsOfRuns,
  treeTables,
  secretTables,
  shorterOrder,
  addition(pictureTables),
  wallScreens,
  addition(pushTable),
  addition(rateTables),
  addition(monthTables),
];

/** The schema that a program has to know at least once texts have left for files. */
export const monthsSchema = 11;

async function firstTables(db: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, binary, text } = columnTypes(dialect);
  await logTables(db, dialect);
  await tabletTables(db, dialect);
  await db.schema
    .createTable('snapshots')
    .addColumn('fold', text, (c) => c.primaryKey())
    .addColumn('pos', whole, (c) => c.notNull())
    .addColumn('root', text, (c) => c.notNull())
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('at_ms', whole, (c) => c.notNull())
    .addColumn('bytes', binary, (c) => c.notNull())
    .execute();
}

async function logTables({ schema }: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  await schema
    .createTable('meta')
    .addColumn('key', text, (c) => c.primaryKey())
    .addColumn('value', text, (c) => c.notNull())
    .execute();
  await schema
    .createTable('entries')
    .addColumn('pos', whole, (c) => c.primaryKey())
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('epoch', text, (c) => c.notNull())
    .addColumn('seq', whole, (c) => c.notNull())
    .addColumn('hash', text, (c) => c.notNull())
    .addColumn('sig', text)
    .addColumn('root', text, (c) => c.notNull())
    .addColumn('kind', text, (c) => c.notNull())
    .addColumn('hlc_ms', whole, (c) => c.notNull())
    .addColumn('hlc_n', whole, (c) => c.notNull())
    .addColumn('at_ms', whole, (c) => c.notNull())
    .addColumn('ahead_ms', whole, (c) => c.notNull())
    .addColumn('received_ms', whole, (c) => c.notNull())
    .addColumn('via', text)
    .addColumn('body', text, (c) => c.notNull())
    .addUniqueConstraint('entries_name', ['tablet', 'epoch', 'seq'])
    .execute();
  await schema.createIndex('entries_kind').on('entries').columns(['kind', 'pos']).execute();
  // Folding order: exports read in it, page by page.
  await schema
    .createIndex('entries_order')
    .on('entries')
    .columns(['hlc_ms', 'hlc_n', 'tablet', 'epoch', 'seq'])
    .execute();
  await schema
    .createTable('chains')
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('epoch', text, (c) => c.notNull())
    .addColumn('seq', whole, (c) => c.notNull())
    .addColumn('hash', text, (c) => c.notNull())
    .addPrimaryKeyConstraint('chains_name', ['tablet', 'epoch'])
    .execute();
  await schema
    .createTable('aside')
    .addColumn('id', text, (c) => c.notNull())
    .addColumn('hash', text, (c) => c.notNull())
    .addColumn('fault', text, (c) => c.notNull())
    .addColumn('received_ms', whole, (c) => c.notNull())
    .addColumn('via', text, (c) => c.notNull())
    .addColumn('sig', text)
    .addColumn('body', text, (c) => c.notNull())
    .addPrimaryKeyConstraint('aside_name', ['id', 'hash'])
    .execute();
}

/** The tablets and the people on them: keys, codes, sessions, wrong PINs, nonces. */
async function tabletTables(db: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  const { schema } = db;
  await schema
    .createTable('tablets')
    .addColumn('tablet', text, (c) => c.primaryKey())
    .addColumn('name', text, (c) => c.notNull())
    .addColumn('public_key', text, (c) => c.notNull())
    .addColumn('enrolled_ms', whole, (c) => c.notNull())
    .addColumn('seen_ms', whole)
    .addColumn('revoked_ms', whole)
    .addColumn('clock_off_ms', whole)
    .execute();
  await schema
    .createTable('tablet_keys')
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('public_key', text, (c) => c.notNull())
    .addColumn('since_ms', whole, (c) => c.notNull())
    .addPrimaryKeyConstraint('tablet_keys_name', ['tablet', 'public_key'])
    .execute();
  await schema
    .createTable('one_time')
    .addColumn('hash', text, (c) => c.primaryKey())
    .addColumn('purpose', text, (c) => c.notNull())
    .addColumn('detail', text, (c) => c.notNull())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .addColumn('used_ms', whole)
    .execute();
  await schema
    .createTable('sessions')
    .addColumn('hash', text, (c) => c.primaryKey())
    .addColumn('tablet', text, (c) => c.notNull())
    .addColumn('person', text, (c) => c.notNull())
    .addColumn('role', text, (c) => c.notNull())
    .addColumn('pin_checked', whole, (c) => c.notNull())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .execute();
  await schema
    .createTable('tries')
    .addColumn('person', text, (c) => c.primaryKey())
    .addColumn('wrong', whole, (c) => c.notNull())
    .addColumn('locked_until_ms', whole, (c) => c.notNull())
    .execute();
  await schema
    .createTable('nonces')
    .addColumn('nonce', text, (c) => c.primaryKey())
    .addColumn('until_ms', whole, (c) => c.notNull())
    .execute();
  // Nonces live for two minutes: they need no journal, and are forgotten when the database crashes.
  if (dialect === 'postgres') await sql`alter table nonces set unlogged`.execute(db);
}

/** The log as an index for questions: made out of `entries`, and made anew where it is lost. */
async function traceTables(db: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  const { schema } = db;
  await schema
    .createTable('trace_state')
    .addColumn('part', text, (c) => c.notNull())
    .addColumn('key', text, (c) => c.notNull())
    .addColumn('value', text, (c) => c.notNull())
    .addPrimaryKeyConstraint('trace_state_name', ['part', 'key'])
    .execute();
  await schema
    .createTable('trace_stretches')
    .addColumn('id', whole, (c) => c.primaryKey())
    .addColumn('run', text, (c) => c.notNull())
    .addColumn('slot', text, (c) => c.notNull())
    .addColumn('feeder', text)
    .addColumn('reel', text)
    .addColumn('part', text, (c) => c.notNull())
    .addColumn('lot', text)
    .addColumn('who', text)
    .addColumn('at_ms', whole, (c) => c.notNull())
    .addColumn('body', text, (c) => c.notNull())
    .execute();
  for (const column of ['run', 'slot', 'feeder', 'reel', 'part', 'lot', 'who', 'at_ms'] as const)
    await schema
      .createIndex(`trace_stretches_${column}`)
      .on('trace_stretches')
      .columns([column, 'id'])
      .execute();
  await schema
    .createTable('trace_serials')
    .addColumn('serial', text, (c) => c.primaryKey())
    .addColumn('run', text, (c) => c.notNull())
    .addColumn('panel', whole, (c) => c.notNull())
    .addColumn('at', text, (c) => c.notNull())
    .execute();
  await schema.createIndex('trace_serials_run').on('trace_serials').columns(['run', 'panel']).execute();
}

/** A panel's code belongs to each run in which it was counted. The index is made anew. */
async function serialsOfRuns(db: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  const { schema } = db;
  for (const table of traceTableNames) await db.deleteFrom(table).execute();
  await schema.dropTable('trace_serials').execute();
  await schema
    .createTable('trace_serials')
    .addColumn('serial', text, (c) => c.notNull())
    .addColumn('run', text, (c) => c.notNull())
    .addColumn('panel', whole, (c) => c.notNull())
    .addColumn('at', text, (c) => c.notNull())
    .addPrimaryKeyConstraint('trace_serials_place', ['run', 'panel'])
    .execute();
  await schema.createIndex('trace_serials_serial').on('trace_serials').columns(['serial', 'at']).execute();
}

/** The log's hash tree, empty: the first to ask for it makes it out of the entries that are there. */
async function treeTables({ schema }: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { whole, text } = columnTypes(dialect);
  await schema
    .createTable('tree_nodes')
    .addColumn('id', whole, (c) => c.primaryKey())
    .addColumn('hash', text, (c) => c.notNull())
    .execute();
}
