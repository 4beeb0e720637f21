// A good assignment for any size of question.
// Method: assignments are built one after the other; a feeder that had to be split comes earlier in the next one (Joslin and Clements 1999,
// "squeaky wheel" optimization, Journal of Artificial Intelligence Research 10, 353), with a little chance so that the search does not walk in a circle.
// Method refused: swapping places in one assignment, which the many equal places make a walk on a plain.

import { chanceBelow, seededChance } from '../kit/chance.ts';
import { type Built, build } from './build.ts';
import type { AssignModel } from './problem.ts';
import { type Claim, changesOf, type Stay, usesOf } from './stays.ts';

/** Cells looked at in a second or so on a tablet. */
export const WORK_OF_SEARCH = 240_000_000;
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

/** One way of cutting uses, with the order of feeders that it has come to. */
interface Way {
  readonly pieces: readonly Claim[];
  order: readonly number[];
  best: number;
}

/** The pieces in the order of their feeders. */
function claimsOf(way: Way): readonly Claim[] {
  const place = new Map(way.order.map((feeder, at) => [feeder, at]));
  return [...way.pieces].sort(
    (a, b) => (place.get(a.feeder) ?? 0) - (place.get(b.feeder) ?? 0) || (a.uses[0] ?? 0) - (b.uses[0] ?? 0),
  );
}

/**
 * The best assignment found; null where a job does not fit the line. Two ways are followed by turns: all uses of a feeder in one piece, and the pieces
 * that keeping what is needed soonest leaves. Stops at `enough` changes, which a bound says are the fewest.
 */
export function searchAssignment(
  model: AssignModel,
  soonest: readonly Claim[],
  enough: number,
  seed = 1,
): readonly Stay[] | null {
  const chance = seededChance(seed);
  const whole = model.feeders.map((feeder, at) => ({ feeder: at, uses: usesOf(feeder) }));
  const orders = firstOrders(model);
  const ways: readonly Way[] = [whole, soonest].map((pieces) => ({
    pieces,
    order: orders[0] ?? [],
    best: Number.POSITIVE_INFINITY,
  }));
  let best: Built | null = null;
  let bestChanges = Number.POSITIVE_INFINITY;
  const uses = model.feeders.reduce((sum, feeder) => sum + spanOf(usesOf(feeder)), 0);
  const work = Math.max(1, uses * model.length * 4);
  const rounds = Math.max(6, Math.min(mostRounds, Math.floor(WORK_OF_SEARCH / work)));
  let idle = 0;
  for (let round = 0; round < rounds && idle < mostWithoutGain; round++) {
    const way = wayOf(ways, round);
    way.order = round < 2 * orders.length ? (orders[round >> 1] ?? way.order) : way.order;
    const built = build(model, claimsOf(way));
    if (built === null) return best?.stays ?? null;
    const changes = changesOf(built.stays);
    way.best = Math.min(way.best, changes);
    idle++;
    if (changes < bestChanges) {
      best = built;
      bestChanges = changes;
      idle = 0;
    }
    if (bestChanges <= enough) break;
    way.order = promote(way.order, built.split, chance);
  }
  return best?.stays ?? null;
}

/** By turns at first, then three times of four the better way. */
function wayOf(ways: readonly Way[], round: number): Way {
  const [first, second] = ways as readonly [Way, Way]; // there are two
  if (round < 8 || first.best === second.best) return round % 2 === 0 ? first : second;
  const [better, other] = first.best < second.best ? [first, second] : [second, first];
  return round % 4 === 3 ? other : better;
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
