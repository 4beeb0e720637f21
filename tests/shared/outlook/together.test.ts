// Whoever serves two lines is told when both want them at once; walks that only touch are made one after the other.

import { expect, test } from 'vitest';
import { walksTogetherMs } from '../../../shared/outlook/together.ts';
import type { PlannedWalk } from '../../../shared/outlook/walks.ts';

const plan = (...spans: readonly (readonly [startMs: number, endMs: number])[]) => ({
  walks: spans.map(([startMs, endMs]): PlannedWalk => ({ operator: 0, startMs, endMs, splices: [] })),
});

test.each([
  ['the first moment of both', plan([0, 10], [50, 60]), plan([20, 30], [55, 70]), 55],
  ['the soonest of several', plan([50, 60], [5, 12]), plan([8, 9], [58, 59]), 8],
  ['one within the other', plan([0, 100]), plan([40, 50]), 40],
  ['walks that follow each other', plan([0, 10]), plan([10, 20]), null],
  ['a line without walks', plan([0, 10]), plan(), null],
  ['a line that was not looked at', plan([0, 10]), null, null],
])('%s', (_, one, other, ms) => {
  expect(walksTogetherMs(one, other)).toBe(ms);
  expect(walksTogetherMs(other, one)).toBe(ms);
});
