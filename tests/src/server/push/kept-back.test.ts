// What reached nobody is news still: quiet hours, nobody who asked, a push service out of reach, an hour that is full; and whose right ended.

import { generateKeyPairSync } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import type { Role } from '../../../../shared/kit/roles.ts';
import type { PushNotice } from '../../../../shared/wire/messages-push.ts';
import type { KnownPerson } from '../../../../src/server/people/known.ts';
import { createPushDesk, type PushDesk } from '../../../../src/server/push/desk.ts';
import { openStore } from '../../../../src/server/stores/open.ts';
import type { Store } from '../../../../src/server/stores/store.ts';
import { newFolder } from '../../../contract/databases.ts';
import { newReceiver } from './receiver.ts';

const atMs = Date.UTC(2026, 2, 2, 5, 55);
const receiver = newReceiver();
const publicKey = receiver.keys.publicKey.toString('base64url');
let statuses: number[] = [];
let paths: string[] = [];
const service = createServer((request, response) => {
  request.resume();
  paths.push(request.url ?? '');
  response.writeHead(statuses.shift() ?? 201).end();
});
beforeAll(() => new Promise<void>((resolve) => void service.listen(0, '127.0.0.1', resolve)));
afterAll(() => new Promise<void>((resolve) => void service.close(() => resolve())));

let folder: ReturnType<typeof newFolder>;
let store: Store;
let desk: PushDesk;
let nowMs = atMs;
const people = new Map<string, KnownPerson>();
const setRole = (person: string, role: Role) =>
  people.set(person, { person, name: person, role, badge: person, pin: null });
beforeEach(async () => {
  folder = newFolder();
  [nowMs, statuses, paths] = [atMs, [], []];
  people.clear();
  setRole('boss', 'lead');
  setRole('chief', 'engineer');
  store = await openStore({ folder: folder.path, database: null, nowMs: () => nowMs });
  desk = createPushDesk({
    settings: {
      contact: 'mailto:it@plant.example',
      service: `http://127.0.0.1:${(service.address() as AddressInfo).port}`,
    },
    store,
    people: { people: async () => people },
    secret: generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey,
    nowMs: () => nowMs,
  });
});
afterEach(async () => {
  await store.close();
  folder.remove();
});

/** A tablet that takes messages for a person. */
async function subscribe(tablet: string, person: string, quiet: { from: string; to: string } | null = null) {
  await store.enrolTablet({ tablet, name: tablet, publicKey: `key of ${tablet}` }, nowMs);
  await store.keepPush({
    tablet,
    person,
    endpoint: `http://127.0.0.1:${(service.address() as AddressInfo).port}/${tablet}`,
    publicKey,
    auth: receiver.keys.auth.toString('base64url'),
    zone: 'UTC',
    quiet,
  });
}
const notice = (key: string): PushNotice => ({
  key,
  kind: 'warning',
  line: 'L2',
  lineName: 'Line 2',
  slot: 'M1-F-022',
});
const tell = (...keys: readonly string[]) => desk.tell('seer', keys.map(notice));

it('tells at the end of the quiet hours what came in them', async () => {
  await subscribe('one', 'boss', { from: '22:00', to: '06:00' });
  expect(await tell('a')).toEqual({ sent: 0, taken: [] });
  nowMs += 5 * 60_000;
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
  expect(await tell('a')).toEqual({ sent: 0, taken: ['a'] });
});

it('tells whoever subscribes what waits since before', async () => {
  expect(await tell('a')).toEqual({ sent: 0, taken: [] });
  await subscribe('one', 'boss');
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
});

it('tells again what a push service did not take, a minute later, and not over and over', async () => {
  await subscribe('one', 'boss');
  statuses = [500];
  expect(await tell('a')).toEqual({ sent: 0, taken: [] });
  expect(await tell('a')).toEqual({ sent: 0, taken: [] });
  expect(paths).toEqual(['/one']);
  nowMs += 60_000;
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
});

it('uses up no message of the hour by those that reached nobody', async () => {
  await subscribe('one', 'boss');
  for (let minute = 0; minute < 40; minute += 1) {
    statuses = [500];
    await tell('a');
    nowMs += 90_000;
  }
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
});

it('counts as told what one of several got', async () => {
  await subscribe('one', 'boss');
  await subscribe('two', 'chief');
  statuses = [500];
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
});

it('takes no more than the hour bears, and the rest in the next one', async () => {
  await subscribe('one', 'boss');
  const keys = Array.from({ length: 40 }, (_, at) => `n${at}`);
  const first = await tell(...keys);
  expect(first.sent).toBe(30);
  expect([...first.taken].sort()).toEqual(keys.slice(0, 30).sort());
  nowMs += 3_600_000;
  expect((await tell(...keys.slice(30))).sent).toBe(10);
});

it('does not take from a second tablet what is on its way for the first', async () => {
  await subscribe('one', 'boss');
  statuses = [500];
  const [first, second] = await Promise.all([tell('a'), tell('a')]);
  expect([first.taken, second.taken]).toEqual([[], []]);
});

it('forgets what a server took in hand that stopped meanwhile', async () => {
  await subscribe('one', 'boss');
  await store.claimTold('a', nowMs, nowMs + 60_000);
  expect(await tell('a')).toEqual({ sent: 0, taken: [] });
  nowMs += 60_000;
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
});

it('goes to nobody who was taken off the people, or is an operator now', async () => {
  await subscribe('one', 'boss');
  await subscribe('two', 'chief');
  setRole('boss', 'operator');
  expect(await tell('a')).toEqual({ sent: 1, taken: ['a'] });
  expect(paths).toEqual(['/two']);
  people.delete('chief');
  expect(await tell('b')).toEqual({ sent: 0, taken: [] });
  expect([await desk.isOn('one'), await desk.isOn('two')]).toEqual([false, false]);
  setRole('boss', 'lead');
  expect([await desk.isOn('one'), await desk.isOn('two')]).toEqual([true, false]);
});

it.each([
  ['another device', { publicKey: 'another' }],
  ['a wall screen', { screen: true }],
])('goes no more to a tablet that became %s', async (_, change) => {
  await subscribe('one', 'boss');
  const same = { tablet: 'one', name: 'renamed', publicKey: 'key of one' };
  await store.enrolTablet(same, nowMs);
  expect(await store.allPush()).toHaveLength(1);
  await store.enrolTablet({ ...same, ...change }, nowMs);
  expect(await store.allPush()).toEqual([]);
});
