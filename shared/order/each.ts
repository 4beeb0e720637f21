// Few jobs with feeders of mixed widths: which order is best, and is it proven?
// Method: every order is counted by the area rule (of an order and its reverse only one, where nothing is loaded before);
// orders that a price bound cannot rule out are refined by exchanges. If the bound rules out all orders below the best,
// the best is proven; else the least bound is what no order can beat.
// Refused: more than eight jobs this way; the orders grow too many.

import { areaCounter } from './keep-by-area.ts';
import type { OrderModel } from './problem.ts';

/** Most jobs, the load before not counted. */
export const MOST_EACH_JOBS = 8;

/** What trying each order found. */
export interface EachAnswer {
  readonly sequence: Uint16Array;
  readonly changes: number;
  /** No order needs fewer. */
  readonly lowest: number;
}

/** True where trying each order is affordable for this model. */
export function canTryEach(model: OrderModel): boolean {
  return (
    !model.isUnit &&
    !model.isTimed &&
    model.jobCount - (model.hasLoad ? 1 : 0) <= MOST_EACH_JOBS &&
    model.boundTo.every((place, job) => place < 0 || (model.hasLoad && job === 0))
  );
}

/** Tries each order; yields the work done now and then. `start` and `changes`: the best known so far. */
export function* tryEachOrder(
  model: OrderModel,
  start: Uint16Array,
  changes: number,
): Generator<number, EachAnswer> {
  const area = areaCounter(model);
  const inAt = new Int32Array(model.jobCount);
  const first = model.hasLoad ? 1 : 0;
  const orders = [...everyOrder(model.jobCount, first)];
  let best = { sequence: start, changes };
  for (const [at, sequence] of orders.entries()) {
    const found = area.count(sequence, inAt);
    if (found < best.changes) best = { sequence, changes: found };
    if (at % 200 === 199) yield area.work();
  }
  let lowest = best.changes;
  for (const [at, sequence] of orders.entries()) {
    area.count(sequence, inAt);
    let least = area.least(best.changes);
    if (least < best.changes) {
      const refined = area.refine(sequence).changes;
      if (refined < best.changes) {
        best = { sequence, changes: refined };
        least = Math.min(least, refined);
      }
    }
    lowest = Math.min(lowest, least);
    if (at % 100 === 99) yield area.work();
  }
  return { ...best, lowest: Math.min(lowest, best.changes) };
}

function* everyOrder(jobCount: number, first: number): Generator<Uint16Array> {
  const sequence = Uint16Array.from({ length: jobCount }, (_, job) => job);
  function* fill(place: number): Generator<Uint16Array> {
    if (place === jobCount) {
      if (first > 0 || sequence[0]! <= sequence[jobCount - 1]!) yield sequence.slice();
      return;
    }
    for (let at = place; at < jobCount; at++) {
      [sequence[place], sequence[at]] = [sequence[at]!, sequence[place]!];
      yield* fill(place + 1);
      [sequence[place], sequence[at]] = [sequence[at]!, sequence[place]!];
    }
  }
  yield* fill(first);
}
