// Which loss is to be expected on a slot: the line's assumption, bettered by finished reels. Private to the door `remaining.ts`.

import type { Finished, FloorState } from '../state.ts';
import { evidenceFromUnload, type LossLearnt, lossFor, lossPrior, type PlacedEvidence } from './loss.ts';

/** Weight of the line's assumed loss, in picks, until reels have taught better. */
export const ASSUMED_STRENGTH = 150;
/** A line that assumes no loss at all still cannot know it: the least that is assumed. */
const LEAST_ASSUMED = 1e-4;

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
