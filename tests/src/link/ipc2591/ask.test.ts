// A question to a machine over a real connection: its form, its answer, and everything else that may come instead.

import { createServer, type Server } from 'node:net';
import { afterEach, expect, test } from 'vitest';
import { ask } from '../../../../src/link/ipc2591/ask.ts';
import { type AnsweringMachine, type Asked, startAnswering } from './answering.ts';
import * as said from './said.ts';

const NAME = 'CFX.Materials.Storage.GetLoadedMaterialsRequest';
const question = { name: NAME, body: { LocationIdentifiers: [] }, from: 'reelward.L1-placer' };
let machine: AnsweringMachine | null = null;

afterEach(async () => {
  await machine?.close();
  machine = null;
});

async function askOf(answer: (asked: Asked) => object | Buffer | null, withinMs?: number) {
  machine = await startAnswering(answer);
  return ask({ connect: `amqp://${machine.at}`, address: 'L1.Placer' }, question, withinMs);
}
const right = ({ RequestID }: Asked) =>
  said.loadedMaterials([said.location('SLOT22', 'K1', 5)], { RequestID, Target: 'reelward.L1-placer' });

test('is asked by the standard’s own form and answered', async () => {
  const answer = await askOf(right);
  expect(answer).toMatchObject({ ok: true, envelope: { body: { Materials: [{ LocationName: 'SLOT22' }] } } });
  expect(machine?.asked).toEqual([
    {
      MessageName: NAME,
      Version: '1.7',
      TimeStamp: expect.stringMatching(/^\d{4}-/),
      UniqueID: expect.stringMatching(/^[0-9a-f-]{36}$/),
      Source: 'reelward.L1-placer',
      Target: 'L1.Placer',
      RequestID: expect.stringMatching(/^REQUEST-/),
      MessageBody: { LocationIdentifiers: [] },
    },
  ]);
});

test.each<[string, (asked: Asked) => object | Buffer | null, string | RegExp]>([
  ['of a machine that never answers', () => null, 'no answer within half a minute'],
  [
    'of a machine that does not know it',
    ({ RequestID }) =>
      said.envelope('NotSupportedResponse', { RequestResult: { Message: 'unknown' } }, { RequestID }),
    'CFX.NotSupportedResponse: unknown',
  ],
  [
    'with another question’s answer',
    () => right({ RequestID: 'other' } as Asked),
    'an answer to another question',
  ],
  ['cut in half', (asked) => Buffer.from(JSON.stringify(right(asked))).subarray(0, 200), 'not JSON'],
  ['larger than what is read', () => Buffer.alloc(3_000_000, 0x20), /more than|decode|size|exceed/i],
])('an answer %s is a reason', async (_what, answer, why) => {
  const answered = await askOf(answer, 1_500);
  expect(answered.ok).toBe(false);
  if (!answered.ok) expect(answered.why).toMatch(typeof why === 'string' ? new RegExp(`^${why}$`) : why);
});

test('nobody there, or something else than a machine, is a reason', async () => {
  const at = (server: Server) => (server.address() as { port: number }).port;
  const server = createServer((socket) => {
    socket.on('error', () => undefined).resume();
    socket.end('HTTP/1.1 400 Bad Request\r\n\r\n');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const door = { connect: `amqp://127.0.0.1:${at(server)}`, address: 'L1.Placer' };
  expect(await ask(door, question, 3_000)).toMatchObject({ ok: false });
  await new Promise((resolve) => server.close(resolve));
  const gone = await ask(door, question, 3_000);
  expect(gone).toMatchObject({ ok: false, why: expect.stringContaining('ECONNREFUSED') });
});
