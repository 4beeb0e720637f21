// Parts left on a slot: label count less placements over the share of picks that arrive, with its spread.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slotLeft } from '../../../shared/floor/remaining.ts';
import type { FloorState, SlotState } from '../../../shared/floor/state.ts';
import { perPanelOf, wantedOn } from '../../../shared/floor/wanted.ts';
import { beginStory, counted, started, tellPlant, verified } from './story.ts';

function slotWith(
  counts: readonly (number | null)[],
  panels: number,
): { floor: FloorState; slot: SlotState } {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'));
  counts.forEach((quantity, at) => {
    const act = at === 0 ? 'load' : 'splice';
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: `K${at}`, act, quantity }));
  });
  if (panels > 0) story.tell('panels.counted', counted('run-1', panels));
  const floor = story.floor();
  const slot = floor.slots.get('L1/M1-F-001');
  if (!slot) throw new TypeError('Cannot go on as the slot must be loaded');
  return { floor, slot };
}

describe('slotLeft()', () => {
  test('counts down by placements, two a panel', () => {
    const rows: readonly (readonly [
      counts: readonly (number | null)[],
      panels: number,
      left: object,
      why: string,
    ])[] = [
      [[1000], 0, { parts: 1000, running: 1000, runningIndex: 0, used: 0, sd: 0 }, 'nothing used'],
      [[1000], 100, { parts: 800, running: 800, used: 200 }, '200 placements'],
      [[1000, 500], 100, { parts: 1300, running: 800, runningIndex: 0 }, 'the first tape still runs'],
      [[200, 500], 100, { parts: 500, running: 500, runningIndex: 1 }, 'the first tape is just used up'],
      [[200, 500], 150, { parts: 400, running: 400, runningIndex: 1 }, 'the second tape runs'],
      [[100], 100, { parts: 0, running: 0 }, 'more used than the label said: never below none'],
      [[null], 100, { parts: null, running: null }, 'unknown stays unknown'],
      [[200, null], 150, { parts: null, running: null, runningIndex: 1 }, 'the running tape is unknown'],
      [[1000, null], 150, { parts: null, running: 700, runningIndex: 0 }, 'only the joined tape is unknown'],
    ];
    for (const [counts, panels, left, why] of rows) {
      const { floor, slot } = slotWith(counts, panels);
      expect(slotLeft(floor, slot, 0), why).toMatchObject(left);
    }
  });

  test('with loss takes more parts than placements, with the spread of the negative binomial', () => {
    // Picks needed for U placements at loss q: mean U / (1 - q), variance U q / (1 - q)^2
    // (NIST/SEMATECH e-Handbook and any table of distributions: negative binomial, failures plus successes).
    const { floor, slot } = slotWith([1000], 100);
    const left = slotLeft(floor, slot, 0.02);
    expect(left.parts).toBeCloseTo(1000 - 200 / 0.98, 9);
    expect(left.sd).toBeCloseTo(Math.sqrt((200 * 0.02) / 0.98 ** 2), 9);
  });

  test('never grows as panels are counted, and never falls below none', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 4 }),
        fc.nat(400),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (counts, panels, loss) => {
          const { floor, slot } = slotWith(counts, panels);
          const run = floor.runs.get('run-1');
          if (!run) throw new TypeError('Cannot go on as the run must be there');
          const before = slotLeft(floor, slot, loss);
          floor.runs.set('run-1', { ...run, done: panels + 1 });
          const after = slotLeft(floor, slot, loss);
          expect(after.parts ?? -1).toBeGreaterThanOrEqual(0);
          expect(after.parts ?? 0).toBeLessThanOrEqual(before.parts ?? 0);
          expect(after.runningIndex).toBeGreaterThanOrEqual(before.runningIndex);
        },
      ),
      { numRuns: 50 },
    );
  });
});

test('`wantedOn()` and `perPanelOf()` say what a setup wants, and nothing where it wants nothing', () => {
  const story = beginStory();
  tellPlant(story);
  const floor = story.floor();
  expect(wantedOn(floor, 'brook-top-a', 'M1-F-010')?.part).toBe('U-300');
  expect(wantedOn(floor, 'brook-top-a', 'M1-F-999')).toBeNull();
  expect(wantedOn(floor, 'none', 'M1-F-010')).toBeNull();
  expect([
    perPanelOf(floor, 'brook-top-a', 'M1-R-003'),
    perPanelOf(floor, 'brook-top-a', 'M1-F-999'),
  ]).toEqual([4, 0]);
});
