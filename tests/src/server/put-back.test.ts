// A database that was put back to an earlier moment while no server ran: the log gets another name, tablets are told and send what it lacks. The server's own record
// tells, and where it has none the timeline; here the note of it is changed, as no journal is played back. `npm run bench moment` does that with base backup and journal.

import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { openStore } from '../../../src/server/stores/open.ts';
import type { Store } from '../../../src/server/stores/store.ts';
import { timelineName } from '../../../src/server/stores/tables.ts';
import { newFolder, startPostgres, type TestPostgres } from '../../contract/databases.ts';
import { enrolAt, newTablet, settingsFor, until } from './tablets.ts';

let postgres: TestPostgres | undefined;
let folder: ReturnType<typeof newFolder>;
let running: RunningServer[];
const told: string[] = [];

beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());
beforeEach(() => {
  folder = newFolder();
  running = [];
  told.length = 0;
});
afterEach(async () => {
  await Promise.all(running.map((server) => server.stop()));
  folder.remove();
});

async function serve(database: string, port = 0, name = 'a'): Promise<RunningServer> {
  const logTo = { write: (line: string) => void told.push(line) };
  const server = await startServer(
    settingsFor(join(folder.path, name), { database, port, app: '1.0.0', logLevel: 'error', logTo }),
  );
  running.push(server);
  return server;
}
async function ask(
  database: string,
  text: string,
  values: unknown[] = [],
): Promise<{ readonly value?: string }[]> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  const { rows } = await client.query<{ readonly value?: string }>(text, values);
  await client.end();
  return rows;
}
/** As a recovery leaves it: the journal goes on in another timeline than the one noted. */
const otherTimeline = (database: string) =>
  ask(database, 'update meta set value = $1 where key = $2', ['000000FF', timelineName]);
const timelineIn = async (database: string) =>
  (await ask(database, 'select value from meta where key = $1', [timelineName]))[0]?.value;
const isLost = () => told.some((line) => line.includes('any more as this server saw it last'));
const isUnknown = () => told.some((line) => line.includes('may have been put back to an earlier moment'));
/** As a server opens it. */
const openServing = (database: string, name: string) =>
  openStore({ folder: join(folder.path, name), database, nowMs: Date.now, role: 'server' });
async function held(store: Store): Promise<number> {
  return (await store.marks([{ tablet: 't1', epoch: 'e1' }]))[0]?.seq ?? 0;
}

it('a log that was put back gets another name at the start, and tablets bring what it lacks', {
  timeout: 60_000,
}, async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const earlier = database.replace(/\w+$/, 'earlier');
  const first = await serve(database);
  const { port } = first;
  const tablet = await newTablet('t1', first.url);
  await enrolAt(first, tablet);
  tablet.log.write(5);
  tablet.start();
  await until('five', () => tablet.log.memory.acked['t1/e1'] === 5);
  await first.stop();
  await ask(
    database.replace(/\w+$/, 'postgres'),
    `create database earlier template ${database.split('/').at(-1)}`,
  );

  const second = await serve(database, port);
  expect(second.context.serverEpoch).toBe(first.context.serverEpoch);
  tablet.log.write(4);
  tablet.now();
  await until('nine', () => tablet.log.memory.acked['t1/e1'] === 9);
  expect(tablet.status()?.rolledBackMs ?? null).toBe(null);
  await second.stop();

  // In the same timeline, as after a disk was put back: what it holds tells.
  const third = await serve(earlier, port);
  expect(third.context.serverEpoch).not.toBe(first.context.serverEpoch);
  expect([isLost(), isUnknown()]).toEqual([true, false]);
  tablet.now();
  await until('all in the log', async () => (await held(third.store)) === 9);
  await until('that it is told', () => typeof tablet.status()?.rolledBackMs === 'number');
  expect(tablet.status()?.headFault ?? null).toBe(null);
  await tablet.stop();
});

it('is the log of before where it holds what the server saw, whatever the timeline: no plant is told of a loss at each full stop', async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const first = await serve(database);
  await enrolAt(first, await newTablet('t1', first.url));
  await first.stop();
  const timeline = await timelineIn(database);
  await otherTimeline(database);
  const second = await serve(database);
  expect(second.context.serverEpoch).toBe(first.context.serverEpoch);
  expect(told).toEqual([]);
  expect(await timelineIn(database)).toBe(timeline);
  // One that never ran on it needs no guess then.
  expect((await serve(database, 0, 'new')).context.serverEpoch).toBe(first.context.serverEpoch);
});

it('that went on after what the server saw is left for another to tell, until an append runs', async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const first = await serve(database);
  const tablet = await newTablet('t1', first.url);
  await enrolAt(first, tablet);
  await first.stop();
  const other = await serve(database, first.port, 'b');
  tablet.log.write(2);
  tablet.start();
  await until('two', () => tablet.log.memory.acked['t1/e1'] === 2);
  await tablet.stop();
  await other.stop();
  await otherTimeline(database);
  const store = await openServing(database, 'a');
  expect(await timelineIn(database)).toBe('000000FF');
  await store.append([], Date.now());
  expect(await timelineIn(database)).not.toBe('000000FF');
  await store.close();
});

it('is renamed once by servers that start at the same moment, and not again', async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const first = await serve(database);
  await first.stop();
  await otherTimeline(database);
  // Of other folders: they know nothing of the log.
  const [one, two] = await Promise.all([serve(database, 0, 'b'), serve(database, 0, 'c')]);
  expect(one.context.serverEpoch).toBe(two.context.serverEpoch);
  expect(one.context.serverEpoch).not.toBe(first.context.serverEpoch);
  expect([isLost(), isUnknown()]).toEqual([false, true]);
  const { serverEpoch } = one.context;
  told.length = 0;
  expect((await serve(database)).context.serverEpoch).toBe(serverEpoch);
  expect([isLost(), isUnknown()]).toEqual([false, false]);
});

it('is no matter for an act', async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const first = await serve(database);
  await first.stop();
  await otherTimeline(database);
  const store = await openStore({ folder: folder.path, database, nowMs: Date.now });
  expect(await store.serverEpoch()).toBe(first.context.serverEpoch);
  await store.close();
});
