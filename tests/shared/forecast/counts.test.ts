// Counts against published quantities and diameters, and their spread against the count of a slightly wrong measurement.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Count,
  combineCounts,
  contradicts,
  countDown,
  countFromCalibratedTape,
  countFromLabel,
  countFromMachine,
  countFromTape,
  countFromWeight,
  woundOuterMm,
} from '../../../shared/forecast/counts.ts';
import { seededChance } from '../../../shared/kit/chance.ts';

describe('woundOuterMm()', () => {
  // Quantities, pitches, pocket depths and flanges as published in the sheet named beside each. One layer is the pocket depth plus
  // 0.31 mm (base and cover, from memory); paper tapes' thickness and the hubs of 60 and 100 mm are from memory too. The winding
  // must stay inside the flange.
  test.each([
    {
      reel: '0402, 10 000 at 2 mm',
      parts: 10_000,
      pitch: 2,
      t: 0.6,
      hub: 60,
      outer: 137.4,
      flange: 178,
      source: 'Johanson 500R07S0R8BV4T',
    },
    {
      reel: '0603, 4000 at 4 mm',
      parts: 4000,
      pitch: 4,
      t: 0.95,
      hub: 60,
      outer: 151.5,
      flange: 178,
      source: 'Johanson 500R07S0R8BV4T',
    },
    {
      reel: '0603 thick, 4000 at 4 mm',
      parts: 4000,
      pitch: 4,
      t: 1.1,
      hub: 60,
      outer: 161.3,
      flange: 178,
      source: 'KEMET C1003, greatest thickness 1.1',
    },
    {
      reel: '0201, 15 000 at 2 mm',
      parts: 15_000,
      pitch: 2,
      t: 0.5,
      hub: 60,
      outer: 150.7,
      flange: 178,
      source: 'Johanson 500R07S0R8BV4T',
    },
    {
      reel: 'SOT-23-5, 3000 at 4 mm',
      parts: 3000,
      pitch: 4,
      t: 1.71,
      hub: 60,
      outer: 172.4,
      flange: 178,
      source: 'TI INA2180, packaging',
    },
    {
      reel: 'VSSOP-20, 5000 at 8 mm',
      parts: 5000,
      pitch: 8,
      t: 1.81,
      hub: 100,
      outer: 319.7,
      flange: 330,
      source: 'TI MSPM0L1303, packaging',
    },
    {
      reel: 'SSOP-14, 2000 at 12 mm',
      parts: 2000,
      pitch: 12,
      t: 2.76,
      hub: 100,
      outer: 307.1,
      flange: 330,
      source: 'TI SN74LVC00A, packaging',
    },
    {
      reel: 'SOIC-8, 2500 at 8 mm',
      parts: 2500,
      pitch: 8,
      t: 2.46,
      hub: 100,
      outer: 269.5,
      flange: 330,
      source: 'TI TL3845, packaging',
    },
    {
      reel: 'TO-263, 500 at 16 mm',
      parts: 500,
      pitch: 16,
      t: 5.36,
      hub: 100,
      outer: 254.2,
      flange: 330,
      source: 'TI LP2954A, packaging',
    },
    {
      reel: '0402, 50 000 at 2 mm',
      parts: 50_000,
      pitch: 2,
      t: 0.75,
      hub: 60,
      outer: 314.8,
      flange: 330,
      source: 'from memory',
    },
  ])('gives $outer mm for $reel ($source), inside its flange', ({ parts, pitch, t, hub, outer, flange }) => {
    const found = woundOuterMm({ lengthMm: parts * pitch, hubMm: hub, thicknessMm: t });
    expect(found).toBeCloseTo(outer, 1);
    expect(found).toBeLessThan(flange);
    const back = countFromTape({ outerMm: found, hubMm: hub, thicknessMm: t, pitchMm: pitch });
    expect(back.parts).toBeCloseTo(parts, 6);
  });
});

describe('countFromTape()', () => {
  const measure = { outerMm: 120, hubMm: 60, thicknessMm: 0.95, pitchMm: 4 };

  test('counts 2232 parts, 50 more or fewer for 1 mm', () => {
    expect(Math.round(countFromTape(measure).parts)).toBe(2232);
    expect(Math.round(countFromTape({ ...measure, outerMm: 119 }).parts)).toBe(2183);
    expect(Math.round(countFromTape({ ...measure, outerMm: 121 }).parts)).toBe(2282);
    expect(countFromTape({ ...measure, sdOuterMm: 1 }).sd).toBeCloseTo((2282.23 - 2182.99) / 2, 0);
  });

  test('holds 37.6 % of the parts at half the depth of the winding, not half of them', () => {
    const full = countFromTape({ ...measure, outerMm: 178 }).parts;
    const half = countFromTape({ ...measure, outerMm: (178 + 60) / 2 }).parts;
    expect(half / full).toBeCloseTo(0.376, 3);
    const nineTenths = countFromTape({ ...measure, outerMm: 60 + 0.9 * 118 }).parts;
    expect((nineTenths / full) * 3000).toBeCloseTo(2566, 0); // a scale linear in depth would read 2700
  });

  test('overstates by 84 % when the flange is taken for the winding', () => {
    const at = (outerMm: number) =>
      countFromTape({ ...measure, outerMm, thicknessMm: 0.6, pitchMm: 2 }).parts;
    expect(at(178) / at(137.4) - 1).toBeCloseTo(0.84, 1);
  });

  test('measures lengths as a ruler does: 400 mm are 200 parts at 2 mm, 100 at 4 mm', () => {
    const outerMm = woundOuterMm({ lengthMm: 400, hubMm: 60, thicknessMm: 0.6 });
    const at = (pitchMm: number) => countFromTape({ outerMm, hubMm: 60, thicknessMm: 0.6, pitchMm }).parts;
    expect([at(2), at(4)].map(Math.round)).toEqual([200, 100]);
  });
});

/** Deviation by small steps: what each figure's deviation does to the count, squared and summed. */
function bySteps(count: (steps: readonly number[]) => number, sds: readonly number[]): number {
  const effects = sds.map((sd, i) => {
    const step = (sign: number) => count(sds.map((_, k) => (k === i ? sign * sd * 1e-4 : 0)));
    return (step(1) - step(-1)) / 2e-4;
  });
  return Math.hypot(...effects);
}

describe('deviations', () => {
  test('of measured tape equal those by small steps', () => {
    const sds = [0.8, 0.4, 0.03, 0.02];
    const at = ([outer = 0, hub = 0, thickness = 0, pitch = 0]: readonly number[]) =>
      countFromTape({
        outerMm: 140 + outer,
        hubMm: 60 + hub,
        thicknessMm: 0.9 + thickness,
        pitchMm: 4 + pitch,
      }).parts;
    const count = countFromTape({
      outerMm: 140,
      hubMm: 60,
      thicknessMm: 0.9,
      pitchMm: 4,
      sdOuterMm: 0.8,
      sdHubMm: 0.4,
      sdThicknessMm: 0.03,
      sdPitchMm: 0.02,
    });
    expect(count.sd).toBeCloseTo(bySteps(at, sds), 3);
  });

  test('of calibrated tape equal those by small steps', () => {
    const sds = [0.8, 0.4, 0.6, 5];
    const at = ([outer = 0, hub = 0, fullOuter = 0, parts = 0]: readonly number[]) =>
      countFromCalibratedTape({
        outerMm: 120 + outer,
        hubMm: 60 + hub,
        pitchMm: 4,
        full: { outerMm: 170 + fullOuter, parts: 5000 + parts },
      }).parts;
    const count = countFromCalibratedTape({
      outerMm: 120,
      hubMm: 60,
      pitchMm: 4,
      full: { outerMm: 170, parts: 5000, sdOuterMm: 0.6, sdParts: 5 },
      sdOuterMm: 0.8,
      sdHubMm: 0.4,
    });
    expect(count.sd).toBeCloseTo(bySteps(at, sds), 3);
  });

  test('of weight equal those by small steps', () => {
    const sds = [0.5, 1, 0.7, 5];
    const at = ([mass = 0, empty = 0, fullMass = 0, parts = 0]: readonly number[]) =>
      countFromWeight({
        massG: 300 + mass,
        emptyG: 60 + empty,
        full: { massG: 700 + fullMass, parts: 5000 + parts },
      }).parts;
    const count = countFromWeight({
      massG: 300,
      emptyG: 60,
      full: { massG: 700, parts: 5000, sdMassG: 0.7, sdParts: 5 },
      sdMassG: 0.5,
      sdEmptyG: 1,
    });
    expect(count.sd).toBeCloseTo(bySteps(at, sds), 3);
  });
});

describe('countFromCalibratedTape()', () => {
  test('is certain where nothing measured has a deviation', () => {
    const full = { outerMm: 178, parts: 5000 };
    expect(countFromCalibratedTape({ outerMm: 120, hubMm: 60, pitchMm: 4, full }).sd).toBe(0);
    const weighed = countFromWeight({ massG: 300, emptyG: 100, full: { massG: 500, parts: 5000 } });
    expect(weighed).toEqual({ parts: 2500, sd: 0, basis: 'weighed' });
  });

  test('is the full reel when it is full, and empty at the hub', () => {
    const full = { outerMm: 172.4, parts: 3000 };
    const at = (outerMm: number) => countFromCalibratedTape({ outerMm, hubMm: 60, pitchMm: 4, full });
    expect(at(172.4).parts).toBe(3000);
    expect(at(172.4).thicknessMm).toBeCloseTo(1.71, 2);
    expect(at(60).parts).toBe(0);
  });

  test('agrees with countFromTape() at the thickness that it learnt', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 175, noNaN: true }),
        fc.integer({ min: 500, max: 20_000 }),
        (outerMm, parts) => {
          const learnt = countFromCalibratedTape({
            outerMm,
            hubMm: 60,
            pitchMm: 2,
            full: { outerMm: 175, parts },
          });
          const direct = countFromTape({ outerMm, hubMm: 60, pitchMm: 2, thicknessMm: learnt.thicknessMm });
          expect(direct.parts).toBeCloseTo(learnt.parts, 6);
        },
      ),
    );
  });
});

describe('countFromWeight()', () => {
  test('is in proportion between empty and full', () => {
    const full = { massG: 760, parts: 5000 };
    expect(countFromWeight({ massG: 410, emptyG: 60, full }).parts).toBe(2500);
    expect(countFromWeight({ massG: 60, emptyG: 60, full }).parts).toBe(0);
    expect(countFromWeight({ massG: 760, emptyG: 60, full }).parts).toBe(5000);
  });
});

describe('countDown()', () => {
  test('spreads by losses, and by the doubt of a loss that was learnt: by hand', () => {
    const count = { parts: 2000, sd: 5, basis: 'label' } as const;
    // 900 placements at a loss of a tenth: 1000 picks, variance 900 × 0.1 ÷ 0.81 = 111.1.
    const known = countDown(count, { placements: 900, loss: 0.1 });
    expect(known).toMatchObject({ parts: 1000, basis: 'counted-down', shortBy: 0 });
    expect(known.sd ** 2).toBeCloseTo(25 + 90 / 0.81, 9);
    // Learnt with the weight of 99 picks: its variance 0.09 ÷ 100, seen through (900 ÷ 0.81)².
    const learnt = countDown(count, { placements: 900, loss: 0.1, lossStrength: 99 });
    expect(learnt.sd ** 2).toBeCloseTo(25 + 90 / 0.81 + (900 / 0.81) ** 2 * 0.0009, 6);
  });

  const label = countFromLabel(4000, 0);

  test('takes placements off one for one when nothing is lost', () => {
    expect(countDown(label, { placements: 1500, loss: 0 })).toEqual({
      parts: 2500,
      sd: 0,
      basis: 'counted-down',
      shortBy: 0,
    });
  });

  test('has the mean and deviation of seeded picking', () => {
    const chance = seededChance(7);
    const [placements, loss, runs] = [400, 0.05, 3000];
    const left: number[] = [];
    for (let run = 0; run < runs; run++) {
      let parts = 4000;
      for (let placed = 0; placed < placements; ) {
        parts -= 1;
        if (chance() >= loss) placed += 1;
      }
      left.push(parts);
    }
    const mean = left.reduce((sum, parts) => sum + parts, 0) / runs;
    const sd = Math.sqrt(left.reduce((sum, parts) => sum + (parts - mean) ** 2, 0) / runs);
    const count = countDown(label, { placements, loss });
    expect(Math.abs(count.parts - mean)).toBeLessThan(0.4);
    expect(count.sd / sd).toBeCloseTo(1, 1);
  });

  test('says by how much placements overran the count', () => {
    const count = countDown(countFromMachine(100, 1), { placements: 130, loss: 0 });
    expect([count.parts, count.shortBy]).toEqual([0, 30]);
  });

  test('is wider for a loss that is learnt', () => {
    const known = countDown(label, { placements: 3000, loss: 0.01 });
    const learnt = countDown(label, { placements: 3000, loss: 0.01, lossStrength: 300 });
    expect(learnt.parts).toBe(known.parts);
    expect(learnt.sd).toBeGreaterThan(known.sd);
  });
});

describe('combineCounts()', () => {
  const weighed: Count = { parts: 2400, sd: 30, basis: 'weighed' };
  const measured: Count = { parts: 2460, sd: 60, basis: 'measured' };

  test('weighs by inverse variance', () => {
    const joined = combineCounts([weighed, measured])!;
    expect(joined.parts).toBeCloseTo((2400 / 900 + 2460 / 3600) / (1 / 900 + 1 / 3600), 9);
    expect(joined.sd).toBeCloseTo(1 / Math.sqrt(1 / 900 + 1 / 3600), 9);
    expect(joined.basis).toBe('combined');
    expect(joined.contradictions).toEqual([]);
  });

  test('names the pairs that contradict', () => {
    const label = countFromLabel(5000, 0.001);
    expect(combineCounts([weighed, label, measured])!.contradictions).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });

  test('lets a certain count stand, and two certain ones contradict when they differ', () => {
    const certain = countFromMachine(2390, 0);
    expect(combineCounts([weighed, certain])!.parts).toBe(2390);
    expect(contradicts(certain, countFromMachine(2391, 0))).toBe(true);
    expect(contradicts(certain, certain)).toBe(false);
  });

  test('has no answer for no count, and leaves one as it is', () => {
    expect(combineCounts([])).toBeNull();
    expect(combineCounts([weighed])).toMatchObject({ parts: 2400, sd: 30, basis: 'weighed' });
  });

  test('lies between the counts, no wider than the best, in any order', () => {
    const countArb = fc.record({
      parts: fc.double({ min: 0, max: 1e4, noNaN: true }),
      sd: fc.double({ min: 0.1, max: 500, noNaN: true }),
      basis: fc.constantFrom('label' as const, 'weighed' as const, 'measured' as const),
    });
    fc.assert(
      fc.property(fc.array(countArb, { minLength: 1, maxLength: 5 }), (counts) => {
        const joined = combineCounts(counts)!;
        const parts = counts.map((count) => count.parts);
        expect(joined.parts).toBeGreaterThanOrEqual(Math.min(...parts) - 1e-6);
        expect(joined.parts).toBeLessThanOrEqual(Math.max(...parts) + 1e-6);
        expect(joined.sd).toBeLessThanOrEqual(Math.min(...counts.map((count) => count.sd)) + 1e-9);
        expect(combineCounts([...counts].reverse())!.parts).toBeCloseTo(joined.parts, 6);
      }),
    );
  });
});
