// When counting has ceased, and from when on a line stood. Checked minute by minute against a walk along the clock, by properties.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CEASED_CYCLES, countingOf, stoodFrom } from '../../../shared/forecast/counting.ts';
import { neverStopping, workingTime } from '../../../shared/forecast/working-time.ts';

const minuteMs = 60_000;
const startMs = Date.UTC(2026, 2, 2, 6);
const seenAt = (minutes: number, calendar = neverStopping) => ({
  lastMs: startMs,
  nowMs: startMs + minutes * minuteMs,
  panelSeconds: 60,
  calendar,
});

describe('counting has ceased', () => {
  test('after more than three cycles, not at three', () => {
    expect(countingOf(seenAt(3), true).ceased).toBe(false);
    expect(countingOf(seenAt(3.1), true).ceased).toBe(true);
  });

  test('not where no count is to come', () => {
    expect(countingOf(seenAt(300), false).ceased).toBe(false);
  });

  test('a break between does not count', () => {
    const pause = workingTime([{ fromMs: startMs + minuteMs, toMs: startMs + 31 * minuteMs }]);
    expect(countingOf(seenAt(33, pause), true)).toEqual({
      lastMs: startMs,
      quietSeconds: 180,
      ceased: false,
    });
    expect(countingOf(seenAt(35, pause), true).ceased).toBe(true);
  });

  test('a count from a clock that is ahead is taken for now', () => {
    const counting = countingOf({ ...seenAt(0), lastMs: startMs + minuteMs }, true);
    expect(counting).toEqual({ lastMs: startMs, quietSeconds: 0, ceased: false });
  });
});

describe('the line stood', () => {
  test('from one cycle after the last panel on', () => {
    expect(stoodFrom(seenAt(14))).toBe(startMs + minuteMs);
  });

  test('from now on, where a count is not missed yet', () => {
    expect(stoodFrom(seenAt(2))).toBeNull();
    expect(stoodFrom(seenAt(2.1))).toBe(startMs + minuteMs);
  });

  test('from the end of a break where the cycle reaches into it', () => {
    const pause = workingTime([{ fromMs: startMs + 0.5 * minuteMs, toMs: startMs + 30 * minuteMs }]);
    expect(stoodFrom(seenAt(40, pause))).toBe(startMs + 30.5 * minuteMs);
  });
});

const stretch = fc.record({
  from: fc.integer({ min: -30, max: 200 }),
  minutes: fc.integer({ min: 1, max: 60 }),
});

test('ceased is what a walk along the clock counts, for any stops; the line stood between the last count and now', () => {
  fc.assert(
    fc.property(
      fc.array(stretch, { maxLength: 4 }),
      fc.integer({ min: 0, max: 240 }),
      fc.integer({ min: 1, max: 20 }),
      (stops, minutes, cycle) => {
        const spans = stops.map(({ from, minutes: length }) => ({
          fromMs: startMs + from * minuteMs,
          toMs: startMs + (from + length) * minuteMs,
        }));
        const seen = { ...seenAt(minutes, workingTime(spans)), panelSeconds: cycle * 60 };
        const isStop = (at: number) =>
          stops.some(({ from, minutes: length }) => at >= from && at < from + length);
        const worked = Array.from({ length: minutes }, (_, at) => at).filter((at) => !isStop(at)).length;
        const counting = countingOf(seen, true);
        expect(counting.quietSeconds).toBeCloseTo(worked * 60, 6);
        expect(counting.ceased).toBe(worked > CEASED_CYCLES * cycle);
        const from = stoodFrom(seen);
        expect(from === null).toBe(worked <= 2 * cycle);
        if (from === null) return;
        expect(from).toBeGreaterThan(seen.lastMs);
        expect(from).toBeLessThan(seen.nowMs);
      },
    ),
  );
});
