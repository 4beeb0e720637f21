// Learnt loss: the conjugate update, the published balance, and a rise told from bad luck on seeded reels.

import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { evidenceFromUnload, lossFor } from '../../../shared/floor/remaining/loss.ts';
import {
  type LossEvidence,
  type LossLearnt,
  lossPrior,
  updateLoss,
} from '../../../shared/floor/remaining.ts';
import { lossEvidence, risingLoss } from '../../../shared/forecast/loss.ts';
import { seededChance } from '../../../shared/kit/chance.ts';

describe('evidenceFromUnload()', () => {
  const counted = { startSd: 0, endSd: 0 };

  test('finds 200 of 10 200 lost, 1.96 %, when 12 000 came, 1800 went back and 10 000 were placed', () => {
    const found = evidenceFromUnload({ ...counted, startParts: 12_000, endParts: 1800, placements: 10_000 });
    expect(found).toEqual({ ok: true, value: { picks: 10_200, lost: 200, sd: 0 } });
    expect(200 / 10_200).toBeCloseTo(0.0196, 4);
  });

  test('refuses with morePlacedThanGone when counts cannot explain it', () => {
    const found = evidenceFromUnload({ ...counted, startParts: 4000, endParts: 3000, placements: 1200 });
    expect(found).toEqual({
      ok: false,
      error: { code: 'morePlacedThanGone', gone: 1000, placements: 1200, lost: -200 },
    });
  });

  test('takes the loss for none when the counts’ spread explains the excess', () => {
    const found = evidenceFromUnload({
      startParts: 4000,
      startSd: 4,
      endParts: 3000,
      endSd: 3,
      placements: 1010,
    });
    expect(found).toEqual({ ok: true, value: { picks: 1010, lost: 0, sd: 5 } });
  });

  test('sets aside with unlikelyLoss what no feeder loses, and learns what the counts’ spread explains', () => {
    // 56 % of the picks: a count is wrong. Common practice is 0.1-3 % in steady runs; the bound of 10 % is made up.
    const gone = { startParts: 5000, endParts: 450, placements: 2000 };
    expect(evidenceFromUnload({ ...counted, ...gone })).toEqual({
      ok: false,
      error: { code: 'unlikelyLoss', gone: 4550, placements: 2000, lost: 2550 },
    });
    expect(evidenceFromUnload({ ...gone, startSd: 800, endSd: 0 }).ok).toBe(true);
    expect(evidenceFromUnload({ ...counted, startParts: 1000, endParts: 0, placements: 901 }).ok).toBe(true);
    expect(evidenceFromUnload({ ...counted, startParts: 1000, endParts: 0, placements: 899 }).ok).toBe(false);
  });

  test('refuses with noPicks when nothing happened', () => {
    const found = evidenceFromUnload({ ...counted, startParts: 4000, endParts: 4000, placements: 0 });
    expect(found).toEqual({ ok: false, error: { code: 'noPicks', gone: 0, placements: 0, lost: 0 } });
  });
});

describe('updateLoss()', () => {
  test('adds lost and kept to the Beta law', () => {
    const learnt = updateLoss(lossPrior({ mean: 0.01, strength: 100 }), { picks: 4000, lost: 20 });
    expect([learnt.alpha, learnt.beta]).toEqual([21, 4079]);
    expect([learnt.reels, learnt.picks, learnt.lost]).toEqual([1, 4000, 20]);
  });

  test('weighs a reel less the less certain its counts are', () => {
    const prior = lossPrior({ mean: 0.01, strength: 100 });
    const strengths = [0, 5, 50].map(
      (sd) => lossEvidence(updateLoss(prior, { picks: 4000, lost: 20, sd })).strength,
    );
    expect(strengths[0]).toBe(4100);
    expect(strengths[1]).toBeLessThan(strengths[0]!);
    expect(strengths[2]).toBeLessThan(strengths[1]!);
    expect(strengths[2]).toBeGreaterThan(100);
  });

  test.each([
    { mean: 0.003, strength: 150, picks: 5000, lost: 150, sd: 41 },
    { mean: 0.003, strength: 150, picks: 5000, lost: 0, sd: 41 },
    { mean: 0.003, strength: 2000, picks: 10_000, lost: 100, sd: 3 },
    { mean: 0.01, strength: 5000, picks: 800, lost: 20, sd: 12 },
  ])('follows Bayes’ rule for an uncertain reading, summed in 400 000 steps: %o', (law) => {
    const [a, b] = [law.mean * law.strength, (1 - law.mean) * law.strength];
    let [weights, sum, squares] = [0, 0, 0];
    // Steps of the fourth root: the Beta law may have a pole at 0.
    for (let i = 0; i < 400_000; i++) {
      const root = (i + 0.5) / 400_000;
      const p = root ** 4;
      const variance = law.sd ** 2 + law.picks * p * (1 - p);
      const reading = Math.exp(-((law.lost - law.picks * p) ** 2) / (2 * variance)) / Math.sqrt(variance);
      const weight = p ** (a - 1) * (1 - p) ** (b - 1) * reading * 4 * root ** 3;
      weights += weight;
      sum += weight * p;
      squares += weight * p * p;
    }
    const mean = sum / weights;
    const shown = lossEvidence(updateLoss(lossPrior(law), law));
    expect(shown.mean / mean).toBeCloseTo(1, 2);
    expect(shown.sd / Math.sqrt(squares / weights - mean * mean)).toBeCloseTo(1, 2);
  });

  test('believes a splice that shows many lost, though its window is wide', () => {
    // 5000 picks, 150 ± 41 lost: no feeder of the usual kind does that.
    const shown = lossEvidence(
      updateLoss(lossPrior({ mean: 0.003, strength: 150 }), { picks: 5000, lost: 150, sd: 41 }),
    );
    expect(shown.mean).toBeGreaterThan(0.015);
  });

  test('asks no order of the reels when their counts are certain', () => {
    const reelArb = fc
      .nat(3000)
      .chain((picks) => fc.record({ picks: fc.constant(picks), lost: fc.nat(picks) }));
    fc.assert(
      fc.property(fc.array(reelArb, { maxLength: 6 }), (reels) => {
        const there = reels.reduce(updateLoss, lossPrior());
        const back = [...reels].reverse().reduce(updateLoss, lossPrior());
        expect(back.alpha).toBeCloseTo(there.alpha, 9);
        expect(back.beta).toBeCloseTo(there.beta, 9);
      }),
    );
  });

  test('refuses more lost than picked', () => {
    expect(() => updateLoss(lossPrior(), { picks: 10, lost: 11 })).toThrow(RangeError);
  });
});

describe('lossEvidence()', () => {
  test('gives the middle 90 % as jstat’s beta has it, with what it rests on', () => {
    const learnt = updateLoss(lossPrior(), { picks: 5000, lost: 25 });
    const shown = lossEvidence(learnt);
    expect(shown.mean).toBeCloseTo((0.9 + 25) / 5300, 12);
    expect(jStat.beta.cdf(shown.low, learnt.alpha, learnt.beta)).toBeCloseTo(0.05, 6);
    expect(jStat.beta.cdf(shown.high, learnt.alpha, learnt.beta)).toBeCloseTo(0.95, 6);
    expect([shown.reels, shown.picks, shown.lost]).toEqual([1, 5000, 25]);
  });
});

describe('lossFor()', () => {
  const place = { part: 'BW-1', feeder: 'F7', slot: 'M1-F-014' };
  const many = (where: object, lost: number, times: number) =>
    Array.from({ length: times }, () => ({ ...place, ...where, picks: 4000, lost }));

  test('starts from what is known of the part and ends with what is seen here', () => {
    const elsewhere = many({ feeder: 'F1' }, 4, 100);
    const mean = (evidence: Parameters<typeof lossFor>[1]) => lossEvidence(lossFor(place, evidence)).mean;
    expect(mean(elsewhere)).toBeCloseTo(0.001, 4);
    expect(mean([...elsewhere, ...many({}, 40, 10)])).toBeCloseTo(0.01, 3);
    expect(mean(many({ part: 'BW-2' }, 400, 10))).toBeCloseTo(0.003, 9);
  });

  test('trusts the same feeder in another slot before other feeders', () => {
    const evidence = [...many({ feeder: 'F1' }, 4, 20), ...many({ slot: 'M1-F-020' }, 40, 3)];
    expect(lossEvidence(lossFor(place, evidence)).mean).toBeGreaterThan(0.007);
  });
});

describe('risingLoss()', () => {
  const draw = (loss: number, reels: number, seed: number): LossEvidence[] => {
    const chance = seededChance(seed);
    return Array.from({ length: reels }, () => {
      let lost = 0;
      for (let i = 0; i < 3000; i++) if (chance() < loss) lost += 1;
      return { picks: 3000, lost };
    });
  };
  const earlier = draw(0.003, 12, 1).reduce(updateLoss, lossPrior());

  test('stays silent for an unchanged feeder in at least 97 of 100 seeded cases', () => {
    let alarms = 0;
    for (let seed = 100; seed < 200; seed++)
      if (risingLoss(earlier, draw(0.003, 2, seed))!.rising) alarms += 1;
    expect(alarms).toBeLessThanOrEqual(3);
  });

  test('speaks for a feeder that loses three times as much in at least 95 of 100', () => {
    let alarms = 0;
    for (let seed = 300; seed < 400; seed++)
      if (risingLoss(earlier, draw(0.009, 2, seed))!.rising) alarms += 1;
    expect(alarms).toBeGreaterThanOrEqual(95);
  });

  test('tells how likely as many lost are: any number is as likely as another where nothing is known', () => {
    // Beta(1, 1): of n picks 0, 1, … or n are lost with one chance in n + 1 each.
    const nothing = lossPrior({ mean: 0.5, strength: 2 });
    const chanceOf = (...reels: readonly LossEvidence[]) => risingLoss(nothing, reels)?.chance;
    expect(chanceOf({ picks: 9, lost: 9 })).toBeCloseTo(1 / 10, 12);
    expect(chanceOf({ picks: 4, lost: 3 }, { picks: 5, lost: 5 })).toBeCloseTo(2 / 10, 12);
    expect(chanceOf({ picks: 9, lost: 0 })).toBeCloseTo(1, 12);
    expect(risingLoss(nothing, [{ picks: 8, lost: 2 }])).toMatchObject({
      earlierMean: 0.5,
      recentMean: 0.25,
    });
    const isRising = (picks: number) => risingLoss(nothing, [{ picks, lost: picks }])?.rising;
    // One chance in 101 is less than 1 %, one in 99 is more.
    expect([isRising(98), isRising(100)]).toEqual([false, true]);
  });

  test('has no answer without recent picks', () => {
    expect(risingLoss(earlier, [])).toBeNull();
  });
});

describe('an uncertain reading, summed by hand over very many points', () => {
  /** Bayes' rule by the middle of 300,000 steps, closer around the largest weight. */
  function summed({ alpha, beta }: LossLearnt, reel: Required<LossEvidence>) {
    const weight = (u: number) => {
      const p = Math.exp(u);
      const variance = reel.sd ** 2 + reel.picks * p * (1 - p);
      const off = reel.lost - reel.picks * p;
      return alpha * u + (beta - 1) * Math.log1p(-p) - off ** 2 / (2 * variance) - Math.log(variance) / 2;
    };
    const low = Math.log(alpha / (alpha + beta)) - 10 * (1 / alpha + 1 / Math.sqrt(alpha));
    const high = -1e-3;
    const steps = 200_000;
    let top = low;
    for (let n = 0; n < steps; n++) {
      const u = low + ((high - low) * (n + 0.5)) / steps;
      if (weight(u) > weight(top)) top = u;
    }
    const [from, to] = [Math.max(low, top - 3), Math.min(high, top + 3)];
    const sums = [0, 0, 0];
    for (const [left, right, count] of [
      [low, from, 50_000],
      [from, to, 50_000],
      [to, high, 10_000],
    ] as const) {
      const step = (right - left) / count;
      for (let n = 0; n < count; n++) {
        const p = Math.exp(left + step * (n + 0.5));
        const share = Math.exp(weight(left + step * (n + 0.5)) - weight(top)) * step;
        for (const power of [0, 1, 2]) sums[power] = (sums[power] ?? 0) + share * p ** power;
      }
    }
    const [all = 0, first = 0, second = 0] = sums;
    return { mean: first / all, sd: Math.sqrt(second / all - (first / all) ** 2) };
  }

  const cases = [
    ['a line that assumes no loss, a reel that lost much', 0.0001, 150, { picks: 1106, lost: 228, sd: 0.9 }],
    ['a line that assumes no loss, a reel of a rough count', 0.0001, 150, { picks: 6000, lost: 30, sd: 40 }],
    ['a line that assumes no loss, nothing lost', 0.0001, 150, { picks: 1417, lost: 0, sd: 24 }],
    ['the first guess, a count by a counter', 0.003, 300, { picks: 9800, lost: 31, sd: 1.4 }],
    ['the first guess, a count by a label', 0.003, 300, { picks: 4000, lost: 60, sd: 12 }],
    ['much known, a reading far off', 0.004, 50_000, { picks: 5000, lost: 400, sd: 3 }],
  ] as const;
  test.each(cases)('%s', (_, mean, strength, reel) => {
    const prior = lossPrior({ mean, strength });
    const learnt = updateLoss(prior, reel);
    const all = learnt.alpha + learnt.beta;
    const found = learnt.alpha / all;
    const law = summed(prior, reel);
    expect(Math.abs(found - law.mean) / law.sd).toBeLessThan(0.02);
    expect(Math.sqrt((found * (1 - found)) / (all + 1)) / law.sd).toBeCloseTo(1, 1);
  });
});
