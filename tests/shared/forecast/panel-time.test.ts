// Panel time from seeded lines: steady, with stops, with a changed rate.

import { describe, expect, test } from 'vitest';
import { type CountEvent, panelTimeEstimate } from '../../../shared/forecast/panel-time.ts';
import { neverStopping, workingTime } from '../../../shared/forecast/working-time.ts';
import { chanceNormal, seededChance } from '../../../shared/kit/chance.ts';

/** Events of a line: `panels` of `seconds` each, with a deviation, and stops after some panels. */
function play(
  stretches: readonly { panels: number; seconds: number }[],
  { sd = 0, stops = {}, seed = 1 }: { sd?: number; stops?: Record<number, number>; seed?: number } = {},
): CountEvent[] {
  const chance = seededChance(seed);
  const events: CountEvent[] = [{ atMs: 0, panels: 0 }];
  let atMs = 0;
  for (const { panels, seconds } of stretches) {
    for (let i = 0; i < panels; i++) {
      atMs += 1000 * (chanceNormal(chance, seconds, sd) + (stops[events.length] ?? 0));
      events.push({ atMs, panels: 1 });
    }
  }
  return events;
}

const seconds = (events: readonly CountEvent[]) => panelTimeEstimate(events, neverStopping).seconds;

describe('panelTimeEstimate()', () => {
  test('has no answer from fewer than three intervals', () => {
    expect(panelTimeEstimate(play([{ panels: 2, seconds: 30 }]), neverStopping)).toEqual({
      seconds: null,
      reason: 'tooFewCounts',
    });
  });

  test('is exact for a steady line', () => {
    expect(panelTimeEstimate(play([{ panels: 20, seconds: 30 }]), neverStopping)).toEqual({
      seconds: 30,
      sd: 0,
      meanSd: 0,
      basis: { used: 20, ignored: 0, changed: false },
    });
  });

  test('ignores stops, short and long', () => {
    const events = play([{ panels: 30, seconds: 30 }], {
      sd: 0.5,
      stops: { 5: 600, 12: 45, 13: 3600, 25: 120 },
    });
    const estimate = panelTimeEstimate(events, neverStopping);
    expect(Math.abs(estimate.seconds! - 30)).toBeLessThan(0.4);
    expect(estimate).toMatchObject({ basis: { ignored: 4, changed: false } });
  });

  test.each([
    { reason: 'slower', to: 42 },
    { reason: 'faster', to: 24 },
  ])('follows a $reason rate within seven panels', ({ to }) => {
    const events = play(
      [
        { panels: 40, seconds: 30 },
        { panels: 7, seconds: to },
      ],
      { sd: 0.5 },
    );
    expect(Math.abs(seconds(events)! - to)).toBeLessThan(0.8);
  });

  test('keeps its length of memory: a long steady run has a narrow answer', () => {
    let worst = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const estimate = panelTimeEstimate(
        play([{ panels: 60, seconds: 30 }], { sd: 1.5, seed }),
        neverStopping,
      );
      worst = Math.max(worst, Math.abs(estimate.seconds! - 30));
    }
    expect(worst).toBeLessThan(1.5);
  });

  test('takes breaks of the calendar for no time at all', () => {
    const events = play([{ panels: 10, seconds: 30 }], { stops: { 4: 900 } });
    const calendar = workingTime([{ fromMs: 95_000, toMs: 995_000 }]);
    expect(panelTimeEstimate(events, calendar)).toMatchObject({ seconds: 30, basis: { ignored: 0 } });
  });

  test('counts several panels at once as their mean', () => {
    const events = play([{ panels: 40, seconds: 30 }], { sd: 1 });
    const byFours = events.filter((_, i) => i % 4 === 0).map((event) => ({ ...event, panels: 4 }));
    expect(Math.abs(seconds(byFours)! - 30)).toBeLessThan(0.6);
  });
});
