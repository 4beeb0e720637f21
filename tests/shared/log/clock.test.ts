// The hybrid clock keeps what its authors promise: it only grows, a cause comes before its effect, and it stays near real time.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  aheadLimitMs,
  clockAhead,
  compareClock,
  mayFollow,
  mergeClock,
  tickClock,
} from '../../../shared/log/clock.ts';
import type { ClockReading } from '../../../shared/log/entry.ts';

describe('`tickClock()`', () => {
  it.each([
    ['the first reading is the wall clock', null, 100, { ms: 100, n: 0 }],
    ['time that went on starts the counter anew', { ms: 100, n: 7 }, 101, { ms: 101, n: 0 }],
    ['a second event in one millisecond counts', { ms: 100, n: 7 }, 100, { ms: 100, n: 8 }],
    [
      'a counter at its end goes on in the next millisecond',
      { ms: 100, n: 2 ** 31 - 1 },
      100,
      { ms: 101, n: 0 },
    ],
    ['a clock set back a day goes on from before', { ms: 86_400_100, n: 0 }, 100, { ms: 86_400_100, n: 1 }],
  ] as const)('%s', (_, last, wallMs, wanted) => {
    expect(tickClock(last, wallMs)).toEqual(wanted);
  });

  it('only grows, whatever the wall clock does', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2 ** 41 })), (walls) => {
        let last: ClockReading | null = null;
        for (const wall of walls) {
          const next = tickClock(last, wall);
          if (last) expect(compareClock(next, last)).toBeGreaterThan(0);
          expect(next.ms).toBeGreaterThanOrEqual(wall);
          last = next;
        }
      }),
    );
  });
});

describe('tablets that hear of each other', () => {
  // Kulkarni et al. 2014, theorem 1 (e happened before f implies the smaller reading) and theorem 2 (the reading is never
  // before the own wall clock, and never past the greatest one heard of).
  it('read a cause before its effect, and no later than the fastest clock among them', () => {
    const step = fc.record({
      tablet: fc.nat(3),
      from: fc.nat(3),
      wall: fc.integer({ min: 0, max: 1_000 }),
      heard: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const lasts: (ClockReading | null)[] = [null, null, null, null];
        let fastest = 0;
        for (const { tablet, from, wall, heard } of steps) {
          const seen = lasts[from] ?? null;
          const before = heard && seen ? mergeClock(lasts[tablet] ?? null, seen) : (lasts[tablet] ?? null);
          fastest = Math.max(fastest, wall);
          const next = tickClock(before, wall);
          if (heard && seen) expect(compareClock(next, seen)).toBeGreaterThan(0);
          expect(next.ms).toBeGreaterThanOrEqual(wall);
          expect(next.ms).toBeLessThanOrEqual(fastest);
          lasts[tablet] = next;
        }
      }),
    );
  });

  it('`mergeClock()` keeps the later of two', () => {
    expect(mergeClock(null, { ms: 5, n: 1 })).toEqual({ ms: 5, n: 1 });
    expect(mergeClock({ ms: 5, n: 2 }, { ms: 5, n: 1 })).toEqual({ ms: 5, n: 2 });
    expect(mergeClock({ ms: 5, n: 2 }, { ms: 6, n: 0 })).toEqual({ ms: 6, n: 0 });
  });
});

describe('`clockAhead()`', () => {
  it.each([
    [{ ms: 1_000, n: 0 }, 400, 600],
    [{ ms: 1_000, n: 9 }, 1_000, 0],
    [{ ms: 1_000, n: 0 }, 5_000, 0],
  ])('of %j at %i is %i', (reading, wall, ahead) => {
    expect(clockAhead(reading, wall)).toBe(ahead);
  });
});

describe('`mayFollow()`', () => {
  it.each([
    [{ ms: aheadLimitMs, n: 0 }, 0, true],
    [{ ms: aheadLimitMs + 1, n: 0 }, 0, false],
    [{ ms: aheadLimitMs + 1, n: 0 }, null, true],
    [{ ms: 2 ** 42, n: 0 }, null, false],
    [{ ms: 5, n: 2 ** 31 }, 5, false],
  ])('of %j at %j is %j', (reading, nowMs, may) => {
    expect(mayFollow(reading, nowMs)).toBe(may);
  });
});
