// A good assignment for any size of question.
// Method: assignments are built one after the other; a feeder that had to be split comes earlier in the next one (Joslin and Clements 1999,
// "squeaky wheel" optimization, Journal of Artificial Intelligence Research 10, 353), with a little chance so that the search does not walk in a circle.
// Method refused: swapping places in one assignment, which the many equal places make a walk on a plain.

import { chanceBelow, seededChance } from '../kit/chance.ts';
import { type Built, build } from './build.ts';
import type { AssignModel } from './problem.ts';
import { changesOf, type Stay, usesOf } from './stays.ts';

/** Cells looked at in a second or so on a tablet. */
export const WORK_OF_SEARCH = 60_000_000;
const mostRounds = 400;
const mostWithoutGain = 120;

/** First and last use, whole. */
function spanOf(uses: readonly number[]): number {
  return (uses.at(-1) ?? 0) - (uses[0] ?? 0) + 1;
}

/** Orders to begin with: what takes the most room over time, the widest, what is loaded, the longest. */
function firstOrders(model: AssignModel): readonly (readonly number[])[] {
  const all = model.feeders.map((_, feeder) => feeder);
  const by = (score: (feeder: number) => number) => [...all].sort((a, b) => score(b) - score(a) || a - b);
  const feeder = (at: number) => model.feeders[at]!; // indexes of the list itself
  const span = (at: number) => spanOf(usesOf(feeder(at)));
  return [
    by((at) => span(at) * feeder(at).width),
    by((at) => feeder(at).width * 1000 + span(at)),
    by((at) => (feeder(at).loadedAt.length > 0 ? 1e6 : 0) + span(at) * feeder(at).width),
    by((at) => feeder(at).uses.length * 1000 + feeder(at).width),
  ];
}

/** The best assignment found; null where a job does not fit the line. Stops at `enough` changes, which a bound says are the fewest. */
export function searchAssignment(model: AssignModel, enough: number, seed = 1): readonly Stay[] | null {
  const chance = seededChance(seed);
  let best: Built | null = null;
  let bestChanges = Number.POSITIVE_INFINITY;
  const uses = model.feeders.reduce((sum, feeder) => sum + spanOf(usesOf(feeder)), 0);
  const rounds = Math.max(
    4,
    Math.min(mostRounds, Math.floor(WORK_OF_SEARCH / Math.max(1, uses * model.length * 4))),
  );
  const orders = firstOrders(model);
  let order: readonly number[] = orders[0] ?? [];
  let idle = 0;
  for (let round = 0; round < rounds && idle < mostWithoutGain; round++) {
    order = orders[round] ?? order;
    const built = build(model, order);
    if (built === null) return best?.stays ?? null;
    const changes = changesOf(built.stays);
    idle++;
    if (changes < bestChanges) {
      best = built;
      bestChanges = changes;
      idle = 0;
    }
    if (bestChanges <= enough) break;
    order = promote(order, built.split, chance);
  }
  return best?.stays ?? null;
}

/** The order with the split feeders further in front, each by a share of its way that chance gives. */
function promote(
  order: readonly number[],
  split: readonly number[],
  chance: () => number,
): readonly number[] {
  const place = new Map(order.map((feeder, at) => [feeder, at]));
  for (const feeder of new Set(split)) {
    const at = place.get(feeder) ?? 0;
    place.set(feeder, at - 1 - chanceBelow(chance, at + 2));
  }
  if (chance() < 0.3) {
    const any = order[chanceBelow(chance, Math.max(1, order.length))];
    if (any !== undefined) place.set(any, chanceBelow(chance, order.length));
  }
  return [...order].sort((a, b) => (place.get(a) ?? 0) - (place.get(b) ?? 0) || a - b);
}
