// How long a window practises: after a reload still, after twelve hours no more, nor where the clock was set back further than that.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import {
  beginPractice,
  forgetPractice,
  PRACTICE_LASTS_MS,
  practiceSince,
} from '../../../src/app/practice.ts';

const startMs = 1_772_431_200_000;

beforeEach(() => {
  const kept = new Map<string, string>();
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
  vi.stubGlobal('location', { hash: '#/line', reload: vi.fn() });
});
afterEach(() => vi.unstubAllGlobals());

test('a window that was never told practises nothing', () => {
  expect(practiceSince(startMs)).toBe(null);
});

test('practice begins at the labels, after a fresh start of the page', () => {
  beginPractice(startMs);
  expect(location.hash).toBe('#/plant/practice');
  expect(location.reload).toHaveBeenCalledOnce();
  expect(practiceSince(startMs + 1)).toBe(startMs);
});

test('it is over when it is ended, and by itself', () => {
  beginPractice(startMs);
  expect(practiceSince(startMs + PRACTICE_LASTS_MS - 1)).toBe(startMs);
  expect(practiceSince(startMs + PRACTICE_LASTS_MS)).toBe(null);
  expect(practiceSince(startMs - PRACTICE_LASTS_MS)).toBe(null);
  forgetPractice();
  expect(practiceSince(startMs)).toBe(null);
});
