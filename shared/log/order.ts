// The one order in which every tablet and server folds the log: hybrid clock, then names. Total and the same everywhere,
// and never against a tablet's own sequence, since its clock readings only grow.

import { compareClock } from './clock.ts';
import type { ClockReading, Entry } from './entry.ts';

/** What the order looks at. */
export type OrderKey = Pick<Entry, 'tablet' | 'epoch' | 'seq'> & { readonly hlc: ClockReading };

/** Negative, zero or positive as `a` folds before, with or after `b`; zero only for the same entry. */
export function compareEntries(a: OrderKey, b: OrderKey): number {
  return (
    compareClock(a.hlc, b.hlc) ||
    compareText(a.tablet, b.tablet) ||
    compareText(a.epoch, b.epoch) ||
    a.seq - b.seq
  );
}

/** Compares by UTF-16 code units: the same on every machine and in every language. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Where `entry` belongs in an ordered list (binary search): the index of the first entry not before it. */
export function orderedIndex(entries: readonly OrderKey[], entry: OrderKey): number {
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (compareEntries(entries[middle] as OrderKey, entry) < 0)
      low = middle + 1; // middle is within bounds
    else high = middle;
  }
  return low;
}
