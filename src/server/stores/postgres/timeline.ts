// Was the database put back to an earlier moment while no server ran? PostgreSQL writes its journal on in a new timeline after a recovery to a moment, and where a copy
// takes the place of the primary (PostgreSQL documentation, "Continuous Archiving and Point-in-Time Recovery", "Timelines"). Servers that ran meanwhile compare the log with
// what they saw of it. Where none did nobody can know what it lacks: then it gets another name, under which tablets offer all that they hold and the server begins a chain of
// its own, and does not write a second one under the names of the first. What the same timeline holds after a disk was put back as it was is left to the tablets, which see it.

import { type Kysely, sql } from 'kysely';
import { newEpoch } from '../migrate.ts';
import { type Tables, timelineName } from '../tables.ts';

/** The timeline that is written to, eight hexadecimal digits; null where this PostgreSQL does not say. */
async function timelineOf(db: Kysely<Tables>): Promise<string | null> {
  const asked = sql<{ timeline: string }>`
    select substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8) as timeline`.execute(db);
  return asked.then(
    ({ rows }) => rows[0]?.timeline ?? null,
    () => null,
  );
}

/** Gives the log another name where it stands in another timeline than the one noted last; true where it did. One of several servers that start at once does it. */
export async function meetTimeline(db: Kysely<Tables>): Promise<boolean> {
  const timeline = await timelineOf(db);
  if (timeline === null) return false;
  return db.transaction().execute(async (tx) => {
    const first = await tx
      .insertInto('meta')
      .values({ key: timelineName, value: timeline })
      .onConflict((conflict) => conflict.column('key').doNothing())
      .executeTakeFirst();
    if (Number(first.numInsertedOrUpdatedRows ?? 0) > 0) return false;
    if (!(await note(tx, timeline))) return false;
    await tx.updateTable('meta').set({ value: newEpoch() }).where('key', '=', 'server_epoch').execute();
    return true;
  });
}

/** The log of this timeline is known to hold what was seen of it, or has its new name already. */
export async function noteTimeline(db: Kysely<Tables>): Promise<void> {
  const timeline = await timelineOf(db);
  if (timeline !== null) await note(db, timeline);
}

/** True where another was noted. */
async function note(db: Pick<Kysely<Tables>, 'updateTable'>, timeline: string): Promise<boolean> {
  const changed = await db
    .updateTable('meta')
    .set({ value: timeline })
    .where('key', '=', timelineName)
    .where('value', '<>', timeline)
    .executeTakeFirst();
  return Number(changed.numUpdatedRows) > 0;
}
