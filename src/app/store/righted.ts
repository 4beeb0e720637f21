// A clock that ran far ahead: what it dated would stand after everything that happens for years, on every tablet. Method: once the
// true time is known, such entries are quarantined. Own ones that a person made here are told again in a new life of this tablet's chain, at
// the time that the clock ought to have shown; the sealed originals are kept. Dating them anew in place was refused: no seal would hold.

import { formatMoment } from '../../../shared/kit/moment.ts';
import { aheadLimitMs, tickClock } from '../../../shared/log/clock.ts';
import {
  type ClockReading,
  chainId,
  clockMsMost,
  type Entry,
  entryId,
  firstPrev,
  isBounded,
  type JsonObject,
} from '../../../shared/log/entry.ts';
import { hashText, sealEntry } from '../../../shared/log/seal.ts';
import { newId } from '../device/ids.ts';
import { entryToRow, type LogDatabase, orderIndex, type QuarantineRow } from './database.ts';
import { type Identity, publicKey, signHash } from './identity.ts';

/** What is known when clocks are put right. */
export interface Right {
  /** The true time, ms since 1970; null where nobody told it, and only readings out of all bounds are wrong for sure. */
  readonly nowMs: number | null;
  /** What this tablet's clock shows, ms since 1970. */
  readonly wallMs: number;
  /** `tablet/epoch` -> sequence number up to which the server holds that chain. */
  readonly acked: Readonly<Record<string, number>>;
  /** For the first entry of the new chain. */
  readonly app: string;
  readonly name: string;
}

/** Puts clocks right; the identity to go on with, or null where nothing had to be done. Durable, or nothing is changed. */
export async function rightClocks(
  log: LogDatabase,
  identity: Identity,
  right: Right,
): Promise<Identity | null> {
  const limitMs = right.nowMs === null ? clockMsMost : right.nowMs + aheadLimitMs;
  const ahead = (
    await log.entries
      .where(orderIndex)
      .above([limitMs + 1])
      .toArray()
  ).map((row) => row.entry);
  const own = await wrongOwn(log, { identity, right, ahead });
  const others = ahead.filter((entry) => entry.tablet !== identity.tablet);
  if (own.length === 0 && others.length === 0) return null;
  const next: Identity = own.length === 0 ? identity : { ...identity, epoch: newId() };
  const [first] = own;
  const kept = first && (await log.entries.get([first.tablet, first.epoch, first.seq - 1]));
  const before = kept?.entry.hlc ?? null;
  const told = first ? await tellAgain(own, { identity: next, right, limitMs, before }) : [];
  const last = told.at(-1);
  const atMs = right.nowMs ?? right.wallMs;
  await log.transaction('rw', log.entries, log.meta, log.aside, async () => {
    const gone = [...own, ...others];
    await log.aside.bulkPut(gone.map((entry) => quarantineRow(entry, 'clock-ahead', atMs)));
    await log.entries.bulkDelete(gone.map(({ tablet, epoch, seq }) => [tablet, epoch, seq]));
    if (!last) return;
    await log.entries.bulkAdd(told.map(entryToRow));
    await log.meta.put({ key: 'head', value: { seq: last.seq, hash: last.hash, hlc: last.hlc } });
    await log.meta.put({ key: 'identity', value: next });
  });
  return next;
}

/** Own entries from the first one on that no reader takes: in chains, since what follows it cannot travel without it. */
async function wrongOwn(
  log: LogDatabase,
  { identity, right, ahead }: { identity: Identity; right: Right; ahead: readonly Entry[] },
): Promise<readonly Entry[]> {
  const { tablet, epoch } = identity;
  const chain = { tablet, epoch };
  const sent = right.acked[chainId(chain)] ?? 0;
  const between = (from: number) =>
    log.entries
      .where('[tablet+epoch+seq]')
      .between([tablet, epoch, from], [tablet, epoch, Number.MAX_SAFE_INTEGER], true, true);
  const unbounded = await between(sent + 1)
    .filter((row) => !isBounded(row.entry.hlc))
    .first();
  const first = ahead
    .filter((entry) => chainId(entry) === chainId(chain))
    .reduce((least, { seq }) => Math.min(least, seq), unbounded?.seq ?? Number.POSITIVE_INFINITY);
  const earlier = ahead.filter((entry) => entry.tablet === tablet && entry.epoch !== epoch);
  const tail = Number.isFinite(first) ? (await between(first).toArray()).map((row) => row.entry) : [];
  return [...earlier, ...tail];
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
  const tell = async (content: Pick<Entry, 'who' | 'kind' | 'payload'>, atMs: number) => {
    hlc = tickClock(hlc, atMs);
    const { tablet, epoch } = identity;
    const [seq, prev] = [told.length + 1, told.at(-1)?.hash ?? firstPrev];
    const draft = { v: 1 as const, tablet, epoch, seq, at: formatMoment(atMs), hlc, prev };
    const sealed = sealEntry({ ...draft, who: content.who, kind: content.kind, payload: content.payload });
    const entry = { ...sealed, sig: await signHash(identity, sealed.hash) };
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
  await tell({ who: null, kind: 'tablet.opened', payload }, trueMs(first));
  for (const entry of own) {
    if (entry.kind === 'tablet.opened') continue;
    const again = await tell({ ...entry, payload: renamed(entry.payload, names) }, trueMs(entry));
    names.set(entryId(entry), entryId(again));
  }
  return told;
}

function renamed(payload: JsonObject, names: ReadonlyMap<string, string>): JsonObject {
  if (names.size === 0) return payload;
  return JSON.parse(JSON.stringify(payload), (_, value: unknown) =>
    typeof value === 'string' ? (names.get(value) ?? value) : value,
  ) as JsonObject; // the same shape
}

/** The row for what is quarantined. */
export function quarantineRow(value: unknown, fault: string, atMs: number): QuarantineRow {
  return { key: hashText(`${fault} ${JSON.stringify(value) ?? ''}`), fault, atMs, value };
}
