// What is done to a server's store from a terminal must not harm it: no act makes a store by a mistyped name, a backup is read back, and
// none is put in under a server that runs.

import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../src/server/stores/open.ts';
import { lockDatabase, SERVING_LOCK } from '../../src/server/stores/postgres/serving.ts';
import { newFolder, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { enrolAt, newTablet, startTestServer, until } from '../src/server/tablets.ts';
import { call } from './call.ts';

let folder: ReturnType<typeof newFolder>;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

async function fill(place: string, count: number): Promise<void> {
  const store = await openStore({ folder: place, database: null, nowMs: Date.now });
  const entries = makeChain({ tablet: 't1', count }).map((entry) => toChecked(entry));
  await store.append([{ sender: 't1', entries }], Date.UTC(2026, 2, 2, 6));
  await store.close();
}

describe('a code for a wall screen', () => {
  it('takes no tablet’s place, and makes no store', async () => {
    const data = join(folder.path, 'data');
    const answer = await call(['serve', 'enrol', '--screen', '--replaces', 't1', '--data', data]);
    expect([answer.code, answer.out]).toEqual([2, '']);
    expect(answer.err).toContain('--screen: a wall screen takes no tablet’s place');
    expect(existsSync(data)).toBe(false);
  });
});

describe('an act on a store that is not there', () => {
  it.each([['tablets'], ['keys'], ['aside'], ['revoke', 't1'], ['backup', 'copy.sqlite']])(
    '%s is refused, and makes none',
    async (...act) => {
      const data = join(folder.path, 'dtaa');
      const answer = await call(['serve', ...act, '--data', data]);
      expect([answer.code, answer.out]).toEqual([2, '']);
      expect(answer.err).toBe(
        `reelward serve: --data: no store in ${data}; name the data folder of the server\n`,
      );
      expect([existsSync(data), existsSync('copy.sqlite')]).toEqual([false, false]);
    },
  );
});

describe('a backup', () => {
  it('tells how many entries it holds', async () => {
    await fill(folder.path, 12);
    const file = join(folder.path, 'copy.sqlite');
    const answer = await call(['serve', 'backup', file, '--data', folder.path]);
    expect([answer.code, answer.err]).toEqual([0, `Backed up 12 entries to ${file} and read them back\n`]);
    // Nothing but the file itself is left beside it.
    expect(readdirSync(folder.path).filter((name) => name.startsWith('copy'))).toEqual(['copy.sqlite']);
  });

  it('of a store in which a text was changed is not called one', async () => {
    await fill(folder.path, 12);
    const raw = new Database(join(folder.path, 'log.sqlite'));
    raw.exec("update entries set body = replace(body, 'note 5\"', 'note 6\"') where seq = 5");
    raw.close();
    const file = join(folder.path, 'copy.sqlite');
    const answer = await call(['serve', 'backup', file, '--data', folder.path]);
    expect(answer.code).toBe(2);
    expect(answer.err).toContain('is no whole log (the text of t1/e1/5 is not what its hash says)');
  });

  it('in a folder is named by its moment, and the newest are kept', async () => {
    await fill(folder.path, 3);
    const backups = join(folder.path, 'nights');
    mkdirSync(backups);
    const own = join(backups, 'before-the-move.sqlite');
    const data = ['--data', folder.path];
    expect((await call(['serve', 'backup', own, ...data])).code).toBe(0);
    const listed = () => readdirSync(backups).sort();
    for (let night = 1; night <= 4; night++) {
      const answer = await call(['serve', 'backup', backups, '--keep', '2', ...data]);
      expect(answer.code).toBe(0);
      expect(listed()).toHaveLength(1 + Math.min(night, 2));
    }
    const [first, second, third] = listed();
    expect(first).toBe('before-the-move.sqlite');
    for (const name of [second, third]) expect(name).toMatch(/^reelward-20\d\d-.*Z\.sqlite$/);
  });

  it.each([
    [['--keep', '0'], '--keep: expected a whole number from 1 to 9999, found 0'],
    [['--keep', '3'], '--keep: expected a folder that is there to keep backups in, found'],
  ])('with %j is refused', async (keep, message) => {
    await fill(folder.path, 3);
    const file = join(folder.path, 'copy.sqlite');
    const answer = await call(['serve', 'backup', file, ...keep, '--data', folder.path]);
    expect(answer.code).toBe(2);
    expect(answer.err).toContain(`reelward serve: ${message}`);
    expect(existsSync(file)).toBe(false);
  });
});

describe('a database that servers share', () => {
  let postgres: TestPostgres | undefined;
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 120_000);
  afterAll(() => postgres?.stop());
  const newDatabase = async () => {
    if (!postgres) throw new Error('PostgreSQL did not start');
    return postgres.newDatabase();
  };

  it('without a store is refused to every act', async () => {
    const database = await newDatabase();
    const answer = await call(['serve', 'backup', join(folder.path, 'copy.sqlite'), '--database', database]);
    expect([answer.code, answer.err]).toEqual([
      2,
      'reelward serve: --database: no store in this database; name the one that the server uses\n',
    ]);
  });

  it('takes no backup while one of them runs, and starts none while one is put in', async () => {
    const database = await newDatabase();
    const server = await startTestServer({ database });
    const tablet = await newTablet('t1', server.running.url);
    await enrolAt(server.running, tablet);
    tablet.log.write(7);
    tablet.start();
    await until('seven', () => tablet.log.memory.acked['t1/e1'] === 7);
    await tablet.stop();
    const place = ['--data', folder.path, '--database', database];
    const file = join(folder.path, 'copy.sqlite');
    expect((await call(['serve', 'backup', file, ...place])).err).toContain('Backed up 7 entries');
    const early = await call(['serve', 'restore', file, '--replace', ...place]);
    expect([early.code, early.err]).toEqual([
      2,
      'reelward serve: --database: a server runs on this database; stop every one that does first\n',
    ]);
    expect((await server.running.store.head()).pos).toBe(7);
    await server.stop();

    const unlock = await lockDatabase(database);
    await expect(startTestServer({ database })).rejects.toThrow('a backup is being put into it');
    await unlock?.();
    const done = await call(['serve', 'restore', file, '--replace', ...place]);
    expect([done.code, done.err]).toEqual([0, expect.stringContaining('Restored 7 entries')]);
    const again = await startTestServer({ database });
    // That it was put back stands behind them.
    expect((await again.running.store.head()).pos).toBe(9);
    await again.stop();
  });

  it('acknowledges nothing where a backup was put in while the server was cut off', async () => {
    const database = await newDatabase();
    const server = await startTestServer({ database });
    const tablet = await newTablet('t1', server.running.url);
    await enrolAt(server.running, tablet);
    tablet.log.write(3);
    tablet.start();
    await until('three', () => tablet.log.memory.acked['t1/e1'] === 3);
    const file = join(folder.path, 'copy.sqlite');
    const place = ['--data', folder.path, '--database', database];
    expect((await call(['serve', 'backup', file, ...place])).code).toBe(0);
    // Its connection that holds the lock breaks, and the restore is quicker than its return.
    const admin = new pg.Client({ connectionString: database });
    await admin.connect();
    const cut = () =>
      admin.query(
        `select pg_terminate_backend(pid) from pg_locks where locktype = 'advisory' and objid = $1
          and database = (select oid from pg_database where datname = current_database())`,
        [SERVING_LOCK],
      );
    await cut();
    let done = await call(['serve', 'restore', file, '--replace', ...place]);
    while (done.code !== 0) {
      await cut();
      done = await call(['serve', 'restore', file, '--replace', ...place]);
    }
    await admin.end();
    tablet.log.write(4);
    await until('the refusal', async () => {
      const health = await (await fetch(`${server.running.url}/health`)).json();
      return (health as { degraded?: readonly string[] }).degraded?.includes('restored') ?? false;
    });
    expect(tablet.log.memory.acked['t1/e1']).toBe(3);
    // Started again it takes them all.
    await server.restart();
    await until('seven', () => tablet.log.memory.acked['t1/e1'] === 7);
    await tablet.stop();
    await server.stop();
  });
});
