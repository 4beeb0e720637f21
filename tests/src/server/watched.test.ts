// The store under the server breaks, fills up or is changed by hand: it is told at once, by name, to the tablet, to whoever asks for
// the server's health, and in the log; and what is nobody's business is told to nobody.

import { closeSync, openSync, readFileSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { checkedSchema, offeredSchema, pushedSchema } from '../../../shared/wire/messages.ts';
import { openSqlite } from '../../../src/server/stores/sqlite/open.ts';
import { troubleOf } from '../../../src/server/stores/trouble.ts';
import { newFolder } from '../../contract/databases.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';
import { newTablet, type TestTablet } from './tablets.ts';
import { usePlant } from './use-plant.ts';

let lines: string[];
beforeEach(() => {
  lines = [];
});
const plant = usePlant({ logLevel: 'warn', logTo: { write: (line) => void lines.push(line) } });

async function health(): Promise<{
  readonly status: number;
  readonly ok: boolean;
  readonly degraded?: string[];
}> {
  const response = await fetch(`${plant.server.running.url}/health`);
  return { status: response.status, ...((await response.json()) as { ok: boolean; degraded?: string[] }) };
}
const push = async (tablet: TestTablet, count: number) => {
  const entries = await Promise.all(
    makeChain({ tablet: tablet.name, count }).map(async (entry) => ({
      ...entry,
      sig: await tablet.key.sign(entry.hash),
    })),
  );
  return tablet.caller.call('/api/push', pushedSchema, { json: { sentMs: 1, entries } });
};
const logged = (key: string) =>
  lines.map((line) => JSON.parse(line) as Record<string, unknown>).filter((line) => key in line);

describe('a full disk', () => {
  it('is named to the tablet, in the health and in the log, and is over with the next entry written', async () => {
    const tablet = await plant.join('t1');
    const folder = newFolder();
    const full = await openSqlite({ folder: folder.path, nowMs: Date.now, mostPages: 80 });
    const { store } = plant.server.running;
    const { append } = store;
    // What the disk said: that nothing could be rolled back would hide it.
    const filling = makeChain({ tablet: 'x', count: 5_000, payload: () => ({ text: 'x'.repeat(500) }) });
    await expect(
      full.append([{ sender: 'x', entries: filling.map((entry) => toChecked(entry)) }], Date.now()),
    ).rejects.toMatchObject({ code: 'SQLITE_FULL' });
    Object.assign(store, {
      append: () =>
        full.append([{ sender: 'x', entries: filling.map((entry) => toChecked(entry)) }], Date.now()),
    });
    expect(await push(tablet, 1)).toMatchObject({ ok: false, error: { code: 'store-full' } });
    expect(await health()).toMatchObject({ status: 503, ok: false, degraded: ['disk-full'] });
    expect(logged('store')).toMatchObject([{ store: 'disk-full' }]);
    Object.assign(store, { append });
    expect(await push(tablet, 1)).toMatchObject({ ok: true });
    expect(await health()).toMatchObject({ status: 200, ok: true });
    await full.close();
    folder.remove();
  });

  it('and a store that cannot be written are told apart by what the database says', () => {
    const folder = newFolder();
    const file = join(folder.path, 'x.sqlite');
    new Database(file).exec('create table t (a)').close();
    const readOnly = new Database(file, { readonly: true });
    let error: unknown = null;
    try {
      readOnly.exec('insert into t values (1)');
    } catch (caught) {
      error = caught;
    }
    readOnly.close();
    folder.remove();
    expect(troubleOf(error)).toBe('read-only');
    expect(troubleOf(Object.assign(new Error('x'), { code: 'ENOSPC' }))).toBe('disk-full');
    expect(troubleOf(new Error('anything else'))).toBeNull();
  });
});

describe('a store', () => {
  const file = () => join(plant.server.folder, 'log.sqlite');

  it('that is intact is found so', async () => {
    await push(await plant.join('t1'), 300);
    await plant.server.running.context.health.look();
    expect(await health()).toMatchObject({ ok: true });
  });

  it.each([
    ['a text', `update entries set body = replace(body, 'note 7"', 'note 8"') where seq = 7`, 'text-changed'],
    ['a running hash', `update entries set root = '${'0'.repeat(64)}' where seq = 7`, 'log-broken'],
    ['a row taken out', 'delete from entries where seq = 7', 'log-broken'],
  ])('in which somebody changed %s is told of, with the place', async (_, statement, trouble) => {
    await push(await plant.join('t1'), 20);
    const raw = new Database(file());
    raw.exec(statement);
    raw.close();
    await plant.server.running.context.health.look();
    expect(await health()).toMatchObject({ ok: false, degraded: [trouble] });
    expect(String(logged('store')[0]?.['where'])).toMatch(/t1\/e1\/[78]/);
  });

  it('with a damaged page is told of, though nobody asked for that page', async () => {
    await push(await plant.join('t1'), 500);
    await plant.server.restart(() => {
      const page = Math.floor(readFileSync(file()).indexOf('"note 100"') / 16_384);
      expect(page).toBeGreaterThan(1);
      const handle = openSync(file(), 'r+');
      writeSync(handle, Buffer.alloc(16_384, 0x5a), 0, 16_384, page * 16_384);
      closeSync(handle);
    });
    await plant.server.running.context.health.look();
    expect((await health()).degraded).toContain('damaged');
  });
});

describe('what the server counts', () => {
  it('is for whoever holds the key in the data folder', async () => {
    const ask = (authorization: string) =>
      fetch(`${plant.server.running.url}/metrics`, { headers: { authorization } });
    expect((await ask('')).status).toBe(401);
    expect((await ask('Bearer x')).status).toBe(401);
    const file = join(plant.server.folder, 'metrics.key');
    expect((statSync(file).mode & 0o777).toString(8)).toBe('600');
    const answer = await ask(`Bearer ${readFileSync(file, 'utf8').trim()}`);
    expect(await answer.text()).toContain('reelward_entries_total');
  });
});

describe('the log', () => {
  it('has a line with its own code for each try of somebody who may not', async () => {
    const [tablet, stranger] = [await plant.join('t1'), await newTablet('nobody', plant.server.running.url)];
    await stranger.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
    await plant.server.running.store.revokeTablet('t1', Date.now());
    await tablet.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
    const [other] = [await plant.join('t2')];
    await other.caller.call('/api/people/check', checkedSchema, {
      json: { badge: 'B-9', person: null, pin: '1' },
    });
    expect(logged('security').map(({ security, claims }) => [security, claims])).toEqual([
      ['tablet-unknown', 'nobody'],
      ['tablet-revoked', 't1'],
      ['person-unproven', 't2'],
    ]);
    for (let at = 0; at < 100; at += 1)
      await stranger.caller.call('/api/offer', offeredSchema, { json: { heads: [] } });
    expect(logged('security').length).toBeLessThanOrEqual(60);
  });
});

describe('every answer', () => {
  it('asks the browser for the camera alone', async () => {
    const policy =
      (await fetch(`${plant.server.running.url}/api/info`)).headers.get('permissions-policy') ?? '';
    expect(policy).toContain('camera=(self)');
    for (const name of ['microphone', 'geolocation', 'usb', 'payment'])
      expect(policy).toContain(`${name}=()`);
  });
});
