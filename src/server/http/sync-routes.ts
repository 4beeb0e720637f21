// The log's routes: offer, push, pull, live, checkpoint, tree, keys; snapshots stand in snapshot-routes.ts. Each checks the wire's version and the tablet first.

import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { DAY_MS } from '../../../shared/kit/moment.ts';
import { driftLimitMs } from '../../../shared/log/clock.ts';
import { canonicalText } from '../../../shared/log/seal.ts';
import { closedBy, unsignedEnd } from '../../../shared/log/vouched.ts';
import { codesSince, type EntryFault } from '../../../shared/wire/codes.ts';
import { formatCursor } from '../../../shared/wire/cursor.ts';
import { pageBytes, pageEntries } from '../../../shared/wire/limits.ts';
import {
  type Brought,
  type Info,
  type Offered,
  offerSchema,
  type PlantKeys,
  type Push,
  type Pushed,
  pushSchema,
  type SignedCheckpoint,
  type TreeTold,
  treeAskSchema,
} from '../../../shared/wire/messages.ts';
import {
  type Cosigned,
  cosignSchema,
  type RecordTold,
  recordAskSchema,
} from '../../../shared/wire/messages-heads.ts';
import { checkpointText } from '../../../shared/wire/signing.ts';
import { roomShare } from '../../../shared/wire/state-room.ts';
import { treeSince, wireFloor, wireHeader, wireVersion } from '../../../shared/wire/version.ts';
import type { ArrivedEntry } from '../arrived.ts';
import { checkEntries, readEntry } from '../checked.ts';
import type { ServerContext } from '../context.ts';
import { arePlainEntries } from '../envelope.ts';
import { storeWords } from '../health.ts';
import { hashOf } from '../keys.ts';
import { signedKeys } from '../plant-key.ts';
import { readStateSize } from '../state-room.ts';
import type { StoredEntry } from '../stores/store.ts';
import type { TreeState } from '../stores/tree.ts';
import { proveTree } from '../tree-heads.ts';
import { bodySize, readAs } from './body.ts';
import { readPlace } from './place.ts';
import { checkWire, requireTablet } from './proof.ts';
import { perTablet } from './rates.ts';
import { Refused } from './refuse.ts';
import { wantsSnapshot } from './snapshot-routes.ts';

/**
 * Questions of one tablet in a minute about the tree, each up to some hundred hashes to find: one asks twice a minute, and up to ten times
 * in a row after a long time away.
 */
const TREE_ASKS = 60;

/** Adds the log's routes. */
export function addSyncRoutes(app: FastifyInstance, context: ServerContext): void {
  app.get(
    '/api/info',
    async (): Promise<Info> => ({
      wire: wireVersion,
      wireFloor,
      serverEpoch: context.serverEpoch,
      serverMs: context.nowMs(),
      plant: context.plant,
      serverKey: context.key.publicKey,
      certificateEndsMs: context.certificateEndsMs(),
    }),
  );
  app.post('/api/offer', (request) => offer(request, context));
  app.post('/api/push', (request) => push(request, context));
  app.get('/api/pull', (request, reply) => pull(request, reply, context));
  app.get('/api/live', (request, reply) => live(request, reply, context));
  app.get('/api/checkpoint', (request) => checkpoint(request, context));
  app.post('/api/tree', perTablet(TREE_ASKS), (request) => tellTree(request, context));
  app.post('/api/witness', perTablet(TREE_ASKS), (request) => takeCosignature(request, context));
  app.post('/api/record', perTablet(TREE_ASKS), (request) => tellPlace(request, context));
  app.get('/api/keys', (request) => tellKeys(request, context));
}

async function offer(request: FastifyRequest, context: ServerContext): Promise<Offered> {
  checkWire(request);
  const { tablet } = await requireTablet(request, context);
  const { heads } = readAs(offerSchema, request.body);
  const { serverEpoch, store } = context;
  // One that only listens, as a wall screen does, is heard of here every few minutes.
  context.seen.note(tablet, context.nowMs(), null);
  const acks = [...(await store.marks(heads))];
  // Somebody may have brought another chain under its name before it was let in: of its own it then has sent nothing.
  for (const [at, ack] of acks.entries()) {
    const head = heads[at];
    if (!head || head.tablet !== tablet || ack.seq < head.seq) continue;
    if ((await store.hashOf(head)) !== head.hash) acks[at] = { ...ack, seq: 0 };
  }
  const [state, off] = await Promise.all([readStateSize(store), clocksOff(context)]);
  const stateShare = state === null ? undefined : roomShare(state);
  return { serverEpoch, serverMs: context.nowMs(), acks, clocksOff: off, stateShare };
}

/** For how long a tablet that is not heard of any more is told of, ms. */
const TOLD_MS = DAY_MS;

/** Tablets heard of today whose clocks are off by more than is common. */
async function clocksOff(context: ServerContext): Promise<NonNullable<Offered['clocksOff']>> {
  await context.seen.write();
  const nowMs = context.nowMs();
  const off = (await context.store.listTablets()).filter(
    ({ clockOffMs, seenMs, revokedMs }) =>
      revokedMs === null &&
      Math.abs(clockOffMs ?? 0) > driftLimitMs &&
      seenMs !== null &&
      nowMs - seenMs < TOLD_MS,
  );
  return off.slice(0, 20).map(({ tablet, name, clockOffMs }) => ({ tablet, name, offMs: clockOffMs ?? 0 }));
}

async function push(request: FastifyRequest, context: ServerContext): Promise<Pushed> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const { metrics, serverEpoch } = context;
  const { sentMs, entries, brought } = readPush(request.body);
  const nowMs = context.nowMs();
  const carrier = { tablet: tablet.tablet, publicKey: tablet.publicKey, nowMs, brought };
  const checked = await checkEntries(entries, carrier, context);
  context.quotas.spend(tablet.tablet, { bytes: bodySize(request) });
  const done = metrics.appendSeconds.startTimer();
  const appended = await context.appender.append(tablet.tablet, checked);
  done();
  metrics.entries.inc(appended.added);
  if (appended.added > 0) context.health.wrote();
  context.quotas.spend(tablet.tablet, { quarantined: appended.faults.length });
  for (const { id, fault } of appended.faults) {
    metrics.quarantined.inc({ fault });
    request.log.warn({ entry: id, fault, tablet: tablet.tablet }, 'entry kept aside');
  }
  context.seen.note(tablet.tablet, nowMs, sentMs - nowMs);
  const ahead = checked.filter((entry) => entry.aheadMs > 0).slice(0, 20);
  if (ahead[0]) request.log.warn({ tablet: tablet.tablet, aheadMs: ahead[0].aheadMs }, 'clock ahead');
  const isWanted = await wantsSnapshot(context, appended.head.pos);
  const speaks = Number(request.headers[wireHeader]);
  const isOlder = speaks < codesSince;
  const { tree, places } = appended;
  const receipt =
    speaks < treeSince || !tree ? undefined : { head: context.heads.sign(tree), places: [...places] };
  return {
    serverEpoch,
    serverMs: context.nowMs(),
    acks: [...appended.acks],
    faults: appended.faults.map(({ id, fault }) => ({ id, fault: isOlder ? olderFault(fault) : fault })),
    ahead: ahead.map((entry) => ({
      id: `${entry.tablet}/${entry.epoch}/${entry.seq}`,
      aheadMs: entry.aheadMs,
    })),
    snapshotWanted: isWanted,
    receipt,
  };
}

/** What a tablet that knows no bound of clocks is told: it cannot read the fault itself. */
function olderFault(fault: EntryFault): EntryFault {
  return fault === 'clock-ahead' ? 'name-taken' : fault;
}

/** Reads a page. The body itself goes on, not a schema's copy of it: the hash covers what was sent. */
function readPush(body: unknown): {
  readonly sentMs: number;
  readonly entries: readonly ArrivedEntry[];
  readonly brought: readonly Brought[];
} {
  const { sentMs, entries, brought } = (body ?? {}) as {
    readonly sentMs?: unknown;
    readonly entries?: unknown;
    readonly brought?: unknown;
  }; // looked at below
  const plain =
    brought === undefined &&
    Number.isSafeInteger(sentMs) &&
    (sentMs as number) >= 0 &&
    Array.isArray(entries) &&
    entries.length >= 1 &&
    entries.length <= pageEntries &&
    arePlainEntries(entries);
  if (!plain) readAs(pushSchema, body);
  const push = body as Push; // checked either way
  return { sentMs: push.sentMs, entries: push.entries.map(readEntry), brought: push.brought ?? [] };
}

async function pull(
  request: FastifyRequest,
  reply: FastifyReply,
  context: ServerContext,
): Promise<FastifyReply> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const after = await readPlace(request, context);
  const { rows, more } = fitPage(await context.store.page(after.pos, pageEntries + 1));
  const end = rows.at(-1) ?? after;
  context.seen.note(tablet.tablet, context.nowMs(), null);
  const entries = rows.map((row) => row.text).join(',');
  const answer = `{"serverEpoch":"${context.serverEpoch}","serverMs":${context.nowMs()},"cursor":"${formatCursor(end)}","more":${more},"entries":[${entries}]}`;
  return reply.type('application/json; charset=utf-8').send(answer);
}

/** A cut page ends at a signed entry where it has one, which vouches for those before it: they are checked as soon as they come. */
function fitPage(rows: readonly StoredEntry[]): {
  readonly rows: readonly StoredEntry[];
  readonly more: boolean;
} {
  let bytes = 0;
  let count = 0;
  for (const row of rows) {
    bytes += row.text.length + 1;
    if (count > 0 && (count >= pageEntries || bytes > pageBytes)) break;
    count += 1;
  }
  const more = count < rows.length;
  const closed = more ? closedBy(rows.slice(0, count), ({ text }) => !text.endsWith(unsignedEnd)) : count;
  return { rows: rows.slice(0, closed === 0 ? count : closed), more };
}

async function live(request: FastifyRequest, reply: FastifyReply, context: ServerContext): Promise<void> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const headers = reply.getHeaders();
  reply.hijack();
  for (const [name, value] of Object.entries(headers))
    if (value !== undefined) reply.raw.setHeader(name, value);
  reply.raw.writeHead(200, {
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    'x-accel-buffering': 'no',
  });
  request.raw.socket.setNoDelay(true);
  context.live.add(tablet.tablet, reply.raw);
}

async function checkpoint(request: FastifyRequest, context: ServerContext): Promise<SignedCheckpoint> {
  checkWire(request);
  await requireTablet(request, context);
  const { store, serverEpoch } = context;
  // The end is read first: the heads may then reach further, never less far, than it says.
  const { pos, root } = await store.head();
  const heads = [...(await store.heads())];
  const atMs = context.nowMs();
  const text = checkpointText({ serverEpoch, pos, root, atMs, headsHash: hashOf(canonicalText(heads)) });
  return { serverEpoch, pos, root, atMs, heads, sig: context.key.sign(text) };
}

async function tellTree(request: FastifyRequest, context: ServerContext): Promise<TreeTold> {
  checkWire(request);
  await requireTablet(request, context);
  const question = readAs(treeAskSchema, request.body);
  const { store, serverEpoch, heads, witnesses } = context;
  const tree = await treeOf(store);
  const proofs = await proveTree(store, tree, question);
  const told = { serverEpoch, serverMs: context.nowMs(), head: heads.sign(tree), ...proofs };
  // A disk that is full puts up no new head; what was asked is answered all the same.
  const witness = await witnesses.wanted(tree).catch(() => null);
  return witness === null ? told : { ...told, witness };
}

async function treeOf(store: ServerContext['store']): Promise<TreeState> {
  const tree = await store.tree();
  if (!tree) throw new Refused('server-fault', storeWords['log-broken']);
  return tree;
}

async function takeCosignature(request: FastifyRequest, context: ServerContext): Promise<Cosigned> {
  checkWire(request);
  const { tablet, publicKey } = await requireTablet(request, context);
  const said = readAs(cosignSchema, request.body);
  return { kept: await context.witnesses.take({ tablet, key: publicKey }, said) };
}

async function tellPlace(request: FastifyRequest, context: ServerContext): Promise<RecordTold> {
  checkWire(request);
  await requireTablet(request, context);
  const { serverEpoch, store, witnesses } = context;
  const name = readAs(recordAskSchema, request.body);
  const place = await witnesses.placeOf(name, await treeOf(store));
  if (!place) throw new Refused('not-found', 'this log does not hold that entry yet');
  return { serverEpoch, serverMs: context.nowMs(), ...place };
}

async function tellKeys(request: FastifyRequest, context: ServerContext): Promise<PlantKeys> {
  checkWire(request);
  await requireTablet(request, context);
  const { store, serverEpoch, key, plant } = context;
  const nowMs = context.nowMs();
  const keys = await signedKeys(store, key.plant, { plant, nowMs });
  const tickets = await context.tickets.started();
  return tickets === null
    ? { serverEpoch, serverMs: nowMs, keys }
    : { serverEpoch, serverMs: nowMs, keys, tickets };
}
