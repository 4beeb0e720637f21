// The state that a new tablet starts from: taken from one tablet and handed to the next, as bytes that the server does not read.

import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { formatCursor } from '../../../shared/wire/cursor.ts';
import { snapshotBytes, snapshotEvery, snapshotUnpackedBytes } from '../../../shared/wire/limits.ts';
import { roomShare, roomWord, type StateSize } from '../../../shared/wire/state-room.ts';
import type { ServerContext } from '../context.ts';
import { keepStateSize, readStateSize, roomWords, type StateTold } from '../state-room.ts';
import { checkUnpacks } from './body.ts';
import { readPlace } from './place.ts';
import { checkWire, requireTablet } from './proof.ts';
import { Refused } from './refuse.ts';

/** Adds the routes of snapshots. */
export function addSnapshotRoutes(app: FastifyInstance, context: ServerContext): void {
  app.put('/api/snapshot', { bodyLimit: snapshotBytes }, (request) => putSnapshot(request, context));
  // Packed bytes as they are: packed for travel they would arrive unpacked, which is not what the app expects.
  app.get('/api/snapshot', { compress: false }, (request, reply) => getSnapshot(request, reply, context));
}

/** Position of the newest snapshot that this process knows of: asked again where it seems too old. */
const snapshotPositions = new WeakMap<ServerContext, number>();

/** True where the log has grown so far past the last state that a tablet is asked for a new one. */
export async function wantsSnapshot(context: ServerContext, pos: number): Promise<boolean> {
  if (pos - (snapshotPositions.get(context) ?? 0) <= snapshotEvery) return false;
  // Another process may have taken one since.
  const [kept, told] = await Promise.all([context.store.snapshotPos(), readStateSize(context.store)]);
  // One that was too large need not be made again so soon.
  const last = Math.max(kept, told?.pos ?? 0);
  snapshotPositions.set(context, last);
  return pos - last > snapshotEvery;
}

async function putSnapshot(
  request: FastifyRequest,
  context: ServerContext,
): Promise<{ readonly kept: boolean }> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const fold = (request.query as Record<string, unknown>)['fold'];
  if (typeof fold !== 'string' || !/^[\x21-\x7e]{1,64}$/.test(fold)) {
    throw new Refused('bad-query', 'fold: expected the name of the fold that made the snapshot');
  }
  const cursor = await readPlace(request, context);
  const size = readSize(request.query as Record<string, unknown>);
  if (size) {
    await tellSize(request, context, { ...size, pos: cursor.pos });
    return { kept: false };
  }
  const bytes = request.body;
  if (!(bytes instanceof Uint8Array) || bytes.length === 0) throw new Refused('bad-body', 'expected bytes');
  context.quotas.spend(tablet.tablet, { bytes: bytes.length });
  const plain = await checkUnpacks(bytes, snapshotUnpackedBytes);
  await context.store.putSnapshot({ fold, cursor, tablet: tablet.tablet, atMs: context.nowMs(), bytes });
  await tellSize(request, context, { packed: bytes.length, plain, pos: cursor.pos });
  return { kept: true };
}

/** The size of a state that its tablet does not send since it is too large; null where one is sent. */
function readSize(query: Record<string, unknown>): StateSize | null {
  if (query['packed'] === undefined && query['plain'] === undefined) return null;
  const [packed = 0, plain = 0] = [query['packed'], query['plain']].map((text) =>
    typeof text === 'string' && /^[1-9]\d{0,14}$/.test(text) ? Number(text) : 0,
  );
  if (packed > 0 && plain > 0 && roomShare({ packed, plain }) > 1) return { packed, plain };
  throw new Refused('bad-query', 'packed, plain: expected the bytes of a state that is too large to be sent');
}

async function tellSize(request: FastifyRequest, context: ServerContext, told: StateTold): Promise<void> {
  await keepStateSize(context.store, told);
  snapshotPositions.set(context, Math.max(snapshotPositions.get(context) ?? 0, told.pos));
  const share = roomShare(told);
  const word = roomWord(share);
  if (word !== 'fits') request.log.warn({ newTablets: word, share }, roomWords[word]);
}

async function getSnapshot(
  request: FastifyRequest,
  reply: FastifyReply,
  context: ServerContext,
): Promise<FastifyReply> {
  checkWire(request);
  await requireTablet(request, context);
  const fold = (request.query as Record<string, unknown>)['fold'];
  const snapshot = typeof fold === 'string' ? await context.store.snapshot(fold) : null;
  if (!snapshot) throw new Refused('no-snapshot', 'none is kept for this fold: pull from the start');
  return reply
    .type('application/octet-stream')
    .header('reelward-cursor', formatCursor(snapshot.cursor))
    .header('reelward-snapshot-by', snapshot.tablet)
    .send(Buffer.from(snapshot.bytes));
}
