// How many placements will a reel still give, and with what spread?
// Method: the exact law of losses (lattice.ts) where the count is certain; else the same law smeared by the count's normal
// spread: by moments where the whole is nearly even, by summing over the losses where it is lopsided. Simulation was refused:
// slow, and different at every look.

import {
  isCertain,
  type LossLaw,
  lossMoments,
  placementPoints,
  probabilityLostAtMost,
  visitLosses,
} from './lattice.ts';
import { type Moments, momentsBelow, momentsPoint, normalBelow, normalHeight, skewness } from './normal.ts';

/** What is known of one reel. */
export interface ReelOutlook {
  /** Parts left to the pick point, 0 or more. */
  readonly left: number;
  /** Standard deviation of `left`, parts; 0 = counted for certain. */
  readonly sd: number;
  /** Probability that a picked part is lost, 0..1 (the mean, where it is learnt). */
  readonly loss: number;
  /** α+β of the Beta law behind `loss` (`lossEvidence().strength`); absent: the loss is known exactly. */
  readonly lossStrength?: number;
}

/** Spread added to placements by something normal: its variance in placements². */
export interface Smear {
  readonly variance: number;
}

/** Up to this deviation the law of losses is summed term by term. */
const SUMMED_SD = 400;
/** Up to this skewness three moments describe the law to well below one part. */
const EVEN_SKEWNESS = 0.4;

function lossLaw(reel: ReelOutlook): LossLaw {
  return { picks: Math.floor(reel.left), loss: reel.loss, strength: reel.lossStrength ?? Infinity };
}

/**
 * Mean, variance and third central moment of the placements still to come:
 * mean (1-p)R, variance R p (1-p) + (1-p)² σ² with p known (design law); with p learnt its own spread is added.
 */
export function placementMoments(reel: ReelOutlook): Moments {
  const { left, sd, loss } = reel;
  const lost = lossMoments({ picks: left, loss, strength: reel.lossStrength ?? Infinity });
  const count = sd * sd;
  const kept = 1 - loss;
  if (reel.lossStrength === undefined) {
    // Law of total cumulance: losses of the expected count, plus the count's spread seen through the law.
    return {
      mean: kept * left,
      variance: lost.variance + kept * kept * count,
      third: -lost.third + 3 * kept * kept * loss * count,
    };
  }
  const s = reel.lossStrength;
  const extra = (loss * kept * count) / (s + 1); // E[R²] of an uncertain R is left² + σ²
  return { mean: kept * left, variance: lost.variance + extra + kept * kept * count, third: -lost.third };
}

/** The law of losses written out once, with normal noise: placements if so many are lost, and how likely that is. */
interface Smeared {
  readonly means: readonly number[];
  readonly shares: readonly number[];
  readonly deviation: number;
}

/** What lies further out than this many deviations changes no answer. */
const OUTSIDE = 8.5;

function smeared(reel: ReelOutlook, noise: number): Smeared {
  const law = lossLaw(reel);
  const fraction = (reel.left - law.picks) * (1 - reel.loss);
  const means: number[] = [];
  const shares: number[] = [];
  let seen = 0;
  visitLosses(law, (lost, probability) => {
    means.push(law.picks - lost + fraction);
    shares.push(probability);
    seen += probability;
    return seen < 1 - 1e-9;
  });
  return { means, shares, deviation: Math.sqrt(noise) };
}

/** P(X <= x) for X = left - losses + normal noise, and its density there. */
function smearedBelow({ means, shares, deviation }: Smeared, x: number): { share: number; density: number } {
  let share = 0;
  let density = 0;
  for (let i = 0; i < means.length; i++) {
    const z = (x - means[i]!) / deviation;
    if (z < -OUTSIDE) continue;
    share += shares[i]! * (z > OUTSIDE ? 1 : normalBelow(z));
    density += shares[i]! * normalHeight(z);
  }
  return { share, density: density / deviation };
}

/** The point by Newton's steps, kept between bounds that close in; halving where a step would leave them. */
function smearedPoint(reel: ReelOutlook, law: Smeared, share: number): number {
  const moments = placementMoments(reel);
  const reach = 8 * Math.sqrt(moments.variance + law.deviation ** 2) + 1;
  let low = moments.mean - reach;
  let high = Math.max(reel.left + reach, moments.mean + reach);
  let point = moments.mean;
  for (let i = 0; i < 60 && high - low > 1e-9 * reach; i++) {
    const at = smearedBelow(law, point);
    if (at.share < share) low = point;
    else high = point;
    const step = point - (at.share - share) / at.density;
    const next = step > low && step < high ? step : (low + high) / 2;
    if (Math.abs(next - point) < 1e-9 * reach) return next;
    point = next;
  }
  return point;
}

function isSummable(reel: ReelOutlook): boolean {
  return lossMoments(lossLaw(reel)).variance <= SUMMED_SD * SUMMED_SD;
}

/**
 * Points of the placements still to come at the given shares (rising, each between 0 and 1), with normal noise added.
 * Without spread of count or noise: exact, whole numbers. Never below 0: a reel cannot give fewer.
 */
export function placementsAt(reel: ReelOutlook, shares: readonly number[], smear: Smear): number[] {
  const kept = 1 - reel.loss;
  const noise = kept * kept * reel.sd * reel.sd + smear.variance;
  const law = lossLaw(reel);
  if (noise === 0 && (isCertain(law) || isSummable(reel))) {
    const fraction = (reel.left - law.picks) * kept;
    return placementPoints(law, shares).map((point) => point + fraction);
  }
  const moments = placementMoments(reel);
  const whole = { ...moments, variance: moments.variance + smear.variance };
  if (Math.abs(skewness(whole)) <= EVEN_SKEWNESS || !isSummable(reel)) {
    return shares.map((share) => Math.max(0, momentsPoint(whole, share)));
  }
  const written = smeared(reel, noise);
  return shares.map((share) => Math.max(0, smearedPoint(reel, written, share)));
}

/**
 * Probability that the reel gives fewer than `wanted` placements. Exact where the count is certain; with an uncertain count
 * a half part is taken off `wanted` (parts are whole), so that the answer passes into the exact one as the spread vanishes.
 */
export function riskOfFewerThan(reel: ReelOutlook, wanted: number): number {
  const most = Math.ceil(wanted - 1e-9) - 1; // fewer than 12 = at most 11
  if (most < 0) return 0;
  const law = lossLaw(reel);
  if (reel.sd === 0 && (isCertain(law) || isSummable(reel))) {
    const leastLost = law.picks - most; // placements <= most <=> lost >= picks - most
    if (isCertain(law)) return (reel.loss === 1 ? 0 : law.picks) <= most ? 1 : 0;
    return Math.min(1, Math.max(0, 1 - probabilityLostAtMost(law, leastLost - 1)));
  }
  const kept = 1 - reel.loss;
  const moments = placementMoments(reel);
  if (Math.abs(skewness(moments)) <= EVEN_SKEWNESS || !isSummable(reel))
    return momentsBelow(moments, most + 0.5);
  return smearedBelow(smeared(reel, kept * kept * reel.sd * reel.sd), most + 0.5).share;
}
