// How long a machine's channel is waited for, asked, and left alone.

/** How long things may take, ms. */
export interface HermesTimes {
  readonly connectMs: number;
  /** From the connection to the machine's own word. */
  readonly greetMs: number;
  /** A machine that answers is asked so often; that is its beat. */
  readonly askMs: number;
  /** The beat of one that does not answer: the standard's usual period. */
  readonly ownBeatMs: number;
  readonly lookMs: number;
  /** Longest wait before another try with a machine that has talked before. */
  readonly againMs: number;
  /** The wait before another try where somebody answered and never said who it is: it may be a port that only a neighbour may hold. */
  readonly strangeMs: number;
  /** The wait before another try at a port that is surely not the right one. */
  readonly wrongMs: number;
}

/** As a plant has them. */
export const usualTimes: HermesTimes = {
  connectMs: 5_000,
  greetMs: 10_000,
  askMs: 10_000,
  ownBeatMs: 60_000,
  lookMs: 1_000,
  againMs: 8_000,
  strangeMs: 60_000,
  wrongMs: 3_600_000,
};
