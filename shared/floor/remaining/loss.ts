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
const COARSE = 48;
const FINE = 96;
/** A weight this far below the largest (in logarithms) is none. */
const NO_WEIGHT = 10;

/** The Beta law by moments after a normal reading; summed over the logarithm of the loss, in which the law has no pole. */
function lawByReading(
  { alpha, beta }: LossLearnt,
  reel: Required<LossEvidence>,
): { readonly alpha: number; readonly beta: number } {
  const logWeight = (u: number): number => {
    const p = Math.exp(u);
    const variance = reel.sd * reel.sd + reel.picks * p * (1 - p);
    const off = reel.lost - reel.picks * p;
    return alpha * u + (beta - 1) * Math.log1p(-p) - (off * off) / (2 * variance) - Math.log(variance) / 2;
  };
  const most = -1e-3;
  const width = 10 * (1 / alpha + 1 / Math.sqrt(alpha));
  let low = Math.log(alpha / (alpha + beta)) - width;
  let high = most;
  const at = (count: number, index: number) => low + ((high - low) * (index + 0.5)) / count;
  const coarse = Array.from({ length: COARSE }, (_, index) => logWeight(at(COARSE, index)));
  const largest = Math.max(...coarse);
  const weighty = coarse.flatMap((weight, index) => (weight > largest - NO_WEIGHT ? [index] : []));
  const [first = 0, last = first] = [weighty[0], weighty.at(-1)];
  [low, high] = [at(COARSE, first - 1), Math.min(most, at(COARSE, last + 1))];
  let weights = 0;
  let sum = 0;
  let squares = 0;
  for (let index = 0; index < FINE; index++) {
    const u = at(FINE, index);
    const weight = Math.exp(logWeight(u) - largest);
    const p = Math.exp(u);
    weights += weight;
    sum += weight * p;
    squares += weight * p * p;
  }
  const mean = sum / weights;
  const strength = (mean * (1 - mean)) / (squares / weights - mean * mean) - 1;
  return { alpha: mean * strength, beta: (1 - mean) * strength };
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
