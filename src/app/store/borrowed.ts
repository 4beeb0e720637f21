// A new tablet of an old plant: it starts from the state that another tablet folded, is of use at once, and takes the
// entries behind that state in later. Method: the state as it was some thousand entries ago, and those entries themselves,
// which fold as ever; what comes late may belong between them. Each chain is folded in its own order, so that "what is in the
// state" is one number a chain. It lies in the log's database until every entry that it stands for is here and was folded here
// too: a cache may be lost, and the part of the log that is here would then be taken for the whole.

import { applyEntry } from '../../../shared/floor/fold.ts';
import type { Replica } from '../../../shared/floor/replica.ts';
import type { FloorState, FoldPosition } from '../../../shared/floor/state.ts';
import { chainId, type Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { entryToRow, type LogDatabase } from './database.ts';
import type { Handed } from './pack.ts';

/** A chain, and how far it goes. */
export interface ChainEnd {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
}

/** A state folded elsewhere that stands in for entries not here yet. */
export interface Borrowed {
  /** Names fold and shape. */
  readonly fold: string;
  readonly state: FloorState;
  readonly position: FoldPosition;
  /** Entries in it. */
  readonly count: number;
  /** Up to where each chain is in it. */
  readonly heads: readonly ChainEnd[];
  /** The tablet that folded it, as the server says; null or absent where that is not known. */
  readonly from?: string | null;
}

const KEY = 'borrowed';

/** What this tablet can hand on; null where it does not hold and has not folded exactly the whole of every chain. */
export function handOn(fold: string, replica: Replica, heads: readonly ChainEnd[]): Handed | null {
  const oldest = replica.marks[0];
  if (!oldest?.position) return null;
  if (heads.reduce((sum, head) => sum + head.seq, 0) !== replica.count) return null;
  const after = new Map<string, number>();
  for (const entry of replica.tail) after.set(chainId(entry), (after.get(chainId(entry)) ?? 0) + 1);
  const before = heads
    .map(({ tablet, epoch, seq }) => ({
      tablet,
      epoch,
      seq: seq - (after.get(chainId({ tablet, epoch })) ?? 0),
    }))
    .filter((head) => head.seq > 0);
  const { state, position, count } = oldest;
  return { borrowed: { fold, state, position, count, heads: before }, tail: [...replica.tail] };
}

/**
 * Keeps a borrowed state and its tail, durably, and answers it as it was kept; null where it does not suit this tablet: it knows
 * others already, or wrote things alone that belong before the state and that nobody may miss meanwhile.
 */
export async function keepBorrowed(
  log: LogDatabase,
  tablet: string,
  handed: Handed,
): Promise<Borrowed | null> {
  const { tail } = handed;
  let { borrowed } = handed;
  return log.transaction('rw', log.entries, log.meta, async () => {
    const rows = await log.entries.limit(OWN_AT_MOST + 1).toArray();
    const own = rows.map((row) => row.entry).sort(compareEntries);
    if (own.length > OWN_AT_MOST || own.some((entry) => entry.tablet !== tablet)) return null;
    for (const entry of own) {
      if (compareEntries(entry, borrowed.position) > 0 || isIn(borrowed, entry)) continue;
      if (entry.kind !== 'tablet.opened' || entry.seq !== 1) return null;
      // That it was opened says nothing about the floor: it goes in as if it had been told in time.
      applyEntry(borrowed.state, entry);
      const heads = [...borrowed.heads, { tablet, epoch: entry.epoch, seq: 1 }];
      borrowed = { ...borrowed, heads, count: borrowed.count + 1 };
    }
    const there = new Set(own.map((entry) => `${chainId(entry)}/${entry.seq}`));
    const fresh = tail.filter((entry) => !there.has(`${chainId(entry)}/${entry.seq}`));
    await log.entries.bulkAdd(fresh.map(entryToRow));
    await log.meta.put({ key: KEY, value: borrowed });
    return borrowed;
  });
}

/** More than this written alone is a plant of its own. */
const OWN_AT_MOST = 1_000;

/** The borrowed state that this log still needs. */
export async function readBorrowed(log: LogDatabase): Promise<Borrowed | null> {
  return ((await log.meta.get(KEY))?.value as Borrowed | undefined) ?? null; // written above only
}

/** Looked up for every entry of a year. */
const endsOf = new WeakMap<Borrowed, ReadonlyMap<string, number>>();

/** True where the entry is in the state already. */
export function isIn(borrowed: Borrowed, entry: Pick<Entry, 'tablet' | 'epoch' | 'seq'>): boolean {
  let ends = endsOf.get(borrowed);
  if (!ends) {
    ends = new Map(borrowed.heads.map((head) => [chainId(head), head.seq]));
    endsOf.set(borrowed, ends);
  }
  return entry.seq <= (ends.get(chainId(entry)) ?? 0);
}

/** Entries of the state that are not here yet. */
export async function countMissing(log: LogDatabase, borrowed: Borrowed): Promise<number> {
  let missing = borrowed.count;
  for (const { tablet, epoch, seq } of borrowed.heads) {
    missing -= await log.entries
      .where('[tablet+epoch+seq]')
      .between([tablet, epoch, 1], [tablet, epoch, seq], true, true)
      .count();
  }
  // What came and was set aside will not come again: the fold without it is compared, and what differs is told.
  for (const { value } of await log.aside.toArray()) {
    const { tablet, epoch, seq } = (value ?? {}) as Partial<ChainEnd>; // looked at on the next line
    if (typeof tablet !== 'string' || typeof epoch !== 'string' || !Number.isSafeInteger(seq)) continue;
    const entry = { tablet, epoch, seq: seq as number }; // a safe integer is a number
    if (isIn(borrowed, entry) && !(await log.entries.get([tablet, epoch, entry.seq]))) missing -= 1;
  }
  return missing;
}

/** What the state stands for is here and folded: it is needed no more. */
export async function giveBack(log: LogDatabase): Promise<void> {
  await log.meta.delete(KEY);
}
