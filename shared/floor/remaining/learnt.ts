// Which loss is to be expected on a slot: the line's assumption, bettered by finished reels. Private to the door `remaining.ts`.

import type { Finished, FloorState } from '../state.ts';
import { evidenceFromUnload, type LossLearnt, lossFor, lossPrior, type PlacedEvidence } from './loss.ts';
import { costVariance, noCost, type SpliceCost, spliceCost, tapeWidthOn } from './splices.ts';

/** Weight of the line's assumed loss, in picks, until reels have taught better. */
export const ASSUMED_STRENGTH = 150;
/** A line that assumes no loss at all still cannot know it: the least that is assumed. */
const LEAST_ASSUMED = 1e-4;

/** What a finished reel showed, and which it was. */
type Evidence = PlacedEvidence & { readonly from: Finished };

/** The figures of a finished reel without what its splices themselves cost: that is no loss of the feeder's picking. */
function withoutSplices(reel: Finished, cost: SpliceCost): Finished {
  if (!reel.splices || cost.parts === 0) return reel;
  return {
    ...reel,
    startParts: reel.startParts - reel.splices * cost.parts,
    startSd: Math.hypot(reel.startSd, Math.sqrt(costVariance(cost, reel.splices))),
  };
}

/**
 * A finished reel as the law of losses wants it; null where its figures contradict each other, or show more than any feeder loses: they
 * teach nothing. `cost`: of each of its splices, default none.
 */
export function toEvidence(reel: Finished, cost: SpliceCost = noCost): Evidence | null {
  const found = evidenceFromUnload(withoutSplices(reel, cost));
  if (!found.ok) return null;
  return { ...found.value, part: reel.part, feeder: reel.feeder, slot: reel.slot, from: reel };
}

/** The share of picks that a finished reel would show as lost, where that is more than any feeder loses; null else. `cost`: as of `toEvidence`. */
export function unlikelyLoss(reel: Finished, cost: SpliceCost = noCost): number | null {
  const found = evidenceFromUnload(withoutSplices(reel, cost));
  return found.ok || found.error.code !== 'unlikelyLoss' ? null : found.error.lost / found.error.gone;
}

/** `toEvidence` with what splices cost on the reel's own line. */
export function shownOn(state: FloorState, reel: Finished): Evidence | null {
  return toEvidence(reel, costFor(state, reel));
}

/** `unlikelyLoss` with what splices cost on the reel's own line. */
export function unlikelyOn(state: FloorState, reel: Finished): number | null {
  return unlikelyLoss(reel, costFor(state, reel));
}

type Place = Pick<Finished, 'line' | 'part' | 'feeder' | 'slot'>;

function costFor(state: FloorState, place: Place): SpliceCost {
  const tapeWidthMm = tapeWidthOn(state, place);
  return spliceCost(
    state,
    { line: place.line, part: place.part, tapeWidthMm },
    assumedLoss(state, place.line),
  );
}

/** What each finished reel shows at a cost: it never changes, and every unload of the part asks again. */
const shownBy = new WeakMap<Finished, { readonly key: string; readonly shown: readonly Evidence[] }>();

function evidenceOf(reels: readonly Finished[], cost: SpliceCost): readonly Evidence[] {
  return reels.flatMap((reel) => {
    const key = !reel.splices ? '' : `${cost.parts} ${cost.sd}`;
    const known = shownBy.get(reel);
    if (known?.key === key) return known.shown;
    const found = toEvidence(reel, cost);
    const shown = found ? [found] : [];
    shownBy.set(reel, { key, shown });
    return shown;
  });
}

/** The loss that a line assumes until reels have taught better. */
export function assumedLoss(state: FloorState, line: string): LossLearnt {
  const mean = Math.max(LEAST_ASSUMED, state.rules.get(line)?.loss ?? 0);
  return lossPrior({ mean, strength: ASSUMED_STRENGTH });
}

/** Losses computed for a part's list of finished reels, by place: a list never changes, a new reel makes a new one. */
const computedLosses = new WeakMap<readonly Finished[], Map<string, LossLearnt>>();

/** The loss to expect on a slot: the line's assumption, bettered by what finished reels have shown. Computed once for each new reel. */
export function lossOn(state: FloorState, place: Place): LossLearnt {
  const prior = assumedLoss(state, place.line);
  const finished = state.finished.get(place.part);
  if (finished === undefined) return prior;
  let known = computedLosses.get(finished);
  if (known === undefined) {
    known = new Map();
    computedLosses.set(finished, known);
  }
  const cost = costFor(state, place);
  const key = JSON.stringify([prior.alpha, place.feeder, place.slot, cost.parts, cost.sd]);
  let loss = known.get(key);
  if (loss === undefined) {
    loss = lossFor(place, evidenceOf(finished, cost), prior);
    known.set(key, loss);
  }
  return loss;
}
