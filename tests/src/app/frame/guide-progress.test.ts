// How far somebody is in a guide is kept by person; what cannot be read counts as nothing done.

import { beforeEach, expect, test, vi } from 'vitest';

const kept = new Map<string, string>();
const storage = {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
};
vi.stubGlobal('localStorage', storage);
vi.stubGlobal('sessionStorage', storage);
const { followGuide, guideNow, keepStepsDone, stepsDone } = await import(
  '../../../../src/app/frame/guide-progress.ts'
);

beforeEach(() => kept.clear());

test('each person is where they were, in each guide', () => {
  keepStepsDone('p-1', 'operator', 3);
  keepStepsDone('p-1', 'lead', 1);
  expect([stepsDone('p-1', 'operator'), stepsDone('p-1', 'lead'), stepsDone('p-2', 'operator')]).toEqual([
    3, 1, 0,
  ]);
});

test('what is unreadable or out of range is brought back to the guide', () => {
  keepStepsDone('p-1', 'lead', 99);
  expect(stepsDone('p-1', 'lead')).toBe(3);
  kept.set('reelward-guides', '{"p-1 lead":"x"}');
  expect(stepsDone('p-1', 'lead')).toBe(0);
  kept.set('reelward-guides', 'no JSON');
  expect(stepsDone('p-1', 'lead')).toBe(0);
});

test('a guide is followed until it is left', () => {
  followGuide('lead');
  expect([guideNow.value, kept.get('reelward-guide')]).toEqual(['lead', 'lead']);
  followGuide(null);
  expect([guideNow.value, kept.get('reelward-guide')]).toEqual([null, undefined]);
});
