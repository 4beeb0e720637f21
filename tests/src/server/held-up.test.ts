// Somebody takes the places that others need and does nothing with them: bodies told of that never come, connections held open. It holds
// up itself, and the other tablets go on.

import { spawn } from 'node:child_process';
import { Agent, type IncomingHttpHeaders, request } from 'node:http';
import { connect, type Socket } from 'node:net';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { snapshotBytes } from '../../../shared/wire/limits.ts';
import {
  checkedSchema,
  offeredSchema,
  pinsKeptSchema,
  refusalSchema,
} from '../../../shared/wire/messages.ts';
import { formatProof } from '../../../shared/wire/signing.ts';
import { newNonce } from '../../../src/app/sync/key.ts';
import { hashOf } from '../../../src/server/keys.ts';
import { signByHand } from './by-hand.ts';
import { pinRecord, startTestServer, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const lines: string[] = [];
beforeEach(() => {
  lines.length = 0;
});
const logTo = { write: (line: string) => void lines.push(line) };
const plant = usePlant({ logLevel: 'warn', logTo });
/** Ends what a test holds open. */
const ends: (() => void)[] = [];
afterEach(() => {
  for (const end of ends.splice(0)) end();
});

const snapshotPath = '/api/snapshot?fold=f&after=0.0000000000000000';

/** Tells of bodies that do not come, from another address than the tablets'; gives what was answered once the gate has dealt with each. */
async function tellOfBodies(
  requests: readonly { readonly line: string; readonly headers: Record<string, string> }[],
): Promise<readonly string[]> {
  let passed = 0;
  const { seen } = plant.server.running.context;
  const { speaks } = seen;
  Object.assign(seen, {
    speaks: (...args: Parameters<typeof speaks>) => {
      passed += 1;
      speaks(...args);
    },
  });
  const answers: string[] = [];
  for (const { line, headers } of requests) {
    const socket: Socket = connect({
      port: plant.server.running.port,
      host: '127.0.0.1',
      localAddress: '127.0.0.2',
    });
    ends.push(() => socket.destroy());
    socket.on('error', () => undefined); // it may be closed with the answer
    socket.once('data', (text: Buffer) => void answers.push(text.toString()));
    const all = Object.entries({ host: 'x', ...headers }).map(([name, value]) => `${name}: ${value}\r\n`);
    socket.write(`${line} HTTP/1.1\r\n${all.join('')}\r\n`);
  }
  await until('the gate to deal with each', () => passed + answers.length === requests.length);
  Object.assign(seen, { speaks });
  return answers;
}

describe('bodies that are told of and never come', () => {
  const offer = { json: { heads: [] } };

  it('hold up the tablet that signed for them, and no other', async () => {
    const [greedy, honest] = [await plant.join('greedy'), await plant.join('honest')];
    const told = hashOf('never sent');
    const one = async () => ({
      line: `PUT ${snapshotPath}`,
      headers: {
        ...(await signByHand(greedy, { method: 'PUT', path: snapshotPath, told })),
        'content-type': 'application/octet-stream',
        'content-length': String(snapshotBytes),
      },
    });
    const answers = await tellOfBodies(await Promise.all([one(), one(), one(), one()]));
    expect(await honest.caller.call('/api/offer', offeredSchema, offer)).toMatchObject({ ok: true });
    // The largest body of another still has room.
    const body = Buffer.alloc(snapshotBytes, 'x');
    const headers = {
      ...(await signByHand(honest, { method: 'PUT', path: snapshotPath, body })),
      'content-type': 'application/octet-stream',
    };
    const taken = await fetch(plant.server.running.url + snapshotPath, { method: 'PUT', headers, body });
    expect(refusalSchema.parse(await taken.json()).code).toBe('bad-body');
    expect(answers).toHaveLength(3);
    for (const answer of answers) expect(answer).toMatch(/^HTTP\/1.1 429 .*retry-after: 1\r\n.*"too-often"/s);
  });

  it('in the name of an older tablet, whose signature comes with the body, hold up the address that they come from', async () => {
    const old = await plant.join('old');
    const one = () => ({
      line: 'POST /api/push',
      headers: {
        'reelward-wire': '2',
        authorization: formatProof({
          tablet: 'old',
          timeMs: Date.now(),
          nonce: newNonce(),
          sig: 'A'.repeat(86),
        }),
        'content-type': 'application/json',
        'content-length': String(2 ** 20),
      },
    });
    await tellOfBodies(Array.from({ length: 8 }, one));
    const body = Buffer.from('{"heads":[]}');
    const signed = await signByHand(old, { method: 'POST', path: '/api/offer', body, wire: '2', told: null });
    const headers = { ...signed, 'content-type': 'application/json' };
    const answer = await fetch(`${plant.server.running.url}/api/offer`, { method: 'POST', headers, body });
    expect(answer.status).toBe(200);
  });
});

/** Opens connections in a process of its own, from each of the addresses in turn, and asks once on each; holds what it has until it is ended. */
const crowd = `
const [port, count, addresses, scheme] = process.argv.slice(1);
const from = addresses.split(',');
const open = scheme === 'https' ? require('node:tls').connect : require('node:net').connect;
let answered = 0, closed = 0;
const told = () => { if (answered + closed === Number(count)) console.log(JSON.stringify({ answered, closed })); };
for (let at = 0; at < Number(count); at += 1) {
  const socket = open({ port: Number(port), host: '127.0.0.1', localAddress: from[at % from.length], rejectUnauthorized: false });
  let isAnswered = false;
  socket.on('error', () => {});
  socket.once(scheme === 'https' ? 'secureConnect' : 'connect', () => socket.write('GET /api/info HTTP/1.1\\r\\nHost: x\\r\\n\\r\\n'));
  socket.once('data', () => { isAnswered = true; answered += 1; told(); });
  socket.once('close', () => { if (!isAnswered) { closed += 1; told(); } });
}
`;

interface Crowd {
  readonly answered: number;
  readonly closed: number;
  /** Lets go of all. */
  readonly end: () => Promise<void>;
}

/** Resolves when each of its connections was answered or closed. */
function gather(url: string, count: number, addresses: readonly string[]): Promise<Crowd> {
  const { port, protocol } = new URL(url);
  const scheme = protocol.replace(':', '');
  const child = spawn(process.execPath, ['-e', crowd, port, String(count), addresses.join(','), scheme]);
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const end = () => {
    child.kill();
    return ended;
  };
  ends.push(() => void child.kill());
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', () => reject(new Error('the crowd ended by itself')));
    child.stdout.once('data', (text: Buffer) =>
      resolve({ ...(JSON.parse(text.toString()) as { answered: number; closed: number }), end }),
    );
  });
}

const logged = () =>
  lines.map((line) => JSON.parse(line) as Record<string, unknown>).filter((line) => 'security' in line);

describe('2,000 connections that each ask once and are held open', () => {
  it('from one address get a third of the places, and a tablet elsewhere goes on; the log tells it in a few lines', async () => {
    const { answered, closed } = await gather(plant.server.running.url, 2_000, ['127.0.0.2']);
    const tablet = await plant.join('t1');
    tablet.log.write(1);
    tablet.start();
    await until('its entry', async () => (await plant.server.running.store.head()).pos === 1);
    expect({ answered, closed }).toEqual({ answered: 666, closed: 1_334 });
    const told = logged();
    expect(told[0]).toMatchObject({ security: 'connections-of-address', ip: '127.0.0.2' });
    expect(told).toHaveLength(6);
  }, 60_000);

  it('are closed as they come where all places are taken, and the log tells it', async () => {
    const addresses = [2, 3, 4, 5].map((last) => `127.0.0.${last}`);
    const { answered, closed } = await gather(plant.server.running.url, 2_040, addresses);
    expect({ answered, closed }).toEqual({ answered: 2_000, closed: 40 });
    expect(logged()[0]).toMatchObject({
      security: 'connections-full',
      ip: expect.stringMatching(/^127\.0\.0\.[2-5]$/),
    });
  }, 60_000);

  it('are those of a proxy, where it is named, and not counted', async () => {
    const server = await startTestServer({ trustProxy: ['127.0.0.0/31', '127.0.0.2'] });
    const { answered } = await gather(server.running.url, 1_000, ['127.0.0.2']);
    await server.stop();
    expect(answered).toBe(1_000);
  }, 60_000);

  it('are the address’s again once it has let go of them, also over HTTPS', async () => {
    const https = { names: ['localhost'], ownFiles: null, trustPort: 0 };
    const server = await startTestServer({ https });
    const first = await gather(server.running.url, 350, ['127.0.0.2']);
    await first.end();
    const again = await gather(server.running.url, 350, ['127.0.0.2']);
    await server.stop();
    expect([first.answered, again.answered]).toEqual([350, 350]);
  }, 60_000);
});

describe('a connection that waits for its next request', () => {
  it('waits five seconds for a stranger, and longer once a tablet proved itself on it', async () => {
    const tablet = await plant.join('t1');
    const { url } = plant.server.running;
    const agent = new Agent({ keepAlive: true, maxSockets: 1 });
    const ask = (path: string, headers: Record<string, string> = {}) =>
      new Promise<{ readonly told: IncomingHttpHeaders; readonly socket: Socket }>((resolve, reject) => {
        const sent = request(url + path, { agent, headers }, (answer) => {
          const { socket } = answer;
          answer.resume().once('end', () => resolve({ told: answer.headers, socket }));
        });
        sent.once('error', reject);
        sent.end();
      });
    const before = await ask('/api/info');
    expect(before.told['keep-alive']).toBe('timeout=5');
    const signed = await signByHand(tablet, { method: 'GET', path: '/api/keys' });
    const proved = await ask('/api/keys', signed);
    expect([proved.told['keep-alive'], proved.socket]).toEqual(['timeout=72', before.socket]);
    expect((await ask('/api/info')).told['keep-alive']).toBe('timeout=72');
    agent.destroy();
    // Of an older tablet it is known with the body.
    const body = Buffer.from('{"heads":[]}');
    const old = await signByHand(tablet, { method: 'POST', path: '/api/offer', body, wire: '2', told: null });
    const answer = await fetch(`${url}/api/offer`, {
      method: 'POST',
      headers: { ...old, 'content-type': 'application/json' },
      body,
    });
    expect([answer.status, answer.headers.get('keep-alive')]).toEqual([200, 'timeout=72']);
    // Ended by the server: the longer time would be over after this test is. Node's own client would end it by itself.
    const stranger = connect(plant.server.running.port, '127.0.0.1');
    stranger.resume().write('GET /api/info HTTP/1.1\r\nHost: x\r\n\r\n');
    await new Promise((resolve) => stranger.once('end', resolve));
  }, 30_000);

  it('is ended over HTTPS where it never greets', async () => {
    const server = await startTestServer({ https: { names: ['localhost'], ownFiles: null, trustPort: 0 } });
    const silent = connect(server.running.port, '127.0.0.1').resume();
    silent.on('error', () => undefined); // it may be reset
    await new Promise((resolve) => silent.once('close', resolve));
    await server.stop();
  }, 60_000);
});

describe('tries of badges and PINs beyond a minute’s', () => {
  const codesOf = async (tablet: TestTablet, count: number) => {
    const ask = () =>
      tablet.caller.call('/api/people/check', checkedSchema, {
        json: { badge: 'B-9', person: null, pin: null },
      });
    const answers = await Promise.all(Array.from({ length: count }, ask));
    return answers.map((answer) => (answer.ok ? 'ok' : answer.error.code));
  };
  const pins = (tablet: TestTablet) =>
    tablet.caller.call('/api/people/pins', pinsKeptSchema, {
      json: { pins: [{ pin: 'of no entry', ...pinRecord('1111') }] },
    });

  it('shut out the tablet that made them, and none behind the same address', async () => {
    const [greedy, honest] = [await plant.join('greedy'), await plant.join('honest')];
    const codes = await codesOf(greedy, 121);
    expect(codes.filter((code) => code === 'too-often')).toHaveLength(1);
    expect(await codesOf(honest, 1)).toEqual(['person-unproven']);
    const kept = await Promise.all(Array.from({ length: 31 }, () => pins(greedy)));
    expect(kept.filter(({ ok }) => !ok)).toMatchObject([{ error: { code: 'too-often' } }]);
    expect(await pins(honest)).toMatchObject({ ok: true });
  });

  it('that nobody signed are not counted as those of the tablet that they name', async () => {
    const honest = await plant.join('honest');
    const ask = async () => {
      const claim = { tablet: 'honest', timeMs: Date.now(), nonce: newNonce(), sig: 'A'.repeat(86) };
      const answer = await fetch(`${plant.server.running.url}/api/people/check`, {
        method: 'POST',
        headers: {
          'reelward-wire': '2',
          authorization: formatProof(claim),
          'content-type': 'application/json',
        },
        body: '{}',
      });
      return refusalSchema.parse(await answer.json()).code;
    };
    const codes = await Promise.all(Array.from({ length: 121 }, ask));
    expect([...new Set(codes)].sort()).toEqual(['signature-wrong', 'too-often']);
    expect(await codesOf(honest, 1)).toEqual(['person-unproven']);
  });
});
