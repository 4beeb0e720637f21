// When a server notes the timeline that it found after its host came back: where it saw all that the log holds, or once it appended. Else another server that saw more could not tell any more.

import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { keepLog } from '../../../src/server/stores/postgres/kept-log.ts';
import { openPostgres, openPostgresDatabase } from '../../../src/server/stores/postgres/open.ts';
import { meetLog, noteTimeline } from '../../../src/server/stores/postgres/timeline.ts';
import type { LogHead, Store } from '../../../src/server/stores/store.ts';
import { steps, timelineName } from '../../../src/server/stores/tables.ts';
import { newFolder, startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { makeChain, startMs, toChecked } from '../../contract/entries.ts';

const folder = newFolder();
let postgres: TestPostgres | undefined;
let url: string;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(async () => {
  await postgres?.stop();
  folder.remove();
});
beforeEach(async () => {
  url = (await postgres?.newDatabase()) ?? '';
});

const chain = makeChain({ tablet: 't1', count: 3 }).map((entry) => toChecked(entry));
/** A database of some entries, and its heads after the first and the last of them. */
async function filled(
  work: (db: ReturnType<typeof openPostgresDatabase>, heads: readonly [LogHead, LogHead]) => Promise<void>,
) {
  const store: Store = await openPostgres({ folder: folder.path, url, nowMs: () => startMs });
  await store.append([{ sender: 't1', entries: chain.slice(0, 1) }], startMs);
  const first = await store.head();
  await store.append([{ sender: 't1', entries: chain.slice(1) }], startMs);
  const last = await store.head();
  await store.close();
  const db = openPostgresDatabase(url);
  await work(db, [first, last]).finally(() => db.destroy());
}
type Database = ReturnType<typeof openPostgresDatabase>;
const keeping = (db: Database, isServing = true) =>
  keepLog(db, { known: steps.length, isServing, onRefused: () => undefined, onSaw: () => undefined });
const other = '000000FF';
const noteOther = async (db: Database) => {
  await noteTimeline(db);
  await db.updateTable('meta').set({ value: other }).where('key', '=', timelineName).execute();
};
const noted = async (db: Database) =>
  (await db.selectFrom('meta').select('value').where('key', '=', timelineName).executeTakeFirst())?.value;

it('is noted by whoever saw all of the log', () =>
  filled(async (db, [, last]) => {
    await noteOther(db);
    const kept = keeping(db);
    kept.saw(last);
    await kept.back();
    expect(await noted(db)).toBe('00000001');
  }));

it('is left by whoever saw less, until an append', () =>
  filled(async (db, [first]) => {
    await noteOther(db);
    const kept = keeping(db);
    kept.saw(first);
    await kept.back();
    expect(await noted(db)).toBe(other);
    await kept.appendTransaction(async () => undefined);
    expect(await noted(db)).toBe('00000001');
  }));

it('is left by an act', () =>
  filled(async (db, [, last]) => {
    await noteOther(db);
    const kept = keeping(db, false);
    kept.saw(last);
    await kept.back();
    await kept.appendTransaction(async () => undefined);
    expect(await noted(db)).toBe(other);
  }));

it('a log that holds another entry at the place recorded is lost, in the same timeline too, and has another name once', () =>
  filled(async (db, [, last]) => {
    const { epoch } = await meetLog(db, null);
    const recorded = { epoch, pos: last.pos, root: `${last.root}x` };
    const [one, two] = await Promise.all([meetLog(db, recorded), meetLog(db, recorded)]);
    expect([one.met, two.met].sort()).toEqual(['lost', 'same']);
    expect(one.epoch).toBe(two.epoch);
    expect(one.epoch).not.toBe(epoch);
  }));

it('what keeps it from being asked is told, and is no other timeline', () =>
  filled(async (db) => {
    await noteOther(db);
    await db.destroy();
    await expect(noteTimeline(db)).rejects.toThrow();
    const again = openPostgresDatabase(url);
    expect(await noted(again)).toBe('000000FF');
    await again.destroy();
  }));

it('a role that may not ask goes on without', () =>
  filled(async (db, [, last]) => {
    await noteOther(db);
    // Found before the system's own of that name, and not this role's to call.
    const { sql } = await import('kysely');
    await sql`create function public.pg_walfile_name(pg_lsn) returns text language plpgsql
      as $$ begin raise insufficient_privilege; end $$`.execute(db);
    await sql`alter role tester set search_path = public, pg_catalog`.execute(db);
    const again = openPostgresDatabase(url);
    const { epoch } = await meetLog(again, null);
    expect(await meetLog(again, { epoch, ...last })).toEqual({ epoch, met: 'same' });
    expect(await noted(again)).toBe(other);
    await again.destroy();
    await sql`alter role tester reset search_path`.execute(db);
  }));
