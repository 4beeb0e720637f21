// A database that is silent, closed to us, missing or full keeps nobody waiting: the server and the acts say what it is and what to do,
// `/health` answers, and a stop comes to its end.

import { closeSync, existsSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openSqlite } from '../../src/server/stores/sqlite/open.ts';
import { steps } from '../../src/server/stores/tables.ts';
import { freePort, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { openWay, type SilentWay } from '../contract/silent.ts';
import { until } from '../src/server/tablets.ts';
import { useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
let postgres: TestPostgres | undefined;
let ways: SilentWay[] = [];
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());
afterEach(async () => {
  cli.killAll();
  await Promise.all(ways.map((way) => way.close()));
  ways = [];
});

async function newDatabase(): Promise<string> {
  if (!postgres) throw new Error('PostgreSQL did not start');
  return postgres.newDatabase();
}
async function wayTo(url: string, isSilent = false): Promise<SilentWay> {
  const way = await openWay(url, isSilent);
  ways.push(way);
  return way;
}
/** `host:port/name`, as people are told it. */
const told = (url: string) => new URL(url).host + new URL(url).pathname;

describe('a database that takes connections and says nothing', () => {
  it('is refused in words to the server and to an act', async () => {
    const { url } = await wayTo(await newDatabase(), true);
    const message = `reelward serve: --database: ${told(url)} does not answer; does PostgreSQL run there, and does something between hold it up?\n`;
    for (const act of [[], ['tablets'], ['backup', 'copy.sqlite']]) {
      const running = cli.run('serve', ...act, '--database', url, '--port', String(await freePort()));
      expect(await running.ended).toBe(2);
      expect([running.out(), running.err()]).toEqual(['', message]);
    }
  });

  it('is told by `/health` while it lasts and no longer, and does not hold a stop up', async () => {
    const way = await wayTo(await newDatabase());
    const port = await freePort();
    const server = cli.run('serve', '--database', way.url, '--port', String(port));
    await until('the address', () => server.err().includes('Reelward serves at'));
    await until('the note', () =>
      server.err().includes("The database's password stands on the command line"),
    );
    expect(server.err()).not.toContain('tester:tester');
    const health = async () => {
      const answer = await fetch(`http://127.0.0.1:${port}/health`, { signal: AbortSignal.timeout(10_000) });
      const { degraded } = (await answer.json()) as { degraded?: readonly string[] };
      return [answer.status, degraded];
    };
    expect(await health()).toEqual([200, undefined]);
    way.fallSilent();
    // More than the store has connections: each is answered, none takes one of its own.
    const all = await Promise.all(Array.from({ length: 20 }, health));
    expect(all).toEqual(all.map(() => [503, ['away']]));
    way.speak();
    await until('an answer', async () => (await health())[0] === 200);
    way.fallSilent();
    expect(await health()).toEqual([503, ['away']]);
    server.child.kill('SIGTERM');
    // It waits for the store a moment at most, and says so where it had to.
    expect(await server.ended).toBe(0);
  });

  it('does not hold up a stop that comes before the server serves', async () => {
    const way = await wayTo(await newDatabase(), true);
    const server = cli.run('serve', '--database', way.url, '--port', String(await freePort()));
    await until('its first question', () => way.came() > 0);
    server.child.kill('SIGTERM');
    expect([await server.ended, server.err()]).toEqual([0, '']);
  });
});

describe('a database that lets nobody in', () => {
  const asked = async (database: string, env: Readonly<Record<string, string>> = {}) => {
    const before = { ...process.env };
    Object.assign(process.env, env);
    try {
      return await call(['serve', 'tablets', '--data', cli.folder, '--database', database]);
    } finally {
      for (const name of Object.keys(env)) delete process.env[name];
      Object.assign(process.env, before);
    }
  };
  const changed = (url: string, change: (address: URL) => void) => {
    const address = new URL(url);
    change(address);
    return address.href;
  };

  it.each([
    [
      'without a password',
      (address: URL) => {
        address.password = '';
      },
      'wants a password and none was given; name in PGPASSFILE a file',
    ],
    [
      'with a wrong one',
      (address: URL) => {
        address.password = 'wrong';
      },
      'refuses the user or the password',
    ],
    [
      'where it is not there',
      (address: URL) => {
        address.pathname = '/nowhere';
      },
      'no database of that name at',
    ],
    [
      'where nobody listens',
      (address: URL) => {
        address.port = '9';
      },
      'nobody answers at 127.0.0.1:9',
    ],
  ])('says so %s', async (_, change, message) => {
    const answer = await asked(changed(await newDatabase(), change));
    expect([answer.code, answer.out]).toEqual([2, '']);
    expect(answer.err).toContain(message);
    expect(answer.err.trimEnd().split('\n')).toHaveLength(1);
    expect(answer.err).not.toMatch(/tester:|wrong/);
  });

  it('lets in whoever has the password in the file that PGPASSFILE names', async () => {
    const database = await newDatabase();
    const file = join(cli.folder, 'pgpass');
    writeFileSync(file, `${new URL(database).host}:*:tester:tester\n`, { mode: 0o600 });
    const bare = changed(database, (address) => {
      address.password = '';
    });
    const answer = await asked(bare, { PGPASSFILE: file });
    // It came in, and found an empty database.
    expect(answer.err).toContain('no store in this database');
  });
});

describe('a backup that fails, and a full disk', () => {
  it('of the database is called that', async () => {
    const database = await newDatabase();
    const admin = new pg.Client({ connectionString: database });
    await admin.connect();
    // What PostgreSQL answers where a table cannot grow.
    await admin.query(`create function full_disk() returns event_trigger language plpgsql as
      $$ begin raise exception 'could not extend file' using errcode = '53100'; end $$`);
    await admin.query('create event trigger full_disk on ddl_command_end execute function full_disk()');
    await admin.end();
    const answer = await call(['serve', 'enrol', '--data', cli.folder, '--database', database]);
    expect([answer.code, answer.err]).toEqual([
      2,
      `reelward serve: --database: the disk of ${told(database)} is full; make room there first, nothing was changed\n`,
    ]);
  });

  it('leave no piece of a backup behind', async () => {
    const store = await openSqlite({ folder: cli.folder, nowMs: Date.now });
    const entries = makeChain({ tablet: 't1', count: 300 }).map((entry) => toChecked(entry));
    await store.append([{ sender: 't1', entries }], Date.now());
    await store.close();
    // A page in its middle is no page of a database: the copy fails half-way.
    const log = openSync(join(cli.folder, 'log.sqlite'), 'r+');
    writeSync(log, Buffer.alloc(16_384, 7), 0, 16_384, 16_384 * 8);
    closeSync(log);
    const file = join(cli.folder, 'copy.sqlite');
    const answer = await call(['serve', 'backup', file, '--data', cli.folder]);
    expect(answer.code).toBe(2);
    expect(answer.err).toContain('reelward serve: ');
    expect(existsSync(file)).toBe(false);
  });
});

describe('a store of an earlier schema', () => {
  it('is brought forward and says so, with where its copy lies', async () => {
    const data = join(cli.folder, 'data');
    const old = await openSqlite({ folder: data, nowMs: Date.now, steps: steps.slice(0, 3) });
    await old.close();
    const first = await call(['serve', 'tablets', '--data', data]);
    expect(first.code).toBe(0);
    const line = /^The store was brought from schema 3 to (\d+); what was there before is kept in (\S+)\n$/;
    const [, to, copy] = line.exec(first.err) ?? [];
    expect(Number(to)).toBe(steps.length);
    expect(existsSync(copy ?? '')).toBe(true);
    expect((await call(['serve', 'tablets', '--data', data])).err).toBe('');
  });
});

describe('a server under which a backup was put into the database', () => {
  it('stops by itself, saying why, so that it is started on the log that is there now', async () => {
    const database = await newDatabase();
    const way = await wayTo(database);
    const data = ['--data', join(cli.folder, 'data')];
    const server = cli.run('serve', '--database', way.url, '--port', String(await freePort()), ...data);
    await until('the address', () => server.err().includes('Reelward serves at'));
    const file = join(cli.folder, 'copy.sqlite');
    const place = [...data, '--database', database];
    expect((await call(['serve', 'backup', file, ...place])).code).toBe(0);
    // Cut off, so that its lock is gone with its connection; then the backup is put in.
    way.refuse();
    await until(
      'the restore',
      async () => (await call(['serve', 'restore', file, '--replace', ...place])).code === 0,
    );
    way.speak();
    expect(await server.ended).toBe(2);
    expect(server.err()).toContain(
      'reelward serve: stops, as a backup was put into the database under this server',
    );
  });
});
