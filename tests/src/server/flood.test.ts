// Somebody on the network, or one tablet, sends more than the server should keep: it refuses from the headers, within budgets, and the
// other tablets go on.

import { spawn } from 'node:child_process';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { snapshotUnpackedBytes } from '../../../shared/wire/limits.ts';
import { pushedSchema, refusalSchema } from '../../../shared/wire/messages.ts';
import { readUpTo } from '../../../src/app/sync/snapshot.ts';
import { hashOf } from '../../../src/server/keys.ts';
import { createQuotas } from '../../../src/server/quotas.ts';
import { makeChain } from '../../contract/entries.ts';
import { signByHand } from './by-hand.ts';
import { type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

/** Opens connections in a process of its own, each with a body of 16 MiB; prints how many answers came. */
const flood = `
const { connect } = require('node:net');
const [port, count, authorization] = process.argv.slice(1);
const chunk = Buffer.alloc(256 * 1024, 97);
let open = 0, answers = 0;
for (let at = 0; at < Number(count); at += 1) {
  const socket = connect(Number(port), '127.0.0.1');
  open += 1;
  let sent = 0;
  const more = () => { while (sent < 64 && !socket.destroyed) { sent += 1; if (!socket.write(chunk)) return; } };
  socket.on('connect', () => {
    socket.write('PUT /api/snapshot?fold=f&after=0.0000000000000000 HTTP/1.1\\r\\nHost: x\\r\\nreelward-wire: 3\\r\\n' + authorization +
      'content-type: application/octet-stream\\r\\ncontent-length: 16777216\\r\\n\\r\\n');
    more();
  });
  socket.on('drain', more);
  socket.once('data', () => { answers += 1; });
  socket.on('error', () => {});
  socket.on('close', () => { open -= 1; if (open === 0) done(); });
}
function done() { console.log(answers); process.exit(0); }
setTimeout(done, 25000);
`;

function runFlood(count: number, authorization: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [
      '-e',
      flood,
      String(plant.server.running.port),
      String(count),
      authorization,
    ]);
    let told = '';
    child.stdout.on('data', (text: Buffer) => {
      told += text.toString();
    });
    child.on('error', reject);
    child.on('exit', () => resolve(Number(told)));
  });
}

/** Most that the process grew by while `work` ran, in MiB. */
async function growth(work: () => Promise<unknown>): Promise<number> {
  const before = process.memoryUsage().rss;
  let most = before;
  const look = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 20);
  await work();
  clearInterval(look);
  return (most - before) / 2 ** 20;
}

describe('500 connections with 16 MiB each', () => {
  const unsigned = '';
  const named = `authorization: Reelward tablet=t1,time=${Date.now()},nonce=${'n'.repeat(20)},sig=${'A'.repeat(86)}\r\nreelward-body: ${'0'.repeat(64)}\r\n`;

  it.each([
    ['unsigned', unsigned],
    ["in a known tablet's name", named],
  ])(
    '%s add no more than 64 MiB to the memory, and a tablet goes on meanwhile',
    async (_, header) => {
      const honest = await plant.join('t1');
      honest.start();
      await until('the tablet', () => honest.status()?.phase === 'live');
      const grown = await growth(async () => {
        const flooding = runFlood(500, header);
        honest.log.write(1);
        await until('its entry', async () => (await plant.server.running.store.head()).pos === 1);
        await flooding;
      });
      expect(grown).toBeLessThan(64);
    },
    60_000,
  );
});

/** A request signed by hand. */
async function send(
  tablet: TestTablet,
  request: {
    path: string;
    method?: string;
    told?: string | null;
    body?: Buffer;
    wire?: string;
    type?: string;
  },
): Promise<Response> {
  const { path, method = 'POST', body = Buffer.from('{}'), type = 'application/json' } = request;
  const told = request.told === undefined ? hashOf(body) : request.told;
  const signed = await signByHand(tablet, { ...request, method, told, body });
  const headers = { ...signed, 'content-type': type };
  return fetch(plant.server.running.url + path, { method, headers, body: new Uint8Array(body) });
}
const codeOf = async (response: Response) => refusalSchema.parse(await response.json()).code;

describe('a body', () => {
  const offer = { path: '/api/offer', body: Buffer.from('{"heads":[]}') };

  it('is taken where its hash was told and signed, and not where it is another', async () => {
    const tablet = await plant.join('t1');
    expect((await send(tablet, offer)).status).toBe(200);
    const told = hashOf('{"heads": []}');
    expect(await codeOf(await send(tablet, { ...offer, told }))).toBe('signature-wrong');
  });

  it('whose hash is not told is taken from older tablets only, and no snapshot of theirs', async () => {
    const tablet = await plant.join('t1');
    expect((await send(tablet, { ...offer, told: null, wire: '2' })).status).toBe(200);
    expect(await codeOf(await send(tablet, { ...offer, told: null }))).toBe('signature-missing');
    const snapshot = {
      path: '/api/snapshot?fold=f&after=0.0000000000000000',
      method: 'PUT',
      type: 'application/octet-stream',
    };
    expect(await codeOf(await send(tablet, { ...snapshot, told: null, wire: '2' }))).toBe('wire-too-old');
  });

  it('by a tablet that was shut out is refused before it is read', async () => {
    const tablet = await plant.join('t1');
    await plant.server.running.store.revokeTablet('t1', Date.now());
    // Were it read, it would be refused as no JSON.
    expect(await codeOf(await send(tablet, { ...offer, body: Buffer.from('not json') }))).toBe(
      'tablet-revoked',
    );
  });
});

describe('a snapshot', () => {
  const path = '/api/snapshot?fold=f&after=0.0000000000000000';
  const request = { path, method: 'PUT', type: 'application/octet-stream' };

  it('that unpacks to more than the bound is refused by the server, and left by the tablet', async () => {
    const bomb = gzipSync(Buffer.alloc(snapshotUnpackedBytes + 1));
    expect(bomb.length).toBeLessThan(1024 * 1024);
    const tablet = await plant.join('t1');
    expect(await codeOf(await send(tablet, { ...request, body: bomb }))).toBe('body-too-large');
    expect(await plant.server.running.store.snapshot('f')).toBeNull();
    const stream = new Blob([bomb]).stream().pipeThrough(new DecompressionStream('gzip'));
    await expect(readUpTo(stream, snapshotUnpackedBytes)).rejects.toThrow(RangeError);
  }, 30_000);

  it('that is no gzip is refused', async () => {
    expect(await codeOf(await send(await plant.join('t1'), { ...request, body: Buffer.from('plain') }))).toBe(
      'bad-body',
    );
  });
});

describe('one tablet', () => {
  it('that has sent more than is kept of one waits, and is told how long; others do not', async () => {
    const [greedy, honest] = [await plant.join('greedy'), await plant.join('honest')];
    plant.server.running.context.quotas.spend('greedy', { bytes: 300 * 2 ** 20 });
    const page = (tablet: string) =>
      Buffer.from(JSON.stringify({ sentMs: 1, entries: makeChain({ tablet, count: 1 }) }));
    const refused = await send(greedy, { path: '/api/push', body: page('greedy') });
    expect([await codeOf(refused), Number(refused.headers.get('retry-after')) > 30]).toEqual([
      'too-often',
      true,
    ]);
    const taken = await send(honest, { path: '/api/push', body: page('honest') });
    expect(pushedSchema.parse(await taken.json()).serverEpoch).toBe(plant.server.running.context.serverEpoch);
  });

  it('whose entries keep being quarantined is refused in the end', async () => {
    const evil = await plant.join('evil');
    let code = '';
    for (let round = 0; code === '' && round < 20; round += 1) {
      // Unsigned beginnings of ever new chains.
      const entries = Array.from({ length: 500 }, (_, at) =>
        makeChain({ tablet: 'evil', epoch: `e${round}-${at}`, count: 1 }),
      ).flat();
      const body = Buffer.from(JSON.stringify({ sentMs: 1, entries }));
      const answer = await send(evil, { path: '/api/push', body });
      if (!answer.ok) code = await codeOf(answer);
    }
    expect(code).toBe('too-often');
  }, 60_000);

  it('that opens stream after stream keeps the newest four', async () => {
    const tablet = await plant.join('t1');
    const streams: Response[] = [];
    for (let at = 0; at < 6; at += 1) {
      const opened = await tablet.caller.open('/api/live');
      if (!opened.ok) throw new Error(opened.error.code);
      streams.push(opened.value);
    }
    expect(plant.server.running.context.live.count()).toBe(4);
    const ends = async (stream: Response | undefined) => {
      const reader = stream?.body?.getReader();
      for (let next = await reader?.read(); next && !next.done; ) next = await reader?.read();
    };
    await Promise.all(streams.slice(0, 2).map(ends));
    await Promise.all(streams.slice(2).map((stream) => stream.body?.cancel()));
  });
});

describe('`createQuotas()`', () => {
  it('lets a burst through, then an even pace, each tablet by itself', () => {
    let nowMs = 0;
    const quotas = createQuotas(() => nowMs);
    quotas.spend('a', { bytes: 256 * 2 ** 20 - 1 });
    expect(quotas.waitMs('a')).toBe(0);
    quotas.spend('a', { bytes: 10 * 2 ** 20 });
    expect(quotas.waitMs('a')).toBeGreaterThan(10_000);
    expect(quotas.waitMs('b')).toBe(0);
    nowMs += 12_000;
    expect(quotas.waitMs('a')).toBe(0);
    quotas.spend('b', { quarantined: 5_000 });
    expect(quotas.waitMs('b')).toBeGreaterThan(0);
  });
});
