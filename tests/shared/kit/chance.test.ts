// Seeded chance: repeats, stays in range, and has the shape that it claims.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceBelow, chanceNormal, seededChance } from '../../../shared/kit/chance.ts';

const draws = (seed: number, count: number) => {
  const chance = seededChance(seed);
  return Array.from({ length: count }, chance);
};

describe('seededChance()', () => {
  test('gives the same numbers for the same seed, others for another', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        expect(draws(seed, 20)).toEqual(draws(seed, 20));
        expect(draws(seed, 20)).not.toEqual(draws(seed + 1, 20));
      }),
    );
  });

  test('stays in [0, 1) and fills it evenly', () => {
    // Pearson's chi-squared with 9 degrees of freedom: 27.9 is passed by chance once in a thousand (NIST/SEMATECH handbook 1.3.6.7.4).
    const bins = new Array<number>(10).fill(0);
    const values = draws(2026, 100_000);
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    for (const value of values) {
      const bin = Math.floor(value * 10);
      bins[bin] = (bins[bin] ?? 0) + 1;
    }
    const chiSquared = bins.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
    expect(chiSquared).toBeLessThan(27.9);
  });

  test('starts from seed 1 with the known numbers of the generator "mulberry32"', () => {
    // From a second writing of the published generator in 64-bit whole numbers.
    const reference = (seed: number, count: number) => {
      const low = (value: bigint) => BigInt.asUintN(32, value);
      let state = BigInt(seed);
      return Array.from({ length: count }, () => {
        state = low(state + 0x6d2b79f5n);
        let mixed = low((state ^ (state >> 15n)) * (state | 1n));
        mixed = low(mixed ^ low(mixed + low((mixed ^ (mixed >> 7n)) * (mixed | 61n))));
        return Number(low(mixed ^ (mixed >> 14n))) / 2 ** 32;
      });
    };
    for (const seed of [0, 1, 42, 0xffffffff]) expect(draws(seed, 50)).toEqual(reference(seed, 50));
  });
});

describe('chanceBelow()', () => {
  test('gives every whole number below the limit and no other', () => {
    const chance = seededChance(7);
    const seen = new Set(Array.from({ length: 2000 }, () => chanceBelow(chance, 6)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
    expect(chanceBelow(() => 0.999999999, 6)).toBe(5);
  });
});

describe('chanceNormal()', () => {
  test('has the mean, the deviation and the share within one deviation of a normal distribution', () => {
    const chance = seededChance(11);
    const values = Array.from({ length: 50_000 }, () => chanceNormal(chance, 10, 2));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    // Standard errors: 2/sqrt(50000) = 0.009 for the mean, about 0.006 for the deviation, 0.002 for the share 0.6827.
    expect(Math.abs(mean - 10)).toBeLessThan(0.04);
    expect(Math.abs(Math.sqrt(variance) - 2)).toBeLessThan(0.03);
    const within = values.filter((value) => Math.abs(value - 10) < 2).length / values.length;
    expect(Math.abs(within - 0.6827)).toBeLessThan(0.009);
  });
});
