// How many placements will a reel still give, and with what spread?
// Method: the exact law of losses (beta-binomial.ts) where the count is certain; else the same law smeared by the count's normal
// spread: by moments where the whole is nearly even, by summing over the losses where it is lopsided, in steps no wider than the
// spread allows. What was placed since the count belongs to the same law: the doubt of a loss is one for the whole tape, lopsided to
// its end. Simulation was refused: slow, and different at every look.

import {
  isCertain,
  type LossLaw,
  lossMoments,
  placementPoints,
  probabilityLostAtMost,
  visitLossSteps,
} from './beta-binomial.ts';
import {
  type Moments,
  momentsBelow,
  momentsPoint,
  normalHeight,
  skewness,
  tailOverHeight,
} from './normal.ts';

/** What is known of one reel. */
export interface ReelOutlook {
  /** Parts left to the pick point, 0 or more. */
  readonly left: number;
  /** Standard deviation of the count behind `left`, parts; 0 = counted for certain. */
  readonly sd: number;
  /** Placements since that count, 0 or more: `left` was computed with their expected losses. Absent: counted just now. */
  readonly taken?: number;
  /** Probability that a picked part is lost, 0..1 (the mean, where it is learnt). */
  readonly loss: number;
  /** α+β of the Beta law behind `loss` (`lossEvidence().strength`); absent: the loss is known exactly. */
  readonly lossStrength?: number;
}

/** Spread added to placements by something normal: its variance in placements². */
export interface Smear {
  readonly variance: number;
}

/** A variance below this is none: a thousand-millionth of a part. */
const NO_SPREAD = 1e-18;
/** Up to this deviation the law of losses is summed term by term. */
const SUMMED_SD = 400;
/** Up to this skewness three moments describe the law to well below one part. */
const EVEN_SKEWNESS = 0.4;

/** All picks from the count on, those behind `left` included. */
function allPicks({ left, loss, taken = 0 }: ReelOutlook): number {
  return taken === 0 ? left : left + taken / (1 - loss);
}

function lossLaw(reel: ReelOutlook): LossLaw {
  return { picks: Math.floor(allPicks(reel)), loss: reel.loss, strength: reel.lossStrength ?? Infinity };
}

/**
 * Mean, variance and third central moment of the placements still to come: with R picks from the count on,
 * mean (1-p)R less what was placed, variance R p (1-p) + (1-p)² σ² with p known (design law); with p learnt its own spread is added.
 */
export function placementMoments(reel: ReelOutlook): Moments {
  const { left, sd, loss } = reel;
  const lost = lossMoments({ picks: allPicks(reel), loss, strength: reel.lossStrength ?? Infinity });
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
  const extra = (loss * kept * count) / (s + 1); // E[R²] of an uncertain R is R² + σ²
  return { mean: kept * left, variance: lost.variance + extra + kept * kept * count, third: -lost.third };
}

/**
 * The law of losses written out once, in steps: placements if so many are lost (falling), how likely each step is, and how likely it
 * and all that lose more are.
 */
interface Written {
  readonly means: readonly number[];
  readonly shares: readonly number[];
  readonly beyond: readonly number[];
  /** Variance within a step, which the noise takes over. */
  readonly within: number;
}

/** What lies further out than this many deviations changes no answer. */
const OUTSIDE = 5.5;
/** Steps as wide as this share of the noise's deviation: the answer differs by less than a ten-thousandth part of its spread. */
const STEP = 0.75;
/** Losses less likely than this in all are taken for the last step. */
const REST = 1e-6;

/** How far a law is written out: until so much of it is seen, and as far as the noise reaches beyond the loss asked about. */
interface Reach {
  readonly seen: number;
  readonly lost: number;
}

function writtenOut(reel: ReelOutlook, deviation: number, reach: Reach): Written {
  const law = lossLaw(reel);
  const fraction = (allPicks(reel) - law.picks) * (1 - reel.loss) - (reel.taken ?? 0);
  const step = Math.max(1, Math.floor(STEP * deviation));
  const beyond = 2 * OUTSIDE * deviation;
  const means: number[] = [];
  const shares: number[] = [];
  let end = Number.POSITIVE_INFINITY;
  let seen = 0;
  visitLossSteps(law, step, (mean, share, last) => {
    means.push(law.picks + fraction - mean);
    shares.push(share);
    seen += share;
    if (end === Number.POSITIVE_INFINITY && seen >= reach.seen) end = last + beyond;
    return seen < 1 - REST && (last < end || last < reach.lost);
  });
  // What was not written loses more than all that is asked about.
  const sums = new Array<number>(shares.length + 1).fill(Math.max(0, 1 - seen));
  for (let i = shares.length - 1; i >= 0; i--) sums[i] = sums[i + 1]! + shares[i]!;
  return { means, shares, beyond: sums, within: (step * step - 1) / 12 };
}

/** P(X <= x) for X = left - losses + normal noise, and its density there. */
function smearedBelow(
  { means, shares, beyond }: Written,
  x: number,
  deviation: number,
): { share: number; density: number } {
  const near = OUTSIDE * deviation;
  let low = 0;
  let high = means.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (means[middle]! > x + near) low = middle + 1;
    else high = middle;
  }
  let share = 0;
  let density = 0;
  let i = low;
  for (; i < means.length && means[i]! > x - near; i++) {
    const z = (x - means[i]!) / deviation;
    const height = shares[i]! * normalHeight(z);
    const tail = height * tailOverHeight(Math.abs(z));
    share += z < 0 ? tail : shares[i]! - tail;
    density += height;
  }
  return { share: share + beyond[i]!, density: density / deviation };
}

/** A step of Newton's shorter than this share of the noise's deviation is the last: what remains is about its square. */
const NEAR = 0.01;

/** The point by Newton's steps, kept between bounds that close in; halving where a step would leave them. */
function smearedPoint(
  law: Written,
  share: number,
  within: { readonly moments: Moments; readonly deviation: number; readonly most: number },
): number {
  const { moments, deviation } = within;
  const reach = 8 * Math.sqrt(moments.variance) + 1;
  let low = moments.mean - 4 * reach;
  let high = Math.max(within.most, moments.mean) + reach;
  let point = Math.min(high, Math.max(low, momentsPoint(moments, share)));
  for (let i = 0; i < 60; i++) {
    const at = smearedBelow(law, point, deviation);
    if (at.share < share) low = point;
    else high = point;
    const step = point - (at.share - share) / at.density;
    const next = step > low && step < high ? step : (low + high) / 2;
    if (Math.abs(next - point) < NEAR * deviation) return next;
    point = next;
  }
  return point;
}

function isSummable(law: LossLaw): boolean {
  return lossMoments(law).variance <= SUMMED_SD * SUMMED_SD;
}

/** The shares that are asked for most. */
const SPREAD = [0.05, 0.95];

/** How much of the law must be seen for these points of placements: the smallest share is the largest loss. */
function seenFor(shares: readonly number[]): number {
  return 1 - 0.8 * Math.min(...shares);
}

/** The law of one reel's placements, written out at most once for all that is asked of it. */
export interface PlacementLaw {
  /** `placementsAt()` of the reel. */
  readonly at: (shares: readonly number[], smear: Smear) => number[];
  /** `riskOfFewerThan()` of the reel. */
  readonly riskOfFewerThan: (wanted: number) => number;
  readonly moments: Moments;
}

/** The law of a reel's placements, for whoever asks more than one thing of it. */
export function placementLaw(reel: ReelOutlook): PlacementLaw {
  const kept = 1 - reel.loss;
  const count = kept * kept * reel.sd * reel.sd;
  const law = lossLaw(reel);
  const moments = placementMoments(reel);
  const isExact = isCertain(law) || isSummable(law);
  const taken = reel.taken ?? 0;
  let known: { readonly written: Written; readonly noise: number; readonly reach: Reach } | null = null;
  const written = (noise: number, reach: Reach): Written => {
    // Steps that suit a small noise suit a large one.
    const fits =
      known !== null &&
      known.noise <= noise * 1.001 &&
      known.reach.seen >= reach.seen &&
      known.reach.lost >= reach.lost;
    if (known === null || !fits) known = { written: writtenOut(reel, Math.sqrt(noise), reach), noise, reach };
    return known.written;
  };

  function at(shares: readonly number[], smear: Smear): number[] {
    const noise = count + smear.variance;
    if (noise < NO_SPREAD && isExact) {
      const fraction = (allPicks(reel) - law.picks) * kept - taken;
      return placementPoints(law, shares).map((point) => Math.max(0, point + fraction));
    }
    const whole = { ...moments, variance: moments.variance + smear.variance };
    if (Math.abs(skewness(whole)) <= EVEN_SKEWNESS || !isExact) {
      return shares.map((share) => Math.max(0, momentsPoint(whole, share)));
    }
    const steps = written(noise, { seen: seenFor(shares), lost: 0 });
    const within = { moments: whole, deviation: Math.sqrt(noise + steps.within), most: reel.left };
    return shares.map((share) => Math.max(0, smearedPoint(steps, share, within)));
  }

  function riskOfFewer(wanted: number): number {
    const most = Math.ceil(wanted - 1e-9) - 1; // fewer than 12 = at most 11
    if (most < 0) return 0;
    if (count < NO_SPREAD && isExact) {
      const leastLost = law.picks - most - Math.ceil(taken - 1e-9); // placements <= most <=> lost >= picks - taken - most
      if (isCertain(law)) return (reel.loss === 1 ? 0 : law.picks - taken) <= most ? 1 : 0;
      return Math.min(1, Math.max(0, 1 - probabilityLostAtMost(law, leastLost - 1)));
    }
    if (Math.abs(skewness(moments)) <= EVEN_SKEWNESS || !isExact) return momentsBelow(moments, most + 0.5);
    const lost = law.picks - taken - most + OUTSIDE * Math.sqrt(count);
    const steps = written(count, { seen: seenFor(SPREAD), lost });
    return Math.min(1, smearedBelow(steps, most + 0.5, Math.sqrt(count + steps.within)).share);
  }

  return { at, riskOfFewerThan: riskOfFewer, moments };
}

/**
 * Points of the placements still to come at the given shares (rising, each between 0 and 1), with normal noise added.
 * Without spread of count or noise: exact, whole numbers. Never below 0: a reel cannot give fewer.
 */
export function placementsAt(reel: ReelOutlook, shares: readonly number[], smear: Smear): number[] {
  return placementLaw(reel).at(shares, smear);
}

/**
 * Probability that the reel gives fewer than `wanted` placements. Exact where the count is certain; with an uncertain count
 * a half part is taken off `wanted` (parts are whole), so that the answer passes into the exact one as the spread vanishes.
 */
export function riskOfFewerThan(reel: ReelOutlook, wanted: number): number {
  return placementLaw(reel).riskOfFewerThan(wanted);
}
