// What comes in at the counter's door: a device's total, proved, and everything else that can be sent to a port.

import { createHmac } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { connect } from 'node:net';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type CounterDoor, createCounter } from '../../../src/link/counter.ts';
import type { NoticeWhat } from '../../../src/link/notices.ts';
import type { CountMessage } from '../../../src/link/station-desk.ts';

const SECRET = 'secret of the exit';
let taken: CountMessage[] = [];
let noticed: [NoticeWhat, string][] = [];
let faults: unknown[] = [];
let server: ReturnType<typeof createCounter>;
let port = 0;

beforeEach(async () => {
  [taken, noticed, faults] = [[], [], []];
  const door: CounterDoor = {
    secret: SECRET,
    take: async (message) => {
      taken.push(message);
      return { boot: message.boot, total: Math.max(...taken.map(({ total }) => total)) };
    },
    notice: async (what, said) => void noticed.push([what, said]),
  };
  server = createCounter(new Map([['exit', door]]), (fault) => faults.push(fault));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  port = (server.address() as AddressInfo).port;
});
afterEach(() => {
  server.closeAllConnections();
  server.close();
});

type Headers = Readonly<Record<string, string>>;
const bearer: Headers = { authorization: `Bearer ${SECRET}` };

async function send(
  body: string | Uint8Array,
  headers: Headers = bearer,
  at = '/api/stations/exit/count',
  method = 'POST',
) {
  const response = await fetch(`http://127.0.0.1:${port}${at}`, {
    method,
    headers,
    body: method === 'GET' ? null : (body as Uint8Array<ArrayBuffer>),
  });
  const value = (await response.json()) as { readonly error?: string };
  return { status: response.status, value, error: value.error ?? '' };
}

/** Sends bytes as they are; resolves with what came back when the other end has closed. */
function sendRaw(bytes: string | Uint8Array): Promise<string> {
  return new Promise((resolve) => {
    let back = '';
    const socket = connect(port, '127.0.0.1', () => socket.end(bytes));
    socket.on('data', (chunk) => {
      back += chunk.toString('latin1');
    });
    socket.on('error', () => resolve(back));
    socket.on('close', () => resolve(back));
  });
}

const message = {
  boot: '7f3a91c2',
  total: 1234,
  at: '2026-03-02T06:00:00+01:00',
  serial: null,
  skipped: null,
  state: null,
};

describe('the counter’s door', () => {
  test('takes a total by bearer token or by proof over the body, and answers the highest held', async () => {
    expect(await send(JSON.stringify(message))).toMatchObject({
      status: 200,
      value: { boot: '7f3a91c2', total: 1234 },
    });
    const body = JSON.stringify({ ...message, total: 9, serial: 'SN-9', skipped: [1, 3], state: 1100 });
    const mac = createHmac('sha256', SECRET).update(body).digest('hex');
    expect(await send(body, { 'reelward-mac': `sha256=${mac}` })).toMatchObject({
      status: 200,
      value: { total: 1234 },
    });
    expect(taken[1]).toEqual({
      boot: '7f3a91c2',
      total: 9,
      atMs: Date.UTC(2026, 2, 2, 5),
      serial: 'SN-9',
      skipped: [1, 3],
      state: 1100,
    });
    // A device without a clock and without a reader says less.
    expect((await send('{"boot":"b","total":0}')).status).toBe(200);
  });

  test('says 401 to whoever does not prove the secret, and takes nothing', async () => {
    const body = JSON.stringify(message);
    const wrong: readonly Headers[] = [
      {},
      { authorization: 'Bearer another secret' },
      { authorization: `Basic ${SECRET}` },
      { 'reelward-mac': 'sha256=00' },
      { 'reelward-mac': `sha256=${createHmac('sha256', 'other').update(body).digest('hex')}` },
      { 'reelward-mac': `sha256=${createHmac('sha256', SECRET).update(`${body} `).digest('hex')}` },
    ];
    for (const headers of wrong) {
      const { status, error } = await send(body, headers);
      expect(status).toBe(401);
      expect(error).toMatch(/^(authorization|reelward-mac): /);
    }
    expect(taken).toEqual([]);
    expect(noticed.map(([what]) => what)).toEqual(wrong.map(() => 'wrong-secret'));
  });

  test('says 400 with what and where to a message that it cannot read', async () => {
    const of = (change: object) => JSON.stringify({ ...message, ...change });
    const cases: readonly (readonly [string | Uint8Array, RegExp])[] = [
      ['', /^body: expected JSON/],
      ['{"boot":"b","tot', /^body: expected JSON/],
      ['[]', /^body: /],
      [Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d), /^body: expected UTF-8/],
      [of({ total: -1 }), /^total: /],
      [of({ total: 1.5 }), /^total: /],
      [of({ total: '12' }), /^total: /],
      [of({ total: 2 ** 53 }), /^total: /],
      [of({ boot: '' }), /^boot: /],
      [of({ boot: 'x'.repeat(65) }), /^boot: /],
      [of({ boot: 'a\u0000b' }), /^boot: expected text without control characters/],
      [of({ at: 'yesterday' }), /^at: expected ISO 8601/],
      [of({ at: '2026-02-31T25:00:00Z' }), /^at: expected a date/],
      [of({ serial: 'x'.repeat(201) }), /^serial: /],
      [of({ skipped: [0] }), /^skipped/],
      [of({ state: 'running' }), /^state: /],
      [of({ totals: 3 }), /^totals: not known here/],
      [of({ serial: 'x'.repeat(5000) }), /^body: expected at most 4096 bytes/],
    ];
    for (const [body, says] of cases) {
      const { status, error } = await send(body);
      expect([status, error]).toEqual([400, expect.stringMatching(says)]);
    }
    expect(await send('{}', { ...bearer, 'content-encoding': 'gzip' })).toMatchObject({ status: 400 });
    expect(taken).toEqual([]);
    expect(noticed.length).toBe(cases.length + 1);
  });

  test('knows no other path, method or station', async () => {
    expect((await send('{}', bearer, '/api/stations/other/count')).status).toBe(404);
    expect((await send('{}', bearer, '/api/stations/%ff/count')).status).toBe(404);
    expect((await send('{}', bearer, '/')).status).toBe(404);
    expect((await send('', bearer, '/api/stations/exit/count', 'GET')).status).toBe(405);
  });

  test('stays up under bytes that are no HTTP, half messages and bodies that lie about their length', async () => {
    const head = `POST /api/stations/exit/count HTTP/1.1\r\nhost: x\r\nauthorization: Bearer ${SECRET}\r\n`;
    const bytes: readonly (string | Uint8Array)[] = [
      'AMQP\u0000\u0001\u0000\u0000',
      Uint8Array.from({ length: 5000 }, (_, at) => (at * 97) % 256),
      'GET / HTTP/9.9\r\n\r\n',
      `${head}x: ${'y'.repeat(20_000)}\r\n\r\n`,
      `${head}content-length: 100\r\n\r\n{"boot":"b"`,
      `${head}content-length: 999999999999\r\n\r\n`,
      `${head}transfer-encoding: chunked\r\n\r\nffffff\r\n${'z'.repeat(9000)}`,
      `${head}content-length: -1\r\n\r\n`,
      '',
    ];
    for (const each of bytes) expect(await sendRaw(each)).not.toContain('HTTP/1.1 200');
    expect(taken).toEqual([]);
    expect(faults).toEqual([]);
    expect((await send(JSON.stringify(message))).status).toBe(200);
  });
});
