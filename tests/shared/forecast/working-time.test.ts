// Working time against a naive walk, second by second, and against a calendar library over changes of the clocks.

import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import {
  neverStopping,
  type Stop,
  workingMoment,
  workingSeconds,
  workingTime,
} from '../../../shared/forecast/working-time.ts';

const at = (text: string) => Date.parse(`2026-03-02T${text}+01:00`);
const pause = (from: string, to: string): Stop => ({ fromMs: at(from), toMs: at(to) });

describe('workingMoment()', () => {
  const morning = [pause('09:00', '09:15')];
  test.each([
    { reason: 'no stop in the way', from: '08:00', work: 1800, stops: morning, moment: '08:30' },
    { reason: 'a stop is no work', from: '08:50', work: 900, stops: morning, moment: '09:20' },
    { reason: 'the edge is the stop’s start', from: '08:50', work: 600, stops: morning, moment: '09:00' },
    {
      reason: 'from inside a stop work begins at its end',
      from: '09:05',
      work: 60,
      stops: morning,
      moment: '09:16',
    },
    {
      reason: 'no work is done at once, even in a stop',
      from: '09:05',
      work: 0,
      stops: morning,
      moment: '09:05',
    },
    { reason: 'no work at a stop’s start', from: '09:00', work: 0, stops: morning, moment: '09:00' },
    { reason: 'work from a stop’s end', from: '09:15', work: 60, stops: morning, moment: '09:16' },
    {
      reason: 'a stop that is over does not count',
      from: '10:00',
      work: 60,
      stops: morning,
      moment: '10:01',
    },
    {
      reason: 'overlapping, touching and unsorted stops are one',
      from: '08:50',
      work: 660,
      stops: [pause('09:30', '10:00'), pause('09:00', '09:20'), pause('09:10', '09:30')],
      moment: '10:01',
    },
    {
      reason: 'an empty stop is none',
      from: '08:50',
      work: 660,
      stops: [pause('09:00', '09:00')],
      moment: '09:01',
    },
    {
      reason: 'a stop inside another adds nothing',
      from: '08:50',
      work: 660,
      stops: [pause('09:00', '10:00'), pause('09:10', '09:20')],
      moment: '10:01',
    },
  ])('gives $moment when $reason', ({ from, work, stops, moment }) => {
    expect(workingMoment(workingTime(stops), at(from), work)).toBe(at(moment));
  });

  test('lands on the stop’s start when the work is a sum with rounding dust', () => {
    const seconds = 0.1 + 0.2; // 0.30000000000000004
    const stops = [{ fromMs: at('09:00') + 300, toMs: at('09:15') }];
    expect(workingMoment(workingTime(stops), at('09:00'), seconds)).toBeCloseTo(at('09:00') + 300, 2);
  });

  test('refuses negative and infinite work', () => {
    expect(() => workingMoment(neverStopping, 0, -1)).toThrow(RangeError);
    expect(() => workingMoment(neverStopping, 0, Infinity)).toThrow(RangeError);
  });

  const stopsArb = fc.array(
    fc
      .tuple(fc.nat(400), fc.nat(60))
      .map(([from, long]) => ({ fromMs: from * 1000, toMs: (from + long) * 1000 })),
    { maxLength: 8 },
  );

  test('equals a walk second by second', () => {
    fc.assert(
      fc.property(stopsArb, fc.nat(400), fc.nat(300), (stops, from, work) => {
        let second = from;
        let done = 0;
        while (done < work) {
          const stopped = stops.some((stop) => second * 1000 >= stop.fromMs && second * 1000 < stop.toMs);
          if (!stopped) done += 1;
          second += 1;
        }
        expect(workingMoment(workingTime(stops), from * 1000, work)).toBe(second * 1000);
      }),
    );
  });

  test('never moves back when there is more work, and asks no order of the stops', () => {
    fc.assert(
      fc.property(stopsArb, fc.nat(400), fc.nat(300), fc.nat(50), (stops, from, work, more) => {
        const calendar = workingTime(stops);
        const moment = workingMoment(calendar, from * 1000, work);
        expect(workingMoment(calendar, from * 1000, work + more)).toBeGreaterThanOrEqual(moment);
        expect(workingMoment(workingTime([...stops].reverse()), from * 1000, work)).toBe(moment);
        expect(workingSeconds(calendar, from * 1000, moment)).toBeCloseTo(work, 6);
      }),
    );
  });
});

describe('workingSeconds()', () => {
  test('equals luxon’s difference when the clocks change between the moments', () => {
    const zone = 'Europe/Berlin';
    for (const day of ['2026-03-28', '2026-10-24']) {
      const from = DateTime.fromISO(`${day}T22:00`, { zone });
      const to = from.plus({ days: 1 });
      const breakFrom = DateTime.fromISO(`${day}T23:30`, { zone });
      const breakTo = breakFrom.plus({ minutes: 20 });
      const calendar = workingTime([{ fromMs: breakFrom.toMillis(), toMs: breakTo.toMillis() }]);
      const expected = to.diff(from, 'seconds').seconds - 1200;
      expect(workingSeconds(calendar, from.toMillis(), to.toMillis())).toBe(expected);
      expect([23 * 3600 - 1200, 25 * 3600 - 1200]).toContain(expected);
    }
  });

  test('is negative when the second moment comes first', () => {
    expect(workingSeconds(neverStopping, 5000, 2000)).toBe(-3);
  });
});

describe('workingTime()', () => {
  test('makes one stop of those that touch or overlap, in whatever order, and none of an empty one', () => {
    const made = workingTime([
      { fromMs: 50, toMs: 60 },
      { fromMs: 20, toMs: 30 },
      { fromMs: 10, toMs: 20 },
      { fromMs: 55, toMs: 58 },
      { fromMs: 70, toMs: 70 },
    ]);
    // The clock of work stands at 10 and at 50 − 20.
    expect(made).toEqual({ fromMs: [10, 50], toMs: [30, 60], workAtMs: [10, 30], stoppedMs: [0, 20, 30] });
  });

  test('refuses a stop that ends before it starts', () => {
    expect(() => workingTime([pause('09:15', '09:00')])).toThrow(RangeError);
  });
});
