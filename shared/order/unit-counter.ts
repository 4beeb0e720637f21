// What counts the feeders of a changing order, and what its two forms share.

import type { OrderModel } from './problem.ts';

/** Counts for one model; holds the state of one base sequence. */
export interface UnitCounter {
  /**
   * Takes `sequence` as the base; from the base before it differs only at places `from` … `to` (left out: to the end; the
   * first call: 0 to the end). Returns feeders put in.
   */
  readonly rebase: (sequence: Uint16Array, from: number, to?: number) => number;
  /**
   * Feeders put in by `sequence`, which differs from the base only at places `from` … `to`. Gives up early, with a
   * number above `limit`, when by a place after `to` it is more than `slack` worse than `limit` allows.
   */
  readonly count: (sequence: Uint16Array, from: number, to: number, limit: number, slack: number) => number;
  /** Writes the feeders put in at each place of the base; 0 for a load before. */
  readonly writeIn: (sequence: Uint16Array, inAt: Int32Array) => void;
  /** Places evaluated since the start: the measure of work done. */
  readonly work: () => number;
}

/** Feeders put in at each place of a base, from what is kept before each of its places; 0 for a load before. */
export function writeIn(
  model: OrderModel,
  keptBefore: Int32Array,
  sequence: Uint16Array,
  inAt: Int32Array,
): void {
  for (let place = 0; place < model.jobCount; place++) {
    const job = sequence[place]!;
    const size = model.starts[job + 1]! - model.starts[job]!;
    inAt[place] = model.hasLoad && place === 0 ? 0 : size - (keptBefore[place + 1]! - keptBefore[place]!);
  }
}
