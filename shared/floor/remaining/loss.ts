// How often is a picked part lost, by part, feeder and slot, as far as finished reels show?
// Method: a Beta law updated by each finished reel (lost of so many picks); what is known of the part serves as the start for the
// part on a feeder, and that for the slot. A running average was refused: it cannot say how little it knows.

import { fail, ok, type Result } from '../../kit/result.ts';

/** A learnt loss: Beta(alpha, beta), with what it was learnt from. */
export interface LossLearnt {
  readonly alpha: number;
  readonly beta: number;
  readonly reels: number;
  readonly picks: number;
  readonly lost: number;
}

/** What one finished reel shows. `sd`: deviation of `lost`, parts, from counts that were not certain (default 0). */
export interface LossEvidence {
  readonly picks: number;
  readonly lost: number;
  readonly sd?: number;
}

/** Evidence with where it was gathered. */
export interface PlacedEvidence extends LossEvidence {
  readonly part: string;
  readonly feeder: string;
  readonly slot: string;
}

/** Loss before any reel is finished: 0.3 % with the weight of 300 picks (common practice is 0.1-3 % in steady runs; a site may set its own). */
export const FIRST_GUESS = { mean: 0.003, strength: 300 } as const;

/**
 * A share of picks that no feeder loses for a whole reel: beyond it a count is wrong, or tape was pulled through, and nothing is learnt.
 * Common practice is 0.1-3 % in steady runs; the bound itself is ours, made up, several times that.
 */
export const UNLIKELY_LOSS = 0.1;

/** A starting law. `mean`: expected loss, above 0 and below 1; `strength`: how many picks it weighs, above 0. */
export function lossPrior(
  guess: { readonly mean: number; readonly strength: number } = FIRST_GUESS,
): LossLearnt {
  return {
    alpha: guess.mean * guess.strength,
    beta: (1 - guess.mean) * guess.strength,
    reels: 0,
    picks: 0,
    lost: 0,
  };
}

/** Why a finished reel teaches nothing. */
export const lossRefusals = ['noPicks', 'morePlacedThanGone', 'unlikelyLoss'] as const;
export type LossRefusal = {
  readonly code: (typeof lossRefusals)[number];
  readonly gone: number;
  readonly placements: number;
  /** `gone` less `placements`, parts: below 0 where more was placed than is gone. */
  readonly lost: number;
};

/**
 * What a reel shows when its true count is known again at unload: gone = start − end parts, lost = gone − placements.
 * Refused, with the figures, where nothing was picked, or where more was placed than is gone beyond what the counts'
 * deviations explain: then a count or the bookkeeping is wrong, and a person must look. Within them, lost is 0.
 * Refused too where more than `UNLIKELY_LOSS` of the picks are lost beyond three deviations of the counts.
 * Example: 12 000 at start, 1800 at the end, 10 000 placed: 200 of 10 200 lost, 1.96 %.
 */
export function evidenceFromUnload(reel: {
  readonly startParts: number;
  readonly startSd: number;
  readonly endParts: number;
  readonly endSd: number;
  readonly placements: number;
  /** One deviation of `placements`; absent: none. */
  readonly placementsSd?: number;
}): Result<LossEvidence, LossRefusal> {
  const gone = reel.startParts - reel.endParts;
  const sd = Math.hypot(reel.startSd, reel.endSd, reel.placementsSd ?? 0);
  const lost = gone - reel.placements;
  const facts = { gone, placements: reel.placements, lost };
  if (gone <= 0 && reel.placements === 0) return fail({ code: 'noPicks', ...facts });
  if (lost < -3 * sd - 1e-9) return fail({ code: 'morePlacedThanGone', ...facts });
  if (lost - 3 * sd > UNLIKELY_LOSS * Math.max(gone, reel.placements))
    return fail({ code: 'unlikelyLoss', ...facts });
  return ok({ picks: Math.max(gone, reel.placements), lost: Math.max(0, lost), sd });
}

/**
 * The law after one more reel: alpha + lost, beta + kept, where `lost` is certain. Where it is not, the Beta law with the mean and
 * deviation that Bayes' rule gives for a normal reading of `lost` (deviation `sd` and the picking's own, n p q): a reading that the law
 * so far cannot explain moves it far, one that it can moves it little.
 */
export function updateLoss(learnt: LossLearnt, reel: LossEvidence): LossLearnt {
  if (!(reel.lost >= 0 && reel.lost <= reel.picks)) {
    throw new RangeError(
      `Cannot learn from reel as lost must lie in 0..picks: current value is ${reel.lost} of ${reel.picks}`,
    );
  }
  const sd = reel.sd ?? 0;
  const law =
    sd === 0
      ? { alpha: learnt.alpha + reel.lost, beta: learnt.beta + (reel.picks - reel.lost) }
      : lawByReading(learnt, { ...reel, sd });
  return {
    ...law,
    reels: learnt.reels + 1,
    picks: learnt.picks + reel.picks,
    lost: learnt.lost + reel.lost,
  };
}

/** Points over which Bayes' rule is summed: few to find where the weight lies, more within. */
const COARSE = 32;
const FINE = 96;
/** Looks at an ever narrower range; each is at least a tenth of the one before. */
const MOST_LOOKS = 12;
/** A weight this far below the largest (in logarithms) is none. */
const NO_WEIGHT = 10;
/** Below the loss at which a reading has changed by this share, it says nothing any more. */
const UNCHANGED = 0.01;

/** Each point's logarithm of weight, computed anew for each reading: a start reads thousands of reels. */
const weights = new Float64Array(FINE);

/**
 * The Beta law by moments after a normal reading. Summed over the logarithm of the loss, in which the law has no pole; below the loss at
 * which the reading says nothing any more the law's own integral stands, p^a / a: where next to no loss is assumed, it reaches far down.
 */
function lawByReading(
  { alpha, beta }: LossLearnt,
  reading: Required<LossEvidence>,
): { readonly alpha: number; readonly beta: number } {
  const { picks, lost, sd } = reading;
  /** Fills `weights` at the middles of `count` equal steps from `low` up; tells the largest. */
  const weigh = (low: number, step: number, count: number): number => {
    let p = Math.exp(low + step / 2);
    const factor = Math.exp(step);
    let largest = Number.NEGATIVE_INFINITY;
    for (let index = 0; index < count; index++) {
      const variance = sd * sd + picks * p * (1 - p);
      const off = lost - picks * p;
      const weight =
        alpha * (low + step * (index + 0.5)) +
        (beta - 1) * Math.log1p(-p) -
        (off * off) / (2 * variance) -
        Math.log(variance) / 2;
      weights[index] = weight;
      if (weight > largest) largest = weight;
      p *= factor;
    }
    return largest;
  };
  const least = silentBelow(beta, reading);
  let low = least;
  let high = -1e-3;
  for (let look = 0; look < MOST_LOOKS; look++) {
    const step = (high - low) / COARSE;
    const weighty = weigh(low, step, COARSE) - NO_WEIGHT;
    let first = 0;
    while (first < COARSE - 1 && !((weights[first] ?? 0) > weighty)) first += 1;
    let last = COARSE - 1;
    while (last > first && !((weights[last] ?? 0) > weighty)) last -= 1;
    high = Math.min(high, low + step * (last + 1.5));
    low = Math.max(low, low + step * (first - 0.5));
    if (last - first >= COARSE / 4) break;
  }
  const step = (high - low) / FINE;
  const largest = weigh(low, step, FINE);
  // What lies below all points, as though each were a step wide.
  const below = low > least ? 0 : Math.exp((weights[0] ?? 0) - largest - (alpha * step) / 2) / (alpha * step);
  const foot = Math.exp(low);
  let all = below;
  let sum = (below * alpha * foot) / (alpha + 1);
  let squares = (below * alpha * foot * foot) / (alpha + 2);
  let p = Math.exp(low + step / 2);
  const factor = Math.exp(step);
  for (let index = 0; index < FINE; index++) {
    const weight = Math.exp((weights[index] ?? 0) - largest);
    all += weight;
    sum += weight * p;
    squares += weight * p * p;
    p *= factor;
  }
  const mean = sum / all;
  const strength = (mean * (1 - mean)) / (squares / all - mean * mean) - 1;
  return { alpha: mean * strength, beta: (1 - mean) * strength };
}

/** The logarithm of the loss below which a reading's likelihood stays within 1 % of that of no loss at all: by its slope there. */
function silentBelow(beta: number, { picks, lost, sd }: Required<LossEvidence>): number {
  const variance = sd * sd;
  const slope = beta + (picks * (lost + 0.5)) / variance + (picks * lost * lost) / (2 * variance * variance);
  return Math.log(UNCHANGED / slope);
}

/** How much of what other feeders have shown of a part is carried to one, in picks: feeders differ as much as they did at first. */
const OTHERS_STRENGTH = 150;
/** How much of what a feeder has shown in other slots is carried to one, in picks. */
const CARRIED_STRENGTH = 2000;

function carried(learnt: LossLearnt, most: number): LossLearnt {
  const strength = learnt.alpha + learnt.beta;
  const share = Math.min(1, most / strength);
  return { ...learnt, alpha: learnt.alpha * share, beta: learnt.beta * share };
}

/**
 * The loss to expect for a part on a feeder in a slot. Reels of the part elsewhere come first, then on this feeder in other
 * slots, then right here; each step starts from the one before, carried with at most 2000 picks' weight, so that ten reels here
 * outweigh a hundred elsewhere. Order of `evidence` does not matter within a step but for rounding (certain counts).
 */
export function lossFor(
  place: { readonly part: string; readonly feeder: string; readonly slot: string },
  evidence: readonly PlacedEvidence[],
  prior: LossLearnt = lossPrior(),
): LossLearnt {
  const ofPart = evidence.filter((reel) => reel.part === place.part);
  const elsewhere = ofPart.filter((reel) => reel.feeder !== place.feeder);
  const onFeeder = ofPart.filter((reel) => reel.feeder === place.feeder && reel.slot !== place.slot);
  const here = ofPart.filter((reel) => reel.feeder === place.feeder && reel.slot === place.slot);
  const part = elsewhere.reduce(updateLoss, prior);
  const feeder = onFeeder.reduce(updateLoss, carried(part, OTHERS_STRENGTH));
  return here.reduce(updateLoss, carried(feeder, CARRIED_STRENGTH));
}
