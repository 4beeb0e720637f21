// What finished reels teach, what a splice bounds, and what taking back undoes.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { truncated } from '../../../shared/floor/remaining/law.ts';
import { LABEL_SHARE, lossOn, slotEstimate, tapeSd, toEvidence } from '../../../shared/floor/remaining.ts';
import type { FloorState, SlotState } from '../../../shared/floor/state.ts';
import { beginStory, counted, idOf, type Story, started, tellPlant, unloaded, verified } from './story.ts';

const lengths = { hubToPickMm: 800, intakeToPickMm: 260, loss: 0.01 };
const slot = 'M1-R-003'; // 4 placements a panel, pitch 4 mm: window 200 to 65 parts

function begun(rules: Partial<PayloadOf<'line.ruled'>> = lengths): Story {
  const story = beginStory();
  tellPlant(story, { rules });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('run.started', started('run-1'));
  return story;
}

function load(story: Story, reel: string, more: Parameters<typeof verified>[2] = {}) {
  return story.tell('reel.verified', verified(slot, 'R-100', { reel, feeder: 'F-1', ...more }));
}

function slotOf(floor: FloorState): SlotState {
  const there = floor.slots.get(`L1/${slot}`);
  if (!there) throw new TypeError('Cannot go on as the slot must be loaded');
  return there;
}

describe('finished reels', () => {
  test('an unload with a count shows what was lost: 1000 came, 150 left, 800 placed, 50 of 850 lost', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 200));
    story.tell('reel.unloaded', unloaded(slot, { quantity: 150, basis: 'machine' }));
    const reel = story.floor().finished.get('R-100')?.[0];
    expect(reel).toMatchObject({ startParts: 1000, endParts: 150, placements: 800, feeder: 'F-1', slot });
    expect(reel && toEvidence(reel)).toMatchObject({ picks: 850, lost: 50, part: 'R-100' });
  });

  test('a chain of joined reels is one piece of evidence, replaced as it grows', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 225));
    load(story, 'K2', { act: 'splice' });
    const spliced = story.floor().finished.get('R-100');
    expect(spliced).toMatchObject([{ told: 'splice', startParts: 1000, placements: 900, endParts: 132.5 }]);
    expect(spliced?.[0]?.endSd).toBeCloseTo(135 / Math.sqrt(12), 2); // evenly spread over the window
    expect(spliced?.[0]?.endSd).toBe(38.97); // kept to four digits: what is beyond them nobody knows
    story.tell('panels.counted', counted('run-1', 200));
    story.tell('reel.unloaded', unloaded(slot, { quantity: 270, basis: 'machine' }));
    const finished = story.floor().finished.get('R-100');
    expect(finished).toMatchObject([{ told: 'count', startParts: 2000, placements: 1700, endParts: 270 }]);
  });

  test('parts cut away at a splice are not taken for lost picks', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 150));
    load(story, 'K2', { act: 'splice', cut: 250 });
    story.tell('reel.unloaded', unloaded(slot, { quantity: 1140, basis: 'machine' }));
    expect(story.floor().finished.get('R-100')).toMatchObject([{ startParts: 1750, placements: 600 }]);
  });

  test('a reel that came off uncounted teaches when the store counts it, once', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 100));
    story.tell('reel.unloaded', unloaded(slot));
    expect(story.floor().finished.size).toBe(0);
    const weighed = { line: null, slot: null, reel: 'K1', part: 'R-100', lot: null, panels: 0 };
    story.tell('reel.counted', { ...weighed, quantity: 588, sd: 4, basis: 'weighed' });
    story.tell('reel.counted', { ...weighed, quantity: 300, sd: 4, basis: 'weighed' });
    expect(story.floor().finished.get('R-100')).toMatchObject([{ endParts: 588, endSd: 4, placements: 400 }]);
  });

  test('an unknown count, an unused reel and a correction leave nothing behind', () => {
    const unknown = begun();
    load(unknown, 'K1', { quantity: null });
    unknown.tell('panels.counted', counted('run-1', 10));
    unknown.tell('reel.unloaded', unloaded(slot, { quantity: 5, basis: 'typed' }));
    const unused = begun();
    load(unused, 'K1');
    unused.tell('reel.unloaded', unloaded(slot, { quantity: 1000, basis: 'typed' }));
    const undone = begun();
    load(undone, 'K1');
    undone.tell('panels.counted', counted('run-1', 10));
    const off = undone.tell('reel.unloaded', unloaded(slot, { quantity: 5, basis: 'typed' }));
    undone.tell('entry.corrected', { of: idOf(off), line: 'L1', slot, reason: 'slip' });
    for (const story of [unknown, unused, undone]) {
      expect([...story.floor().finished.values()].flat()).toEqual([]);
    }
  });

  test('figures that cannot be true teach nothing: more placed than gone', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 200));
    story.tell('reel.unloaded', unloaded(slot, { quantity: 900, basis: 'machine' }));
    const reel = story.floor().finished.get('R-100')?.[0];
    expect(reel && toEvidence(reel)).toBeNull();
  });

  test('learnt losses come through to the same feeder, and less to others', () => {
    const story = begun();
    load(story, 'K1');
    story.tell('panels.counted', counted('run-1', 200));
    story.tell('reel.unloaded', unloaded(slot, { quantity: 150, basis: 'machine' }));
    const floor = story.floor();
    const mean = (feeder: string, part = 'R-100') => {
      const { alpha, beta } = lossOn(floor, { line: 'L1', part, feeder, slot });
      return alpha / (alpha + beta);
    };
    expect(mean('F-1')).toBeGreaterThan(0.03);
    expect(mean('F-1', 'C-200')).toBeCloseTo(0.01, 9); // another part: the line's assumption
  });
});

describe('slotEstimate()', () => {
  test('spreads a printed count by the line’s rule, and by the usual share where it has none', () => {
    for (const [rules, countSd] of [
      [lengths, 1000 * LABEL_SHARE],
      [{ ...lengths, labelShare: 0.02 }, 20],
    ] as const) {
      const story = begun(rules);
      load(story, 'K1');
      const estimate = slotEstimate(story.floor(), slotOf(story.floor()));
      expect([estimate.parts, estimate.countSd]).toEqual([1000, countSd]);
    }
  });

  test('with a splice, bounds what was left by the window and forgets the count’s error', () => {
    const story = begun({ ...lengths, loss: 0.003 });
    load(story, 'K1', { quantity: 1000 });
    story.tell('panels.counted', counted('run-1', 225)); // 900 placed: about 97 left
    load(story, 'K2', { act: 'splice', quantity: 5000 });
    const estimate = slotEstimate(story.floor(), slotOf(story.floor()));
    expect(estimate.contradicts).toBe(false);
    expect(estimate.running).toBeGreaterThan(65);
    expect(estimate.running).toBeLessThan(200);
    expect(estimate.runningIndex).toBe(0);
    expect(estimate.parts).toBeCloseTo(5000 + (estimate.running ?? 0), 6);
  });

  test('says so where the count cannot be right, and goes by the splice', () => {
    const story = begun({ ...lengths, loss: 0.003 });
    load(story, 'K1', { quantity: 5000 });
    story.tell('panels.counted', counted('run-1', 50)); // 4800 should be left, yet it was spliced
    load(story, 'K2', { act: 'splice', quantity: 3000 });
    const estimate = slotEstimate(story.floor(), slotOf(story.floor()));
    expect(estimate).toMatchObject({ contradicts: true, running: 132.5 });
    expect(estimate.parts).toBeCloseTo(3132.5, 9);
  });

  test('knows after a splice what an unmarked reel still had', () => {
    const story = begun();
    load(story, 'K1', { quantity: null });
    story.tell('panels.counted', counted('run-1', 100));
    expect(slotEstimate(story.floor(), slotOf(story.floor())).parts).toBeNull();
    load(story, 'K2', { act: 'splice', quantity: 3000 });
    const estimate = slotEstimate(story.floor(), slotOf(story.floor()));
    expect(estimate.parts).toBeCloseTo(3132.5, 9);
    expect(estimate.sd).toBeCloseTo(
      Math.hypot(135 / Math.sqrt(12), tapeSd({ count: 3000, sd: 0, basis: 'label' }, LABEL_SHARE)),
      9,
    );
  });

  test('never says more than was put on, whatever is spliced and counted', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ panels: fc.nat(400), quantity: fc.integer({ min: 0, max: 4000 }) }), {
          minLength: 1,
          maxLength: 5,
        }),
        (steps) => {
          const story = begun();
          load(story, 'K0', { quantity: 2000 });
          let put = 2000;
          steps.forEach(({ panels, quantity }, at) => {
            if (panels > 0) story.tell('panels.counted', counted('run-1', panels));
            load(story, `K${at + 1}`, { act: 'splice', quantity });
            put += quantity;
          });
          const { parts, sd } = slotEstimate(story.floor(), slotOf(story.floor()));
          expect(parts ?? -1).toBeGreaterThanOrEqual(0);
          expect(parts ?? 0).toBeLessThanOrEqual(put + 200);
          expect(Number.isFinite(sd)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('`truncated()` gives the half-normal law its published mean and variance', () => {
  // Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1, §13.10: √(2/π) and 1 − 2/π.
  const half = truncated({ mean: 0, variance: 1 }, 0, 40);
  expect(half.mean).toBeCloseTo(Math.sqrt(2 / Math.PI), 6);
  expect(half.variance).toBeCloseTo(1 - 2 / Math.PI, 6);
  const wide = truncated({ mean: 100, variance: 1e12 }, 65, 200);
  expect(wide.mean).toBeCloseTo(132.5, 3);
  expect(wide.variance).toBeCloseTo(135 ** 2 / 12, 0);
  expect(truncated({ mean: 5000, variance: 100 }, 65, 200)).toMatchObject({ believed: false, mean: 132.5 });
});

test('a full reel’s figures are kept part by part, measured and weighed apart', () => {
  const story = begun();
  const full = { part: 'R-100', parts: 10_000 };
  story.tell('reel.calibrated', { ...full, outerMm: 137, hubMm: 60, massG: null, emptyG: null });
  story.tell('reel.calibrated', { ...full, parts: 9000, outerMm: null, hubMm: null, massG: 150, emptyG: 30 });
  expect(story.floor().fullReels.get('R-100')).toEqual({
    part: 'R-100',
    measured: { parts: 10_000, outerMm: 137, hubMm: 60 },
    weighed: { parts: 9000, massG: 150, emptyG: 30 },
  });
});
