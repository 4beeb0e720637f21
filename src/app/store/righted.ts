// A clock that ran far ahead: what it dated would stand after everything that happens for years, on every tablet. Method: once the
// true time is known, such entries are quarantined. Own ones that a person made here are told again in a new life of this tablet's chain, at
// the time that the clock ought to have shown; the sealed originals are kept. Dating them anew in place was refused: no seal would hold.

import { formatMoment } from '../../../shared/kit/moment.ts';
import { tickClock } from '../../../shared/log/clock.ts';
import {
  type ClockReading,
  type Entry,
  entryId,
  firstPrev,
  type JsonObject,
} from '../../../shared/log/entry.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import { newId } from '../device/ids.ts';
import { quarantineRow } from './aside.ts';
import { entryToRow, type LogDatabase, lifeKey } from './database.ts';
import { type Identity, publicKey, signHash } from './identity.ts';
import { forgetHead, signHead } from './signed-heads.ts';
import type { Right, Wrong } from './wrong-clocks.ts';

/** Puts clocks right; the identity to go on with. Durable, or nothing is changed. */
export async function rightClocks(
  log: LogDatabase,
  identity: Identity,
  { right, wrong }: { readonly right: Right; readonly wrong: Wrong },
): Promise<Identity> {
  const { limitMs, own, others } = wrong;
  const next: Identity = own.length === 0 ? identity : { ...identity, epoch: newId() };
  const [first] = own;
  const kept = first && (await log.entries.get([first.tablet, first.epoch, first.seq - 1]));
  const before = kept?.entry.hlc ?? null;
  const told = first ? await tellAgain(own, { identity: next, right, limitMs, before }) : [];
  const atMs = right.nowMs ?? right.wallMs;
  const move = { gone: [...own, ...others], told, fault: 'clock-ahead', atMs } as const;
  await log.transaction('rw', log.entries, log.meta, log.aside, () => moveTo(log, next, move));
  // What is left of the life before ends elsewhere now.
  if (next !== identity) await signHead(log, identity);
  return next;
}

/**
 * Tells all of this tablet's present chain again in a new life of it: the server holds another one under its name, which somebody brought
 * before this tablet was let in. Durable, or nothing is changed.
 */
export async function tellAllAgain(
  log: LogDatabase,
  identity: Identity,
  right: Pick<Right, 'app' | 'name' | 'wallMs'>,
): Promise<Identity> {
  const { tablet, epoch } = identity;
  const rows = await log.entries
    .where('[tablet+epoch+seq]')
    .between([tablet, epoch, 0], [tablet, epoch, Number.MAX_SAFE_INTEGER])
    .toArray();
  const own = rows.map((row) => row.entry);
  const next: Identity = { ...identity, epoch: newId() };
  const how = { identity: next, right: { ...right, nowMs: null, acked: {} }, before: null };
  const told = await tellAgain(own, { ...how, limitMs: Number.POSITIVE_INFINITY });
  await log.transaction('rw', log.entries, log.meta, log.aside, () =>
    moveTo(log, next, { gone: own, told, fault: 'name-taken', atMs: right.wallMs }),
  );
  return next;
}

/** Puts entries aside and the told ones in their place, under the tablet's identity from now on. */
async function moveTo(
  log: LogDatabase,
  next: Identity,
  move: {
    readonly gone: readonly Entry[];
    readonly told: readonly Entry[];
    readonly fault: EntryFault;
    readonly atMs: number;
  },
): Promise<void> {
  const { gone, told, fault, atMs } = move;
  await log.aside.bulkPut(gone.map((entry) => quarantineRow(entry, fault, atMs)));
  await log.entries.bulkDelete(gone.map(({ tablet, epoch, seq }) => [tablet, epoch, seq]));
  await log.meta.put({ key: lifeKey, value: newId() });
  const last = told.at(-1);
  if (!last) return;
  for (const epoch of new Set(gone.filter(({ tablet }) => tablet === next.tablet).map((one) => one.epoch)))
    await forgetHead(log, epoch);
  await log.entries.bulkAdd(told.map(entryToRow));
  await log.meta.put({ key: 'head', value: { seq: last.seq, hash: last.hash, hlc: last.hlc } });
  await log.meta.put({ key: 'identity', value: next });
}

interface Telling {
  readonly identity: Identity;
  readonly right: Right;
  readonly limitMs: number;
  /** The last reading that is kept of the chain so far; null where none is. */
  readonly before: ClockReading | null;
}

/** The same entries in a new chain, each at the time that the clock ought to have shown; what names one of them names the new one. */
async function tellAgain(
  own: readonly Entry[],
  { identity, right, limitMs, before }: Telling,
): Promise<readonly Entry[]> {
  const offMs = right.nowMs === null ? 0 : right.nowMs - right.wallMs;
  const nowMs = right.nowMs ?? right.wallMs;
  const names = new Map<string, string>();
  const told: Entry[] = [];
  // After what is kept of the chain before it: a tablet's own acts stay in the order in which they were done.
  let hlc = before;
  const tell = async (content: Pick<Entry, 'who' | 'kind' | 'payload' | 'sig'>, atMs: number) => {
    hlc = tickClock(hlc, atMs);
    const { tablet, epoch } = identity;
    const [seq, prev] = [told.length + 1, told.at(-1)?.hash ?? firstPrev];
    const draft = { v: 1 as const, tablet, epoch, seq, at: formatMoment(atMs), hlc, prev };
    const sealed = sealEntry({ ...draft, who: content.who, kind: content.kind, payload: content.payload });
    // What was signed by itself is again.
    const entry = content.sig === null ? sealed : { ...sealed, sig: await signHash(identity, sealed.hash) };
    told.push(entry);
    return entry;
  };
  /** As the clock showed it, less what it was off by; never later than now. */
  const trueMs = ({ at }: Entry) => {
    const shownMs = Date.parse(at);
    return Math.max(0, Math.min(shownMs > limitMs ? shownMs + offMs : shownMs, nowMs));
  };
  const first = own[0];
  if (!first) return [];
  const previous = first.seq > 1 ? { epoch: first.epoch, seq: first.seq - 1 } : null;
  const payload: JsonObject = { name: right.name, app: right.app, key: await publicKey(identity), previous };
  await tell({ who: null, kind: 'tablet.opened', payload, sig: null }, trueMs(first));
  for (const entry of own) {
    if (entry.kind === 'tablet.opened') continue;
    const again = await tell({ ...entry, payload: renamed(entry.payload, names) }, trueMs(entry));
    names.set(entryId(entry), entryId(again));
  }
  return told;
}

/** What a passkey signed was the act in the life before: the signature stays with the entries put aside. */
function renamed({ passkey: _, ...payload }: JsonObject, names: ReadonlyMap<string, string>): JsonObject {
  if (names.size === 0) return payload;
  return JSON.parse(JSON.stringify(payload), (_, value: unknown) =>
    typeof value === 'string' ? (names.get(value) ?? value) : value,
  ) as JsonObject; // the same shape
}
