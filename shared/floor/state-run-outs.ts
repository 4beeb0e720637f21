// What the state holds of run-outs: warnings of them, and what came before one. Shapes only.

import type { WarningLevel } from './vocabulary.ts';

/** Who took note of a warning, and how loud it was then. */
export type Acknowledgement = {
  readonly level: WarningLevel;
  readonly by: string | null;
  readonly atMs: number;
};

/** A package that came onto a slot which had too few parts for what was being built. */
export interface CameToSlot {
  /** The entry that put it there. */
  readonly entry: string;
  readonly atMs: number;
  /** Where the act was done: the line, or the lane of it. */
  readonly line: string;
  readonly slot: string;
  readonly feeder: string | null;
  /** Parts that were left by count, on the slot and on those used in turn with it; null where a count is unknown. */
  readonly left: number | null;
  /** What stood there last, and since when. */
  readonly reel: string;
  readonly sinceMs: number;
  /** Entries without which `left` does not hold: those that had put there what stood, and a verdict that a lead cleared. */
  readonly on: readonly string[];
}

/** The part of the state that tells of run-outs. */
export interface RunOutState {
  /** `slotKey#need` -> who took note. */
  readonly acknowledged: Map<string, Acknowledgement>;
  /** `slotKey#need` -> loudest level raised so far and when it is due. */
  readonly raised: Map<string, { readonly level: WarningLevel; readonly atMs: number; readonly due: string }>;
  /** Line that has the slots -> what came onto them, oldest first: of the 25 hours before the newest. */
  readonly came: Map<string, readonly CameToSlot[]>;
}

/** None yet. */
export function emptyRunOuts(): RunOutState {
  return { acknowledged: new Map(), raised: new Map(), came: new Map() };
}
