// Servers of two versions on one database, while one after the other is replaced: what the newer adds the older lives with, and what it cannot live
// with is refused in words before it happens. The newer version is this one with one step of the schema more.

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { seededChance } from '../../../shared/kit/chance.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { wireHeader, wireVersion } from '../../../shared/wire/version.ts';
import { sleep } from '../../../src/app/sync/backoff.ts';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import { lockDatabase } from '../../../src/server/stores/postgres/serving.ts';
import { addition, neededOf, type Step } from '../../../src/server/stores/step.ts';
import type { Store } from '../../../src/server/stores/store.ts';
import { steps } from '../../../src/server/stores/tables.ts';
import { newCounts, newFleetTablet } from '../../bench/fleet-tablet.ts';
import { newFolder, startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { openWay } from '../../contract/silent.ts';
import { enrolAt, newTablet, settingsFor, until } from './tablets.ts';

let postgres: TestPostgres | undefined;
let folder: ReturnType<typeof newFolder>;
let database: string;
let running: RunningServer[];

beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());
beforeEach(async () => {
  folder = newFolder();
  database = (await postgres?.newDatabase()) ?? '';
  running = [];
});
afterEach(async () => {
  await Promise.all(running.map((server) => server.stop()));
  folder.remove();
});

const adding: Step = addition(async ({ schema }) => {
  await schema
    .alterTable('tablets')
    .addColumn('place', 'text', (c) => c.notNull().defaultTo('floor'))
    .execute();
  await schema.createTable('later').addColumn('id', 'integer').execute();
});
const ending: Step = async ({ schema }) => {
  await schema.alterTable('tablets').dropColumn('clock_off_ms').execute();
};
const older = steps;
const newer = [...steps, adding];
const apart = [...steps, ending];

async function serve(some: readonly Step[], at = database): Promise<RunningServer> {
  const server = await startServer(settingsFor(folder.path, { database: at, steps: some }));
  running.push(server);
  return server;
}
function openFor(some: readonly Step[], change: { readonly role?: 'server'; readonly isAlone?: true } = {}) {
  return openStore({ folder: folder.path, database, nowMs: Date.now, steps: some, ...change });
}

/** Names and hashes of all entries, each as often as it is there. */
async function allEntries(store: Store): Promise<{ readonly names: string[]; readonly hashes: Set<string> }> {
  const rows = await store.sealedPage(0, 100_000);
  return { names: rows.map(entryId), hashes: new Set(rows.map(({ hash }) => hash)) };
}

describe('a newer version that only adds', { timeout: 240_000 }, () => {
  it('takes the place of an older one server by server under writing tablets: nothing is lost, twice or refused', async () => {
    const chance = seededChance(21);
    const serving: RunningServer[] = [await serve(older), await serve(older), await serve(older)];
    const refused: string[] = [];
    const counts = { ...newCounts(), forgiving: true };
    // Each push goes to any of them, as behind a proxy that has not heard yet that one stops.
    const port = () => serving[Math.floor(chance() * serving.length)]?.port ?? 0;
    const tablets = Array.from({ length: 4 }, (_, at) =>
      newFleetTablet({
        name: `r${at}`,
        port,
        counts,
        sent: new Map(),
        wire: wireVersion,
        onRefused: (status, code) => refused.push(`${status} ${code}`),
      }),
    );
    const [first] = serving;
    for (const { name, key } of tablets)
      await first?.store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
    const acked = () => tablets.reduce((sum, tablet) => sum + tablet.acked.length, 0);
    const writeOn = async () => {
      for (const tablet of tablets) for (let count = 0; count < 5; count += 1) tablet.write();
      const before = acked();
      await until('some to be acknowledged', () => acked() > before);
    };
    const replace = async (at: number, some: readonly Step[]) => {
      for (const tablet of tablets) tablet.write();
      await serving[at]?.stop();
      await writeOn();
      serving[at] = await serve(some);
      await writeOn();
    };
    await writeOn();
    await replace(0, newer);
    // One of before that is started again meanwhile goes on, too.
    await replace(1, older);
    await replace(1, newer);
    await replace(2, newer);
    await until('all', () => tablets.every(({ waiting }) => waiting.length === 0));
    for (const tablet of tablets) tablet.stop();
    const [last] = serving;
    if (!last) throw new Error('no server is left');
    const { names, hashes } = await allEntries(last.store);
    const acknowledged = tablets.flatMap((tablet) => tablet.acked);
    expect(acknowledged.length).toBe(tablets.length * (5 * 9 + 4));
    expect(acknowledged.filter((hash) => !hashes.has(hash))).toEqual([]);
    expect(names.length).toBe(new Set(names).size);
    expect([...new Set(refused)].filter((one) => !one.startsWith('503 '))).toEqual([]);
  });

  it('is lived with by an act of the newer program, and refuses one of the older', async () => {
    const old = await serve(older);
    await (await openFor(newer)).close();
    expect((await old.store.listTablets()).length).toBe(0);
    await expect(openFor(older)).rejects.toThrow(
      `the store has schema ${newer.length}, this program knows up to ${older.length}`,
    );
    await (await openFor(older, { role: 'server' })).close();
  });

  it('tells that a table is in use for long, changes nothing, and starts when that is over', async () => {
    const old = await serve(older);
    const reader = new pg.Client({ connectionString: database });
    await reader.connect();
    await reader.query('begin');
    await reader.query('select count(*) from tablets');
    await expect(serve(newer)).rejects.toThrow('something long works with it');
    expect(readdirSync(join(folder.path, 'backups'))).toEqual([]);
    await reader.end();
    await old.store.enrolTablet({ tablet: 't1', name: 't1', publicKey: 'k' }, Date.now());
    const store = (await serve(newer)).store;
    expect((await store.listTablets()).map(({ tablet }) => tablet)).toEqual(['t1']);
  });
});

describe('a newer version that ends what the older can do', { timeout: 120_000 }, () => {
  it('does not start while a server of the older runs, and keeps that out once it did', async () => {
    const old = await serve(older);
    await expect(serve(apart)).rejects.toThrow(
      `the store has schema ${older.length}, and a server runs on it that cannot live with the next: stop every server on it, then start the new ones`,
    );
    // Asked again every few seconds, it would fill the disk with copies.
    expect(existsSync(join(folder.path, 'backups'))).toBe(false);
    await old.store.enrolTablet({ tablet: 't1', name: 't1', publicKey: 'k' }, Date.now());
    await old.stop();
    await serve(apart);
    await expect(serve(older)).rejects.toThrow(`the store has schema ${apart.length}`);
  });

  it('stops a server of the older that was cut off meanwhile', async () => {
    const way = await openWay(database);
    const old = await serve(older, way.url);
    way.refuse();
    await until('the newer', () =>
      serve(apart).then(
        () => true,
        () => false,
      ),
    );
    way.speak();
    expect(await old.over).toContain('start the newer program here too');
    await way.close();
  });

  it('may be gone over by whoever holds the database alone, as a restore does', async () => {
    await (await openFor(older)).close();
    const unlock = await lockDatabase(database);
    await expect(openFor(apart)).rejects.toThrow('stop every server');
    await (await openFor(apart, { isAlone: true })).close();
    await unlock?.();
  });
});

it('an act of a newer program that ends what the older can do is refused while a server of it runs on the data folder', async () => {
  const settings = settingsFor(folder.path, { steps: older });
  const old = await startServer(settings);
  running.push(old);
  const act = (some: readonly Step[]) =>
    openStore({ folder: folder.path, database: null, nowMs: Date.now, steps: some });
  await expect(act(apart)).rejects.toThrow('stop every server on it');
  expect(existsSync(join(folder.path, 'backups'))).toBe(false);
  await old.store.enrolTablet({ tablet: 't1', name: 't1', publicKey: 'k' }, Date.now());
  await old.stop();
  await (await act(apart)).close();
  // The folder is free again.
  running.push(await startServer({ ...settings, steps: apart }));
});

describe('a step', () => {
  it('that is no addition is needed of a program, with all before it', () => {
    expect([
      neededOf([]),
      neededOf([ending]),
      neededOf([ending, adding]),
      neededOf([adding, ending]),
    ]).toEqual([0, 1, 1, 2]);
  });

  it.each(steps.flatMap((step, at) => (step.isAddition ? [at] : [])))(
    'that is called an addition takes nothing away and asks nothing of whoever does not know it: %i',
    async (at) => {
      await (await openFor(steps.slice(0, at))).close();
      const [before, rulesBefore] = [await columns(), await rules()];
      await (await openFor(steps.slice(0, at + 1))).close();
      const [after, rulesAfter] = [await columns(), await rules()];
      expect([...before].filter(([name, facts]) => after.get(name) !== facts)).toEqual([]);
      const tables = new Set([...before.keys()].map((name) => name.split('.')[0]));
      const added = [...after].filter(([name]) => !before.has(name) && tables.has(name.split('.')[0]));
      expect(added.filter(([, facts]) => facts.endsWith('must be given'))).toEqual([]);
      const ofBefore = (names: readonly string[]) => names.filter((name) => tables.has(name.split(' ')[0]));
      // No rule more or less for what was there: a row that it writes is taken as before.
      expect(ofBefore(rulesAfter)).toEqual(rulesBefore);
    },
  );
});

describe('a tablet with the newer app', () => {
  it('that meets a server of before asks again soon: the next one may speak its words', {
    timeout: 60_000,
  }, async () => {
    const server = await serve(older);
    const tablet = await newTablet('t1', server.url);
    await enrolAt(server, tablet);
    const slept: number[] = [];
    let left = 3;
    Object.assign(tablet.world, {
      fetch: ((input, init) => {
        left -= 1;
        // As its app would ask that speaks one version more.
        const headers = left < 0 ? {} : { [wireHeader]: String(wireVersion + 1) };
        return fetch(input, {
          ...init,
          headers: { ...(init?.headers as Record<string, string>), ...headers },
        });
      }) satisfies typeof fetch,
      sleep: (ms: number, signal: AbortSignal) => {
        if (left >= 0) slept.push(ms);
        return sleep(ms, signal);
      },
    });
    tablet.log.write(2);
    tablet.start();
    await until('both', () => tablet.log.memory.acked['t1/e1'] === 2);
    await tablet.stop();
    expect(slept.length).toBe(3);
    expect(slept.every((ms) => ms <= 2_000)).toBe(true);
  });
});

/** `table.column` -> its type, and whether it must be given. */
async function columns(): Promise<ReadonlyMap<string, string>> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  const { rows } = await client.query<{ name: string; facts: string }>(
    `select table_name || '.' || column_name as name,
       data_type || case when is_nullable = 'NO' and column_default is null then ' must be given' else ' may be left' end as facts
     from information_schema.columns where table_schema = current_schema()`,
  );
  await client.end();
  return new Map(rows.map(({ name, facts }) => [name, facts]));
}

/** Each table's constraints and indexes, the table's name first. */
async function rules(): Promise<string[]> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  const { rows } = await client.query<{ rule: string }>(
    `select conrelid::regclass || ' ' || pg_get_constraintdef(oid) as rule from pg_constraint
       where connamespace = current_schema()::regnamespace and conrelid <> 0
     union all select tablename || ' ' || indexdef from pg_indexes where schemaname = current_schema() order by rule`,
  );
  await client.end();
  return rows.map(({ rule }) => rule);
}
