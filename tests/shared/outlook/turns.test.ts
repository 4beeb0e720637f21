// A line on which two slots of one part are used in turn: what the outlook, the warnings and the store's list say of them.

import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { beginStory, counted, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';
import { lineSupply } from './compute.ts';

const [one, two] = ['M1-F-001', 'M1-F-002'] as const;

function told(counts: readonly [number | null, number]) {
  const story = beginStory();
  tellPlant(story, { rules: { loss: 0.0001 } });
  story.tell('setup.taken', {
    setup: 'turns',
    product: 'brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots: [wantedSlot(one, 'R-100', { turn: 1 }), wantedSlot(two, 'R-100', { turn: 2 })],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'turns' });
  story.tell('run.started', started('run-1', { setup: 'turns', panelsWanted: 2000, panelSeconds: 30 }));
  [one, two].forEach((slot, at) => {
    const facts = verified(slot, 'R-100', { reel: `K${at}`, quantity: counts[at] ?? null });
    story.tell('reel.verified', { ...facts, setup: 'turns' });
  });
  story.tell('panels.counted', counted('run-1', 1));
  const floor = story.floor();
  const nowMs = startMs + 60_000;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return { floor, outlook, nowMs };
}

describe('slots in turn', () => {
  test('the second runs out after the first, and each says which comes before and after', () => {
    const { outlook } = told([202, 1000]);
    const [first, second] = outlook.slots;
    expect([first?.slot, first?.turn]).toEqual([one, { after: null, backup: two }]);
    expect([second?.slot, second?.turn]).toEqual([two, { after: one, backup: null }]);
    expect([first?.estimate.parts, second?.estimate.parts].map((parts) => Math.round(parts ?? 0))).toEqual([
      200, 1000,
    ]);
    // 200 parts are 100 panels; 1200 are 600.
    // Computed from the last count on.
    const fromMs = outlook.counting.lastMs;
    const seconds = outlook.slots.map((slot) => (slot.forecast.runOutMs.expected - fromMs) / 1000);
    expect(seconds[0]).toBeCloseTo(100 * outlook.pace.panelSeconds, -2);
    expect(seconds[1]).toBeCloseTo(600 * outlook.pace.panelSeconds, -2);
  });

  test('a last part on the first still comes before the second', () => {
    const { outlook } = told([3, 1000]);
    expect(outlook.slots.find(({ slot }) => slot === two)?.turn).toEqual({ after: one, backup: null });
  });

  test('once the first is empty the second stands alone', () => {
    const { outlook } = told([2, 1000]);
    expect(outlook.slots.find(({ slot }) => slot === two)?.turn).toEqual({ after: null, backup: null });
  });

  test('the store brings for both together: 4000 parts wanted, 1202 there', () => {
    const { floor, outlook } = told([202, 1000]);
    const supply = lineSupply(floor, outlook);
    expect(supply.slots.map(({ slot }) => slot.slot)).toEqual([two]);
    expect(supply.picks.map(({ slots }) => slots)).toEqual([[`${one} ${two}`]]);
    const parts = supply.slots[0]?.bring?.parts ?? 0;
    expect(parts).toBeGreaterThan(1999 * 2 - 1200);
    expect(parts).toBeLessThan(1999 * 2 - 1200 + 30);
  });

  test('where the first’s count is not known, nothing is foretold for the second either', () => {
    const { outlook } = told([null, 1000]);
    expect(outlook.slots).toEqual([]);
    expect(outlook.unknown).toEqual([one, two]);
  });
});
