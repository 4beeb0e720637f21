// What a step does to the parts shared by near jobs must be what a count over the whole sequence says, before and after.

import { describe, expect, test } from 'vitest';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import {
  applyStraight,
  drawStep,
  nearLoss,
  type SearchRow,
  searchRow,
  sharedChange,
} from '../../../shared/order/moves.ts';
import { modelOrder } from '../../../shared/order/problem.ts';

/** Parts shared by jobs so many places apart, summed over the sequence. */
function sharedApart({ shared, n }: SearchRow, sequence: Uint16Array, places: number): number {
  let sum = 0;
  for (let k = places; k < n; k++) sum += shared[(sequence[k] ?? 0) * n + (sequence[k - places] ?? 0)] ?? 0;
  return sum;
}

function rowOf(jobCount: number, seed: number): SearchRow {
  const chance = seededChance(seed);
  const jobs = Array.from({ length: jobCount }, (_, job) => ({
    id: `j${job}`,
    parts: [`own${job}`, ...new Set(Array.from({ length: 6 }, () => `p${chanceBelow(chance, 15)}`))],
  }));
  const model = modelOrder({ capacity: 9, jobs });
  if (!model.ok) throw new TypeError('The jobs fit');
  return searchRow(
    model.value,
    Uint16Array.from({ length: jobCount }, (_, job) => job),
  );
}

describe('sharedChange() and nearLoss()', () => {
  test.each([3, 4, 5, 7, 20])(
    'read a step off the table as the whole sequence of %d jobs counts it',
    (jobs) => {
      const row = rowOf(jobs, jobs);
      const chance = seededChance(1);
      let steps = 0;
      while (steps < 500) {
        const step = drawStep(chance, row);
        if (step === null) continue;
        steps++;
        const trial = row.current.slice();
        applyStraight(step, row.first, { current: row.current, trial });
        const gained = (places: number) =>
          sharedApart(row, trial, places) - sharedApart(row, row.current, places);
        expect(sharedChange(row, step)).toBe(gained(1));
        expect(nearLoss(row, step, trial)).toBeCloseTo(
          -(0.9 * gained(1) + 0.5 * gained(2) + 0.3 * gained(3)),
          9,
        );
      }
    },
  );
});
