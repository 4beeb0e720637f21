// The schema goes forward only, after a copy was made, and never half-way.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Migrated } from '../../../src/server/stores/migrate.ts';
import { openPostgres } from '../../../src/server/stores/postgres/open.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { openSqlite } from '../../../src/server/stores/sqlite/open.ts';
import type { Step } from '../../../src/server/stores/step.ts';
import { monthsSchema, serverKeyName, steps } from '../../../src/server/stores/tables.ts';
import { newFolder, startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { makeChain, startMs, toChecked } from '../../contract/entries.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

const addColumn: Step = async (db) => {
  await db.schema.alterTable('tablets').addColumn('note', 'text').execute();
};
const failing: Step = async (db) => {
  await db.schema.alterTable('tablets').addColumn('half', 'text').execute();
  await sql`select * from nowhere`.execute(db);
};

describe.each(['sqlite', 'postgres'] as const)('`migrate()` on %s', (dialect) => {
  let folder: ReturnType<typeof newFolder>;
  let url: string;
  beforeEach(async () => {
    folder = newFolder();
    url = dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? '') : '';
  });
  afterEach(() => folder.remove());

  const open = (some: readonly Step[]) => {
    const common = { folder: folder.path, nowMs: () => startMs, steps: some };
    return dialect === 'sqlite' ? openSqlite(common) : openPostgres({ ...common, url });
  };
  const fill = async () => {
    const store = await open(steps);
    const entries = makeChain({ tablet: 't1', count: 5 }).map((entry) => toChecked(entry));
    await store.append([{ sender: 't1', entries }], startMs);
    await store.close();
  };
  const backups = () => {
    try {
      return readdirSync(join(folder.path, 'backups'));
    } catch {
      return [];
    }
  };

  it('brings an old store forward after copying it, and keeps every entry', async () => {
    await fill();
    expect(backups()).toEqual([]);
    const store = await open([...steps, addColumn]);
    expect((await store.head()).pos).toBe(5);
    await store.close();
    const [file] = backups();
    expect(file).toMatch(
      new RegExp(`^before-schema-step-${steps.length + 1}-2026-03-02T06-00-00.000Z-[0-9a-f]{6}\\.sqlite$`),
    );
    const copy = new Database(join(folder.path, 'backups', file ?? ''), { readonly: true });
    expect(copy.prepare('select count(*) as n from entries').get()).toEqual({ n: 5 });
    expect(copy.prepare("select value from meta where key = 'schema'").get()).toEqual({
      value: String(steps.length),
    });
    copy.close();
  });

  it('has months in files from the schema on that says so, and not before', async () => {
    const before = await open(steps.slice(0, monthsSchema - 1));
    await expect(before.monthsLeft()).rejects.toThrow('month_files');
    await before.close();
    const from = await open(steps.slice(0, monthsSchema));
    expect(await from.monthsLeft()).toEqual([]);
    await from.close();
  });

  it.each(steps.map((_, at) => at).slice(1))('brings a store of %i steps forward', async (count) => {
    await (await open(steps.slice(0, count))).close();
    const store = await open(steps);
    expect((await store.head()).pos).toBe(0);
    await store.close();
    const [file = '', ...more] = backups();
    expect(more).toEqual([]);
    // What was kept can be put back.
    const choice = { folder: join(folder.path, 'again'), database: null, nowMs: () => startMs };
    const restored = await restoreInto({
      ...choice,
      file: join(folder.path, 'backups', file),
      replace: false,
    });
    expect(restored).toMatchObject({ entries: 0, letIn: [] });
    const copy = new Database(join(folder.path, 'backups', file), { readonly: true });
    expect(copy.prepare("select value from meta where key = 'schema'").get()).toEqual({
      value: String(count),
    });
    copy.close();
  });

  it('that cannot copy the old store leaves no piece of a copy, and no step is taken', async () => {
    const uncopied: Step = async (db) => {
      if (dialect === 'postgres') await sql`alter table snapshots rename fold to other`.execute(db);
      else
        await sql`create trigger kept before delete on meta begin select raise(abort, 'kept'); end`.execute(
          db,
        );
    };
    const store = await open([...steps, uncopied]);
    await store.keepMeta(serverKeyName, 'key');
    await store.close();
    await expect(open([...steps, uncopied, addColumn])).rejects.toThrow(/kept|fold/);
    expect(backups()).toEqual([]);
    await (await open([...steps, uncopied])).close();
  });

  it('that fails changes nothing, and the old program still starts', async () => {
    await fill();
    await expect(open([...steps, addColumn, failing])).rejects.toThrow('nowhere');
    expect(backups()).toEqual([]);
    const store = await open(steps);
    expect((await store.head()).pos).toBe(5);
    await store.close();
    const again = await open([...steps, addColumn]);
    await again.close();
  });

  it('that does not hear whether its steps were taken keeps the copy where they were', async () => {
    await fill();
    const unheard: Step = async (db, kind) => {
      await addColumn(db, kind);
      await sql`update meta set value = ${String(steps.length + 1)} where key = 'schema'`.execute(db);
      await sql`commit`.execute(db);
      throw new Error('the connection broke');
    };
    await expect(open([...steps, unheard])).rejects.toThrow();
    expect(backups()).toHaveLength(1);
  });

  it('refuses a store made by a newer program', async () => {
    await (await open([...steps, addColumn])).close();
    await expect(open(steps)).rejects.toThrow(`the store has schema ${steps.length + 1}`);
  });
});

it('`migrate()` by three processes on one PostgreSQL at once copies and takes each step once, and one tells of it', async () => {
  const folder = newFolder();
  const url = (await postgres?.newDatabase()) ?? '';
  const told: Migrated[] = [];
  const open = (some: readonly Step[]) =>
    openPostgres({
      folder: folder.path,
      nowMs: () => startMs,
      steps: some,
      url,
      onMigrated: (migrated) => told.push(migrated),
    });
  await (await open(steps)).close();
  const newer = [...steps, addColumn];
  const stores = await Promise.all([open(newer), open(newer), open(newer)]);
  expect(told.map(({ from, to }) => [from, to])).toEqual([[steps.length, newer.length]]);
  expect(readdirSync(join(folder.path, 'backups')).length).toBe(1);
  for (const store of stores) {
    const [appended] = await store.append(
      [{ sender: 'x', entries: makeChain({ tablet: 't1', count: 1 }).map((entry) => toChecked(entry)) }],
      startMs,
    );
    expect(appended?.acks).toEqual([{ tablet: 't1', epoch: 'e1', seq: 1 }]);
  }
  for (const store of stores) await store.close();
  folder.remove();
});
