// Faults of picking, summed by place until five minutes are over: a hint beside what a feeder loses, and no count rests on it. What was summed
// when a link is killed is lost.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { chunksOf } from '../../../shared/kit/chunks.ts';
import type { Place } from './messages.ts';

const EVERY_MS = 300_000;
/** Rows of one entry. */
const ROWS_MOST = 200;
/** Places that are summed at one time; more are not kept. */
const PLACES_MOST = 2_000;
/** Faults that stand and are not cleared yet, by their names: told again they are the same. */
const OPEN_KEPT = 1_000;

type Row = PayloadOf<'parts.missed'>['misses'][number];

/** The faults of one station. */
export interface Faults {
  /** A fault that occurred at `atMs` is told, on the clock of `due`; one of a name that is not cleared yet is no other. */
  readonly add: (
    place: Place,
    slot: string | null,
    of: { readonly fault: string | null; readonly atMs: number; readonly nowMs: number },
  ) => void;
  readonly clear: (fault: string) => void;
  /** What to write, where five minutes are over or it `isEnd`: rows, and how long before `nowMs` the first was, s. */
  readonly due: (
    nowMs: number,
    isEnd: boolean,
  ) => readonly { readonly misses: Row[]; readonly late: number }[];
}

/** Begins sums. */
export function openFaults(): Faults {
  const rows = new Map<string, Row>();
  const open = new Set<string>();
  /** When the first of them was, and when it came. */
  let since: { firstMs: number; readonly cameMs: number } | null = null;
  return {
    add: ({ reel, feeder }, slot, { fault, atMs, nowMs }) => {
      if (fault !== null) {
        if (open.has(fault)) return;
        open.add(fault);
        const [oldest] = open;
        if (open.size > OPEN_KEPT && oldest !== undefined) open.delete(oldest);
      }
      const key = JSON.stringify([slot, reel, feeder]);
      const there = rows.get(key);
      if (!there && rows.size >= PLACES_MOST) return;
      rows.set(key, { slot, reel, feeder, times: (there?.times ?? 0) + 1 });
      if (since) since.firstMs = Math.min(since.firstMs, atMs);
      else since = { firstMs: atMs, cameMs: nowMs };
    },
    clear: (fault) => {
      open.delete(fault);
    },
    due: (nowMs, isEnd) => {
      if (since === null || (!isEnd && nowMs - since.cameMs < EVERY_MS)) return [];
      const late = Math.max(0, Math.round((nowMs - since.firstMs) / 1000));
      const all = [...rows.values()];
      rows.clear();
      since = null;
      return chunksOf(all, ROWS_MOST).map((misses) => ({ misses, late }));
    },
  };
}
