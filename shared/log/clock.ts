// Hybrid logical clock: reads like a wall clock, never runs backwards, and puts a cause before its effect across tablets.
// Source: Kulkarni, Demirbas, Madappa, Avva, Leone 2014, "Logical Physical Clocks" (send and receive rules).
// A tablet whose clock was set back goes on from its last reading. Drift is told; a reading further ahead than the limit is
// nobody's to follow, else one tablet with a wrong or forged clock would carry all others along with it.

import { type ClockReading, clockCountMost, isBounded } from './entry.ts';

/** Drift beyond which a reading is flagged to people, in ms. Common practice: five minutes. */
export const driftLimitMs = 5 * 60_000;

/** Ahead of the true time beyond which an entry goes into no log, in ms: an hour, so that a clock set by hand a little wrong harms nobody. */
export const aheadLimitMs = 60 * 60_000;

/** The next reading for an own event. `wallMs`: the tablet's clock, ms since 1970. Always later than `last`. */
export function tickClock(last: ClockReading | null, wallMs: number): ClockReading {
  if (last === null || wallMs > last.ms) return { ms: wallMs, n: 0 };
  return last.n < clockCountMost ? { ms: last.ms, n: last.n + 1 } : { ms: last.ms + 1, n: 0 };
}

/** May a reading be followed? Not outside its bounds; nor, where the true time `nowMs` is known, beyond the limit ahead of that. */
export function mayFollow(reading: ClockReading, nowMs: number | null): boolean {
  return isBounded(reading) && (nowMs === null || reading.ms <= nowMs + aheadLimitMs);
}

/** The reading after an event of another tablet was seen: own later events come after it. */
export function mergeClock(last: ClockReading | null, seen: ClockReading): ClockReading {
  if (last === null || compareClock(seen, last) > 0) return seen;
  return last;
}

/** Negative, zero or positive as `a` is before, equal to or after `b`. */
export function compareClock(a: ClockReading, b: ClockReading): number {
  return a.ms - b.ms || a.n - b.n;
}

/** How far a reading runs ahead of a wall clock, in ms; zero where it does not. */
export function clockAhead(reading: ClockReading, wallMs: number): number {
  return Math.max(0, reading.ms - wallMs);
}
