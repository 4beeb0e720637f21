// Several server processes on one database, any of them for any tablet: killed without a warning, asked the same thing at the same moment. Nothing
// that was acknowledged is lost or there twice, what may be used once is used once, and what is counted is counted over all of them.

import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { seededChance } from '../../shared/kit/chance.ts';
import { entryId } from '../../shared/log/entry.ts';
import { parseNote } from '../../shared/log/note.ts';
import { parseTreeHead } from '../../shared/log/tree-head.ts';
import { pinTries } from '../../shared/wire/limits.ts';
import { checkedSchema, treeToldSchema } from '../../shared/wire/messages.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { makeCode } from '../../src/server/codes.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { LEADING_LOCKS } from '../../src/server/stores/postgres/serving.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { newCounts, newFleetTablet } from '../bench/fleet-tablet.ts';
import { freePort, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { boss, newTablet, until } from '../src/server/tablets.ts';
import { type Running, useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
let postgres: TestPostgres | undefined;
let database: string;
let store: Store;
/** The servers, by their ports. */
let servers: Map<number, Running>;

beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());
beforeEach(async () => {
  if (!postgres) throw new Error('PostgreSQL did not start');
  database = await postgres.newDatabase();
  servers = new Map();
  for (const port of [await freePort(), await freePort(), await freePort()]) start(port);
  await until('all three', () => [...servers.values()].every(serves));
  store = await openStore({ folder: cli.folder, database, nowMs: Date.now });
}, 120_000);
afterEach(async () => {
  cli.killAll();
  await Promise.all([...servers.values()].map(({ ended }) => ended));
  await store.close();
}, 60_000);

function start(port: number): void {
  const data = join(cli.folder, `data-${port}`);
  servers.set(port, cli.run('serve', '--database', database, '--data', data, '--port', String(port)));
}
function serves({ err }: Running): boolean {
  return err().includes('Reelward serves at');
}
const urls = () => [...servers.keys()].map((port) => `http://127.0.0.1:${port}`);
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** A tablet that the plant let in. */
async function enrolled(name: string) {
  const [url = ''] = urls();
  const tablet = await newTablet(name, url);
  const { code } = await makeCode(store, Date.now());
  expect(await enrolTablet(tablet, { code, name })).toMatchObject({ ok: true });
  return tablet;
}

describe('three servers on one database', { timeout: 240_000 }, () => {
  it('lose nothing and keep nothing twice while tablets go from one to another and each is killed in turn', async () => {
    const chance = seededChance(11);
    const counts = { ...newCounts(), forgiving: true };
    const ports = [...servers.keys()];
    const tablets = await Promise.all(
      ports.concat(ports, ports).map(async (first, at) => {
        const place = { port: first };
        const tablet = newFleetTablet({ name: `f${at}`, port: () => place.port, counts, sent: new Map() });
        const { name, key } = tablet;
        await store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
        return { tablet, place };
      }),
    );
    const acked = () => tablets.flatMap(({ tablet }) => tablet.acked);
    const moveAway = (from: number) => {
      const others = ports.filter((port) => port !== from);
      for (const { place } of tablets)
        if (place.port === from) place.port = others[Math.floor(chance() * others.length)] ?? from;
    };
    for (const victim of ports) {
      for (let round = 0; round < 6; round += 1) {
        for (const { tablet, place } of tablets) {
          for (let count = 0; count < 4; count += 1) tablet.write();
          if (chance() < 0.3) place.port = ports[Math.floor(chance() * ports.length)] ?? place.port;
        }
        await wait(chance() * 40);
      }
      servers.get(victim)?.child.kill('SIGKILL');
      await servers.get(victim)?.ended;
      moveAway(victim);
      const before = acked().length;
      await until('the others to go on', () => acked().length > before);
      start(victim);
      await until('it again', () => serves(servers.get(victim) as Running));
    }
    await until('all to be acknowledged', () => tablets.every(({ tablet }) => tablet.waiting.length === 0));
    for (const { tablet } of tablets) tablet.stop();
    const rows = await store.sealedPage(0, 100_000);
    const hashes = new Set(rows.map(({ hash }) => hash));
    expect(acked().filter((hash) => !hashes.has(hash))).toEqual([]);
    expect(acked()).toHaveLength(3 * 6 * 4 * tablets.length);
    expect(new Set(rows.map(entryId)).size).toBe(rows.length);
    expect(rows.map(({ pos }) => pos)).toEqual(rows.map((_, at) => at + 1));
    // One of them leads, whoever was killed, and has walked along all of it.
    await until(
      'the walk along the signatures',
      async () => (await store.readMeta('signatures_to')) === String((await store.head()).pos),
    );
    expect(await leaders()).toBe(1);
  });

  it('take a one-time code once, though it is brought to all of them at the same moment', async () => {
    for (let round = 0; round < 5; round += 1) {
      const { code } = await makeCode(store, Date.now());
      const asked = await Promise.all(
        urls().map(async (url, at) =>
          enrolTablet(await newTablet(`c${round}-${at}`, url), { code, name: 'x' }),
        ),
      );
      const told = asked.map((one) => (one.ok ? 'ok' : one.error.code)).sort();
      expect(told).toEqual(['code-wrong', 'code-wrong', 'ok']);
    }
  });

  it('count wrong PINs and tries to join over all of them', async () => {
    const tablet = await enrolled('t1');
    tablet.log.write(1, () => ({ ...boss, pin: { ...boss.pin } }), 'person.added');
    tablet.start();
    await until('the lead in the log', async () => (await sent('t1')) === 1);
    await tablet.stop();
    const check = async (at: number, pin: string) => {
      const to = urls()[at % 3] ?? '';
      Object.assign(tablet.world, {
        fetch: ((input, init) =>
          fetch(String(input).replace(tablet.world.origin, to), init)) satisfies typeof fetch,
      });
      const json = { badge: null, person: 'boss', pin };
      const answer = await tablet.caller.call('/api/people/check', checkedSchema, { json });
      return answer.ok ? 'ok' : answer.error.code;
    };
    const told: string[] = [];
    for (let at = 0; at < pinTries + 1; at += 1) told.push(await check(at, '0000'));
    expect(told).toEqual([...Array.from({ length: pinTries }, () => 'pin-wrong'), 'person-locked']);
    expect(await check(pinTries + 1, '2222')).toBe('person-locked');

    // One address may try to join thirty times a minute; one of them was the tablet that did.
    const codes: string[] = [];
    for (let at = 0; at < 31; at += 1) {
      const stranger = await newTablet(`s${at}`, urls()[at % 3] ?? '');
      const answer = await enrolTablet(stranger, { code: 'WRONG-WRONG', name: 'x' });
      codes.push(answer.ok ? 'ok' : answer.error.code);
    }
    expect(codes.filter((one) => one === 'code-wrong')).toHaveLength(29);
    expect(codes.slice(-2)).toEqual(['too-often', 'too-often']);
  });

  it('sign one root for each size of the log, whichever is asked while it grows', async () => {
    const tablets = await Promise.all(['h0', 'h1', 'h2'].map(enrolled));
    const roots = new Map<number, Set<string>>();
    const origins = new Set<string>();
    let writing = true;
    const ask = async (at: number) => {
      const tablet = tablets[at];
      const to = urls()[at] ?? '';
      const origin = tablet?.world.origin ?? '';
      if (tablet)
        Object.assign(tablet.world, {
          fetch: ((input, init) => fetch(String(input).replace(origin, to), init)) satisfies typeof fetch,
        });
      for (let asked = 0; writing || asked < 8; asked += 1) {
        if (asked >= 50) return;
        const answer = await tablet?.caller.call('/api/tree', treeToldSchema, {
          json: { sizes: [], places: [] },
        });
        if (!answer?.ok) throw new Error(`no head: ${answer?.error.code}`);
        const head = parseTreeHead(parseNote(answer.value.head)?.text ?? '');
        if (!head) throw new Error('not a head');
        origins.add(head.origin);
        const some = roots.get(head.size) ?? new Set();
        roots.set(head.size, some.add(Buffer.from(head.root).toString('hex')));
      }
    };
    const asking = Promise.all([0, 1, 2].map(ask));
    for (const tablet of tablets) tablet.start();
    for (let round = 0; round < 15; round += 1) {
      for (const tablet of tablets) tablet.log.write(2);
      await wait(20);
    }
    await until('all in the log', async () => (await sent('h0', 'h1', 'h2')) === 90);
    writing = false;
    await asking;
    expect(origins.size).toBe(1);
    expect(roots.size).toBeGreaterThan(3);
    expect([...roots.values()].filter((some) => some.size > 1)).toEqual([]);
    // None of the tablets found that what it was shown is another log.
    expect(tablets.map((tablet) => tablet.status()?.reason ?? null)).toEqual([null, null, null]);
    await Promise.all(tablets.map((tablet) => tablet.stop()));
  });

  it('keep a backup from being put in while one of them is left', async () => {
    const file = join(cli.folder, 'copy.sqlite');
    const place = ['--data', join(cli.folder, 'acts'), '--database', database];
    expect((await call(['serve', 'backup', file, ...place])).code).toBe(0);
    const restore = () => call(['serve', 'restore', file, '--replace', ...place]);
    for (const { child, ended } of servers.values()) {
      const refused = await restore();
      expect([refused.code, refused.err]).toEqual([
        2,
        'reelward serve: --database: a server runs on this database; stop every one that does first\n',
      ]);
      child.kill('SIGTERM');
      await ended;
    }
    expect((await restore()).code).toBe(0);
  });
});

/** How many entries of these tablets are in the log. */
async function sent(...tablets: readonly string[]): Promise<number> {
  const marks = await store.marks(tablets.map((tablet) => ({ tablet, epoch: 'e1' })));
  return marks.reduce((sum, { seq }) => sum + seq, 0);
}

/** How many processes hold the lock of the server that leads. */
async function leaders(): Promise<number> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  const { rows } = await client.query<{ n: number }>(
    `select count(*)::int as n from pg_locks join pg_database on pg_database.oid = pg_locks.database
      where datname = current_database() and locktype = 'advisory' and objid = $1 and granted`,
    [LEADING_LOCKS.server],
  );
  await client.end();
  return rows[0]?.n ?? 0;
}
