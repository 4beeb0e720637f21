// What only PostgreSQL can get wrong: a sequence is no commit order, and two processes share one log.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { draftOf, sealEntry } from '../../../shared/log/seal.ts';
import { offeredSchema, pushedSchema } from '../../../shared/wire/messages.ts';
import { tracedSchema } from '../../../shared/wire/messages-trace.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { createCaller } from '../../../src/app/sync/http.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import { LeanClient } from '../../../src/server/stores/postgres/client.ts';
import { newFolder, startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { makeChain, startMs, toChecked } from '../../contract/entries.ts';
import { beginStory, counted, started, tellPlant, verified } from '../../shared/floor/story.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet, until } from './tablets.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

async function newDatabase(): Promise<string> {
  if (!postgres) throw new Error('PostgreSQL did not start');
  return postgres.newDatabase();
}

async function connect(url: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  return client;
}

describe('`LeanClient`', () => {
  it('answers as the driver does: by promise, by callback, from a query object, and with its errors', async () => {
    const client = new LeanClient({ connectionString: await newDatabase() });
    await client.connect();
    const rows = [{ one: 1, two: 'b' }];
    const text = 'select $1::int as one, $2::text as two';
    expect((await client.query(text, [1, 'b'])).rows).toEqual(rows);
    expect((await client.query({ text, values: [1, 'b'] })).rows).toEqual(rows);
    expect((await client.query('select 1 as one')).rows).toEqual([{ one: 1 }]);
    const called = await new Promise<pg.QueryResult>((resolve, reject) => {
      client.query(text, [1, 'b'], (error, result) => (error ? reject(error) : resolve(result)));
    });
    expect(called.rows).toEqual(rows);
    await expect(client.query('select 1 / $1::int', [0])).rejects.toMatchObject({ code: '22012' });
    await client.end();
  });
});

describe('commit order', () => {
  it('of a plain sequence lets a reader miss a row for ever', async () => {
    const url = await newDatabase();
    const [first, second, reader] = await Promise.all([connect(url), connect(url), connect(url)]);
    await reader.query('create table plain (id bigserial primary key, text text)');
    await first.query('begin');
    await first.query("insert into plain (text) values ('first')");
    await second.query('begin');
    await second.query("insert into plain (text) values ('second')");
    await second.query('commit');
    const seen = (await reader.query('select id, text from plain where id > 0 order by id')).rows;
    await first.query('commit');
    const next = (await reader.query('select text from plain where id > $1 order by id', [seen.at(-1)?.id]))
      .rows;
    // The gap: `first` has a smaller id than what was read already, and is never read.
    expect(seen.map((row) => row.text)).toEqual(['second']);
    expect(next).toEqual([]);
    await Promise.all([first.end(), second.end(), reader.end()]);
  });

  it('of the log holds: a reader who goes on from the last position it saw reads every entry once', async () => {
    const url = await newDatabase();
    const folder = newFolder();
    const open = () => openStore({ folder: folder.path, database: url, nowMs: () => startMs });
    const [one, two, reader] = await Promise.all([open(), open(), open()]);
    // A transaction of somebody else that stays open must not matter either.
    const other = await connect(url);
    await other.query('begin');
    await other.query("insert into meta (key, value) values ('held', 'open')");
    const chains = Array.from({ length: 10 }, (_, at) => makeChain({ tablet: `t${at}`, count: 30 }));
    let writing = true;
    const write = async (store: typeof one, some: readonly Entry[][]) => {
      for (let at = 0; at < 30; at += 3) {
        await Promise.all(
          some.map((chain) =>
            store.append(
              [{ sender: 'x', entries: chain.slice(at, at + 3).map((entry) => toChecked(entry)) }],
              startMs,
            ),
          ),
        );
      }
    };
    const writers = Promise.all([write(one, chains.slice(0, 5)), write(two, chains.slice(5))]).then(() => {
      writing = false;
    });
    const seen: string[] = [];
    let pos = 0;
    while (writing || pos < 300) {
      for (const row of await reader.page(pos, 7)) {
        expect(row.pos).toBe(pos + 1);
        pos = row.pos;
        seen.push(entryId(JSON.parse(row.text) as Entry));
      }
    }
    await writers;
    expect([...seen].sort()).toEqual(chains.flat().map(entryId).sort());
    await other.query('rollback');
    await other.end();
    await Promise.all([one.close(), two.close(), reader.close()]);
    folder.remove();
  });
});

describe('two server processes on one database', () => {
  it('share the log, push to each other, and refuse a request that the other has seen', async () => {
    const database = await newDatabase();
    const [one, two] = await Promise.all([startTestServer({ database }), startTestServer({ database })]);
    const a = await newTablet('a', one.running.url);
    const b = await newTablet('b', two.running.url);
    await enrolAt(one.running, a);
    await enrolAt(two.running, b);
    expect(one.running.context.serverEpoch).toBe(two.running.context.serverEpoch);
    expect(one.running.context.key.publicKey).toBe(two.running.context.key.publicKey);
    a.start();
    b.start();
    a.log.write(2);
    b.log.write(3);
    await until('all five on both', () => a.log.entries().length === 5 && b.log.entries().length === 5);
    await until(
      'live',
      () => two.running.context.live.count() === 1 && one.running.context.live.count() === 1,
    );
    a.log.write(1);
    await until('the sixth on both', () => b.log.entries().length === 6);

    // A copied request is refused by the other process too.
    const requests: [RequestInfo | URL, RequestInit | undefined][] = [];
    const recorder = {
      ...a.world,
      fetch: (async (input, init) => {
        requests.push([input as string, init]);
        return fetch(input, init);
      }) as typeof fetch,
    };
    const sent = await createCaller(recorder, a.key).call('/api/offer', offeredSchema, {
      json: { heads: [] },
    });
    expect(sent.ok).toBe(true);
    const [input, init] = requests[0] ?? [];
    const { signal: _, ...copy } = init ?? {};
    const replayed = await fetch(String(input).replace(one.running.url, two.running.url), copy);
    expect([replayed.status, ((await replayed.json()) as { code: string }).code]).toEqual([
      401,
      'signature-replayed',
    ]);

    // Shut out at one process, its live stream at the other ends.
    await one.running.store.revokeTablet('b', Date.now());
    await one.running.store.tell({ kind: 'revoked', tablet: 'b' });
    await until('the news', () => b.status()?.reason === 'tablet-revoked');
    await Promise.all([a.stop(), b.stop()]);
    await Promise.all([one.stop(), two.stop()]);
  });

  it('hear of each other again after the database was away', async () => {
    const database = await newDatabase();
    const [one, two] = await Promise.all([startTestServer({ database }), startTestServer({ database })]);
    const a = await newTablet('a', one.running.url);
    const b = await newTablet('b', two.running.url);
    await enrolAt(one.running, a);
    await enrolAt(two.running, b);
    a.start();
    b.start();
    a.log.write(1);
    await until('the first', () => b.log.entries().length === 1);
    const admin = await connect(database);
    await admin.query(
      'select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()',
    );
    await admin.end();
    a.log.write(2);
    await until('the rest', () => b.log.entries().length === 3);
    await Promise.all([a.stop(), b.stop()]);
    await Promise.all([one.stop(), two.stop()]);
  });
});

describe('a backup', () => {
  it('holds no byte of the key that the server signs with, in no row and in no free page', async () => {
    const database = await newDatabase();
    const server = await startTestServer({ database });
    await enrolAt(server.running, await newTablet('a', server.running.url));
    const reader = await connect(database);
    const [row] = (await reader.query("select value from meta where key = 'server_key'")).rows;
    await reader.end();
    const [, ...lines] = String(row.value).trim().split('\n');
    expect(lines).toHaveLength(4);
    const file = join(server.folder, 'copy.sqlite');
    await server.running.store.backupTo(file);
    const bytes = readFileSync(file);
    await server.stop();
    // The row beside it, to show that the file is looked through.
    expect(bytes.includes(server.running.context.serverEpoch)).toBe(true);
    expect(['PRIVATE KEY', ...lines.slice(0, 3)].filter((line) => bytes.includes(line))).toEqual([]);
  });
});

describe('a server on PostgreSQL, which takes no U+0000 in a text', () => {
  /** A chain that is sealed and signed as its app would, each entry with what an attacker puts in. */
  async function poisoned(
    tablet: TestTablet,
    drafts: readonly Partial<Pick<Entry, 'kind' | 'who' | 'payload'>>[],
  ) {
    const entries: Entry[] = [];
    for (const draft of drafts) {
      const before = entries.at(-1);
      const [plain] = makeChain({ tablet: tablet.name, count: 1, ...(before ? { after: before } : {}) });
      const sealed = sealEntry({ ...draftOf(plain as Entry), ...draft });
      entries.push({ ...sealed, sig: await tablet.key.sign(entryText(sealed.hash)) });
    }
    return entries;
  }
  /** A server with two tablets, of which one is an attacker's. */
  async function attacked(
    work: (server: TestServer, evil: TestTablet, honest: TestTablet) => Promise<void>,
  ): Promise<void> {
    const server = await startTestServer({ database: await newDatabase() });
    const { url } = server.running;
    const [evil, honest] = [await newTablet('evil', url), await newTablet('honest', url)];
    try {
      for (const tablet of [evil, honest]) await enrolAt(server.running, tablet);
      await work(server, evil, honest);
    } finally {
      await Promise.all([evil.stop(), honest.stop()]);
      await server.stop();
    }
  }
  const push = (tablet: TestTablet, entries: readonly unknown[]) =>
    tablet.caller.call('/api/push', pushedSchema, { json: { sentMs: Date.now(), entries } });

  it('refuses one within a signature, a hash or a name, and the others go on', async () => {
    await attacked(async ({ running }, evil, honest) => {
      const chain = await poisoned(evil, [{}, {}, {}]);
      const [, second] = chain;
      const half = second?.sig?.slice(0, 40) ?? '';
      for (const bent of [
        { sig: '\u0000' },
        { sig: `${half}\u0000${second?.sig?.slice(41) ?? ''}` },
        { sig: `${second?.sig ?? ''}\u0000` },
        { hash: `${second?.hash.slice(1) ?? ''}\u0000` },
        { prev: `\u0000${second?.prev.slice(1) ?? ''}` },
        { kind: 'reel.\u0000' },
        { tablet: 'evil\u0000' },
        { epoch: 'e\u00001' },
        { at: '2026-03-02T06:00:00Z\u0000' },
      ]) {
        const page = chain.map((entry, at) => (at === 1 ? { ...entry, ...bent } : entry));
        const [pushed] = await Promise.all([push(evil, page), push(honest, [])]);
        expect(pushed, JSON.stringify(bent)).toMatchObject({ ok: false, error: { code: 'bad-body' } });
      }
      honest.log.write(2);
      honest.start();
      await until('the log', async () => (await running.store.page(0, 10)).length === 2);
      // What was sealed as it is comes in after all.
      expect(await push(evil, chain)).toMatchObject({ ok: true, value: { faults: [] } });
      expect(await running.store.quarantined()).toEqual([]);
    });
  });

  it('keeps one within what people write, gives it back as it was, and answers where the reel was', async () => {
    await attacked(async ({ running }, evil, honest) => {
      const story = beginStory();
      tellPlant(story);
      const reel = { reel: 'K\u0000', lot: 'LOT\u0000' };
      story.tell('reel.verified', verified('M1-F-001', 'R-100', reel), { who: 'an\u0000' });
      story.tell('reel.verified', verified('M1-F-002', 'C-220', { reel: 'K2', lot: 'LOT-1' }));
      story.tell('run.started', started('r\u0000'));
      story.tell('panels.counted', counted('r\u0000', 4, 'P\u0000'));
      const odd = { kind: 'text.~', who: null, payload: { '\u0000': '\u0000' } };
      const chain = await poisoned(
        evil,
        [...story.entries, odd].map(({ kind, who, payload }) => ({ kind, who, payload })),
      );
      honest.start();
      const [pushed] = await Promise.all([push(evil, chain), Promise.resolve(honest.log.write(3))]);
      expect(pushed).toMatchObject({ ok: true, value: { faults: [] } });
      await until('all on the honest tablet', () => honest.log.entries().length === chain.length + 3);
      const there = honest.log.entries().filter(({ tablet }) => tablet === 'evil');
      expect(there.map(draftOf)).toEqual(chain.map(draftOf));
      // The index of the log is made of such texts too, and asked with them.
      await running.context.trace.caughtUp();
      for (const [lot, slot] of [
        ['LOT\u0000', 'M1-F-001'],
        ['LOT-1', 'M1-F-002'],
      ]) {
        const traced = await honest.caller.call('/api/trace', tracedSchema, { json: { lot } });
        expect(traced).toMatchObject({ ok: true, value: { behind: 0, places: [{ lot, slot }] } });
      }
    });
  });
});
