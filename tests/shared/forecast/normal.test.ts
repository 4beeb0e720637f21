// The normal and beta laws against a reference package.

import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { betaBelow, betaPoint } from '../../../shared/forecast/beta.ts';
import {
  momentsBelow,
  momentsPoint,
  normalBelow,
  normalHeight,
  normalPoint,
} from '../../../shared/forecast/normal.ts';

describe('normalBelow()', () => {
  test('equals jstat’s normal from -8 to 8', () => {
    for (let z = -8; z <= 8; z += 0.05) {
      expect(Math.abs(normalBelow(z) - jStat.normal.cdf(z, 0, 1))).toBeLessThan(1e-14);
    }
  });

  test('reaches 0 and 1 far out', () => {
    expect([normalBelow(-50), normalBelow(50)]).toEqual([0, 1]);
  });
});

describe('normalPoint()', () => {
  test('gives the table’s values', () => {
    // Abramowitz & Stegun, table 26.5 (upper points): 1.64485, 1.95996, 2.32635, 3.09023.
    expect(normalPoint(0.95)).toBeCloseTo(1.64485, 5);
    expect(normalPoint(0.975)).toBeCloseTo(1.95996, 5);
    expect(normalPoint(0.01)).toBeCloseTo(-2.32635, 5);
    expect(normalPoint(0.999)).toBeCloseTo(3.09023, 5);
  });

  test('is turned back by normalBelow()', () => {
    for (let share = 0.0005; share < 1; share += 0.0117) {
      expect(normalBelow(normalPoint(share))).toBeCloseTo(share, 13);
    }
  });

  test('refuses 0 and 1', () => {
    expect(() => normalPoint(0)).toThrow(RangeError);
    expect(() => normalPoint(1)).toThrow(RangeError);
  });
});

describe('momentsPoint() and momentsBelow()', () => {
  test('come close to jstat’s binomial when it is lopsided', () => {
    const [picks, loss] = [2000, 0.01];
    const variance = picks * loss * (1 - loss);
    const moments = { mean: picks * loss, variance, third: variance * (1 - 2 * loss) };
    for (const lost of [12, 15, 20, 26, 30]) {
      expect(momentsBelow(moments, lost + 0.5)).toBeCloseTo(jStat.binomial.cdf(lost, picks, loss), 2);
    }
    expect(momentsPoint(moments, 0.95)).toBeGreaterThan(moments.mean + 1.645 * Math.sqrt(variance));
  });

  test('shift by a sixth of the skewness in the middle', () => {
    const lopsided = { mean: 10, variance: 4, third: 2.4 }; // skewness 2.4 ÷ 2³ = 0.3
    expect(momentsPoint(lopsided, 0.5)).toBeCloseTo(10 - (2 * 0.3) / 6, 9);
    expect(momentsBelow(lopsided, 10)).toBeCloseTo(0.5 + (normalHeight(0) * 0.3) / 6, 12);
    // One deviation off it changes nothing.
    expect(momentsBelow(lopsided, 12)).toBeCloseTo(normalBelow(1), 12);
  });

  test('are a step when there is no spread', () => {
    const certain = { mean: 5, variance: 0, third: 0 };
    expect(momentsPoint(certain, 0.05)).toBe(5);
    expect([momentsBelow(certain, 4.9), momentsBelow(certain, 5)]).toEqual([0, 1]);
  });
});

describe('betaBelow() and betaPoint()', () => {
  test.each([
    [0.9, 299.1],
    [3, 997],
    [0.5, 0.5],
    [40, 12],
  ])('equal jstat’s beta for a = %f, b = %f', (a, b) => {
    for (let x = 0.001; x < 1; x += 0.0371) {
      expect(betaBelow(x, { a, b })).toBeCloseTo(jStat.beta.cdf(x, a, b), 7);
    }
    for (const share of [0.05, 0.5, 0.95]) {
      expect(jStat.beta.cdf(betaPoint(share, { a, b }), a, b)).toBeCloseTo(share, 7);
    }
  });

  test('are nought below 0 and all above 1', () => {
    const law = { a: 2, b: 3 };
    expect([-0.1, 0, 1, 1.1].map((x) => betaBelow(x, law))).toEqual([0, 0, 1, 1]);
  });

  test('equal the arcsine law for a = b = 1/2', () => {
    for (let x = 0.01; x < 1; x += 0.03) {
      expect(betaBelow(x, { a: 0.5, b: 0.5 })).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(x)), 12);
    }
  });
});
