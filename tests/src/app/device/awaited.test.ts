// What nobody waits for holds still while somebody waits for an answer, and comes right after it was drawn.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { somebodyWaits, unlessAwaited } from '../../../../src/app/device/awaited.ts';

const frames: (() => void)[] = [];
const idle: (() => void)[] = [];
const runAll = (works: (() => void)[]) => {
  for (const work of works.splice(0)) work();
};

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void frames.push(work));
  vi.stubGlobal('requestIdleCallback', (work: () => void) => void idle.push(work));
});
afterEach(() => {
  vi.runAllTimers(); // nobody waits any more
  vi.unstubAllGlobals();
  vi.useRealTimers();
  frames.length = 0;
  idle.length = 0;
});

test('unlessAwaited() does it at once where nobody waits', () => {
  const work = vi.fn();
  unlessAwaited(work);
  expect(work).toHaveBeenCalledTimes(1);
});

test('unlessAwaited() holds it until the answer is drawn, and does it once', () => {
  const answered = somebodyWaits();
  const work = vi.fn();
  unlessAwaited(work);
  answered();
  runAll(frames);
  expect(work).not.toHaveBeenCalled();
  runAll(idle);
  expect(work).toHaveBeenCalledTimes(1);
  vi.runAllTimers();
  expect(work).toHaveBeenCalledTimes(1);
});

test('whoever waits beside the first is waited for too', () => {
  const [first, second] = [somebodyWaits(), somebodyWaits()];
  const work = vi.fn();
  unlessAwaited(work);
  first();
  runAll(frames);
  runAll(idle);
  expect(work).not.toHaveBeenCalled();
  second();
  runAll(frames);
  runAll(idle);
  expect(work).toHaveBeenCalledTimes(1);
});

test('an answer that does not come holds nothing for longer than was asked for', () => {
  const answered = somebodyWaits();
  const [work, sooner] = [vi.fn(), vi.fn()];
  unlessAwaited(work);
  unlessAwaited(sooner, 500);
  vi.advanceTimersByTime(500);
  expect([work.mock.calls.length, sooner.mock.calls.length]).toEqual([0, 1]);
  vi.advanceTimersByTime(500);
  expect(work).toHaveBeenCalledTimes(1);
  answered();
});
