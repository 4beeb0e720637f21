// Was the database put back to an earlier moment while this server did not run? What the log holds says so, where the server's own record names an entry of it. Where it has
// none of this log, PostgreSQL's timeline makes the difference: the journal goes on in a new one after a recovery to a moment, but also each time that a copy takes the place of
// the primary, or Patroni starts it (PostgreSQL documentation, "Continuous Archiving and Point-in-Time Recovery", "Timelines"). Nobody can know then what the log lacks: it gets
// another name, under which tablets offer all that they hold and the server begins a chain of its own, and does not write a second one under the names of the first.
// What nobody recorded and the same timeline holds, after a disk was put back as it was, is left to the tablets, which see it.

import { type Kysely, sql, type Transaction } from 'kysely';
import { newEpoch } from '../migrate.ts';
import { type Tables, timelineName } from '../tables.ts';
import type { LogRecord } from './record.ts';

/** `lost`: the log does not hold what was recorded. `unknown`: it may. Both have another name by now. */
export type Met = 'same' | 'lost' | 'unknown';

/** PostgreSQL recovers, does not let this role ask, or has no such function. */
const untold = new Set(['55000', '42501', '42883']);

/** The timeline that is written to, eight hexadecimal digits; null where this PostgreSQL does not say. */
async function timelineOf(db: Kysely<Tables>): Promise<string | null> {
  const asked = sql<{ timeline: string }>`
    select substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8) as timeline`.execute(db);
  return asked.then(
    ({ rows }) => rows[0]?.timeline ?? null,
    (error: { readonly code?: unknown }) => {
      if (untold.has(String(error.code))) return null;
      throw error;
    },
  );
}

/** Compares the log with what was recorded of it, and gives it another name where it is not the one of before, or may not be. Of several servers that start at once one does it. */
export async function meetLog(
  db: Kysely<Tables>,
  recorded: LogRecord | null,
): Promise<{ readonly epoch: string; readonly met: Met }> {
  const timeline = await timelineOf(db);
  return db.transaction().execute(async (tx) => {
    const { value: epoch } = await tx
      .selectFrom('meta')
      .select('value')
      .where('key', '=', 'server_epoch')
      .forUpdate()
      .executeTakeFirstOrThrow();
    const met = recorded?.epoch === epoch ? await compare(tx, recorded) : null;
    // Where the log goes on after what is known here, another server may know better what it lacks.
    const isOther = met !== 'goes-on' && timeline !== null && (await note(tx, timeline));
    if (met !== 'lost' && (met !== null || !isOther)) return { epoch, met: 'same' };
    const name = newEpoch();
    await tx.updateTable('meta').set({ value: name }).where('key', '=', 'server_epoch').execute();
    return { epoch: name, met: met ?? 'unknown' };
  });
}

async function compare(
  tx: Transaction<Tables>,
  { pos, root }: LogRecord,
): Promise<'lost' | 'same' | 'goes-on'> {
  const rows = await tx
    .selectFrom('entries')
    .select(['pos', 'root'])
    .where('pos', '>=', pos)
    .orderBy('pos')
    .limit(2)
    .execute();
  if (rows[0]?.pos !== pos || rows[0].root !== root) return 'lost';
  return rows.length === 1 ? 'same' : 'goes-on';
}

/** The log of this timeline is known to hold what was seen of it, or has its new name already. */
export async function noteTimeline(db: Kysely<Tables>): Promise<void> {
  const timeline = await timelineOf(db);
  if (timeline !== null) await note(db, timeline);
}

/** True where another was noted before. */
async function note(
  db: Pick<Kysely<Tables>, 'updateTable' | 'insertInto'>,
  timeline: string,
): Promise<boolean> {
  const first = await db
    .insertInto('meta')
    .values({ key: timelineName, value: timeline })
    .onConflict((conflict) => conflict.column('key').doNothing())
    .executeTakeFirst();
  if (Number(first.numInsertedOrUpdatedRows ?? 0) > 0) return false;
  const changed = await db
    .updateTable('meta')
    .set({ value: timeline })
    .where('key', '=', timelineName)
    .where('value', '<>', timeline)
    .executeTakeFirst();
  return Number(changed.numUpdatedRows) > 0;
}
