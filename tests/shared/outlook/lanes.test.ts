// A slot that two lanes feed from runs out when both together have taken what is on it, whichever lane asks, also where one ends first.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { withLanes } from '../../../shared/outlook/lanes.ts';
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

describe('withLanes()', () => {
  test.each([
    ['both go on', 1000, { n: 2, c: 30 }, [{ perPanel: 3, panelSeconds: 40, panelsLeft: 500 }]],
    ['the other ends first', 1000, { n: 2, c: 30 }, [{ perPanel: 3, panelSeconds: 40, panelsLeft: 100 }]],
    [
      'a third lane ends last',
      3000,
      { n: 4, c: 20 },
      [
        { perPanel: 3, panelSeconds: 40, panelsLeft: 60 },
        { perPanel: 1, panelSeconds: 15, panelsLeft: 900 },
      ],
    ],
    ['no other', 1000, { n: 2, c: 30 }, []],
  ])('tells the moment at which a panel finds no part, to a panel: %s', (_, placements, { n, c }, lanes) => {
    const all = withLanes({ placements, perPanel: n, panelSeconds: c }, lanes);
    const seconds = (all.placements / all.perPanel) * c;
    const own = { perPanel: n, panelSeconds: c, panelsLeft: 1_000_000 };
    const slowest = Math.max(c, ...lanes.map(({ panelSeconds }) => panelSeconds));
    expect(Math.abs(seconds - played(placements, [own, ...lanes]))).toBeLessThanOrEqual(2 * slowest);
  });
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
