// Panel time from seeded lines: steady, with stops, with a changed rate.

import fc from 'fast-check';
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

  /** Events a number of seconds apart. */
  const apart = (...each: readonly number[]): CountEvent[] => {
    const events: CountEvent[] = [{ atMs: 0, panels: 0 }];
    for (const gap of each) events.push({ atMs: (events.at(-1)?.atMs ?? 0) + gap * 1000, panels: 1 });
    return events;
  };
  const times = (number: number, gap: number) => Array.from({ length: number }, () => gap);

  test('gives one panel’s deviation and that of the mean', () => {
    // 20 and 22 in turn: 1 s from the mean each, √(8 ÷ 7).
    const estimate = panelTimeEstimate(apart(20, 22, 20, 22, 20, 22, 20, 22), neverStopping);
    expect(estimate).toMatchObject({ seconds: 21, basis: { used: 8, ignored: 0 } });
    expect(estimate.seconds !== null && [estimate.sd, estimate.meanSd]).toEqual([
      Math.sqrt(8 / 7),
      Math.sqrt(8 / 7) / Math.sqrt(8),
    ]);
  });

  test('leaves aside what lies further from the middle than four tenths of it or 3.5 deviations, whichever is more', () => {
    const basisOf = (...each: readonly number[]) => {
      const estimate = panelTimeEstimate(apart(...each), neverStopping);
      return estimate.seconds === null ? null : [estimate.basis.used, estimate.basis.ignored];
    };
    expect(basisOf(...times(6, 30), 42)).toEqual([7, 0]);
    expect(basisOf(...times(6, 30), 43)).toEqual([6, 1]);
    // The middle is 35 s, the median deviation 10 s: 3.5 × 1.4826 × 10 = 51.9 s.
    expect(basisOf(20, 40, 20, 40, 20, 40, 30, 86)).toEqual([8, 0]);
    expect(basisOf(20, 40, 20, 40, 20, 40, 30, 90)).toEqual([7, 1]);
  });

  test('takes nothing from an event without a panel but its moment', () => {
    const events = apart(...times(6, 30)).map((event, at) => (at === 3 ? { ...event, panels: 0 } : event));
    expect(panelTimeEstimate(events, neverStopping)).toMatchObject({
      seconds: 30,
      basis: { used: 5, ignored: 0 },
    });
  });

  test('follows another rate once seven counts show it, where seven showed the one before', () => {
    const isChanged = (...each: readonly number[]) => {
      const estimate = panelTimeEstimate(apart(...each), neverStopping);
      return estimate.seconds === null ? null : [estimate.basis.changed, estimate.seconds];
    };
    expect(isChanged(...times(7, 30), ...times(7, 20))).toEqual([true, 20]);
    expect(isChanged(...times(6, 30), ...times(7, 20))?.[0]).toBe(false);
    // By 3 % at least.
    expect(isChanged(...times(7, 30), ...times(7, 29.25))?.[0]).toBe(false);
    expect(isChanged(...times(7, 30), ...times(7, 29))?.[0]).toBe(true);
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

/** The same panels as somebody counts them who now and then lets some go by and then taps them in, `tapMs` apart. */
function caughtUp(
  events: readonly CountEvent[],
  { from, panels, tapMs }: { from: number; panels: number; tapMs: number },
): CountEvent[] {
  const last = events[from + panels - 1]?.atMs ?? 0;
  return events.map((event, i) =>
    i >= from && i < from + panels ? { ...event, atMs: last - (from + panels - 1 - i) * tapMs } : event,
  );
}

describe('panelTimeEstimate() of counts tapped in at once', () => {
  test('takes twenty taps within seconds for twenty panels over the time since the count before', () => {
    const events = caughtUp(play([{ panels: 24, seconds: 30 }]), { from: 4, panels: 20, tapMs: 400 });
    const estimate = panelTimeEstimate(events, neverStopping, 30);
    expect(estimate).toMatchObject({ basis: { used: 5, ignored: 0, changed: false } });
    expect(estimate.seconds).toBeCloseTo(30, 9);
  });

  test('takes taps a few seconds apart for one lump where the line was planned, or seen, to be slower', () => {
    const events = caughtUp(play([{ panels: 40, seconds: 30 }], { sd: 0.5 }), {
      from: 20,
      panels: 20,
      tapMs: 4000,
    });
    expect(Math.abs(panelTimeEstimate(events, neverStopping, 30).seconds! - 30)).toBeLessThan(0.5);
    expect(Math.abs(seconds(events)! - 30)).toBeLessThan(0.5);
  });

  test('has no answer where nothing but one burst was seen', () => {
    const burst = caughtUp(play([{ panels: 20, seconds: 30 }]), { from: 1, panels: 20, tapMs: 300 });
    expect(panelTimeEstimate(burst, neverStopping, 30)).toEqual({ seconds: null, reason: 'tooFewCounts' });
    expect(panelTimeEstimate(burst.slice(1), neverStopping, 30).seconds).toBeNull();
  });

  test('believes a quick line that was planned far too slow', () => {
    const events = play([{ panels: 40, seconds: 6 }], { sd: 0.2 });
    expect(Math.abs(panelTimeEstimate(events, neverStopping, 60).seconds! - 6)).toBeLessThan(0.2);
  });

  test('stops before a burst change nothing: a stop is no reason to take the panels after it for a burst', () => {
    const events = play([{ panels: 20, seconds: 30 }], { sd: 0.5, stops: { 3: 7200 } });
    expect(Math.abs(panelTimeEstimate(events, neverStopping, 30).seconds! - 30)).toBeLessThan(0.5);
  });

  test('comes near the line however the panels were caught up with, at any pace of fingers', () => {
    fc.assert(
      fc.property(
        fc.record({
          seed: fc.integer({ min: 1, max: 1e6 }),
          cycle: fc.integer({ min: 12, max: 90 }),
          tapMs: fc.integer({ min: 0, max: 1900 }),
          bursts: fc.array(fc.integer({ min: 2, max: 25 }), { minLength: 1, maxLength: 4 }),
        }),
        ({ seed, cycle, tapMs, bursts }) => {
          const plain = play([{ panels: 140, seconds: cycle }], { sd: cycle / 60, seed });
          let events = plain;
          bursts.forEach((panels, i) => {
            events = caughtUp(events, { from: 6 + 33 * i, panels, tapMs: Math.min(tapMs, cycle * 80) });
          });
          const estimate = panelTimeEstimate(events, neverStopping, cycle);
          expect(Math.abs(estimate.seconds! / seconds(plain)! - 1)).toBeLessThan(0.03);
        },
      ),
      { seed: 20_261_126 },
    );
  });
});
