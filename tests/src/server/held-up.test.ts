// Somebody takes the places that others need and does nothing with them: bodies told of that never come, connections held open. It holds
// up itself, and the other tablets go on.

import { connect, type Socket } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { snapshotBytes } from '../../../shared/wire/limits.ts';
import { offeredSchema, refusalSchema } from '../../../shared/wire/messages.ts';
import { formatProof } from '../../../shared/wire/signing.ts';
import { newNonce } from '../../../src/app/sync/key.ts';
import { hashOf } from '../../../src/server/keys.ts';
import { signByHand } from './by-hand.ts';
import { until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();
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
