// Times on the line: by the clock and by how far away, to come and gone.

import { afterEach, expect, test } from 'vitest';
import { sayMoment, sayStretch } from '../../../../../src/app/screens/line/moment.ts';
import { words } from '../../../../../src/app/words/en/line.ts';
import { language } from '../../../../../src/app/words/words.ts';

const nowMs = Date.UTC(2026, 2, 2, 13, 44);
const at = { nowMs, zone: 'UTC' };
const minute = 60_000;
const between = (fromMs: number, toMs: number, from: typeof at) =>
  sayStretch(words.between, [fromMs, toMs], from);

afterEach(() => {
  language.value = 'en';
});

test('a moment says both, whichever way it lies', () => {
  expect(sayMoment(nowMs + 23 * minute, at)).toBe('14:07, in 23\u00a0min');
  expect(sayMoment(nowMs - 12 * minute, at)).toBe('13:32, 12\u00a0min ago');
  language.value = 'es';
  expect(sayMoment(nowMs + 23 * minute, at)).toBe('14:07, en 23\u00a0min');
});

test('a stretch says both ends; what has begun begins now, what is over says since when', () => {
  expect(between(nowMs + 18 * minute, nowMs + 28 * minute, at)).toBe(
    'between 14:02 and 14:12, in 18\u00a0min to 28\u00a0min',
  );
  expect(between(nowMs - 2 * minute, nowMs + 8 * minute, at)).toBe(
    'between 13:42 and 13:52, in 0\u00a0s to 8\u00a0min',
  );
  expect(between(nowMs - 9 * minute, nowMs - 4 * minute, at)).toBe('between 13:35 and 13:40, 4\u00a0min ago');
});
