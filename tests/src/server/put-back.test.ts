// A database that was put back to an earlier moment while no server ran: the log gets another name, tablets are told and send what it lacks. Its timeline
// is what tells; here the note of it is changed, as no journal is played back. `npm run bench moment` does that with base backup and journal.

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

async function serve(database: string, port = 0): Promise<RunningServer> {
  const logTo = { write: (line: string) => void told.push(line) };
  const server = await startServer(
    settingsFor(folder.path, { database, port, app: '1.0.0', logLevel: 'error', logTo }),
  );
  running.push(server);
  return server;
}
async function ask(database: string, text: string, values: unknown[] = []): Promise<void> {
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  await client.query(text, values);
  await client.end();
}
/** As a recovery leaves it: the journal goes on in another timeline than the one noted. */
const otherTimeline = (database: string) =>
  ask(database, 'update meta set value = $1 where key = $2', ['000000FF', timelineName]);
const isPutBack = () => told.some((line) => line.includes('put back to an earlier moment'));
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

  await otherTimeline(earlier);
  const third = await serve(earlier, port);
  expect(third.context.serverEpoch).not.toBe(first.context.serverEpoch);
  expect(isPutBack()).toBe(true);
  tablet.now();
  await until('all in the log', async () => (await held(third.store)) === 9);
  await until('that it is told', () => typeof tablet.status()?.rolledBackMs === 'number');
  expect(tablet.status()?.headFault ?? null).toBe(null);
  await tablet.stop();
});

it('is renamed once by servers that start at the same moment, and not again', async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const first = await serve(database);
  await first.stop();
  await otherTimeline(database);
  const [one, two] = await Promise.all([serve(database), serve(database)]);
  expect(one.context.serverEpoch).toBe(two.context.serverEpoch);
  expect(one.context.serverEpoch).not.toBe(first.context.serverEpoch);
  const { serverEpoch } = one.context;
  told.length = 0;
  expect((await serve(database)).context.serverEpoch).toBe(serverEpoch);
  expect(isPutBack()).toBe(false);
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
