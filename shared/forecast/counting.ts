// Does the run still count its panels, and from when on did the line stand where it does not?
// Method: working time since the last count, breaks and entered stops left out, against the expected cycle. A forecast is computed from
// the last count on, so that its moments stand still on the clock while nobody counts. Computing from now was refused: a run-out that
// nobody feeds would stay "in 4 min" for ever.

import { type WorkingTime, workingMoment, workingSeconds } from './working-time.ts';

/** Expected cycles without a count after which it is said that nobody counts. */
export const CEASED_CYCLES = 3;
/** Cycles without a count from which on a stop is asked whether it began earlier. */
const STOOD_CYCLES = 2;

/** What is known of a run's counts at a moment. */
export interface CountsSeen {
  readonly nowMs: number;
  /** The newest count that added panels, or the run's start where there was none; ms since 1970. */
  readonly lastMs: number;
  /** Expected working seconds from panel to panel, above 0. */
  readonly panelSeconds: number;
  /** The line's working time without the run's own stops. */
  readonly calendar: WorkingTime;
}

/** How a run's counting stands. */
export interface Counting {
  /** The newest count, never later than now; ms since 1970. */
  readonly lastMs: number;
  /** Working seconds since then, 0 or more. */
  readonly quietSeconds: number;
  /** True where more than three expected cycles went by: what is foretold holds only if the line kept its pace. */
  readonly ceased: boolean;
}

/** How counting stands. `isDue`: false where no count is to come, since the line stands or all panels are done: then none is missed. */
export function countingOf(seen: CountsSeen, isDue: boolean): Counting {
  const lastMs = Math.min(seen.lastMs, seen.nowMs);
  const quietSeconds = Math.max(0, workingSeconds(seen.calendar, lastMs, seen.nowMs));
  return { lastMs, quietSeconds, ceased: isDue && quietSeconds > CEASED_CYCLES * seen.panelSeconds };
}

/**
 * The moment from which the line stood where a stop is entered only now: the last count and one cycle of working time, ms since 1970.
 * Null where fewer than two cycles went by without a count: then it stood from now on, as far as anybody can tell.
 * Example: counted at 13:41:00, 30 s a panel, asked at 13:55: 13:41:30.
 */
export function stoodFrom(seen: CountsSeen): number | null {
  const { lastMs, quietSeconds } = countingOf(seen, true);
  if (quietSeconds <= STOOD_CYCLES * seen.panelSeconds) return null;
  return workingMoment(seen.calendar, lastMs, seen.panelSeconds);
}
