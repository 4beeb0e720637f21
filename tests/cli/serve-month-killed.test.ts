// The act that lets texts leave, killed while it writes: all of a month's texts are in the store or none is, each is read as before, and the act is
// done again. On both stores, with the built program.

import { join } from 'node:path';
import Database from 'better-sqlite3';
import pg from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { startPostgres, type TestPostgres } from '../contract/databases.ts';
import { makeChain } from '../contract/entries.ts';
import { until } from '../src/server/tablets.ts';
import { type Running, useBuiltCli } from './built.ts';
import { newOldPlant, type OldPlant, textsOf } from './old-months.ts';

const cli = useBuiltCli();
let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

const chainOf = (count: number) =>
  makeChain({ tablet: 'T1', count, payload: (seq) => ({ text: `note ${seq} ${'x'.repeat(200)}` }) });

async function begun(kind: 'sqlite' | 'postgres', entries: readonly Entry[]) {
  const plant = await newOldPlant(kind, postgres, entries);
  expect((await plant.act('month', plant.files, '--month', '2026-03')).code).toBe(0);
  const base = ['--data', plant.data, '--months', plant.files];
  const place = plant.database === null ? base : [...base, '--database', plant.database];
  const act = () => cli.run('serve', 'month-out', '2026-03', ...place);
  return { plant, act };
}

/** Nothing is lost; true where the texts have left. */
async function looked(plant: OldPlant, entries: readonly Entry[]): Promise<boolean> {
  const store = await plant.open();
  try {
    const left = await store.monthsLeft();
    const texts = await textsOf(store);
    expect(texts.map((text) => (JSON.parse(text) as { hash: string }).hash)).toEqual(
      entries.map(({ hash }) => hash),
    );
    const blind = await plant.open(null);
    const isHere = await blind.page(0, 10).then(
      () => true,
      () => false,
    );
    await blind.close();
    expect(isHere).toBe(left.length === 0);
    return left.length > 0;
  } finally {
    await store.close();
  }
}

async function killed({ child, ended }: Running) {
  child.kill('SIGKILL');
  await ended;
}

it('killed between two of its writes on PostgreSQL', async () => {
  const entries = chainOf(4_500);
  const { plant, act } = await begun('postgres', entries);
  // One holds a row, the other looks: within a transaction who waits is seen as it was at its first look.
  const [client, looker] = [1, 2].map(
    () => new pg.Client({ connectionString: plant.database ?? '', application_name: 'test' }),
  );
  if (!client || !looker) throw new Error('no client');
  await Promise.all([client.connect(), looker.connect()]);
  try {
    // Its last row is held here: the act has written most others by then, and waits.
    await client.query('begin');
    await client.query('select * from entries where pos = 1500 for update');
    const running = act();
    await until('the act to wait for the row', async () => {
      const { rows } = await looker.query(
        "select 1 from pg_stat_activity where wait_event_type = 'Lock' and query like 'update entries%'",
      );
      return rows.length > 0;
    });
    await killed(running);
    await client.query('rollback');
    await until('the database to see that it is gone', async () => {
      const { rows } = await looker.query(
        "select 1 from pg_stat_activity where backend_type = 'client backend' and datname = current_database() and application_name <> 'test'",
      );
      return rows.length === 0;
    });
    expect(await looked(plant, entries)).toBe(false);
    expect(await act().ended).toBe(0);
    expect(await looked(plant, entries)).toBe(true);
  } finally {
    await Promise.all([client.end(), looker.end()]);
    plant.remove();
  }
});

it('killed while it writes into a data folder', async () => {
  const entries = chainOf(9_000);
  const { plant, act } = await begun('sqlite', entries);
  const other = new Database(join(plant.data, 'log.sqlite'), { timeout: 0 });
  const isWriting = () => {
    try {
      other.exec('begin immediate');
      other.exec('rollback');
      return false;
    } catch {
      return true;
    }
  };
  try {
    // A kill may come a moment after the end of the writing: then the texts have left, are brought back, and it is killed anew.
    let hasLeft = true;
    for (let times = 0; times < 20 && hasLeft; times += 1) {
      const running = act();
      await until('the act to write', () => isWriting() || running.child.exitCode !== null);
      await killed(running);
      hasLeft = await looked(plant, entries);
      if (hasLeft) expect((await plant.act('month-in', '2026-03')).code).toBe(0);
    }
    expect(hasLeft).toBe(false);
    expect(await act().ended).toBe(0);
    expect(await looked(plant, entries)).toBe(true);
  } finally {
    other.close();
    plant.remove();
  }
});
