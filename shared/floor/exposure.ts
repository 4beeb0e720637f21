// What the log knows of a reel's floor life: where it was since its bag was opened.

import type { Air } from './vocabulary.ts';

/** From `fromMs` until the next period: where the reel was, and the air there (degrees Celsius, % relative humidity; null: not known). */
export interface ExposurePeriod {
  readonly air: Air;
  readonly fromMs: number;
  readonly celsius: number | null;
  readonly humidity: number | null;
  /** The entry that told it. */
  readonly entry: string;
  /** A lead lets this bake count though the table asks for more; absent where nobody did. */
  readonly approved?: BakeApproval;
}

/** A lead's word on one bake. */
export interface BakeApproval {
  /** The entry that says so. */
  readonly entry: string;
  /** The lead. */
  readonly by: string;
  readonly atMs: number;
  /** How long the bake was by what the lead saw; a shorter one is not approved. */
  readonly hours: number;
}

/** What the log knows of a reel's floor life. */
export interface ReelExposure {
  /** Moisture level on its label, null where that states none. */
  readonly msl: string | null;
  /** By time; the first is the opening of its bag, or the first that anybody told. */
  readonly periods: readonly ExposurePeriod[];
}

/** True where a stated moisture level limits the time out of the bag (J-STD-020: all but level 1). */
export function isLimited(msl: string | null | undefined): boolean {
  return msl !== null && msl !== undefined && msl !== '' && msl !== '1';
}
