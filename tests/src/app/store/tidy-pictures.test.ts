// Pictures whose days are over go without a camera: at once when the app begins, and every hour while it stays on.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepTidy } from '../../../../src/app/store/tidy-pictures.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('looks at once and every hour, also after a look that failed', async () => {
  const looks: number[] = [];
  let nowMs = 1000;
  const tidy = (at: number) => {
    looks.push(at);
    return looks.length === 1 ? Promise.reject(new Error('away')) : Promise.resolve();
  };
  keepTidy({ isRuled: () => true, nowMs: () => nowMs }, () => ({ tidy }));
  expect(looks).toEqual([1000]);
  nowMs = 2000;
  await vi.advanceTimersByTimeAsync(3_600_000);
  expect(looks).toEqual([1000, 2000]);
});

test('opens nothing where no line ever kept pictures, and begins once one does', async () => {
  let isRuled = false;
  const looks: number[] = [];
  const open = () => ({ tidy: (at: number) => Promise.resolve(void looks.push(at)) });
  keepTidy({ isRuled: () => isRuled, nowMs: () => 5 }, open);
  await vi.advanceTimersByTimeAsync(7_200_000);
  expect(looks).toEqual([]);
  isRuled = true;
  await vi.advanceTimersByTimeAsync(3_600_000);
  expect(looks).toEqual([5]);
});
