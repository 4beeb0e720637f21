// A line on which nobody counts any more: its forecasts go on by the clock, from the last count on, and come back with the next one.
// Hand-worked: 30 s a panel, 2 parts a panel; 200 parts are 100 panels, 50 min.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook, type Outlook } from '../../../../shared/outlook/line.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../shared/floor/story.ts';
import { lineSupply, planWalks } from '../../../shared/outlook/compute.ts';

const slot = 'M1-F-001';
const begunAt = 60;
/** Ten panels, one every 30 s: the last of them this long after the start of the story. */
const lastAt = begunAt + 10 * 30;

function running(rules: Parameters<typeof tellPlant>[1] = {}): Story {
  const story = beginStory();
  tellPlant(story, { rules: { loss: 0.0001, ...rules.rules } });
  story.tell('setup.taken', {
    setup: 'small',
    product: 'brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots: [wantedSlot(slot, 'R-100')],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'small' });
  story.tell('reel.verified', { ...verified(slot, 'R-100', { reel: 'K1', quantity: 220 }), setup: 'small' });
  story.tell('run.started', started('run-1', { setup: 'small', panelsWanted: 900 }), { at: begunAt });
  for (let panel = 1; panel <= 10; panel++)
    story.tell('panels.counted', counted('run-1', 1), { at: begunAt + panel * 30 });
  return story;
}

/** The outlook this many seconds after the start of the story. */
function seenAt(story: Story, seconds: number): Outlook {
  const floor = story.floor();
  const nowMs = startMs + seconds * 1000;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return outlook;
}

const runOutOf = (outlook: Outlook) => outlook.slots[0]?.forecast.runOutMs.expected ?? Number.NaN;
const levelOf = (outlook: Outlook) => outlook.slots[0]?.warning.level;

describe('nobody counts', () => {
  test('the run-out stands still on the clock, so that it comes nearer and passes', () => {
    const story = running();
    const due = runOutOf(seenAt(story, lastAt));
    expect((due - startMs) / 1000).toBeCloseTo(lastAt + 100 * 30, -1);
    for (const minutes of [5, 20, 49, 60, 200]) {
      const outlook = seenAt(story, lastAt + minutes * 60);
      expect(runOutOf(outlook), `after ${minutes} min`).toBe(due);
      expect(outlook.counting).toMatchObject({ ceased: true, lastMs: startMs + lastAt * 1000 });
    }
  });

  test('warnings still come, one after the other', () => {
    const story = running();
    const levels = [10, 45, 60].map((minutes) => levelOf(seenAt(story, lastAt + minutes * 60)));
    expect(levels).toEqual(['quiet', 'soon', 'late']);
  });

  test('it goes back by itself with the next count', () => {
    const story = running();
    story.tell('panels.counted', counted('run-1', 1), { at: lastAt + 1200 });
    const outlook = seenAt(story, lastAt + 1230);
    expect(outlook.counting.ceased).toBe(false);
    expect(runOutOf(outlook)).toBeCloseTo(
      startMs + (lastAt + 1200 + 99 * outlook.pace.panelSeconds) * 1000,
      -4,
    );
  });

  test('neither an entered stop nor a break nor the end of the panels is taken for it', () => {
    const stopped = running();
    stopped.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'jam', note: '' }, { at: lastAt + 40 });
    expect(seenAt(stopped, lastAt + 3600).counting.ceased).toBe(false);
    stopped.tell('run.resumed', { run: 'run-1', line: 'L1' }, { at: lastAt + 3600 });
    expect(seenAt(stopped, lastAt + 3640).counting).toMatchObject({ ceased: false, quietSeconds: 80 });
    expect(seenAt(stopped, lastAt + 3700).counting.ceased).toBe(true);
    // By the line's clock in March in London, which is UTC: from a minute after the last count.
    const paused = running({
      rules: { stops: [{ from: '2026-03-02T06:07:00Z', to: '2026-03-02T07:00:00Z', note: 'break' }] },
    });
    expect(seenAt(paused, 3590).counting.ceased).toBe(false);
    const done = running();
    done.tell('panels.counted', counted('run-1', 890), { at: lastAt + 30 });
    expect(seenAt(done, lastAt + 3600).counting.ceased).toBe(false);
  });

  test('walks and what the store must bring lie in no past', () => {
    const outlook = seenAt(running(), lastAt + 100 * 60);
    const nowMs = startMs + (lastAt + 100 * 60) * 1000;
    const { walks, missed } = planWalks(outlook, { operators: 1, remedies: true });
    for (const walk of walks) expect(walk.startMs).toBeGreaterThanOrEqual(nowMs);
    expect(missed.map((miss) => miss.slot.slot)).toEqual([slot]);
    for (const remedy of missed.flatMap((miss) => miss.remedies)) {
      const atMs =
        remedy.kind === 'cut-early'
          ? remedy.beginsMs
          : remedy.kind === 'second-person'
            ? remedy.startMs
            : remedy.byMs;
      expect(atMs, remedy.kind).toBeGreaterThanOrEqual(nowMs);
    }
    for (const pick of lineSupply(running().floor(), outlook).picks)
      expect(pick.byMs).toBeGreaterThanOrEqual(nowMs);
  });
});

test('at any two moments without a count between them every moment foretold is the same, and none is lost of the warning', () => {
  const story = running();
  const louder = ['quiet', 'soon', 'due', 'late'];
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 20_000 }), (one, two) => {
      const [early, late] = [
        seenAt(story, lastAt + Math.min(one, two)),
        seenAt(story, lastAt + Math.max(one, two)),
      ];
      expect(late.slots[0]?.forecast).toEqual(early.slots[0]?.forecast);
      expect(late.runEndMs).toBe(early.runEndMs);
      expect(louder.indexOf(levelOf(late) ?? '')).toBeGreaterThanOrEqual(
        louder.indexOf(levelOf(early) ?? ''),
      );
    }),
    { numRuns: 60 },
  );
});
