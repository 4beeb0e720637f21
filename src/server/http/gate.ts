// Who may send a body at all? Asked from the headers, before a byte of it is kept: the wire's version, the tablet, its signature
// over the hash that the body will have, time, revocation, and what is left of the tablet's and the server's budgets. Reading first
// and asking then was refused: anybody on the network could fill the memory.

import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { bodyBytes, snapshotBytes } from '../../../shared/wire/limits.ts';
import { bodyHeader, wireHeader } from '../../../shared/wire/version.ts';
import type { ServerContext } from '../context.ts';
import { createAmounts } from './amounts.ts';
import { emptyHash } from './body.ts';
import { type Asker, askerOf, type Passed, passed } from './passed.ts';
import { checkProof, checkTime, checkWire, refuseRevoked, tabletOf } from './proof.ts';
import { Refused } from './refuse.ts';

/** Bytes of bodies on their way at one time: some hundred pages of a backlog, or four snapshots. */
const BODIES_BYTES = 64 * 1024 * 1024;
/** The part of it for one tablet, the largest body at least: whoever tells of bodies that never come holds up itself alone. */
const TABLET_BYTES = Math.max(Math.floor(BODIES_BYTES / 3), snapshotBytes);
/** The part of it for tablets of older versions, whose signature can only be checked once the body is here. */
const UNPROVED_BYTES = 8 * 1024 * 1024;
/** And of that for one address, as the tablet's name is anybody's word till then. */
const ADDRESS_BYTES = Math.max(Math.floor(UNPROVED_BYTES / 3), bodyBytes);
/** The first version of the wire that tells the body's hash beforehand. */
const HASHED_FROM = 3;

/** Routes for anybody: how to talk, and joining, which is limited by address and in size. */
const OPEN = new Set(['/api/info', '/api/enrol']);

/** Puts the gate before every route that only tablets may ask. */
export function addGate(app: FastifyInstance, context: ServerContext): void {
  const budget = createBudget();
  app.addHook('onRequest', async (request, reply) => {
    // Nothing is there to take a body: it would be read for nothing.
    if (request.is404 && request.method !== 'GET' && request.method !== 'HEAD')
      throw new Refused('not-found', 'there is nothing at this address');
    const route = request.routeOptions.url ?? '';
    if (!route.startsWith('/api/') || OPEN.has(route)) return;
    try {
      const proved = await checkHeaders(request, context);
      refuseScreen(request, proved);
      refuseSpent(request, reply, { proved, context });
      takeBudget(request, reply, { proved, budget });
      passed.set(request, proved);
      context.seen.speaks(proved.tablet.tablet, Number(request.headers[wireHeader]));
    } catch (error) {
      // A long body is not waited for; a short one is read and dropped, so that its sender reads the answer.
      if (bytesTold(request) > bodyBytes) reply.header('connection', 'close');
      throw error;
    }
  });
}

/** All that a wall screen may ask: what the log says, and whether it is still the same log. It brings nothing and stands for nobody. */
const READS = new Set([
  'GET /api/pull',
  'GET /api/live',
  'GET /api/snapshot',
  'GET /api/checkpoint',
  'GET /api/keys',
  'POST /api/offer',
  'POST /api/tree',
]);

/** Refuses what a wall screen may not do: a list of what it may, so that a new route is closed to it by itself. */
function refuseScreen(request: FastifyRequest, { tablet }: Passed): void {
  if (tablet.screen && !READS.has(`${request.method} ${request.routeOptions.url ?? ''}`))
    throw new Refused('role-lacking', 'a wall screen only reads', { screen: true });
}

async function checkHeaders(request: FastifyRequest, context: ServerContext): Promise<Passed> {
  checkWire(request);
  const tablet = await tabletOf(request, context);
  const told = request.headers[bodyHeader];
  if (told !== undefined && (typeof told !== 'string' || !/^[0-9a-f]{64}$/.test(told)))
    throw new Refused('signature-wrong', `${bodyHeader}: expected 64 lower-case hex digits`);
  const bodyHash = hasBody(request) ? (told ?? null) : emptyHash;
  if (bodyHash !== null) {
    await checkProof(request, tablet.publicKey, { ...context, bodyHash });
    refuseRevoked(tablet);
    return { tablet, bodyHash };
  }
  if (Number(request.headers[wireHeader]) >= HASHED_FROM)
    throw new Refused('signature-missing', `tell the body's hash (header ${bodyHeader})`);
  if (request.method === 'PUT')
    throw new Refused('wire-too-old', 'a snapshot is taken from tablets that tell its hash beforehand only');
  checkTime(request, context);
  refuseRevoked(tablet);
  return { tablet, bodyHash };
}

function hasBody(request: FastifyRequest): boolean {
  return request.headers['transfer-encoding'] !== undefined || bytesTold(request) > 0;
}

/** Bytes that the headers tell of; the most that the route takes where they tell none. */
function bytesTold(request: FastifyRequest): number {
  const told = request.headers['content-length'];
  if (told !== undefined) return Number(told);
  return request.headers['transfer-encoding'] === undefined
    ? 0
    : (request.routeOptions.bodyLimit ?? bodyBytes);
}

/** A tablet that has sent more than any tablet writes waits; what it asks is still answered. */
function refuseSpent(
  request: FastifyRequest,
  reply: FastifyReply,
  { proved, context }: { readonly proved: Passed; readonly context: ServerContext },
): void {
  const route = request.routeOptions.url;
  const isKept = route === '/api/push' || request.method === 'PUT';
  if (!isKept) return;
  const waitMs = context.quotas.waitMs(proved.tablet.tablet);
  if (waitMs === 0) return;
  reply.header('retry-after', String(Math.ceil(waitMs / 1000)));
  throw new Refused('too-often', 'this tablet has sent more than is kept of one: wait');
}

interface Budget {
  /** Gives the bytes back when called; null where the sender, or all senders together, have too many on their way. */
  readonly take: (bytes: number, sender: Asker) => (() => void) | null;
}

function createBudget(): Budget {
  const held = createAmounts();
  return {
    take: (bytes, { name, isProved }) => {
      const bounds: readonly (readonly [name: string, most: number])[] = [
        ['all', BODIES_BYTES],
        [name, isProved ? TABLET_BYTES : ADDRESS_BYTES],
        ...(isProved ? [] : ([['unproved', UNPROVED_BYTES]] as const)),
      ];
      if (bounds.some(([of, most]) => held.of(of) + bytes > most)) return null;
      for (const [of] of bounds) held.add(of, bytes);
      return () => {
        for (const [of] of bounds) held.add(of, -bytes);
      };
    },
  };
}

function takeBudget(
  request: FastifyRequest,
  reply: FastifyReply,
  { proved, budget }: { readonly proved: Passed; readonly budget: Budget },
): void {
  const bytes = bytesTold(request);
  if (bytes === 0) return;
  if (bytes > (request.routeOptions.bodyLimit ?? bodyBytes))
    throw new Refused('body-too-large', `a body here is at most ${request.routeOptions.bodyLimit} bytes`);
  const give = budget.take(bytes, askerOf(request, proved));
  if (!give) {
    reply.header('retry-after', '1');
    throw new Refused('too-often', 'more is on its way than the server takes at one time: again in a moment');
  }
  reply.raw.once('close', give);
}
