// On which address a server listens, by its settings, and that it is asked there.

import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import { expect, test } from 'vitest';
import { askHealth } from '../../../src/server/checks.ts';
import { listenAddress } from '../../../src/server/listen.ts';

test.each([
  [{ host: '127.0.0.1' }, '127.0.0.1'],
  [{ host: 'localhost' }, 'localhost'],
  [{ host: '::1' }, '::1'],
  [{ host: 'reelward.local' }, null],
  [{ host: '127.0.0.1', listen: '192.168.7.20' }, '192.168.7.20'],
  [{ host: '127.0.0.1', listen: '0.0.0.0' }, null],
  [{ host: 'localhost', listen: '::' }, null],
])('listenAddress(%j) is %j', (settings, address) => {
  expect(listenAddress(settings)).toBe(address);
});

const hasInner6 = Object.values(networkInterfaces()).some((all) => all?.some((one) => one.address === '::1'));

test.runIf(hasInner6)('a server that listens on the inner address of IPv6 alone is asked there', async () => {
  const told = { ok: true, plant: 'Brae Works', store: 'sqlite' };
  const server = createServer((_, answer) => answer.end(JSON.stringify(told)));
  await new Promise<void>((done) => server.listen(0, '::1', done));
  const { port } = server.address() as AddressInfo; // it listens on a port
  expect(await askHealth({ host: '::1', https: null }, port)).toEqual(told);
  await new Promise((done) => server.close(done));
});
