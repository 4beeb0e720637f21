// What is left on a slot by everything that the log has shown: counts with their spread, the loss learnt, what the splice bounded.
// Method: counted down from the last true count to the newest splice, cut to the window in which a splice can be made (a normal
// law truncated on both sides), counted down again since. Counting down alone was refused: its error grows with every reel.

import { usedPlacements } from './left.ts';
import { evidenceFromUnload, type LossLearnt, lossFor, lossPrior, type PlacedEvidence } from './loss.ts';
import type { Finished, FloorState, SlotState } from './state.ts';

/** Weight of the line's assumed loss, in picks, until reels have taught better. */
export const ASSUMED_STRENGTH = 150;
/** A line that assumes no loss at all still cannot know it: the least that is assumed. */
const LEAST_ASSUMED = 1e-4;

/** What is left on a slot, and the loss it was reckoned with. Parts; `parts` null where a count is unknown. */
export interface SlotEstimate {
  readonly parts: number | null;
  readonly sd: number;
  /** Deviation of the count that this was reckoned from, without what losses since have added. Parts. */
  readonly countSd: number;
  /** Parts left on the running tape alone; null where that is unknown. */
  readonly running: number | null;
  /** Which of the slot's tapes runs. */
  readonly runningIndex: number;
  readonly loss: LossLearnt;
  /** Placements counted down with that loss since the last count or splice: the doubt of the loss runs through all of them. */
  readonly reckoned: number;
  /** True where the count says that the old tape's end cannot have been where it was spliced. */
  readonly contradicts: boolean;
}

/** What a finished reel showed, and which it was. */
type Evidence = PlacedEvidence & { readonly from: Finished };

/** A finished reel as the law of losses wants it; null where its figures contradict each other, or show more than any feeder loses: they teach nothing. */
export function toEvidence(reel: Finished): Evidence | null {
  const found = evidenceFromUnload(reel);
  if (!found.ok) return null;
  return { ...found.value, part: reel.part, feeder: reel.feeder, slot: reel.slot, from: reel };
}

/** The share of picks that a finished reel would show as lost, where that is more than any feeder loses; null else. */
export function unlikelyLoss(reel: Finished): number | null {
  const found = evidenceFromUnload(reel);
  return found.ok || found.error.code !== 'unlikelyLoss' ? null : found.error.lost / found.error.gone;
}

/** What each finished reel shows: it never changes, and every unload of the part asks again. */
const shownBy = new WeakMap<Finished, readonly Evidence[]>();

function evidenceOf(reels: readonly Finished[]): readonly Evidence[] {
  return reels.flatMap((reel) => {
    const known = shownBy.get(reel);
    if (known) return known;
    const found = toEvidence(reel);
    const shown = found ? [found] : [];
    shownBy.set(reel, shown);
    return shown;
  });
}

/** The loss that a line assumes until reels have taught better. */
export function assumedLoss(state: FloorState, line: string): LossLearnt {
  const mean = Math.max(LEAST_ASSUMED, state.rules.get(line)?.loss ?? 0);
  return lossPrior({ mean, strength: ASSUMED_STRENGTH });
}

/** Losses reckoned for a part's list of finished reels, by place: a list never changes, a new reel makes a new one. */
const reckonedLosses = new WeakMap<readonly Finished[], Map<string, LossLearnt>>();

/** The loss to expect on a slot: the line's assumption, bettered by what finished reels have shown. Reckoned once for each new reel. */
export function lossOn(
  state: FloorState,
  place: { readonly line: string; readonly part: string; readonly feeder: string; readonly slot: string },
): LossLearnt {
  const prior = assumedLoss(state, place.line);
  const finished = state.finished.get(place.part);
  if (finished === undefined) return prior;
  let known = reckonedLosses.get(finished);
  if (known === undefined) {
    known = new Map();
    reckonedLosses.set(finished, known);
  }
  const key = JSON.stringify([prior.alpha, place.feeder, place.slot]);
  let loss = known.get(key);
  if (loss === undefined) {
    loss = lossFor(place, evidenceOf(finished), prior);
    known.set(key, loss);
  }
  return loss;
}

interface Normal {
  readonly mean: number;
  readonly variance: number;
}

/** Density of the standard normal law. */
function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** P(Z < z), Abramowitz & Stegun 26.2.17, error below 7.5e-8. */
function below(z: number): number {
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

/** Takes placements off a law of parts: each costs 1/(1-p) picks, with the spread of the negative binomial and of the loss itself. */
function countedDown(law: Normal, placed: number, loss: LossLearnt): Normal {
  const strength = loss.alpha + loss.beta;
  const p = loss.alpha / strength;
  const kept = 1 - p;
  const ofLoss = (placed / kept ** 2) ** 2 * ((p * kept) / (strength + 1));
  return {
    mean: law.mean - placed / kept,
    variance: law.variance + (placed * p) / kept ** 2 + ofLoss,
  };
}

/** What is left on a slot now. Cost: linear in the finished reels of its part. */
export function slotEstimate(state: FloorState, slot: SlotState): SlotEstimate {
  const { ledger, tapes } = slot;
  const part = tapes.at(-1)?.part ?? '';
  const loss = lossOn(state, { line: slot.line, part, feeder: slot.feeder ?? '', slot: slot.slot });
  const placed = ledger.dropped + usedPlacements(state, slot);
  const last = tapes.length - 1;
  const { joint } = ledger;
  if (joint === null || last === 0) return plainEstimate(slot, { loss, placed });
  const start = ledger.parts === null || joint.tail === null ? null : ledger.parts - joint.tail;
  const atJoint =
    start === null
      ? null
      : countedDown(
          { mean: start, variance: Math.max(0, ledger.variance - joint.tailVariance) },
          joint.placed,
          loss,
        );
  const bounded =
    atJoint === null
      ? { mean: (joint.low + joint.high) / 2, variance: (joint.high - joint.low) ** 2 / 12, believed: true }
      : truncated(atJoint, joint.low, joint.high);
  const toJoint = countedDown(bounded, placed - joint.placed, loss);
  const isJoined = toJoint.mean > 0;
  const all = joint.tail === null ? null : toJoint.mean + joint.tail;
  return {
    parts: all === null ? null : Math.max(0, all),
    sd: Math.sqrt(toJoint.variance + joint.tailVariance),
    countSd: Math.sqrt(bounded.variance + joint.tailVariance),
    running: isJoined ? toJoint.mean : all === null ? null : Math.max(0, all),
    runningIndex: isJoined ? last - 1 : last,
    loss,
    reckoned: placed - joint.placed,
    contradicts: !bounded.believed,
  };
}

function plainEstimate(
  slot: SlotState,
  { loss, placed }: { readonly loss: LossLearnt; readonly placed: number },
): SlotEstimate {
  const { ledger, tapes } = slot;
  const law =
    ledger.parts === null
      ? null
      : countedDown({ mean: ledger.parts, variance: ledger.variance }, placed, loss);
  let behind = 0;
  let runningIndex = tapes.length - 1;
  // From the newest tape back: the running one is the first whose followers hold less than what is left.
  while (law !== null && runningIndex > 0 && law.mean > behind + (tapes[runningIndex]?.count ?? 0)) {
    behind += tapes[runningIndex]?.count ?? 0;
    runningIndex -= 1;
  }
  return {
    parts: law === null ? null : Math.max(0, law.mean),
    sd: law === null ? 0 : Math.sqrt(law.variance),
    countSd: Math.sqrt(ledger.variance),
    running: law === null ? null : Math.max(0, law.mean - behind),
    runningIndex,
    loss,
    reckoned: placed,
    contradicts: false,
  };
}
