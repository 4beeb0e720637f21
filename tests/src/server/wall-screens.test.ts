// A wall screen reads the plant's log, and whatever it brings is refused; it is let in by a code of its own, listed and shut out like a tablet.

import { describe, expect, it } from 'vitest';
import { ok } from '../../../shared/kit/result.ts';
import { checkedSchema, codeMadeSchema, pushedSchema, tabletsSchema } from '../../../shared/wire/messages.ts';
import { broughtText } from '../../../shared/wire/signing.ts';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { makeCode, readCode } from '../../../src/server/codes.ts';
import { hashOf } from '../../../src/server/keys.ts';
import { makeChain, newKey } from '../../contract/entries.ts';
import { boss, maker, newTablet, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

async function joinWall(name: string): Promise<TestTablet> {
  const screen = await newTablet(name, plant.server.running.url);
  plant.tablets.push(screen);
  screen.log.write(1); // that it was opened
  const { code } = await makeCode(plant.server.running.store, Date.now(), { screen: true });
  const joined = await enrolTablet(screen, { code, name: 'Hall 2', canBeScreen: true });
  expect(joined).toEqual(ok({ plant: 'Brae Works', screen: true }));
  return screen;
}

/** Every way of a tablet but joining and asking how to talk, as the server knows them. */
function waysOf(): readonly string[] {
  const told = plant.server.running.app.printRoutes({ commonPrefix: false });
  const ways: string[] = [];
  const path: string[] = [];
  for (const line of told.split('\n')) {
    const found = /^(.*?)(?:├──|└──) (\S+) ?(?:\(([^)]*)\))?/.exec(line);
    if (!found) continue;
    const depth = (found[1] ?? '').length / 4;
    path.length = depth;
    path.push(found[2] ?? '');
    const route = path.join('');
    for (const method of (found[3] ?? '').split(', ').filter((each) => each !== '' && each !== 'HEAD'))
      if (route.startsWith('/api/')) ways.push(`${method} ${route}`);
  }
  return ways.filter((way) => way !== 'GET /api/info' && way !== 'POST /api/enrol');
}

/** What it may ask. */
const reads = [
  'GET /api/checkpoint',
  'GET /api/keys',
  'GET /api/live',
  'GET /api/pull',
  'GET /api/snapshot',
  'POST /api/offer',
  'POST /api/tree',
];

describe('a wall screen', () => {
  it('may read, and is refused at every other door that the server has', async () => {
    const screen = await joinWall('wall');
    const ways = waysOf();
    expect(ways).toEqual(expect.arrayContaining([...reads, 'POST /api/push', 'PUT /api/snapshot']));
    const refused: string[] = [];
    for (const way of ways) {
      const [method, path] = way.split(' ') as ['GET' | 'POST' | 'PUT', string];
      if (path === '/api/live') continue; // it would stay open; read below by its sync
      const answer = await screen.caller.open(path.replace(/:\w+/, 'x'), {
        method,
        ...(method === 'GET' ? {} : { json: {} }),
      });
      if (!answer.ok && answer.error.code === 'role-lacking' && answer.error.facts['screen'] === true)
        refused.push(way);
    }
    expect(refused.sort()).toEqual(ways.filter((way) => !reads.includes(way)).sort());
  });

  it('gets what tablets write, sends nothing of its own, and goes on after the server was away', async () => {
    const screen = await joinWall('wall');
    const tablet = await plant.join('tabA');
    tablet.log.write(3);
    tablet.start();
    screen.start();
    const has = (count: number) => until(`${count} entries`, () => screen.log.entries().length === count);
    await has(4);
    await until('live', () => screen.status()?.phase === 'live');
    expect(screen.status()?.backlog).toBe(0);
    screen.log.write(2);
    await plant.server.restart();
    tablet.log.write(2);
    screen.now();
    tablet.now();
    await has(8);
    const stored = await plant.server.running.store.page(0, 100);
    expect(stored.map(({ text }) => JSON.parse(text).tablet)).toEqual(Array(5).fill('tabA'));
    expect(screen.status()?.backlog).toBe(0);
    expect(screen.log.memory.cosigned).toBe(0);
  });

  it('is among no keys: what it signed counts for nothing, whoever brings it', async () => {
    await joinWall('wall');
    const { store } = plant.server.running;
    expect(await store.tabletKeys('wall')).toEqual([]);
    expect((await store.allKeys()).map(({ tablet }) => tablet)).not.toContain('wall');
    expect((await store.findTablet('wall'))?.screen).toBe(true);
  });

  it('has no chain in the log, on nobody’s word', async () => {
    await joinWall('wall');
    const carrier = await plant.join('tabA');
    const entries = makeChain({ tablet: 'wall', count: 2, key: newKey() });
    const { tablet = '', epoch = '', seq = 0, hash = '' } = entries.at(-1) ?? {};
    const end = { tablet, epoch, seq, hash };
    const brought = [{ ...end, sig: await carrier.key.sign(broughtText(end)) }];
    const pushed = await carrier.caller.call('/api/push', pushedSchema, {
      json: { sentMs: Date.now(), entries, brought },
    });
    if (!pushed.ok) throw new Error(pushed.error.code);
    expect(pushed.value.faults.map(({ fault }) => fault)).toEqual(['signature-differs']);
    const { store } = plant.server.running;
    expect((await store.page(0, 100)).map(({ text }) => JSON.parse(text).tablet)).not.toContain('wall');
    expect(await store.allBrought()).toEqual([]);
  });

  it('is no tablet that was let in or has written, whose keys stay in the list; the code stays good', async () => {
    const tablet = await plant.join('tabA');
    const { store } = plant.server.running;
    const keys = await store.tabletKeys('tabA');
    const { code } = await makeCode(store, Date.now(), { screen: true });
    const asked = { code, name: 'Hall 2', canBeScreen: true };
    const refused = { ok: false, error: { code: 'code-wrong', facts: { screen: true } } };
    expect(await enrolTablet(tablet, asked)).toMatchObject(refused);
    // Never let in here, but its chain was brought.
    const lost = await newTablet('lost', plant.server.running.url);
    const entries = makeChain({ tablet: 'lost', count: 1, key: newKey() });
    const { epoch = '', seq = 0, hash = '' } = entries.at(-1) ?? {};
    const end = { tablet: 'lost', epoch, seq, hash };
    const brought = [{ ...end, sig: await tablet.key.sign(broughtText(end)) }];
    const json = { sentMs: Date.now(), entries, brought };
    expect(await tablet.caller.call('/api/push', pushedSchema, { json })).toMatchObject({
      value: { faults: [] },
    });
    expect(await enrolTablet(lost, asked)).toMatchObject(refused);
    expect(await store.tabletKeys('tabA')).toEqual(keys);
    expect((await store.allKeys()).map((key) => key.tablet)).toContain('tabA');
    const wall = await newTablet('wall', plant.server.running.url);
    expect(await enrolTablet(wall, asked)).toEqual(ok({ plant: 'Brae Works', screen: true }));
  });

  it('has codes that a server which knows of no screens does not find', async () => {
    const { store } = plant.server.running;
    const { code } = await makeCode(store, Date.now(), { screen: true });
    expect(await store.takeOneTime(hashOf(readCode(code)), 'enrol', Date.now())).toBeNull();
  });

  it('is let in by a code of its own alone, and only where it wrote nothing', async () => {
    const { store, url } = plant.server.running;
    const [old, link] = [await newTablet('old', url), await newTablet('link', url)];
    const code = async (screen: boolean) => (await makeCode(store, Date.now(), { screen })).code;
    const refused = { ok: false, error: { code: 'code-wrong', facts: { screen: true } } };
    old.log.write(2);
    expect(await enrolTablet(old, { code: await code(true), name: 'Old', canBeScreen: true })).toMatchObject(
      refused,
    );
    // Neither a link nor an app that does not know of screens says that it may be one.
    expect(await enrolTablet(link, { code: await code(true), name: 'Link' })).toMatchObject(refused);
    expect(await store.findTablet('old')).toBeNull();
    const joined = await enrolTablet(link, { code: await code(false), name: 'Line', canBeScreen: true });
    expect(joined).toEqual(ok({ plant: 'Brae Works', screen: false }));
    expect((await store.findTablet('link'))?.screen).toBe(false);
  });

  it('that is shut out reads no more, until a new code lets it in: as a screen, or as a tablet', async () => {
    const screen = await joinWall('wall');
    screen.start();
    await until('live', () => screen.status()?.phase === 'live');
    const { store } = plant.server.running;
    await store.revokeTablet('wall', Date.now());
    await store.tell({ kind: 'revoked', tablet: 'wall' });
    await until('shut out', () => screen.status()?.reason === 'tablet-revoked');
    await screen.stop();
    const { code } = await makeCode(store, Date.now(), { screen: true });
    expect(await enrolTablet(screen, { code, name: 'Hall 2', canBeScreen: true })).toMatchObject({
      ok: true,
    });
    screen.start();
    await until('live again', () => screen.status()?.phase === 'live');
    await screen.stop();
    const plain = await makeCode(store, Date.now());
    expect(await enrolTablet(screen, { code: plain.code, name: 'Line 4', canBeScreen: true })).toEqual(
      ok({ plant: 'Brae Works', screen: false }),
    );
    screen.start();
    await until('its entry', async () => (await store.head()).pos === 1);
  });
});

describe('a tablet where a lead is', () => {
  it('makes the code and sees the screen in the list', async () => {
    const tablet = await plant.join('tabA');
    tablet.log.write(2, (seq) => ({ ...(seq === 1 ? boss : maker) }), 'person.added');
    tablet.start();
    await until('the people', async () => (await plant.server.running.store.head()).pos === 2);
    const checked = await tablet.caller.call('/api/people/check', checkedSchema, {
      json: { badge: 'B-2', person: null, pin: '2222' },
    });
    if (!checked.ok) throw new Error(checked.error.code);
    const { token } = checked.value;
    const both = await tablet.caller.call('/api/codes', codeMadeSchema, {
      json: { screen: true, replaces: 'tabA' },
      person: token,
    });
    expect(both).toMatchObject({ error: { code: 'bad-body' } });
    const made = await tablet.caller.call('/api/codes', codeMadeSchema, {
      json: { screen: true },
      person: token,
    });
    if (!made.ok) throw new Error(made.error.code);
    const screen = await newTablet('wall', plant.server.running.url);
    expect(
      await enrolTablet(screen, { code: made.value.code, name: 'Hall 2', canBeScreen: true }),
    ).toMatchObject({ ok: true });
    const listed = await tablet.caller.call('/api/tablets', tabletsSchema, { person: token });
    expect(listed.ok && listed.value.tablets.map(({ name, screen }) => [name, screen])).toEqual([
      ['Tablet tabA', false],
      ['Hall 2', true],
    ]);
  });
});
