// The normal laws of what is left: bounded by what a splice showed, counted down by placements. Private to the door `remaining.ts`.

import type { LossLearnt } from './loss.ts';

/** A normal law of parts. */
export interface Normal {
  readonly mean: number;
  readonly variance: number;
}

/** Density of the standard normal law. */
function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** P(Z < z), Abramowitz & Stegun 26.2.17, error below 7.5e-8. */
export function below(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const upper = density(z) * series;
  return z < 0 ? upper : 1 - upper;
}

/**
 * Mean and variance of a normal law known to lie in `low..high` (standard result for the doubly truncated normal). Where the
 * law puts less than 1 in 1000 inside, it is not believed: evenly spread over the bounds.
 */
export function truncated(law: Normal, low: number, high: number): Normal & { readonly believed: boolean } {
  const sd = Math.sqrt(law.variance);
  const even = { mean: (low + high) / 2, variance: (high - low) ** 2 / 12 };
  if (sd === 0) {
    const inside = law.mean >= low && law.mean <= high;
    return inside ? { ...law, believed: true } : { ...even, believed: false };
  }
  const a = (low - law.mean) / sd;
  const b = (high - law.mean) / sd;
  const share = below(b) - below(a);
  if (share < 0.001) return { ...even, believed: false };
  const shift = (density(a) - density(b)) / share;
  const mean = law.mean + sd * shift;
  const squeeze = 1 + (a * density(a) - b * density(b)) / share - shift * shift;
  return { mean, variance: law.variance * Math.max(0, squeeze), believed: true };
}

/** The spread of what placements take, parts: `ofPicks` the negative binomial's variance, `ofLoss` the deviation that the loss's own doubt adds. */
export function lossSpread(
  placed: number,
  { alpha, beta }: Pick<LossLearnt, 'alpha' | 'beta'>,
): { readonly ofPicks: number; readonly ofLoss: number } {
  const strength = alpha + beta;
  const p = alpha / strength;
  const kept = 1 - p;
  return {
    ofPicks: (placed * p) / kept ** 2,
    ofLoss: (placed / kept ** 2) * Math.sqrt((p * kept) / (strength + 1)),
  };
}

/** Takes placements off a law of parts: each costs 1/(1-p) picks, with the spread of the negative binomial and of the loss itself. */
export function countedDown(law: Normal, placed: number, loss: LossLearnt): Normal {
  const { ofPicks, ofLoss } = lossSpread(placed, loss);
  const kept = 1 - loss.alpha / (loss.alpha + loss.beta);
  return { mean: law.mean - placed / kept, variance: law.variance + ofPicks + ofLoss * ofLoss };
}
