// A slot that two lanes feed from runs out when both together have taken what is on it, whichever lane asks, also where one ends first.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { panelsUntil, placementsUntil } from '../../../shared/forecast/beside.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { slotNeeds } from '../../../shared/forecast/outlook.ts';
import { besideOf } from '../../../shared/outlook/lanes.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { beginStory, brookSetup, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';

/** Built panel by panel: when the slot cannot serve the next panel of either lane, s. */
function played(
  left: number,
  lanes: readonly { perPanel: number; panelSeconds: number; panelsLeft: number }[],
): number {
  const done = lanes.map(() => 0);
  let parts = left;
  for (;;) {
    const next = lanes
      .flatMap(({ panelSeconds, panelsLeft }, at) => {
        const count = done[at] ?? 0;
        return count < panelsLeft ? [{ at, seconds: (count + 1) * panelSeconds }] : [];
      })
      .sort((a, b) => a.seconds - b.seconds)[0];
    if (!next) return Number.POSITIVE_INFINITY;
    parts -= lanes[next.at]?.perPanel ?? 0;
    if (parts < 0) return next.seconds;
    done[next.at] = (done[next.at] ?? 0) + 1;
  }
}

const laneOf = fc.record({
  perPanel: fc.integer({ min: 1, max: 12 }),
  panelSeconds: fc.integer({ min: 5, max: 120 }),
  panelsLeft: fc.integer({ min: 0, max: 400 }),
});

describe('what other lanes take', () => {
  test('foretells the moment at which a panel finds no part, to a panel, in every case', () => {
    fc.assert(
      fc.property(
        laneOf,
        fc.array(laneOf, { maxLength: 3 }),
        fc.integer({ min: 1, max: 5000 }),
        (own, lanes, left) => {
          const use = { perPanel: own.perPanel, beside: besideOf(lanes, own.panelSeconds) };
          const panels = panelsUntil(use, left);
          expect(placementsUntil(use, panels)).toBeCloseTo(left, 6);
          const seconds = panels * own.panelSeconds;
          const slowest = Math.max(...[own, ...lanes].map(({ panelSeconds }) => panelSeconds));
          const most = [own, ...lanes].reduce((sum, { perPanel }) => sum + perPanel, 0);
          const early = played(left - most, [{ ...own, panelsLeft: 1_000_000 }, ...lanes]);
          const late = played(left + most, [{ ...own, panelsLeft: 1_000_000 }, ...lanes]);
          expect(seconds).toBeGreaterThanOrEqual(early - slowest);
          expect(seconds).toBeLessThanOrEqual(late + slowest);
        },
      ),
    );
  });
});

describe('the reels to the end of a run, played panel by panel with both lanes', () => {
  const lane2 = laneLine('L1', 2);
  const [running, ...waiting] = [400, 300, 500] as const;
  /** Lane 1 wants 500 panels of 2 parts, 30 s each; lane 2 of 3 parts, 40 s each. */
  function needs(theirs: number) {
    const story = beginStory();
    tellPlant(story);
    const line = story.floor().lines.get('L1');
    if (!line)
      throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
    story.tell('line.defined', { ...line, line: lane2, name: 'Brae line 1, lane 2' });
    const slots = [wantedSlot('M1-F-001', 'R-100', { perPanel: 3 })];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: running }));
    story.tell('run.started', started('a'));
    const facts = { line: lane2, setup: 'fell-top-a', panelSeconds: 40, panelsWanted: theirs };
    story.tell('run.started', started('b', facts));
    const floor = story.floor();
    const nowMs = floor.runs.get('b')?.startedMs ?? startMs;
    const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
    const slot = outlook?.slots.find((each) => each.slot === 'M1-F-001');
    if (!outlook || !slot) throw new TypeError('Cannot look ahead as the slot must be foretold');
    // Counted for certain, nothing lost: what is left of the forecast is the lanes.
    const load = { ...slot.load, sd: 0, loss: 0, lossStrength: Number.POSITIVE_INFINITY };
    const reels = waiting.map((parts, at) => ({ reel: `W${at}`, parts, sd: 0 }));
    const pace = { ...outlook.basis, nowMs, panelSd: 0, panelMeanSd: 0 };
    return { ...slotNeeds(pace, load, reels), startedMs: nowMs };
  }

  test.each([
    ['ends soon after the running reel', 100],
    ['ends before the running reel', 30],
    ['goes on to the end', 600],
  ])(
    'each splice is told when it comes, and as much is brought as is missing: the other lane %s',
    (_, theirs) => {
      const { ends, bring, startedMs } = needs(theirs);
      const lanes = [
        { perPanel: 2, panelSeconds: 30, panelsLeft: 500 },
        { perPanel: 3, panelSeconds: 40, panelsLeft: theirs },
      ];
      let parts: number = running;
      for (const [at, { runOutMs }] of ends.entries()) {
        const truth = played(parts, lanes);
        const told = (runOutMs.expected - startedMs) / 1000;
        if (Number.isFinite(truth)) expect(Math.abs(told - truth), `end ${at}`).toBeLessThanOrEqual(80);
        parts += waiting[at] ?? 0;
      }
      const theirPanels = Math.min(theirs, Math.floor((500 * 30) / 40));
      const missing = 500 * 2 + theirPanels * 3 - parts;
      if (missing > 0) expect(Math.abs((bring?.parts ?? 0) - missing)).toBeLessThanOrEqual(3);
      else expect(bring).toBeNull();
    },
  );
});

describe('lineOutlook() of two lanes', () => {
  const lane2 = laneLine('L1', 2);
  function outlookOf(line: string, both: boolean) {
    const story = beginStory();
    tellPlant(story);
    const floorLine = story.floor().lines.get('L1');
    if (!floorLine)
      throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
    story.tell('line.defined', { ...floorLine, line: lane2, name: 'Brae line 1, lane 2' });
    const slots = [wantedSlot('M1-F-001', 'R-100', { perPanel: 3 })];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 1000 }));
    if (both || line === 'L1') story.tell('run.started', started('a'));
    if (both || line === lane2)
      story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a', panelSeconds: 40 }));
    const nowMs = startMs + 30_000;
    const floor = story.floor();
    const outlook = lineOutlook(floor, line, { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
    const slot = outlook?.slots.find((each) => each.slot === 'M1-F-001');
    return ((slot?.forecast.runOutMs.expected ?? Number.NaN) - startMs) / 1000;
  }

  test('each lane alone takes its own, both together the sum, and both lanes tell the same moment', () => {
    expect(outlookOf('L1', false)).toBeCloseTo((1000 / 2) * 30, -2);
    expect(outlookOf(lane2, false)).toBeCloseTo((1000 / 3) * 40, -2);
    const together = 1000 / (2 / 30 + 3 / 40);
    expect(outlookOf('L1', true)).toBeCloseTo(together, -2);
    expect(outlookOf(lane2, true)).toBeCloseTo(together, -2);
  });
});
