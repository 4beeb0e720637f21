// How many totals may a station still put into the log? As many as keep a year of it below a gigabyte, used when panels come.
// Method: a store of them that fills by one every twenty-two seconds, to a week's worth at most, and outlasts a start of the link. A line that
// makes no more panels a week than that has each told at once, however fast it is while it runs; one that makes more waits for the next.
// Refused: a pause after each, which keeps a fast line's tablets waiting in a week that is half nights.

/** One more a station every so often, ms: 1.4 million a year, of some 610 bytes in the server's store with its indexes and tree. */
export const TOTAL_EVERY_MS = 22_000;
/** Most that are spared: a week's. */
export const SPARED_MOST = Math.floor((7 * 86_400_000) / TOTAL_EVERY_MS);

/** What a station may still tell. */
export interface LogBudget {
  /** True where a total may go into the log at `ms` of a clock that never jumps. */
  readonly may: (ms: number) => boolean;
  /** One went there; those that had to go there all the same count too. */
  readonly told: () => void;
  /** Whole totals that are spared. */
  readonly spared: () => number;
}

/** Opens the budget of a station that has `spared` totals left at `startMs`. */
export function openLogBudget(spared: number, startMs: number): LogBudget {
  // In ms of the time that they took to gather, so that no sum is off by a rounding.
  let [leftMs, atMs] = [spared * TOTAL_EVERY_MS, startMs];
  return {
    may: (ms) => {
      leftMs = Math.min(SPARED_MOST * TOTAL_EVERY_MS, leftMs + Math.max(0, ms - atMs));
      atMs = Math.max(atMs, ms);
      return leftMs >= TOTAL_EVERY_MS;
    },
    told: () => {
      leftMs = Math.max(0, leftMs - TOTAL_EVERY_MS);
    },
    spared: () => Math.floor(leftMs / TOTAL_EVERY_MS),
  };
}
