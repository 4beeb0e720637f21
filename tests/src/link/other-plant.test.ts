// A link whose address leads to another plant: nothing goes there, and it says so.

import { afterEach, beforeEach, expect, test } from 'vitest';
import { openIdentity } from '../../../src/link/identity.ts';
import { pushForGood } from '../../../src/link/push.ts';
import { openSpool, type Spool } from '../../../src/link/spool.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { newFolder } from '../../contract/databases.ts';
import { newWorld, startTestServer, type TestServer, until } from '../server/tablets.ts';

let folder: ReturnType<typeof newFolder>;
let own: TestServer;
let other: TestServer;
let spool: Spool;
beforeEach(async () => {
  folder = newFolder();
  own = await startTestServer({ plant: 'Brae Works' });
  other = await startTestServer({ plant: 'Tarn Works' });
});
afterEach(async () => {
  await spool.close();
  await Promise.all([own.stop(), other.stop()]);
  folder.remove();
});

test('a link says that the server is that of another plant, and keeps what it counts', async () => {
  const identity = openIdentity(folder.path);
  spool = openSpool(folder.path, identity, Date.now, false);
  await spool.write('tablet.opened', { name: 'Link exit', app: '1', key: identity.jwk, previous: null });
  const { code } = await makeCode(own.running.store, Date.now());
  /** Pushes to one server until something holds; what was said. */
  const pushTo = async (server: TestServer, holds: (said: readonly string[]) => boolean) => {
    const [said, stopped] = [[] as string[], new AbortController()];
    const say = (line: string) => void said.push(line);
    const world = newWorld(server.running.url);
    const { signal } = stopped;
    const pushing = pushForGood({ spool, identity, world, say, code, name: 'Link exit', signal });
    await until('the link', () => holds(said));
    stopped.abort();
    await pushing;
    return said;
  };
  expect(await pushTo(own, () => spool.backlog() === 0)).toEqual([]);
  await spool.write('tablet.opened', { name: 'Link exit', app: '2', key: identity.jwk, previous: null });
  expect(await pushTo(other, (said) => said.length > 0)).toEqual([
    expect.stringContaining('the server is that of another plant: nothing goes there'),
  ]);
  expect(spool.backlog()).toBe(1);
  expect((await other.running.store.head()).pos).toBe(0);
});
