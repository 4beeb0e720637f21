// The part of the state that says what is left: ledgers of slots, splices, skipped boards, what finished reels showed. Shapes only.

import type { PlacedDoubt } from './remaining.ts';

/** Boards that were skipped, and on how many panels somebody said how many: those panels may have none. */
export interface SkipsSeen {
  readonly boards: number;
  readonly panels: number;
}

/** What a splice showed: after `placed` placements the parts left up to the old tape's end lay between `low` and `high`. */
export interface Joint {
  readonly placed: number;
  readonly low: number;
  readonly high: number;
  /** Parts on the tape joined then, null where nobody knows, and the variance of that. */
  readonly tail: number | null;
  readonly tailVariance: number;
  /** What was not known of `placed`, since skipped boards were not. */
  readonly doubt: PlacedDoubt;
  /** 1 where nobody entered what this splice itself cost; else 0. */
  readonly uncosted: 0 | 1;
}

/** How many more placements (negative: fewer) a slot used in turn with another would have given, had the other stood there, or not. */
export interface Instead {
  /** The slot's address, and the ledger that this is of. */
  readonly slot: string;
  readonly chain: string;
  /** The entry that put its newest tape there by then. */
  readonly last: string;
  /** Placements of that ledger when this was set down. */
  readonly total: number;
  readonly by: number;
  /** As much of it as was known when its last splice before that was made. */
  readonly jointBy: number;
}

/** Everything put on a slot since its last true count. */
export interface Ledger {
  /** Names the ledger: the entry of the load or of the count that began it. */
  readonly chain: string;
  /** Parts put on in all, null where a count is unknown; `variance` of that. */
  readonly parts: number | null;
  readonly variance: number;
  /** Placements that the slot's own figures no longer hold; with `usedPlacements` they are all since the ledger began. */
  readonly dropped: number;
  /** Splices whose own cost nobody entered: parts are taken off for each. */
  readonly splices: number;
  /** What is not known of the placements until the slot's figures were last set. */
  readonly doubt: PlacedDoubt;
  /** The newest splice, where feeder lengths and pitch are known. */
  readonly joint: Joint | null;
}

/** What a finished reel, or a chain of joined ones, showed of a feeder's losses: raw, so that the computation may change. */
export interface Finished {
  readonly chain: string;
  /** The entry that told the end. */
  readonly entry: string;
  readonly atMs: number;
  readonly line: string;
  readonly slot: string;
  /** Empty where feeders are not known. */
  readonly feeder: string;
  readonly part: string;
  readonly startParts: number;
  readonly startSd: number;
  readonly endParts: number;
  readonly endSd: number;
  readonly placements: number;
  /** One deviation of `placements`, where skipped boards are known as a share only; absent: none. */
  readonly placementsSd?: number;
  /** Set where panels of several boards are in it of which nobody ever entered a skip: lost parts and skipped boards look alike. */
  readonly skipsUnknown?: true;
  /** Splices within it whose own cost nobody entered; absent: none. */
  readonly splices?: number;
  /** How it was told: by a count at the end, a splice that bounds that, or a machine that says what it placed and spoiled so far. */
  readonly told: 'count' | 'splice' | 'machine';
}

/** A reel's own figures for counting it by wound tape or by weight, learnt from a full one of its part. */
export interface FullReel {
  readonly part: string;
  readonly measured: { readonly parts: number; readonly outerMm: number; readonly hubMm: number } | null;
  readonly weighed: { readonly parts: number; readonly massG: number; readonly emptyG: number } | null;
}
