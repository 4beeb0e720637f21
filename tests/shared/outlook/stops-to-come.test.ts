// The run-out if a line goes on stopping as often as it did so far: worked out by hand from the share of its time that it stood.

import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { lineOutlook, type Outlook, type SlotOutlook } from '../../../shared/outlook/line.ts';
import { runOutWithStops, stoppedShare } from '../../../shared/outlook/stops-to-come.ts';
import { beginStory, type Story, started, startMs, tellPlant, verified } from '../floor/story.ts';

const link = { tablet: 'LINK', who: null } as const;

/** A run from 60 s on, a panel every 20 s; the machine stands so long, s, at the end of every half hour. */
function played(standsSeconds: number, untilSeconds: number): Story {
  const story = beginStory();
  tellPlant(story);
  const known = { machine: 'M1', at: 'out', means: 'counter', version: '1', address: '' } as const;
  story.tell('station.known', { station: 'exit', line: 'L1', ...known }, { ...link, at: 10 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 2400 }), { at: 20 });
  story.tell('run.started', started('r1', { panelsWanted: 3000, panelSeconds: 20 }), { at: 60 });
  story.tell('line.counted-by', { line: 'L1', station: 'exit' }, { at: 61 });
  let total = 0;
  let code = 0;
  for (let second = 62; second <= untilSeconds; second += 1) {
    const stands = (second - 60) % 1800 >= 1800 - standsSeconds;
    if (!stands && (second - 60) % 20 === 0) total += 1;
    const says = stands ? 5200 : 1100;
    if (says !== code)
      story.tell('station.state', { station: 'exit', line: 'L1', code: says }, { ...link, at: second });
    if (says !== code || (second - 60) % 20 === 0)
      story.tell(
        'station.counted',
        { station: 'exit', line: 'L1', boot: 'b', total, serial: null, skipped: null },
        { ...link, at: second },
      );
    code = says;
  }
  return story;
}

function look(story: Story, second: number): { outlook: Outlook; slot: SlotOutlook } {
  const floor = story.floor();
  const nowMs = startMs + second * 1000;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  const [slot] = outlook?.slots ?? [];
  if (!outlook || !slot) throw new Error('nothing is foretold');
  return { outlook, slot };
}
const shareAt = (story: Story, second: number) => {
  const { outlook } = look(story, second);
  return stoppedShare(outlook.told, outlook.calendar, outlook.pace.nowMs);
};

describe('the share of its time that a line stood', () => {
  test('is what its machine told of the run', () => {
    // Three of three half hours end with three minutes of standing: a tenth.
    expect(shareAt(played(180, 5_470), 5_470)).toBeCloseTo(0.1, 2);
  });

  test('is not said before an hour and three stops, nor of a line that stands half of the time, nor where none stood', () => {
    expect(shareAt(played(180, 3_000), 3_000)).toBeNull();
    expect(shareAt(played(180, 5_200), 5_200)).toBeNull();
    expect(shareAt(played(1_000, 5_470), 5_470)).toBeNull();
    expect(shareAt(played(0, 5_470), 5_470)).toBeNull();
  });

  test('leaves out the stop that lasts, and is not said where the machine is silent', () => {
    const story = played(180, 7_150);
    // Stands since 7,080 s.
    expect(shareAt(story, 7_150)).toBeCloseTo((3 * 180) / (7_080 - 60), 2);
    expect(shareAt(story, 9_000)).toBeNull();
  });
});

describe('the run-out with stops to come', () => {
  test('is as much later as the line stood, and changes neither run-out nor warning', () => {
    const { outlook, slot } = look(played(180, 5_470), 5_470);
    const left = slot.forecast.runOutMs.expected - outlook.pace.nowMs;
    const found = (runOutWithStops(outlook, slot) ?? 0) - outlook.pace.nowMs;
    expect(found / left).toBeCloseTo(1 / 0.9, 2);
    // 2,400 parts, 2 a panel: what is left of 1,200 panels at 20 s, with what the line's rules say is lost.
    const done = outlook.run.done;
    expect(left / 20_000).toBeGreaterThan(0.9 * (1_200 - done));
    expect(left / 20_000).toBeLessThan(1_200 - done + 1);
  });

  test('is not said where nothing is learnt', () => {
    const { outlook, slot } = look(played(180, 3_000), 3_000);
    expect(runOutWithStops(outlook, slot)).toBeNull();
  });
});
