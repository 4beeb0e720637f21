// An own certificate that does not fit or soon ends is told at the start; SIGHUP takes up the next one, and no connection is dropped.

import { chmodSync, writeFileSync } from 'node:fs';
import { Agent, request } from 'node:https';
import { join } from 'node:path';
import type { TLSSocket } from 'node:tls';
import { expect, it } from 'vitest';
import { DAY_MS } from '../../shared/kit/moment.ts';
import {
  makeAuthority,
  makeLeaf,
  type PemPair,
  readCertificate,
} from '../../src/server/certificates/authority.ts';
import { freePort } from '../contract/databases.ts';
import { until } from '../src/server/tablets.ts';
import { useBuiltCli } from './built.ts';

const cli = useBuiltCli();

function put(pair: PemPair): readonly string[] {
  const [cert, key] = [join(cli.folder, 'cert.pem'), join(cli.folder, 'key.pem')];
  writeFileSync(cert, pair.cert);
  writeFileSync(key, pair.key, { mode: 0o600 });
  chmodSync(key, 0o600);
  return ['--cert', cert, '--key', key];
}

/** Asks on a connection that stays, and says whose certificate it was made with. */
function ask(port: number, agent: Agent): Promise<string> {
  return new Promise((resolve, reject) => {
    const asked = request({ port, agent, path: '/health', rejectUnauthorized: false }, (answer) => {
      const socket = answer.socket as TLSSocket; // made with TLS
      answer.resume();
      answer.on('end', () => resolve(socket.getPeerCertificate().fingerprint256));
    });
    asked.on('error', reject);
    asked.end();
  });
}

it('SIGHUP takes up another certificate, keeps connections, and keeps the old one where the other is none', async () => {
  const authority = await makeAuthority('Brae Works', ['reelward.example'], Date.now());
  const [first, second] = [
    await makeLeaf(authority, ['reelward.example'], Date.now()),
    await makeLeaf(authority, ['reelward.example'], Date.now()),
  ];
  const files = put(first);
  const port = await freePort();
  const server = cli.run('serve', '--port', String(port), '--host', 'reelward.example', ...files);
  await until('the address', () => server.err().includes('Reelward serves at'));
  expect(server.err()).not.toContain('Certificate:');
  const [staying, fresh, later] = Array.from(
    { length: 3 },
    () => new Agent({ keepAlive: true, maxSockets: 1 }),
  );
  const printOf = (pair: PemPair) => readCertificate(pair.cert).fingerprint;
  expect(await ask(port, staying as Agent)).toBe(printOf(first));
  put(second);
  server.child.kill('SIGHUP');
  await until('the news', () => server.err().includes('Another certificate is in use now'));
  // The same connection, and so the same certificate.
  expect(await ask(port, staying as Agent)).toBe(printOf(first));
  expect(await ask(port, fresh as Agent)).toBe(printOf(second));
  writeFileSync(join(cli.folder, 'cert.pem'), 'no certificate');
  server.child.kill('SIGHUP');
  await until('the refusal', () => server.err().includes('The certificate in use stays: --cert'));
  expect(await ask(port, later as Agent)).toBe(printOf(second));
  for (const agent of [staying, fresh, later]) agent?.destroy();
});

it('a certificate that does not name the host, ends soon, or whose key others may read is told', async () => {
  const authority = await makeAuthority('Brae Works', ['reelward.example'], Date.now());
  const leaf = await makeLeaf(authority, ['reelward.example'], Date.now() - 380 * DAY_MS);
  const files = put(leaf);
  chmodSync(join(cli.folder, 'key.pem'), 0o644);
  const port = await freePort();
  const server = cli.run('serve', '--port', String(port), '--host', 'other.example', ...files);
  await until('all three', () => server.err().includes('Certificate: --key'));
  expect(server.err()).toContain('does not name other.example, so tablets refuse it there');
  expect(server.err()).toMatch(
    /Certificate: --cert .*: ends on \d{4}-\d\d-\d\d; put the next one in its place/,
  );
  expect(server.err()).toMatch(/Certificate: --key .*: others may read it; chmod 600 it/);
});
