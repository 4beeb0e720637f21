// What is done to a plant's tablets and to its log stands in the log: who was let in and shut out, who took the log away, that a backup was put back.
// Written by the server, signed by the plant's key, and checked by `reelward log verify` as any other entry.

import { userInfo } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { verifyChains } from '../../shared/log/chain.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { checkedSchema, codeMadeSchema, exportMadeSchema } from '../../shared/wire/messages.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { makeCode, makeTicket } from '../../src/server/codes.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { newFolder, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { joinChain, type TestChain } from '../src/server/chains.ts';
import { boss, newClock, newTablet, startTestServer, type TestServer } from '../src/server/tablets.ts';
import { call } from './call.ts';

const account = userInfo().username;
let server: TestServer;
let lead: TestChain;

beforeEach(async () => {
  const clock = newClock();
  server = await startTestServer({ clock, app: '1.2.3' });
  lead = await joinChain(server.running, 't1', clock);
  await lead.tell('person.added', boss);
  await lead.push();
});
afterEach(() => server.stop());

/** What the server wrote: kind and payload. */
async function told(store: Store = server.running.store) {
  const entries = (await store.page(0, 1_000)).map(({ text }) => JSON.parse(text) as Entry);
  return entries
    .filter(({ tablet }) => tablet === 'server')
    .map(({ kind, payload }) => (kind === 'tablet.opened' ? [kind, payload['name']] : [kind, payload]));
}
async function signedIn() {
  const json = { badge: boss.badge, person: null, pin: '2222' };
  const answer = await lead.tablet.caller.call('/api/people/check', checkedSchema, { json });
  if (!answer.ok) throw new Error(answer.error.code);
  return answer.value.token;
}
async function exported(): Promise<string> {
  const { store, context, url } = server.running;
  const wish = { format: 'json', from: null, to: null, line: null } as const;
  const { path } = await makeTicket(store, wish, context.nowMs());
  return (await fetch(url + path)).text();
}

describe('the log of a plant', { timeout: 120_000 }, () => {
  it('tells who let a tablet in, shut one out and took the log away, signed by the plant', async () => {
    const person = await signedIn();
    const caller = lead.tablet.caller;
    const made = await caller.call('/api/codes', codeMadeSchema, { json: {}, person });
    const rear = await newTablet('t2', server.running.url);
    expect(await enrolTablet(rear, { code: made.ok ? made.value.code : '', name: 'Rear' })).toMatchObject({
      ok: true,
    });
    const wish = { format: 'csv', from: null, to: null, line: 'L1' };
    expect((await caller.call('/api/export', exportMadeSchema, { json: wish, person })).ok).toBe(true);
    expect(
      (
        await caller.call('/api/tablets/revoke', z.object({ revoked: z.boolean() }), {
          json: { tablet: 't2' },
          person,
        })
      ).ok,
    ).toBe(true);
    expect(await told()).toEqual([
      ['tablet.opened', 'Server'],
      ['tablet.let-in', { tablet: 't1', name: 'Tablet t1', person: null, account }],
      ['tablet.let-in', { tablet: 't2', name: 'Rear', person: 'boss', account: null }],
      [
        'log.fetched',
        {
          format: 'csv',
          filter: '{"from":null,"to":null,"line":"L1"}',
          tablet: 't1',
          person: 'boss',
        },
      ],
      ['tablet.shut-out', { tablet: 't2', person: 'boss', account: null }],
    ]);
    const file = await exported();
    const { code, out } = await call(['log', 'verify', '-'], file);
    const report = JSON.parse(out) as { readonly proven?: unknown };
    expect([code, JSON.stringify(report)]).toEqual([0, expect.stringContaining('"server"')]);
    // A word changed by whoever holds the file is found.
    const changed = await call(['log', 'verify', '-'], file.replace('"name":"Rear"', '"name":"Read"'));
    expect(changed.code).toBe(1);
  });

  it('tells what was done at the terminal, and goes on under another name after a restore', async () => {
    const place = ['--data', server.folder];
    const file = join(server.folder, 'copy.sqlite');
    expect((await call(['serve', 'backup', file, ...place])).code).toBe(0);
    expect((await call(['serve', 'revoke', 't1', ...place])).code).toBe(0);
    // Shut out already: nothing was done.
    expect((await call(['serve', 'revoke', 't1', ...place])).code).toBe(1);
    const before = await told();
    expect(before.slice(2)).toEqual([['tablet.shut-out', { tablet: 't1', person: null, account }]]);
    await server.running.stop();
    expect((await call(['serve', 'restore', file, '--replace', ...place])).err).toContain(
      'Restored 4 entries',
    );
    const store = await openStore({ folder: server.folder, database: null, nowMs: Date.now });
    expect(await told(store)).toEqual([
      ...before.slice(0, 2),
      ['tablet.opened', 'Server'],
      ['log.restored', { entries: 4, person: null, account }],
    ]);
    const chains = (await store.heads()).filter(({ tablet }) => tablet === 'server');
    expect(new Set(chains.map(({ epoch }) => epoch)).size).toBe(2);
    await store.close();
  });

  it('lets nobody in under the name of the server', async () => {
    const { store, context, url } = server.running;
    const { code } = await makeCode(store, context.nowMs());
    const thief = await newTablet('server', url);
    const answer = await enrolTablet(thief, { code, name: 'x' });
    expect(answer).toMatchObject({ ok: false, error: { code: 'tablet-active' } });
  });
});

describe('servers that share a database', { timeout: 120_000 }, () => {
  let postgres: TestPostgres | undefined;
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 120_000);
  afterAll(() => postgres?.stop());

  it('write one chain that does not fork, though all of them write at the same moment', async () => {
    const database = (await postgres?.newDatabase()) ?? '';
    const folder = newFolder();
    const open = () => openStore({ folder: folder.path, database, nowMs: Date.now });
    const stores = await Promise.all([open(), open(), open()]);
    const { createOwnChain } = await import('../../src/server/own-chain.ts');
    const { openServerKey } = await import('../../src/server/keys.ts');
    await Promise.all(
      stores.map(async (store, at) => {
        const chain = createOwnChain({ store, key: await openServerKey(store), app: '1', nowMs: Date.now });
        for (let round = 0; round < 8; round += 1)
          await chain.tell({ kind: 'tablet.shut-out', payload: { tablet: `t${at}`, person: null, account } });
      }),
    );
    const [store] = stores;
    const entries = ((await store?.page(0, 100)) ?? []).map(({ text }) => JSON.parse(text) as Entry);
    expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: 25 }, (_, at) => at + 1));
    expect(verifyChains(entries)).toMatchObject({ ok: true });
    expect(await store?.quarantined()).toEqual([]);
    await Promise.all(stores.map((one) => one.close()));
    folder.remove();
  });
});
