// Placements still to come: exact where they can be, against seeded draws where they cannot, and without jumps between the two.

import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { visitLosses } from '../../../shared/forecast/beta-binomial.ts';
import {
  placementMoments,
  placementsAt,
  type ReelOutlook,
  riskOfFewerThan,
} from '../../../shared/forecast/placements.ts';
import { type Chance, chanceNormal, seededChance } from '../../../shared/kit/chance.ts';

const still = { variance: 0 };
const seed = 20_261_124;

/** One draw of the placements that a reel gives, pick by pick. */
function draw(reel: ReelOutlook, chance: Chance): number {
  const picks = Math.max(0, Math.round(chanceNormal(chance, reel.left, reel.sd)));
  let kept = 0;
  for (let i = 0; i < picks; i++) if (chance() >= reel.loss) kept += 1;
  return kept;
}

describe('placementMoments()', () => {
  test('adds the count’s spread to that of a learnt loss', () => {
    // 1000 × 0.2 × 0.8 × (99 + 1000) ÷ 100 of the loss, 0.2 × 0.8 × 50² ÷ 100 of both, 0.8² × 50² of the count.
    const { mean, variance } = placementMoments({ left: 1000, sd: 50, loss: 0.2, lossStrength: 99 });
    expect([mean, variance]).toEqual([800, expect.closeTo(1758.4 + 4 + 1600, 9)]);
  });

  test('gives mean (1-p)R and variance R p (1-p) + (1-p)² σ²', () => {
    const { mean, variance } = placementMoments({ left: 2000, sd: 30, loss: 0.01 });
    expect(mean).toBeCloseTo(1980, 9);
    expect(variance).toBeCloseTo(2000 * 0.01 * 0.99 + 0.99 ** 2 * 900, 9);
  });
});

describe('placementsAt()', () => {
  test('is certain when neither count nor loss has a spread', () => {
    expect(placementsAt({ left: 4000, sd: 0, loss: 0 }, [0.05, 0.95], still)).toEqual([4000, 4000]);
  });

  test('keeps the fraction of a part when the count has one', () => {
    expect(placementsAt({ left: 10.5, sd: 0, loss: 0 }, [0.05, 0.95], still)).toEqual([10.5, 10.5]);
  });

  test.each([
    { reason: 'a good count of many', reel: { left: 3000, sd: 40, loss: 0.004 } },
    { reason: 'a poor count of few', reel: { left: 60, sd: 12, loss: 0.02 } },
    { reason: 'a heavy loss', reel: { left: 500, sd: 8, loss: 0.15 } },
    { reason: 'rare losses, nearly certain count', reel: { left: 300, sd: 0.6, loss: 0.003 } },
  ])('holds nine draws of ten between its points with $reason', ({ reel }) => {
    const chance = seededChance(seed);
    const [early, late] = placementsAt(reel, [0.05, 0.95], still);
    let below = 0;
    let above = 0;
    const draws = 6000;
    for (let i = 0; i < draws; i++) {
      const placements = draw(reel, chance);
      if (placements < early! - 0.5) below += 1;
      if (placements > late! + 0.5) above += 1;
    }
    // A point of a whole-number law may hold back up to one value's share: only "not more than 5 % and its error" is asked.
    expect(below / draws).toBeLessThan(0.05 + 0.012);
    expect(above / draws).toBeLessThan(0.05 + 0.012);
    expect(below + above).toBeGreaterThan(0);
  });

  test('agrees between moments and summing where a law turns lopsided', () => {
    // 0.4 is the skewness at which the method changes; on both sides the answers must be the same to a fraction of a part.
    const points = [0.0025, 0.0026, 0.0027, 0.0028, 0.0029, 0.003].map(
      (loss) => placementsAt({ left: 2400, sd: 0.3, loss }, [0.05], still)[0]!,
    );
    points.slice(1).forEach((point, i) => {
      expect(Math.abs(point - points[i]!)).toBeLessThan(0.6);
    });
  });

  test('passes into the exact answer as the count’s spread vanishes', () => {
    for (const loss of [0.001, 0.01, 0.2]) {
      const exact = placementsAt({ left: 1000, sd: 0, loss }, [0.05, 0.95], still);
      const nearly = placementsAt({ left: 1000, sd: 1e-3, loss }, [0.05, 0.95], still);
      exact.forEach((point, i) => {
        expect(Math.abs(point - nearly[i]!)).toBeLessThan(1);
      });
    }
  });

  test('never promises fewer than nothing', () => {
    expect(placementsAt({ left: 5, sd: 40, loss: 0 }, [0.05, 0.95], still)[0]).toBe(0);
  });

  test('widens when the loss is learnt rather than known', () => {
    const known = placementsAt({ left: 4000, sd: 0, loss: 0.005 }, [0.05, 0.95], still);
    const learnt = placementsAt({ left: 4000, sd: 0, loss: 0.005, lossStrength: 500 }, [0.05, 0.95], still);
    expect(learnt[0]).toBeLessThan(known[0]!);
    expect(learnt[1]).toBeGreaterThan(known[1]!);
  });
});

describe('a tape that was counted down', () => {
  test('gives what its whole law gives, less what was placed', () => {
    // 4000 parts by a certain count, 1990 placed since at an expected loss of 0.5 %: 2000 parts are left.
    const law = { sd: 0, loss: 0.005, lossStrength: 400 };
    const whole = placementsAt({ ...law, left: 4000 }, [0.05, 0.95], still);
    const rest = placementsAt({ ...law, left: 2000, taken: 1990 }, [0.05, 0.95], still);
    rest.forEach((point, i) => {
      expect(point).toBeCloseTo(whole[i]! - 1990, 9);
    });
    expect(riskOfFewerThan({ ...law, left: 2000, taken: 1990 }, 1985)).toBeCloseTo(
      riskOfFewerThan({ ...law, left: 4000 }, 3975),
      12,
    );
  });

  test('keeps the mean, and all of the doubt of its loss', () => {
    const { mean, variance } = placementMoments({
      left: 100,
      taken: 4950,
      sd: 0,
      loss: 0.01,
      lossStrength: 200,
    });
    expect(mean).toBeCloseTo(99, 9);
    // Beta-binomial of 5100 picks (Johnson, Kemp & Kotz §6.2.2).
    expect(variance).toBeCloseTo((5100 * 0.01 * 0.99 * (200 + 5100)) / 201, 6);
  });

  test.each([
    { left: 5000, sd: 12, loss: 0.003, lossStrength: 150 },
    { left: 300, taken: 9000, sd: 25, loss: 0.003, lossStrength: 150 },
    { left: 900, taken: 1200, sd: 40, loss: 0.02, lossStrength: 60 },
    { left: 8000, sd: 1.5, loss: 0.002, lossStrength: 900 },
  ])('lies where the sum over every single loss puts it: %o', (reel) => {
    const picks = Math.floor(reel.left + (reel.taken ?? 0) / (1 - reel.loss));
    const fraction = (reel.left + (reel.taken ?? 0) / (1 - reel.loss) - picks) * (1 - reel.loss);
    const deviation = (1 - reel.loss) * reel.sd;
    const below = (x: number) => {
      let sum = 0;
      visitLosses({ picks, loss: reel.loss, strength: reel.lossStrength }, (lost, share) => {
        sum += share * jStat.normal.cdf(x, picks - lost + fraction - (reel.taken ?? 0), deviation);
        return true;
      });
      return sum;
    };
    const [early, late] = placementsAt(reel, [0.05, 0.95], still);
    expect(below(early!)).toBeCloseTo(0.05, 3);
    expect(below(late!)).toBeCloseTo(0.95, 3);
    expect(riskOfFewerThan(reel, Math.ceil(early!))).toBeCloseTo(below(Math.ceil(early!) - 0.5), 3);
  });
});

describe('riskOfFewerThan()', () => {
  test('takes the part that is half left for none', () => {
    const half = { left: 10.5, sd: 0, loss: 0 };
    expect([riskOfFewerThan(half, 10), riskOfFewerThan(half, 11)]).toEqual([0, 1]);
  });

  test('is 0 or 1 without any spread, and exactly enough is enough', () => {
    const reel = { left: 1200, sd: 0, loss: 0 };
    expect(riskOfFewerThan(reel, 1200)).toBe(0);
    expect(riskOfFewerThan(reel, 1201)).toBe(1);
    expect(riskOfFewerThan(reel, 0)).toBe(0);
    expect(riskOfFewerThan({ ...reel, left: 0 }, 1)).toBe(1);
    expect(riskOfFewerThan({ ...reel, left: 0 }, 0)).toBe(0);
  });

  test('equals the share of seeded draws that give too few', () => {
    for (const reel of [
      { left: 600, sd: 0, loss: 0.01 },
      { left: 600, sd: 5, loss: 0.01 },
      { left: 600, sd: 0.4, loss: 0.002 },
    ]) {
      const chance = seededChance(seed);
      const draws = 8000;
      for (const wanted of [590, 595, 599]) {
        let few = 0;
        for (let i = 0; i < draws; i++) if (draw(reel, chance) < wanted) few += 1;
        expect(Math.abs(riskOfFewerThan(reel, wanted) - few / draws)).toBeLessThan(0.025);
      }
    }
  });

  const reelArb = fc.record({
    left: fc.nat(5000),
    sd: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 100, noNaN: true })),
    loss: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.3, noNaN: true })),
  });

  test('grows with what is wanted and shrinks with what is left', () => {
    fc.assert(
      fc.property(reelArb, fc.nat(5000), fc.nat(200), (reel, wanted, more) => {
        const risk = riskOfFewerThan(reel, wanted);
        expect(risk).toBeGreaterThanOrEqual(0);
        expect(risk).toBeLessThanOrEqual(1);
        expect(riskOfFewerThan(reel, wanted + more)).toBeGreaterThanOrEqual(risk - 1e-3);
        expect(riskOfFewerThan({ ...reel, left: reel.left + more }, wanted)).toBeLessThanOrEqual(risk + 1e-3);
      }),
    );
  });
});
