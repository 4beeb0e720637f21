// From when until when the shift's report is: begun at a whole minute, so that it is not read anew at each glance at the clock, and never
// ahead of the clock, where a stop would be told longer than it was.

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;

/** Spans offered where the line's plan has no shift now, and beside it, hours. */
export const spanHours = [8, 12, 24] as const;

/** The shift that the line's plan has now, or so many hours up to now. */
export type ShiftChoice = 'shift' | (typeof spanHours)[number];

/** The minute that a moment (ms since 1970) lies in, by its beginning. */
export function wholeMinute(ms: number): number {
  return Math.floor(ms / MINUTE_MS) * MINUTE_MS;
}

/** Where the report begins, ms since 1970. `shiftFromMs`: null where the plan has no shift now, which then is eight hours. */
export function beginOf(chosen: ShiftChoice, shiftFromMs: number | null, nowMs: number): number {
  if (chosen === 'shift' && shiftFromMs !== null) return shiftFromMs;
  return wholeMinute(nowMs) - (chosen === 'shift' ? 8 : chosen) * HOUR_MS;
}

/** Where it ends, which it does not include itself: what is entered at this moment belongs to it. */
export function endOf(nowMs: number): number {
  return nowMs + 1;
}
