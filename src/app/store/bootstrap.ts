// A new tablet of an old plant: it starts from the state that another tablet folded, is of use at once, and takes the
// entries behind that state in later. Method: the state as it was some thousand entries ago, and those entries themselves,
// which fold as ever; what comes late may belong between them. Each chain is folded in its own order, so that "what is in the
// state" is one number a chain. It lies in the log's database until every entry that it stands for is here and was folded here
// too: a cache may be lost, and the part of the log that is here would then be taken for the whole.

import type { FloorState, FoldPosition } from '../../../shared/floor/state.ts';
import { chainId, type Entry } from '../../../shared/log/entry.ts';
import { bootstrapKey, type LogDatabase } from './database.ts';

/** A chain, and how far it goes. */
export interface ChainEnd {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
}

/** A state folded elsewhere that stands in for entries not here yet. */
export interface Bootstrap {
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

/** Looked up for every entry of a year. */
const endsOf = new WeakMap<Bootstrap, ReadonlyMap<string, number>>();

/** True where the entry is in the state already. */
export function isIn(bootstrap: Bootstrap, entry: Pick<Entry, 'tablet' | 'epoch' | 'seq'>): boolean {
  let ends = endsOf.get(bootstrap);
  if (!ends) {
    ends = new Map(bootstrap.heads.map((head) => [chainId(head), head.seq]));
    endsOf.set(bootstrap, ends);
  }
  return entry.seq <= (ends.get(chainId(entry)) ?? 0);
}

/** Entries of the state that are not here yet. */
export async function countMissing(log: LogDatabase, bootstrap: Bootstrap): Promise<number> {
  let missing = bootstrap.count;
  for (const { tablet, epoch, seq } of bootstrap.heads) {
    missing -= await log.entries
      .where('[tablet+epoch+seq]')
      .between([tablet, epoch, 1], [tablet, epoch, seq], true, true)
      .count();
  }
  // What came and was quarantined will not come again: the fold without it is compared, and what differs is told.
  for (const { value } of await log.aside.toArray()) {
    const { tablet, epoch, seq } = (value ?? {}) as Partial<ChainEnd>; // looked at on the next line
    if (typeof tablet !== 'string' || typeof epoch !== 'string' || !Number.isSafeInteger(seq)) continue;
    const entry = { tablet, epoch, seq: seq as number }; // a safe integer is a number
    if (isIn(bootstrap, entry) && !(await log.entries.get([tablet, epoch, entry.seq]))) missing -= 1;
  }
  return missing;
}

/** What the state stands for is here and folded: it is needed no more. */
export async function dropBootstrap(log: LogDatabase): Promise<void> {
  await log.meta.delete(bootstrapKey);
}
