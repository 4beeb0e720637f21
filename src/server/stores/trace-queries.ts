// The trace's index in the store: what it was folded to, and what it found. It is made out of the log and can be made anew, so it
// is written apart from the appends, in transactions that either move it from one place to the next or do nothing.

import { type Kysely, sql, type Transaction } from 'kysely';
import type { Store, TraceChange } from './store.ts';
import { type StretchesTable, type Tables, traceTableNames } from './tables.ts';

/** Rows in one INSERT: 32,766 parameters at most on SQLite. */
const ROWS_AT_ONCE = 1_000;
/** Names in one question: 32,766 parameters at most on SQLite. */
const NAMES_AT_MOST = 30_000;
/** Where the place stands among the state's rows: no part has an empty name. */
const PLACE = { part: '', key: 'place' } as const;

export type TraceQueries = Pick<
  Store,
  'tracePlace' | 'traceState' | 'moveTrace' | 'traceStretches' | 'traceSerials' | 'traceSerial'
>;

/** The queries; `transaction` runs work that no other of the same kind overlaps, in this process or another. */
export function traceQueries(
  db: Kysely<Tables>,
  transaction: <T>(work: (tx: Transaction<Tables>) => Promise<T>) => Promise<T>,
): TraceQueries {
  return {
    tracePlace: () => readPlace(db),
    traceState: async (after, limit) => {
      let query = db.selectFrom('trace_state').selectAll().where('part', '!=', PLACE.part);
      if (after)
        query = query.where((eb) => eb(eb.refTuple('part', 'key'), '>', eb.tuple(after.part, after.key)));
      return query.orderBy('part').orderBy('key').limit(limit).execute();
    },
    moveTrace: (change) => transaction((tx) => move(tx, change)),
    traceStretches: async (wanted, limit) => {
      let query = db.selectFrom('trace_stretches').select('body');
      for (const name of ['run', 'slot', 'feeder', 'who'] as const) {
        const value = wanted[name];
        if (value !== undefined) query = query.where(name, '=', value);
      }
      const material = (['reel', 'part', 'lot'] as const).flatMap((name) => {
        const value = wanted[name];
        return value === undefined ? [] : [[name, value] as const];
      });
      const { orReels = [] } = wanted;
      // More names than a statement takes: all of them are given, and the asker looks.
      if (orReels.length < NAMES_AT_MOST)
        query = query.where((eb) => {
          const named = eb.and(material.map(([name, value]) => eb(name, '=', value)));
          return orReels.length === 0 ? named : eb.or([named, eb('reel', 'in', [...orReels])]);
        });
      if (wanted.fromMs !== undefined) query = query.where('at_ms', '>=', wanted.fromMs);
      if (wanted.toMs !== undefined) query = query.where('at_ms', '<=', wanted.toMs);
      return (await query.orderBy('id').limit(limit).execute()).map((row) => row.body);
    },
    traceSerials: async (runs) =>
      runs.length === 0
        ? []
        : db
            .selectFrom('trace_serials')
            .selectAll()
            .where('run', 'in', [...runs])
            .orderBy('at')
            .execute(),
    traceSerial: async (serial) =>
      db.selectFrom('trace_serials').selectAll().where('serial', '=', serial).orderBy('at').execute(),
  };
}

async function readPlace(db: Pick<Transaction<Tables>, 'selectFrom'>): Promise<string | null> {
  const row = await db
    .selectFrom('trace_state')
    .select('value')
    .where('part', '=', PLACE.part)
    .where('key', '=', PLACE.key)
    .executeTakeFirst();
  return row?.value ?? null;
}

async function move(tx: Transaction<Tables>, change: TraceChange): Promise<boolean> {
  if (change.from === null) {
    for (const table of traceTableNames) await tx.deleteFrom(table).execute();
  } else if ((await readPlace(tx)) !== change.from) return false;
  for (const { part, key } of change.drop)
    await tx.deleteFrom('trace_state').where('part', '=', part).where('key', '=', key).execute();
  await inLots([...change.put, { ...PLACE, value: change.to }], (rows) =>
    tx
      .insertInto('trace_state')
      .values(rows)
      .onConflict((on) =>
        on.columns(['part', 'key']).doUpdateSet((row) => ({ value: row.ref('excluded.value') })),
      )
      .execute(),
  );
  const last = await tx
    .selectFrom('trace_stretches')
    .select(sql<number | null>`max(id)`.as('id'))
    .executeTakeFirst();
  const first = Number(last?.id ?? 0) + 1;
  const stretches = change.stretches.map(
    ({ atMs, ...rest }, at): StretchesTable => ({ id: first + at, ...rest, at_ms: atMs }),
  );
  await inLots(stretches, (rows) => tx.insertInto('trace_stretches').values(rows).execute());
  await inLots(change.serials, (rows) =>
    tx
      .insertInto('trace_serials')
      .values(rows)
      .onConflict((on) => on.columns(['run', 'panel']).doNothing())
      .execute(),
  );
  return true;
}

async function inLots<T>(rows: readonly T[], write: (rows: T[]) => Promise<unknown>): Promise<void> {
  for (let at = 0; at < rows.length; at += ROWS_AT_ONCE) await write(rows.slice(at, at + ROWS_AT_ONCE));
}
