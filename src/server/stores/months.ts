// Which entries came in during a month? By when the server took them, not by the tablets' clocks: what a tablet brings later comes in later, so that
// a month that is over stays as it is, but for a log that was put back. A month begins at the first entry that came in at or after its first moment,
// UTC, wherever a clock that was set back puts others: months never overlap and leave nothing between them.

import type { Store } from './store.ts';

/** A stretch of the log by place: after the first, up to the last. */
export interface LogStretch {
  readonly afterPos: number;
  readonly untilPos: number;
}

/** The first moment of a month as `2026-03`, and of the next one, ms since 1970; null where it is none. */
export function monthSpan(month: string): { readonly fromMs: number; readonly toMs: number } | null {
  const [, year, number] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month) ?? [];
  if (year === undefined || number === undefined) return null;
  return { fromMs: Date.UTC(Number(year), Number(number) - 1), toMs: Date.UTC(Number(year), Number(number)) };
}

/** Where a month lies; null while nothing has come in after it: then it may still grow. */
export async function findMonth(
  store: Pick<Store, 'firstSince'>,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
): Promise<LogStretch | null> {
  const [first, next] = [await store.firstSince(fromMs), await store.firstSince(toMs)];
  return first === null || next === null ? null : { afterPos: first - 1, untilPos: next - 1 };
}
