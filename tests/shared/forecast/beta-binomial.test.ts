// The law of losses against a reference package (binomial), against exact fractions (beta-binomial), and against each other.

import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import {
  type LossLaw,
  logGamma,
  lossMoments,
  placementPoints,
  probabilityLostAtMost,
  visitLosses,
} from '../../../shared/forecast/beta-binomial.ts';

const binomial = (picks: number, loss: number): LossLaw => ({ picks, loss, strength: Infinity });

/** Exact share of each number lost for whole α, β: C(n,k) · α⁽ᵏ⁾ β⁽ⁿ⁻ᵏ⁾ / (α+β)⁽ⁿ⁾ with rising factorials, in big integers. */
function exactBetaBinomial(picks: number, alpha: number, beta: number): number[] {
  const rising = (start: number, times: number) => {
    let product = 1n;
    for (let i = 0; i < times; i++) product *= BigInt(start + i);
    return product;
  };
  const whole = rising(alpha + beta, picks);
  let ways = 1n;
  const shares: number[] = [];
  for (let lost = 0; lost <= picks; lost++) {
    const top = ways * rising(alpha, lost) * rising(beta, picks - lost);
    shares.push(Number((top * 10n ** 18n) / whole) / 1e18);
    ways = (ways * BigInt(picks - lost)) / BigInt(lost + 1);
  }
  return shares;
}

describe('logGamma()', () => {
  test('equals jstat’s and the factorials', () => {
    for (const x of [1e-3, 0.3, 1, 2, 5.5, 10, 99.25, 12_345.6]) {
      expect(Math.abs(logGamma(x) - jStat.gammaln(x))).toBeLessThan(
        1e-9 * Math.max(1, Math.abs(jStat.gammaln(x))),
      );
    }
    expect(logGamma(11)).toBeCloseTo(Math.log(3_628_800), 12);
  });
});

describe('probabilityLostAtMost()', () => {
  test.each([
    [10, 0.01],
    [50, 0.02],
    [400, 0.005],
    [4000, 0.005],
    [3000, 0.1],
    [25, 0.5],
    [12, 0.97],
  ])('equals jstat’s binomial for %i picks at a loss of %f', (picks, loss) => {
    for (let lost = 0; lost < picks; lost += Math.max(1, Math.floor(picks / 40))) {
      expect(probabilityLostAtMost(binomial(picks, loss), lost)).toBeCloseTo(
        jStat.binomial.cdf(lost, picks, loss),
        9,
      );
    }
  });

  test.each([
    [40, 1, 199],
    [120, 3, 97],
    [300, 2, 998],
    [60, 5, 5],
  ])('equals exact fractions for %i picks with Beta(%i, %i)', (picks, alpha, beta) => {
    const law = { picks, loss: alpha / (alpha + beta), strength: alpha + beta };
    let sum = 0;
    exactBetaBinomial(picks, alpha, beta).forEach((share, lost) => {
      sum += share;
      expect(probabilityLostAtMost(law, lost)).toBeCloseTo(sum, 9);
    });
  });

  test('equals the binomial averaged over jstat’s beta', () => {
    const [picks, alpha, beta] = [200, 2.5, 160.5];
    const steps = 4000;
    for (const lost of [0, 2, 5, 9]) {
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const loss = ((i + 0.5) / steps) * 0.15; // beyond 0.15 less than 1e-9 of the law is left
        sum += jStat.binomial.cdf(lost, picks, loss) * jStat.beta.pdf(loss, alpha, beta) * (0.15 / steps);
      }
      const law = { picks, loss: alpha / (alpha + beta), strength: alpha + beta };
      expect(probabilityLostAtMost(law, lost)).toBeCloseTo(sum, 5);
    }
  });

  test('tends to the binomial when the loss is learnt ever better', () => {
    const known = probabilityLostAtMost(binomial(500, 0.01), 4);
    expect(probabilityLostAtMost({ picks: 500, loss: 0.01, strength: 1e8 }, 4)).toBeCloseTo(known, 5);
  });
});

describe('placementPoints()', () => {
  test('is the smallest number that jstat’s binomial takes to the share', () => {
    for (const [picks, loss] of [
      [10, 0.01],
      [50, 0.02],
      [333, 0.004],
      [4000, 0.005],
      [900, 0.3],
    ] as const) {
      const points = placementPoints(binomial(picks, loss), [0.05, 0.5, 0.95]);
      [0.05, 0.5, 0.95].forEach((share, i) => {
        let k = 0;
        while (jStat.binomial.cdf(k, picks, 1 - loss) < share) k += 1;
        expect(points[i]).toBe(k);
      });
    }
  });

  test('is the smallest number that exact fractions take to the share when the loss is learnt', () => {
    for (const [picks, alpha, beta] of [
      [40, 1, 199],
      [300, 2, 998],
      [60, 5, 5],
    ] as const) {
      const law = { picks, loss: alpha / (alpha + beta), strength: alpha + beta };
      const lost = exactBetaBinomial(picks, alpha, beta);
      const points = placementPoints(law, [0.05, 0.95]);
      [0.05, 0.95].forEach((share, i) => {
        let k = -1;
        for (let sum = 0; sum < share; sum += lost[picks - k]!) k += 1;
        expect(points[i]).toBe(k);
      });
    }
  });

  test('is certain when nothing or everything is lost', () => {
    expect(placementPoints(binomial(40, 0), [0.05, 0.95])).toEqual([40, 40]);
    expect(placementPoints(binomial(40, 1), [0.05, 0.95])).toEqual([0, 0]);
    expect(placementPoints(binomial(0, 0.1), [0.05, 0.95])).toEqual([0, 0]);
  });
});

describe('lossMoments()', () => {
  test('equals the moments summed over the law', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0.001, max: 0.6, noNaN: true }),
        fc.option(fc.double({ min: 20, max: 5000, noNaN: true })),
        (picks, loss, learnt) => {
          const law = { picks, loss, strength: learnt ?? Infinity };
          const seen: [number, number][] = [];
          visitLosses(law, (lost, probability) => {
            seen.push([lost, probability]);
            return true;
          });
          const sum = (of: (lost: number) => number) =>
            seen.reduce((total, [lost, p]) => total + p * of(lost), 0);
          const { mean, variance, third } = lossMoments(law);
          expect(sum(() => 1)).toBeCloseTo(1, 6);
          expect(sum((lost) => lost)).toBeCloseTo(mean, 4);
          expect(sum((lost) => (lost - mean) ** 2) / variance).toBeCloseTo(1, 4);
          const scale = variance ** 1.5;
          expect(sum((lost) => (lost - mean) ** 3) / scale).toBeCloseTo(third / scale, 3);
        },
      ),
    );
  });
});
