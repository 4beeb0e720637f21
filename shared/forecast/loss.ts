// How is a learnt loss shown, and is one feeder getting worse?
// Method: points of the Beta law for the middle 90 %; for a rise, the beta-binomial tail of the recent reels under the earlier law.
// Comparing two averages was refused: with a few lost parts a reel, chance alone makes them differ.

import type { LossEvidence, LossLearnt } from '../floor/remaining.ts';
import { betaPoint } from './beta.ts';
import { probabilityLostAtMost } from './beta-binomial.ts';

/** A learnt loss as it is shown: mean and deviation, the middle 90 %, its weight, and what it rests on. Shares of picks. */
export function lossEvidence(learnt: LossLearnt): {
  readonly mean: number;
  readonly sd: number;
  readonly strength: number;
  readonly low: number;
  readonly high: number;
  readonly reels: number;
  readonly picks: number;
  readonly lost: number;
} {
  const strength = learnt.alpha + learnt.beta;
  const mean = learnt.alpha / strength;
  const law = { a: learnt.alpha, b: learnt.beta };
  return {
    mean,
    sd: Math.sqrt((mean * (1 - mean)) / (strength + 1)),
    strength,
    low: betaPoint(0.05, law),
    high: betaPoint(0.95, law),
    reels: learnt.reels,
    picks: learnt.picks,
    lost: learnt.lost,
  };
}

/** Chance below which a worse loss is no longer taken for bad luck. */
export const RISING_CHANCE = 0.01;

/**
 * Is a feeder's loss rising? Asks how likely it is to lose at least as many as in the recent reels, were the earlier law still
 * true (beta-binomial tail). `chance` below 0.01 is a warning. Null where there are no recent picks.
 */
export function risingLoss(
  earlier: LossLearnt,
  recent: readonly LossEvidence[],
): {
  readonly rising: boolean;
  readonly chance: number;
  readonly earlierMean: number;
  readonly recentMean: number;
} | null {
  const picks = Math.round(recent.reduce((sum, reel) => sum + reel.picks, 0));
  const lost = Math.round(recent.reduce((sum, reel) => sum + reel.lost, 0));
  if (picks <= 0) return null;
  const strength = earlier.alpha + earlier.beta;
  const earlierMean = earlier.alpha / strength;
  const chance = 1 - probabilityLostAtMost({ picks, loss: earlierMean, strength }, lost - 1);
  return { rising: chance < RISING_CHANCE, chance, earlierMean, recentMean: lost / picks };
}
