// What does a splice itself cost? Parts that hang on the joint, or are pulled through until the feeder runs again. Private to the door.
// Method: what the line's rules enter for the width of tape (all feeders of a width are one type here); else what finished reels of
// the part show: chains with splices against chains without. Else none, and it is said. Refused: a usual figure that nobody measured.

import { lanesTaking, setupTaking } from '../lanes.ts';
import type { Finished, FloorState } from '../state.ts';
import { wantedOn } from '../wanted.ts';
import { evidenceFromUnload, type LossLearnt, updateLoss } from './loss.ts';

/** Parts that one splice costs. `sd`: deviation of that mean; each splice also varies by itself, as a Poisson count does. */
export interface SpliceCost {
  readonly parts: number;
  readonly sd: number;
  readonly from: 'entered' | 'learnt' | 'none';
}

/** Nobody entered a cost and no reel has shown one. */
export const noCost: SpliceCost = { parts: 0, sd: 0, from: 'none' };

/** Splices that finished reels must have had before a cost is believed. */
const FEWEST_SPLICES = 5;

/** Variance of what so many splices cost, parts squared. */
export function costVariance({ parts, sd }: SpliceCost, splices: number): number {
  return splices * parts + (splices * sd) ** 2;
}

/** Width of the tape on a slot, mm: as its feeder takes it, else as the line's setup wants it, or that of another lane of its conveyor; null where none says. */
export function tapeWidthOn(
  state: FloorState,
  { line, slot, feeder }: { readonly line: string; readonly slot: string; readonly feeder: string | null },
): number | null {
  const known = feeder === null ? undefined : state.feeders.get(feeder);
  if (known && known.tapeWidthMm !== null) return known.tapeWidthMm;
  const widthBy = (setup: string) => wantedOn(state, setup, slot)?.tapeWidthMm ?? null;
  // The lanes are a walk over the plant's lines, and every look at a line asks for each of its slots.
  const own = widthBy(setupTaking(state, line) ?? '');
  if (own !== null) return own;
  for (const { setup } of lanesTaking(state, line)) {
    const width = widthBy(setup);
    if (width !== null) return width;
  }
  return null;
}

const learntCosts = new WeakMap<readonly Finished[], Map<string, SpliceCost>>();

/** What a splice costs on a line, for a part on tape of a width (mm; null where it is not known). `prior`: the loss that the line assumes. */
export function spliceCost(
  state: FloorState,
  of: { readonly line: string; readonly part: string; readonly tapeWidthMm: number | null },
  prior: LossLearnt,
): SpliceCost {
  const entered = state.spliceCosts.get(of.line) ?? [];
  const rule =
    entered.find(({ tapeWidthMm }) => tapeWidthMm !== null && tapeWidthMm === of.tapeWidthMm) ??
    entered.find(({ tapeWidthMm }) => tapeWidthMm === null);
  if (rule) return { parts: rule.parts, sd: 0, from: 'entered' };
  const reels = state.finished.get(of.part);
  if (reels === undefined) return noCost;
  let known = learntCosts.get(reels);
  if (known === undefined) {
    known = new Map();
    learntCosts.set(reels, known);
  }
  const key = JSON.stringify([of.line, prior.alpha]);
  let cost = known.get(key);
  if (cost === undefined) {
    cost = learntCost(
      reels.filter(({ line }) => line === of.line),
      prior,
    );
    known.set(key, cost);
  }
  return cost;
}

/** True where a chain was spliced, counted at its end, and something was picked from it. */
function showsSplices({ splices, told, startParts, endParts }: Finished): boolean {
  return (splices ?? 0) > 0 && told === 'count' && startParts > endParts;
}

function countedSplices(reels: readonly Finished[]): number {
  return reels.reduce((sum, reel) => sum + (showsSplices(reel) ? (reel.splices ?? 0) : 0), 0);
}

/** What spliced chains lost beyond the share that chains without a splice show, over their splices. */
function learntCost(reels: readonly Finished[], prior: LossLearnt): SpliceCost {
  // Counted first: the law of the chains without a splice costs most of a start, and few parts have been spliced so often.
  if (countedSplices(reels) < FEWEST_SPLICES) return noCost;
  const plain = reels.flatMap((reel) => {
    const shown = reel.splices ? null : evidenceFromUnload(reel);
    return shown?.ok ? [shown.value] : [];
  });
  // Without a chain that was never spliced nothing tells one kind of loss from the other.
  if (plain.length === 0) return noCost;
  const loss = plain.reduce(updateLoss, prior);
  const strength = loss.alpha + loss.beta;
  const mean = loss.alpha / strength;
  const splices = countedSplices(reels);
  let excess = 0;
  let variance = 0;
  let picks = 0;
  for (const reel of reels) {
    if (!showsSplices(reel)) continue;
    const gone = reel.startParts - reel.endParts;
    picks += gone;
    excess += gone - reel.placements - mean * gone;
    variance +=
      reel.startSd ** 2 + reel.endSd ** 2 + (reel.placementsSd ?? 0) ** 2 + gone * mean * (1 - mean);
  }
  const ofLoss = picks * picks * ((mean * (1 - mean)) / (strength + 1));
  return {
    parts: Math.max(0, excess / splices),
    sd: Math.sqrt(variance + ofLoss) / splices,
    from: 'learnt',
  };
}
