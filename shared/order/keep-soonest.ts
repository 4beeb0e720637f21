// For a given order of jobs: how many feeders must be put in, when all feeders take the same room?
// Method: keep needed soonest (Tang and Denardo 1988, Operations Research 36, 767), counted as pipes: a part kept from
// its last use at place p to its next at k holds one free unit at every place strictly between. Pipes are taken by
// increasing end, shortest first. The free units are held as counts by the place since which they have been free, so
// that "does the pipe fit" is "is a unit free since p + 1 or before"; the youngest such unit is spent.
// The state before each place is kept, so that a changed order is evaluated from its first changed place on, and only
// until it has come back to the base: the same units free, all of them since after the last changed place.
// Refused: playing the magazine part by part; the same count, several times slower.

import { narrowCounter } from './keep-soonest-narrow.ts';
import { wideCounter } from './keep-soonest-wide.ts';
import type { OrderModel } from './problem.ts';
import type { UnitCounter } from './unit-counter.ts';

/** Parts that more than one searched job needs, renumbered: only these can ever be kept. */
function sharedParts(model: OrderModel): Int32Array {
  const uses = new Int32Array(model.partCount);
  for (const part of model.parts) uses[part] = (uses[part] ?? 0) + 1;
  let next = 0;
  return uses.map((count) => (count > 1 ? next++ : -1));
}

/** Makes a counter for a model whose feeders all take one unit (`model.isUnit`). */
export function unitCounter(model: OrderModel): UnitCounter {
  if (!model.isUnit) throw new TypeError('Cannot count by units as the feeders must all take the same room');
  const shared = sharedParts(model);
  const words = Math.max(1, Math.ceil((Math.max(-1, ...shared) + 1) / 32));
  const bits = Array.from({ length: words }, () => new Int32Array(model.jobCount));
  for (let job = 0; job < model.jobCount; job++) {
    for (let i = model.starts[job]!; i < model.starts[job + 1]!; i++) {
      const number = shared[model.parts[i]!]!;
      if (number >= 0) bits[number >>> 5]![job]! |= 1 << (number & 31);
    }
  }
  return words <= 2
    ? narrowCounter(model, bits[0]!, bits[1] ?? new Int32Array(model.jobCount))
    : wideCounter(model, bits);
}
