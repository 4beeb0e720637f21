// Is what is there enough? By the normal law: 1.645 deviations are passed with 95 % (jStat has a normal law of its own).

import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { chanceOfEnough, ENOUGH, partsShort, sumAmounts } from '../../../shared/floor/remaining.ts';

const amount = (parts: number, variance = 0, sd = 0) => ({ parts, variance, sd });

describe('chanceOfEnough()', () => {
  test('is certain where nothing is in doubt', () => {
    expect([amount(1), amount(0), amount(-1)].map(chanceOfEnough)).toEqual([1, 1, 0]);
  });

  test.each([
    [10, 16, 3],
    [-4, 9, 0],
    [0, 0, 5],
    [30, 100, 20],
  ])(
    'of %i more than needed with variance %i and %i in common is that of a normal law',
    (parts, variance, sd) => {
      const expected = jStat.normal.cdf(parts, 0, Math.sqrt(variance + sd ** 2));
      expect(chanceOfEnough(amount(parts, variance, sd))).toBeCloseTo(expected, 4);
    },
  );
});

describe('partsShort()', () => {
  test('is what must be added so that it is enough with 95 %, and not a part more', () => {
    for (const each of [amount(-100, 400), amount(5, 100, 3), amount(0, 1)]) {
      const short = partsShort(each);
      expect(short).toBeGreaterThan(0);
      expect(chanceOfEnough({ ...each, parts: each.parts + short })).toBeGreaterThanOrEqual(ENOUGH - 1e-3);
      expect(chanceOfEnough({ ...each, parts: each.parts + short - 1 })).toBeLessThan(ENOUGH);
    }
    expect(partsShort(amount(-3))).toBe(3);
    expect(partsShort(amount(0))).toBe(0);
    expect(partsShort(amount(100, 100))).toBe(0);
  });
});

test('amounts together add what they share as a whole, and what each has of its own as variances', () => {
  expect(sumAmounts([amount(1, 2, 3), amount(10, 20, 30)])).toEqual(amount(11, 22, 33));
  expect(sumAmounts([])).toEqual(amount(0));
});
