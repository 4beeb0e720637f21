// The store's questions and small writes, worded once for every database through Kysely. What differs between databases
// (the append lock, how others are told, nonces, backup) is handed in by the folder of that database.

import { type Kysely, type SelectQueryBuilder, sql, type Transaction } from 'kysely';
import { aheadLimitMs } from '../../../shared/log/clock.ts';
import { clockCountMost } from '../../../shared/log/entry.ts';
import type { OrderKey } from '../../../shared/log/order.ts';
import { appendBatches, type Batch, firstRoot, type InsertEntries, readHead } from './append.ts';
import { quarantineSignatures } from './forms.ts';
import { putMeta } from './meta.ts';
import { newEpoch } from './migrate.ts';
import { type MonthParts, monthQueries, monthTexts } from './month-queries.ts';
import type { MonthTexts } from './month-texts.ts';
import { type PackedRow, packedColumns, wholeBody, withoutText } from './packed.ts';
import { peopleQueries } from './people-queries.ts';
import { pictureQueries } from './picture-queries.ts';
import { pushQueries } from './push-table.ts';
import { sealQueries } from './seal-queries.ts';
import { rateQueries } from './shared-counts.ts';
import { snapshotQueries } from './snapshot-queries.ts';
import type { ChainEnd, LogHead, Signal, Store, StoredEntry } from './store.ts';
import type { Dialect, EntriesTable, Tables } from './tables.ts';
import {
  broughtQueries,
  keyQueries,
  oneTimeQueries,
  revokedQueries,
  tabletQueries,
} from './tablet-queries.ts';
import { traceQueries } from './trace-queries.ts';
import { edgeAt, rangeHashes, readEdge, stateOf } from './tree.ts';

/** What a database's own folder adds. */
export interface StoreParts extends MonthParts {
  readonly dialect: Dialect;
  /** Runs `work` in a durable transaction that no other append overlaps, in this process or another. */
  readonly appendTransaction: <T>(work: (tx: Transaction<Tables>) => Promise<T>) => Promise<T>;
  readonly insertEntries: InsertEntries;
  /** Told how far the log was seen to reach. */
  readonly saw?: (head: LogHead) => void;
  readonly claimNonce: Store['claimNonce'];
  readonly tell: (signal: Signal) => Promise<void>;
  readonly watch: Store['watch'];
  readonly leads: Store['leads'];
  readonly backupTo: Store['backupTo'];
  readonly quickCheck: Store['quickCheck'];
  readonly bytes: () => Promise<number>;
  readonly close: Store['close'];
}

const entryColumns = ['pos', 'root', 'hash', 'sig', ...packedColumns] as const;

/** An entry's whole JSON from the text that its hash covers, which stays as it is; hash and signature are written as JSON. */
export function entryJson(row: {
  readonly body: string;
  readonly hash: string;
  readonly sig: string | null;
}): string {
  return `${row.body.slice(0, -1)},"hash":${JSON.stringify(row.hash)},"sig":${JSON.stringify(row.sig)}}`;
}

type FoundRow = PackedRow & Pick<EntriesTable, 'pos' | 'root' | 'hash' | 'sig'>;

function toStored(row: FoundRow): StoredEntry {
  const { pos, root, at_ms: atMs, hash, sig } = row;
  return { pos, root, atMs, text: entryJson({ body: wholeBody(row), hash, sig }) };
}

/**
 * Entries that anybody reads. Earlier versions took some whose clock was out of all bounds: they keep their place in the log, whose
 * running hash covers them, and are listed among those quarantined.
 */
function readable<O>(
  query: SelectQueryBuilder<Tables, 'entries', O>,
): SelectQueryBuilder<Tables, 'entries', O> {
  return query.where('ahead_ms', '<=', aheadLimitMs).where('hlc_n', '<=', clockCountMost);
}

/** Joins the common queries and a database's own parts to a store. */
export function createStore(db: Kysely<Tables>, parts: StoreParts): Store {
  const texts = monthTexts(db, parts.months);
  return {
    dialect: parts.dialect,
    ...metaQueries(db),
    ...chainQueries(db, parts),
    ...entryQueries(db),
    ...pageQueries(db, texts),
    ...sealQueries(db, texts),
    ...quarantineQueries(db, texts),
    ...monthQueries(db, parts, texts),
    ...snapshotQueries(db),
    ...pictureQueries(db),
    ...tabletQueries(db),
    ...keyQueries(db),
    ...revokedQueries(db),
    ...broughtQueries(db),
    ...oneTimeQueries(db),
    ...pushQueries(db),
    ...rateQueries(db),
    ...peopleQueries(db),
    ...traceQueries(db, parts.appendTransaction),
    claimNonce: parts.claimNonce,
    tell: parts.tell,
    watch: parts.watch,
    leads: parts.leads,
    backupTo: parts.backupTo,
    quickCheck: parts.quickCheck,
    measure: async () => {
      const row = await db
        .selectFrom('aside')
        .select((eb) => eb.fn.countAll<number>().as('n'))
        .executeTakeFirstOrThrow();
      return { bytes: await parts.bytes(), aside: Number(row.n) };
    },
    close: parts.close,
    sweep: async (nowMs) => {
      await db.deleteFrom('one_time').where('until_ms', '<', nowMs).execute();
      await db.deleteFrom('sessions').where('until_ms', '<', nowMs).execute();
      await db.deleteFrom('nonces').where('until_ms', '<', nowMs).execute();
      await db.deleteFrom('rates').where('until_ms', '<', nowMs).execute();
      await db.deleteFrom('pictures').where('until_ms', '<', nowMs).execute();
    },
  };
}

function metaQueries(
  db: Kysely<Tables>,
): Pick<Store, 'serverEpoch' | 'readMeta' | 'keepMeta' | 'writeMeta' | 'swapMeta'> {
  const readMeta = async (key: string) =>
    (await db.selectFrom('meta').select('value').where('key', '=', key).executeTakeFirst())?.value ?? null;
  const keepMeta = async (key: string, value: string) => {
    await db
      .insertInto('meta')
      .values({ key, value })
      .onConflict((conflict) => conflict.column('key').doNothing())
      .execute();
    return (await readMeta(key)) ?? value;
  };
  return {
    readMeta,
    keepMeta,
    writeMeta: (key, value) => putMeta(db, key, value),
    swapMeta: async (key, before, value) => {
      const changed =
        before === null
          ? await db
              .insertInto('meta')
              .values({ key, value })
              .onConflict((conflict) => conflict.column('key').doNothing())
              .executeTakeFirst()
          : await db
              .updateTable('meta')
              .set({ value })
              .where('key', '=', key)
              .where('value', '=', before)
              .executeTakeFirst();
      const rows = 'numUpdatedRows' in changed ? changed.numUpdatedRows : changed.numInsertedOrUpdatedRows;
      return Number(rows ?? 0) > 0;
    },
    serverEpoch: () => keepMeta('server_epoch', newEpoch()),
  };
}

/** Appends, and how far the log and each chain in it are. */
function chainQueries(
  db: Kysely<Tables>,
  parts: StoreParts,
): Pick<Store, 'append' | 'appendNext' | 'head' | 'rootAt' | 'tree' | 'treeHashes' | 'heads' | 'marks'> {
  const { appendTransaction, insertEntries, saw = () => undefined } = parts;
  const append = async (make: (tx: Transaction<Tables>) => Promise<readonly Batch[]>, nowMs: number) => {
    const results = await appendTransaction(async (tx) =>
      appendBatches(tx, await make(tx), { nowMs, insertEntries }),
    );
    const head = results.at(-1)?.head;
    if (head) saw(head);
    return results;
  };
  return {
    append: async (batches, nowMs) => {
      const results = await append(async () => batches, nowMs);
      if (results.some((result) => result.added > 0)) await parts.tell({ kind: 'appended' });
      return results;
    },
    appendNext: async ({ tablet, epoch }, make, nowMs) => {
      await append(
        async (tx) => [{ sender: tablet, entries: make(await endOf(tx, { tablet, epoch })) }],
        nowMs,
      );
      await parts.tell({ kind: 'appended' });
    },
    head: async () => {
      const head = await readHead(db);
      saw(head);
      return head;
    },
    rootAt: async (pos) => {
      if (pos === 0) return firstRoot;
      return (
        (await db.selectFrom('entries').select('root').where('pos', '=', pos).executeTakeFirst())?.root ??
        null
      );
    },
    tree: async () => {
      const edge = await readEdge(db);
      const head = await readHead(db);
      saw(head);
      if (edge.size === head.pos) return stateOf(edge);
      const made = await appendTransaction(async (tx) => {
        const end = await readHead(tx);
        return { end, edge: await edgeAt(tx, end.pos) };
      });
      saw(made.end);
      return made.edge && stateOf(made.edge);
    },
    treeHashes: (ranges) => rangeHashes(db, ranges),
    heads: () => db.selectFrom('chains').selectAll().orderBy('tablet').orderBy('epoch').execute(),
    marks: async (chains) => {
      const rows =
        chains.length === 0
          ? []
          : await db
              .selectFrom('chains')
              .select(['tablet', 'epoch', 'seq'])
              .where('tablet', 'in', [...new Set(chains.map((chain) => chain.tablet))])
              .execute();
      const held = new Map(rows.map((row) => [`${row.tablet}/${row.epoch}`, row.seq]));
      return chains.map(({ tablet, epoch }) => ({ tablet, epoch, seq: held.get(`${tablet}/${epoch}`) ?? 0 }));
    },
  };
}

async function endOf(
  tx: Transaction<Tables>,
  { tablet, epoch }: { readonly tablet: string; readonly epoch: string },
): Promise<ChainEnd | null> {
  const row = await tx
    .selectFrom('entries')
    .select(['seq', 'hash', 'hlc_ms', 'hlc_n'])
    .where('tablet', '=', tablet)
    .where('epoch', '=', epoch)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ? { seq: row.seq, hash: row.hash, hlc: { ms: row.hlc_ms, n: row.hlc_n } } : null;
}

/** Comes before every entry. */
const beforeAll: OrderKey = {
  hlc: { ms: Number.MIN_SAFE_INTEGER, n: 0 },
  tablet: '',
  epoch: '',
  seq: 0,
};

/** One entry by its name. */
function entryQueries(db: Kysely<Tables>): Pick<Store, 'hashOf' | 'placed'> {
  const placed: Store['placed'] = async ({ tablet, epoch, seq }) => {
    const row = await db
      .selectFrom('entries')
      .select(['pos', 'hash'])
      .where('tablet', '=', tablet)
      .where('epoch', '=', epoch)
      .where('seq', '=', seq)
      .executeTakeFirst();
    return row === undefined ? null : { pos: Number(row.pos), hash: row.hash };
  };
  return { placed, hashOf: async (name) => (await placed(name))?.hash ?? null };
}

/** The log's entries, a page at a time. */
function pageQueries(
  db: Kysely<Tables>,
  texts: MonthTexts,
): Pick<Store, 'page' | 'orderedPage' | 'longPage' | 'ofKinds' | 'firstOf' | 'firstSince'> {
  const toAll = async (rows: readonly FoundRow[]) => (await texts.fill(rows)).map(toStored);
  return {
    page: async (pos, limit) => {
      const query = readable(db.selectFrom('entries').select(entryColumns)).where('pos', '>', pos);
      return toAll(await query.orderBy('pos').limit(limit).execute());
    },
    orderedPage: async (after, limit, untilPos, textsAfter = 0) => {
      const { hlc, tablet, epoch, seq } = after ?? beforeAll;
      // With a sign the position is no way in: by it SQLite would sort all that is left of the log for each page.
      const query = readable(db.selectFrom('entries').select(entryColumns))
        .where(sql<boolean>`+pos <= ${untilPos}`)
        .where((eb) =>
          eb(
            eb.refTuple('hlc_ms', 'hlc_n', 'tablet', 'epoch', 'seq'),
            '>',
            eb.tuple(hlc.ms, hlc.n, tablet, epoch, seq),
          ),
        );
      const ordered = query
        .orderBy('hlc_ms')
        .orderBy('hlc_n')
        .orderBy('tablet')
        .orderBy('epoch')
        .orderBy('seq');
      const rows = await ordered.limit(limit).execute();
      return toAll(rows.map((row) => (row.pos <= textsAfter ? withoutText(row) : row)));
    },
    longPage: async (pos, limit, longerThan) => {
      const query = readable(db.selectFrom('entries').select(entryColumns)).where('pos', '>', pos);
      const long = query.where(sql<boolean>`length(body) > ${longerThan}`);
      return toAll(await long.orderBy('pos').limit(limit).execute());
    },
    firstOf: async ({ tablet, epoch }) => {
      const row = await readable(db.selectFrom('entries').select(entryColumns))
        .where('tablet', '=', tablet)
        .where('epoch', '=', epoch)
        .where('seq', '=', 1)
        .executeTakeFirst();
      return row ? ((await toAll([row]))[0] ?? null) : null;
    },
    firstSince: async (ms) => {
      const row = await db
        .selectFrom('entries')
        .select('pos')
        .where('received_ms', '>=', ms)
        .orderBy('pos')
        .limit(1)
        .executeTakeFirst();
      return row?.pos ?? null;
    },
    ofKinds: async (kinds, afterPos) => {
      const rows = await readable(db.selectFrom('entries').select(entryColumns))
        .where('kind', 'in', [...kinds])
        .where('pos', '>', afterPos)
        .orderBy('pos')
        .execute();
      return toAll(rows);
    },
  };
}

/** What is kept and not read. */
function quarantineQueries(
  db: Kysely<Tables>,
  texts: MonthTexts,
): Pick<Store, 'quarantined' | 'quarantineSignatures'> {
  return {
    quarantined: async () => {
      const rows = await db.selectFrom('aside').selectAll().orderBy('received_ms').orderBy('id').execute();
      const unread = await db
        .selectFrom('entries')
        .select([...packedColumns, 'pos', 'hash', 'received_ms', 'via', 'sig'])
        .where((eb) => eb.or([eb('ahead_ms', '>', aheadLimitMs), eb('hlc_n', '>', clockCountMost)]))
        .orderBy('pos')
        .execute();
      const ahead = (await texts.fill(unread)).map((row) => ({
        id: `${row.tablet}/${row.epoch}/${row.seq}`,
        hash: row.hash,
        fault: 'clock-ahead',
        received_ms: row.received_ms,
        via: row.via ?? row.tablet,
        sig: row.sig,
        body: wholeBody(row),
      }));
      return [...rows, ...ahead].map(({ received_ms, body, sig, ...row }) => ({
        ...row,
        receivedMs: received_ms,
        text: entryJson({ body, sig, hash: row.hash }),
      }));
    },
    quarantineSignatures: (nowMs) => quarantineSignatures(db, texts, nowMs),
  };
}
