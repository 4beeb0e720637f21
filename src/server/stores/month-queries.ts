// Texts leave the log for a month's file, and come back: each in one transaction of a store that no server uses.

import { type Kysely, sql, type Transaction } from 'kysely';
import { putMeta } from './meta.ts';
import { neededRow, StoreRefused } from './migrate.ts';
import type { LeftMonth, TextPlace } from './month-store.ts';
import { createMonthTexts, type MonthTexts } from './month-texts.ts';
import { packedBody, packedColumns, placeInFile, readPlaceInFile } from './packed.ts';
import { neededName } from './step.ts';
import type { Store } from './store.ts';
import { type Dialect, monthsSchema, type Tables } from './tables.ts';

const ROWS_AT_ONCE = 1_000;

/** What a database's own folder adds. */
export interface MonthParts {
  readonly dialect: Dialect;
  /** Where the files of months lie whose texts left; null where nobody said. */
  readonly months: string | null;
  /** Runs `work` in a durable transaction while no server uses the store, and none can begin to. Throws `StoreRefused` where one does. */
  readonly aloneTransaction: <T>(work: (tx: Transaction<Tables>) => Promise<T>) => Promise<T>;
  readonly shrink: () => Promise<void>;
}

/** The months that a store knows, oldest first. */
export async function readMonths(db: Pick<Kysely<Tables>, 'selectFrom'>): Promise<readonly LeftMonth[]> {
  const rows = await db.selectFrom('month_files').selectAll().orderBy('after_pos').execute();
  return rows.map(({ month, after_pos, until_pos, file, bytes, sha256, pieces, texts, left_ms }) => ({
    month,
    afterPos: after_pos,
    untilPos: until_pos,
    file,
    bytes: Number(bytes),
    sha256,
    pieces: JSON.parse(pieces) as readonly number[], // written below only
    texts: Number(texts),
    leftMs: Number(left_ms),
  }));
}

/** The reader of texts that left. `folder`: where months' files lie; null where nobody said. */
export function monthTexts(db: Pick<Kysely<Tables>, 'selectFrom'>, folder: string | null): MonthTexts {
  return createMonthTexts(folder, () => readMonths(db));
}

/** The queries. */
export function monthQueries(
  db: Kysely<Tables>,
  { dialect, months, aloneTransaction, shrink }: MonthParts,
  texts: MonthTexts,
): Pick<
  Store,
  'monthsLeft' | 'monthFaults' | 'letTextsLeave' | 'bringTextsBack' | 'shrink' | 'snapshotsKept'
> {
  return {
    monthsLeft: () => readMonths(db),
    monthFaults: texts.faults,
    letTextsLeave: (month, places) => aloneTransaction((tx) => letLeave(tx, month, { places, dialect })),
    // Asked within the transaction: an embedded store has one connection, which nobody else gets meanwhile.
    bringTextsBack: (month) =>
      aloneTransaction((tx) => bringBack(tx, month, { texts: monthTexts(tx, months), dialect })),
    shrink,
    snapshotsKept: () => db.selectFrom('snapshots').select(['fold', 'pos']).execute(),
  };
}

async function letLeave(
  tx: Transaction<Tables>,
  month: LeftMonth,
  { places, dialect }: { readonly places: readonly TextPlace[]; readonly dialect: Dialect },
): Promise<void> {
  const known = await readMonths(tx);
  if (known.some(({ afterPos, untilPos }) => afterPos < month.untilPos && month.afterPos < untilPos))
    throw new StoreRefused(`the texts of ${month.month} have left the store already`);
  for (let at = 0; at < places.length; at += ROWS_AT_ONCE) {
    const some = places.slice(at, at + ROWS_AT_ONCE).map(({ pos, hash, ...place }) => ({
      pos,
      hash,
      body: placeInFile(place),
    }));
    if ((await putBodies(tx, some, dialect)) !== some.length)
      throw new StoreRefused(`${month.month}: the log is not the one that the file was held against`);
  }
  const { afterPos, untilPos, file, bytes, sha256, pieces, texts, leftMs } = month;
  await tx
    .insertInto('month_files')
    .values({
      month: month.month,
      after_pos: afterPos,
      until_pos: untilPos,
      file,
      bytes,
      sha256,
      pieces: JSON.stringify(pieces),
      texts,
      left_ms: leftMs,
    })
    .execute();
  const value = String(Math.max(monthsSchema, (await neededRow(tx)) ?? 0));
  await putMeta(tx, neededName, value);
}

async function bringBack(
  tx: Transaction<Tables>,
  month: string,
  { texts, dialect }: { readonly texts: MonthTexts; readonly dialect: Dialect },
): Promise<number> {
  const left = (await readMonths(tx)).find((one) => one.month === month);
  if (!left) throw new StoreRefused(`month-in: no texts of ${month} have left this store`);
  let count = 0;
  for (let pos = left.afterPos; pos < left.untilPos; ) {
    const rows = await tx
      .selectFrom('entries')
      .select(['pos', 'hash', ...packedColumns])
      .where('pos', '>', pos)
      .where('pos', '<=', left.untilPos)
      .orderBy('pos')
      .limit(ROWS_AT_ONCE)
      .execute();
    const gone = rows.filter(({ body }) => readPlaceInFile(body) !== null);
    const whole = (await texts.fill(gone)).map(({ hlc_ms: ms, hlc_n: n, at_ms: atMs, ...row }) => ({
      pos: row.pos,
      hash: row.hash,
      body: packedBody({ ...row, hlc: { ms, n }, atMs }),
    }));
    count += await putBodies(tx, whole, dialect);
    const last = rows.at(-1);
    if (!last) break;
    pos = last.pos;
  }
  if (count !== left.texts)
    throw new StoreRefused(`month-in: ${left.texts} texts of ${month} left, and ${count} were found`);
  await tx.deleteFrom('month_files').where('month', '=', month).execute();
  return count;
}

/** Puts other texts into rows, named by place and hash; answers how many were found. */
async function putBodies(
  tx: Transaction<Tables>,
  rows: readonly { readonly pos: number; readonly hash: string; readonly body: string }[],
  dialect: Dialect,
): Promise<number> {
  if (rows.length === 0) return 0;
  const given =
    dialect === 'sqlite'
      ? sql`select json_extract(value, '$.pos') as pos, json_extract(value, '$.hash') as hash,
          json_extract(value, '$.body') as body from json_each(${JSON.stringify(rows)})`
      : sql`select * from unnest(${rows.map(({ pos }) => pos)}::bigint[], ${rows.map(({ hash }) => hash)}::text[],
          ${rows.map(({ body }) => body)}::text[]) as line (pos, hash, body)`;
  const { numAffectedRows } = await sql`update entries set body = given.body from (${given}) as given
    where entries.pos = given.pos and entries.hash = given.hash`.execute(tx);
  return Number(numAffectedRows ?? 0);
}
