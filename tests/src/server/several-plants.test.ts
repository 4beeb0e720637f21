// Several plants, each with a server and a store of its own, on both kinds of store: a tablet of one is refused by the other in words, what
// is full or wrong in one stays there, and settings and backups of one are not taken for those of the other.

import { join } from 'node:path';
import Database from 'better-sqlite3';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { startServer } from '../../../src/server/main.ts';
import { lookAtStore } from '../../../src/server/stores/look.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { call } from '../../cli/call.ts';
import { startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet, until } from './tablets.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

const newDatabase = () =>
  postgres ? postgres.newDatabase() : Promise.reject(new Error('PostgreSQL did not start'));

/** From now on what the tablet asks goes to another server, as where a name leads elsewhere: its own address stays. */
function leadElsewhere({ world }: TestTablet, to: TestServer): void {
  const { origin } = world;
  const elsewhere: typeof fetch = (input, init) => fetch(String(input).replace(origin, to.running.url), init);
  Object.assign(world, { fetch: elsewhere });
}

describe.each(['sqlite', 'postgres'] as const)('two plants on %s', (kind) => {
  let brae: TestServer;
  let tarn: TestServer;
  let tablets: TestTablet[];
  const database = () => (kind === 'sqlite' ? Promise.resolve(null) : newDatabase());

  beforeEach(async () => {
    tablets = [];
    brae = await startTestServer({ plant: 'Brae Works', database: await database() });
    tarn = await startTestServer({ plant: 'Tarn Works', database: await database() });
  });
  afterEach(async () => {
    await Promise.all(tablets.map((tablet) => tablet.stop()));
    await Promise.all([brae.stop(), tarn.stop()]);
  });

  async function joined(name: string, server: TestServer): Promise<TestTablet> {
    const tablet = await newTablet(name, server.running.url);
    tablets.push(tablet);
    await enrolAt(server.running, tablet);
    return tablet;
  }

  it('refuse each other’s tablets in words, also with a code, and nothing of them comes in', async () => {
    const tablet = await joined('t1', brae);
    leadElsewhere(tablet, tarn);
    tablet.log.write(3);
    tablet.start();
    await until('the refusal', () => tablet.status()?.phase === 'refused');
    expect(tablet.status()?.reason).toBe('other-plant');
    const { code } = await makeCode(tarn.running.store, Date.now());
    expect(await enrolTablet(tablet, { code, name: 'Line 1' })).toMatchObject({
      ok: false,
      error: { code: 'other-plant', facts: { plant: 'Tarn Works' } },
    });
    expect(await tarn.running.store.heads()).toEqual([]);
    expect(tablet.log.memory.enrolled?.plant).toBe('Brae Works');
    // Nobody used the code up.
    const own = await newTablet('t2', tarn.running.url);
    expect(await enrolTablet(own, { code, name: 'Line 1' })).toMatchObject({ ok: true });
  });

  it('let a tablet in again where its plant has another key or another name, not both', async () => {
    const tablet = await joined('t1', brae);
    const { enrolled } = tablet.log.memory;
    if (!enrolled) throw new Error('it did not join');
    const again = async (change: Partial<typeof enrolled>) => {
      tablet.log.memory = { ...tablet.log.memory, enrolled: { ...enrolled, ...change } };
      const { code } = await makeCode(brae.running.store, Date.now());
      return (await enrolTablet(tablet, { code, name: 'Line 1' })).ok;
    };
    expect(await again({ plant: 'Brae Works as it was called' })).toBe(true);
    expect(await again({ serverKey: 'another' })).toBe(true);
    expect(await again({ serverKey: 'another', plant: 'Fell Works' })).toBe(false);
  });

  it('go on, one where the other’s tablet has used up its share, or its server is gone', async () => {
    const [mine, other] = [await joined('t1', brae), await joined('t1', tarn)];
    brae.running.context.quotas.spend('t1', { bytes: Number.MAX_SAFE_INTEGER });
    for (const tablet of [mine, other]) {
      tablet.log.write(4);
      tablet.start();
    }
    await until('the other’s', () => other.log.memory.acked['t1/e1'] === 4);
    await until('the wait', () => mine.status()?.reason === 'too-often');
    expect(mine.log.memory.acked['t1/e1'] ?? 0).toBe(0);
    await brae.running.stop();
    other.log.write(2);
    await until('two more', () => other.log.memory.acked['t1/e1'] === 6);
    expect((await tarn.running.store.marks([{ tablet: 't1', epoch: 'e1' }]))[0]?.seq).toBe(6);
    brae.running = await startServer(brae.settings);
  });

  it('keep their name: settings of one are refused on the store of the other, and none are needed', async () => {
    expect(await lookAtStore(brae.settings)).toMatchObject({ plant: 'Brae Works' });
    await brae.running.stop();
    await expect(startServer({ ...brae.settings, plant: 'Tarn Works' })).rejects.toThrow(
      '--plant: this is the store of “Brae Works”, not of “Tarn Works”',
    );
    brae.running = await startServer({ ...brae.settings, plant: null });
    const told = async (path: string) => (await fetch(`${brae.running.url}${path}`)).json();
    expect(await told('/health')).toMatchObject({ ok: true, plant: 'Brae Works' });
    expect(await told('/api/info')).toMatchObject({ plant: 'Brae Works' });
    expect(await brae.running.context.metrics.registry.metrics()).toContain(
      'reelward_log_entries{plant="Brae Works"}',
    );
  });

  it('have backups of their own, which only an empty store and that plant’s take', async () => {
    const tablet = await joined('t1', brae);
    tablet.log.write(5);
    tablet.start();
    await until('five', () => tablet.log.memory.acked['t1/e1'] === 5);
    await tablet.stop();
    const file = join(brae.folder, 'brae.sqlite');
    await brae.running.store.backupTo(file);
    await tarn.running.stop();
    const place = { folder: tarn.folder, database: tarn.settings.database, nowMs: Date.now };
    await expect(restoreInto({ ...place, file, replace: true })).rejects.toThrow(
      `${file}: a backup of “Brae Works”, and this is the store of “Tarn Works”`,
    );
    tarn.running = await startServer(tarn.settings);
    const fresh = { folder: join(brae.folder, 'fresh'), database: await database(), nowMs: Date.now };
    await expect(restoreInto({ ...fresh, file, replace: false, plant: 'Tarn Works' })).rejects.toThrow(
      'a backup of “Brae Works”',
    );
    // With the entry that tells of the tablet being let in, where the server writes one.
    expect((await restoreInto({ ...fresh, file, replace: false, plant: 'Brae Works' })).entries).toBe(5);
    const restored = await openStore(fresh);
    expect(await restored.readMeta('plant')).toBe('Brae Works');
    await restored.close();
  });

  it('are called otherwise where somebody says so, and acts of the other’s settings are refused', async () => {
    await brae.running.stop();
    const address = brae.settings.database;
    const place = ['--data', brae.folder, ...(address === null ? [] : ['--database', address])];
    const wrong = await call(['serve', 'tablets', '--plant', 'Tarn Works', ...place]);
    expect([wrong.code, wrong.err]).toEqual([
      2,
      expect.stringContaining('this is the store of “Brae Works”, not of “Tarn Works”'),
    ]);
    const told = await call(['serve', 'rename', 'Brae Works North', ...place]);
    expect([told.code, told.err]).toEqual([
      0,
      '“Brae Works” is called “Brae Works North” now: say so in its settings too, and start its servers again\n',
    ]);
    expect((await call(['serve', 'keys', ...place])).out).toContain('Brae Works North');
    brae.running = await startServer({ ...brae.settings, plant: 'Brae Works North' });
  });
});

it('a second plant in another schema of one database is refused, by the check too', async () => {
  const address = await newDatabase();
  const brae = await startTestServer({ database: address });
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  await client.query('create schema tarn');
  await client.end();
  const second = `${address}?options=-c%20search_path%3Dtarn`;
  const refused =
    '--database: schema public of this database holds a plant already; each plant has a database of its own';
  await expect(startTestServer({ plant: 'Tarn Works', database: second })).rejects.toThrow(refused);
  const check = await call(['serve', 'check', '--database', second, '--data', brae.folder]);
  expect([check.code, check.out]).toEqual([1, expect.stringContaining(`WRONG   store: ${refused}`)]);
  await brae.stop();
});

it('a name that the store does not take is told in the log, and the server starts all the same', async () => {
  const lines: string[] = [];
  const server = await startTestServer({
    plant: null,
    logLevel: 'error',
    logTo: { write: (line) => void lines.push(line) },
  });
  await server.running.stop();
  const raw = new Database(join(server.folder, 'log.sqlite'));
  raw.exec(
    "create trigger full before insert on meta when new.key = 'plant' begin select raise(fail, 'no room'); end",
  );
  raw.close();
  server.running = await startServer({ ...server.settings, plant: 'Brae Works' });
  expect(server.running.context.plant).toBe('Brae Works');
  expect(lines.filter((line) => line.includes('no room'))).toHaveLength(1);
  await server.stop();
});
