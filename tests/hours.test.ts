// The hour at which browser tests run: how far a clock is put ahead or back.

import { expect, test } from 'vitest';
import { aheadOf } from './e2e/support/hour.ts';

const HOUR_MS = 3_600_000;
const at = (hours: number, minutes = 0) => new Date(2026, 2, 3, hours, minutes);

test.each([
  { now: at(22), wanted: '23:50', hours: 1 + 50 / 60, why: 'later today' },
  { now: at(22), wanted: '00:30', hours: 2.5, why: 'tomorrow is nearer than this morning' },
  { now: at(2), wanted: '23:50', hours: -2 - 10 / 60, why: 'yesterday is nearer than tonight' },
  { now: at(9), wanted: '05:55', hours: -3 - 5 / 60, why: 'earlier today' },
  { now: at(13, 58), wanted: '13:58', hours: 0, why: 'now' },
])('aheadOf() goes to $wanted by $hours h: $why', ({ now, wanted, hours }) => {
  expect(aheadOf(wanted, now) / HOUR_MS).toBeCloseTo(hours, 9);
});

test.each(['24:00', '7:5', '', '12:60', 'noon'])('aheadOf() refuses %j', (wanted) => {
  expect(() => aheadOf(wanted, at(9))).toThrow(RangeError);
});
