// A tablet before servers that lie: one that went back, one that forks, one with another key, and one that proves nothing any more.
// Something in between hands each request to the server that a test says, as an attacker's server would do it by itself.

import { cpSync } from 'node:fs';
import { request as ask, createServer, type Server } from 'node:http';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseNote } from '../../../shared/log/note.ts';
import { parsePlantList } from '../../../shared/log/plant-list.ts';
import { parseTreeHead } from '../../../shared/log/tree-head.ts';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { freePort, newFolder } from '../../contract/databases.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';
import { enrolAt, newTablet, settingsFor, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();
let between: Server;
let origin: string;
let others: RunningServer[];
/** Which server answers a path; null: it says that there is no such path. */
let route: (path: string) => string | null;

beforeEach(async () => {
  others = [];
  route = () => plant.server.running.url;
  between = createServer((request, response) => {
    const target = route(request.url ?? '');
    if (target === null) {
      request.resume();
      response.writeHead(404, { 'content-type': 'application/json' });
      response.end(JSON.stringify({ code: 'not-found', message: 'no such path' }));
      return;
    }
    const { method, headers } = request;
    const onward = ask(target + request.url, { method, headers }, (answer) => {
      response.writeHead(answer.statusCode ?? 500, answer.headers);
      answer.pipe(response);
      response.on('close', () => answer.destroy());
    });
    onward.on('error', () => response.destroy());
    request.pipe(onward);
  });
  const port = await freePort();
  await new Promise<void>((resolve) => between.listen(port, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${port}`;
});
afterEach(async () => {
  for (const tablet of plant.tablets) await tablet.stop();
  between.closeAllConnections();
  between.close();
  for (const other of others) await other.stop();
});

/** A tablet that reaches its server through what lies in between. */
async function joinThrough(name: string): Promise<TestTablet> {
  const tablet = await newTablet(name, origin);
  plant.tablets.push(tablet);
  await enrolAt(plant.server.running, tablet);
  return tablet;
}

/** A server on a copy of the plant's data, key and all, as it is now. */
async function copyServer(): Promise<RunningServer> {
  const folder = newFolder();
  await plant.server.restart(() => cpSync(plant.server.folder, folder.path, { recursive: true }));
  const other = await startServer(settingsFor(folder.path));
  others.push(other);
  return other;
}

/** Entries of another tablet, straight into a server's log. */
const appendTo = (server: RunningServer, count: number) =>
  server.store.append(
    [{ sender: 'o', entries: makeChain({ tablet: 'o', count }).map((entry) => toChecked(entry)) }],
    Date.now(),
  );

const sizeIn = (note: string | null) => parseTreeHead(parseNote(note ?? '')?.text ?? '')?.size ?? null;
const headSize = (tablet: TestTablet) => sizeIn(tablet.log.memory.head);

/** Writes, sends, and checks the heads: begins sync anew, which asks for the newest. */
async function syncUpTo(tablet: TestTablet, size: number): Promise<void> {
  await tablet.stop();
  tablet.start();
  await until(`a head of ${size}`, () => headSize(tablet) === size);
}

describe('a tablet', () => {
  it('follows the heads of an honest server, over restarts and what others write', async () => {
    const [tablet, other] = [await joinThrough('t'), await plant.join('o')];
    tablet.log.write(1_200);
    await syncUpTo(tablet, 1_200);
    other.log.write(3);
    other.start();
    await until('the other', async () => (await plant.server.running.store.head()).pos === 1_203);
    await syncUpTo(tablet, 1_203);
    await plant.server.restart();
    await syncUpTo(tablet, 1_203);
    expect(tablet.status()).toMatchObject({ headFault: null, rolledBackMs: null });
    await until('the list of keys', () => tablet.log.plantKeys !== null);
    const list = parsePlantList(parseNote(tablet.log.plantKeys ?? '')?.text ?? '');
    expect(list?.keys.map((key) => [key.tablet, key.key])).toEqual([
      ['o', other.key.publicKey],
      ['t', tablet.key.publicKey],
    ]);
  });

  it('tells of a server whose log went back, though all else that it says is of the newest', async () => {
    const tablet = await joinThrough('t');
    tablet.log.write(5);
    await syncUpTo(tablet, 5);
    const older = await copyServer();
    tablet.log.write(3);
    await syncUpTo(tablet, 8);
    route = (path) => (path === '/api/tree' ? older.url : plant.server.running.url);
    await tablet.stop();
    tablet.start();
    await until('the news', () => (tablet.status()?.rolledBackMs ?? null) !== null);
    expect(tablet.log.memory.rolledBackMs).not.toBeNull();
  });

  it('tells of a server that shows it another log, with both heads as evidence, until somebody took note', async () => {
    const tablet = await joinThrough('t');
    tablet.log.write(5);
    await syncUpTo(tablet, 5);
    const forked = await copyServer();
    tablet.log.write(2);
    await syncUpTo(tablet, 7);
    await appendTo(forked, 9);
    route = (path) => (path === '/api/tree' ? forked.url : plant.server.running.url);
    await tablet.stop();
    tablet.start();
    await until('the news', () => tablet.status()?.headFault?.code === 'forked');
    const { headFault } = tablet.log.memory;
    expect([sizeIn(headFault?.known ?? ''), sizeIn(headFault?.shown ?? '')]).toEqual([7, 14]);
    // It stays told over a restart of the app, and goes when somebody took note; what was written meanwhile went out.
    tablet.log.write(1);
    await tablet.stop();
    tablet.start();
    await until('told again', () => tablet.status()?.headFault?.code === 'forked');
    tablet.tookNote();
    await until('no news', () => tablet.log.memory.headFault === null);
    await until('the entry', async () => (await plant.server.running.store.head()).pos === 8);
  });

  it('tells of a server that takes its entries into another log than the one that it proves', async () => {
    const tablet = await joinThrough('t');
    tablet.log.write(5);
    await syncUpTo(tablet, 5);
    const other = await copyServer();
    await appendTo(other, 4);
    await appendTo(plant.server.running, 9);
    await tablet.stop();
    tablet.log.write(2);
    route = (path) => (path === '/api/push' ? other.url : plant.server.running.url);
    tablet.start();
    await until('the news', () => tablet.status()?.headFault?.code === 'forked');
  });

  it('tells of a server with another key, and goes by that one when somebody took note', async () => {
    const tablet = await joinThrough('t');
    tablet.log.write(5);
    await syncUpTo(tablet, 5);
    // Moved to another computer from a backup, which holds no key.
    const folder = newFolder();
    const file = join(folder.path, 'copy.sqlite');
    await plant.server.running.store.backupTo(file);
    await restoreInto({ file, folder: folder.path, database: null, nowMs: Date.now, replace: true });
    const moved = await startServer(settingsFor(folder.path));
    others.push(moved);
    route = () => moved.url;
    await tablet.stop();
    tablet.start();
    await until('the news', () => tablet.status()?.headFault?.code === 'other-key');
    // Its list of keys counts for nothing either, until somebody took note.
    const plantOf = (keys: string | null) => parsePlantList(parseNote(keys ?? '')?.text ?? '')?.plantKey.name;
    expect(plantOf(tablet.log.plantKeys)).not.toBe(moved.context.key.plant.ed25519.name);
    expect(tablet.status()?.rolledBackMs).not.toBeNull();
    tablet.tookNote();
    await until('no news', () => tablet.log.memory.headFault === null);
    expect(tablet.log.memory.enrolled?.serverKey).toBe(moved.context.key.publicKey);
    await syncUpTo(tablet, 5);
    expect(tablet.status()).toMatchObject({ headFault: null, rolledBackMs: null });
    await until('its list', () => plantOf(tablet.log.plantKeys) === moved.context.key.plant.ed25519.name);
  });

  it('tells of a server that proves nothing any more, and minds none that never did', async () => {
    const [tablet, fresh] = [await joinThrough('t'), await joinThrough('f')];
    tablet.log.write(2);
    await syncUpTo(tablet, 2);
    route = (path) => (path === '/api/tree' ? null : plant.server.running.url);
    await tablet.stop();
    tablet.start();
    await until('the news', () => tablet.status()?.headFault?.code === 'no-proof');
    let asked = 0;
    route = (path) => {
      if (path !== '/api/tree') return plant.server.running.url;
      asked += 1;
      return null;
    };
    await tablet.stop();
    fresh.start();
    await until('a question without an answer', () => asked === 1 && fresh.status()?.phase === 'live');
    await fresh.stop();
    expect(fresh.log.memory).toMatchObject({ headFault: null, head: null });
    expect(fresh.status()).toMatchObject({ headFault: null, rolledBackMs: null });
  });
});
