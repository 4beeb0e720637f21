// Parts taken from each place, summed until an hour is over: one entry an hour and line, so that a year of them stays small. What was summed
// when a link is killed is lost: it is evidence of a loss, and no count rests on it.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { chunksOf } from '../../../shared/kit/chunks.ts';
import type { Use } from './messages.ts';

const EVERY_MS = 3_600_000;
/** No machine places more in an hour: what says so is not counted on. */
const SUM_MOST = 1e9;
/** Rows of one entry. */
const ROWS_MOST = 200;
/** Places that are summed at one time; more are not kept. */
const PLACES_MOST = 2_000;

type Row = PayloadOf<'parts.used'>['uses'][number];

/** The sums of one station. */
export interface Uses {
  readonly add: (uses: readonly Use[], slotOf: (use: Use) => string | null, nowMs: number) => void;
  /** What was summed before the machine turned out to tell it better another way. */
  readonly clear: () => void;
  /** The rows of the entries to write, where an hour is over or it `isEnd`. */
  readonly due: (nowMs: number, isEnd: boolean) => readonly (readonly Row[])[];
}

/** Begins sums. */
export function openUses(): Uses {
  const rows = new Map<string, Row>();
  let sinceMs: number | null = null;
  return {
    add: (uses, slotOf, nowMs) => {
      for (const use of uses) {
        const slot = slotOf(use);
        const { reel, feeder } = use.place;
        const key = JSON.stringify([slot, reel, feeder]);
        const there = rows.get(key) ?? { slot, reel, feeder, used: 0, spoiled: 0 };
        if (!rows.has(key) && rows.size >= PLACES_MOST) continue;
        if (use.used + use.spoiled === 0) continue;
        const sum = (one: number, more: number) => Math.min(SUM_MOST, one + more);
        rows.set(key, {
          ...there,
          used: sum(there.used, use.used),
          spoiled: sum(there.spoiled, use.spoiled),
        });
        sinceMs ??= nowMs;
      }
    },
    clear: () => {
      rows.clear();
      sinceMs = null;
    },
    due: (nowMs, isEnd) => {
      if (sinceMs === null || (!isEnd && nowMs - sinceMs < EVERY_MS)) return [];
      const all = [...rows.values()];
      rows.clear();
      sinceMs = null;
      return chunksOf(all, ROWS_MOST);
    },
  };
}
