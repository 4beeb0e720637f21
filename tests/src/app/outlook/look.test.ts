// A look at the line holds still while a verdict is awaited, and comes to its end after it.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { App } from '../../../../src/app/app.ts';
import { somebodyWaits } from '../../../../src/app/device/awaited.ts';
import { createLooker, look } from '../../../../src/app/outlook/look.ts';
import { beginStory, counted, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

function looker() {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 5000, panelSeconds: 60 }));
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', run: 'run-1' }), { at: 60 });
  story.tell('panels.counted', counted('run-1', 1), { at: 120 });
  const floor = story.floor();
  const clock = { nowMs: vi.fn(() => startMs + 180_000) };
  const app = { clock, store: { floor: () => floor, count: () => 1 } } as unknown as App; // all that looking asks
  const take = vi.fn();
  return { clock, take, of: createLooker({ app, line: () => 'L1', remembered: new Map(), take }) };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
});
afterEach(() => {
  vi.runAllTimers(); // nobody waits any more
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('a look begins after the verdict that is awaited', () => {
  const { take, of } = looker();
  const answered = somebodyWaits();
  look(of);
  vi.advanceTimersByTime(200);
  expect(take).not.toHaveBeenCalled();
  answered();
  vi.runAllTimers();
  expect(take).toHaveBeenCalledTimes(1);
  expect(take.mock.calls[0]?.[0]).toMatchObject({ line: 'L1' });
});

test('of two looks that were held the newer one is made', () => {
  const { clock, take, of } = looker();
  const answered = somebodyWaits();
  look(of);
  clock.nowMs.mockReturnValue(startMs + 181_000);
  look(of);
  answered();
  vi.runAllTimers();
  expect(take).toHaveBeenCalledTimes(1);
  expect(take.mock.calls[0]?.[1]).toBe(startMs + 181_000);
});

/** Each reading of the clock is later than a slice by then: a look takes as many slices as it has steps. */
function slowly(): void {
  let ownMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    ownMs += 9;
    return Date.now() + ownMs;
  });
}

test('an answer that does not come holds a look of many slices for a second, not each of them', () => {
  slowly();
  const { take, of } = looker();
  const answered = somebodyWaits();
  look(of);
  vi.advanceTimersByTime(900);
  expect(take).not.toHaveBeenCalled();
  vi.advanceTimersByTime(200);
  expect(take).toHaveBeenCalledTimes(1);
  answered();
});

test('a held look that a newer one replaces is made when the first was due, and in slices', () => {
  slowly();
  const { take, of } = looker();
  const answered = somebodyWaits();
  for (let times = 0; times < 6; times += 1) {
    look(of);
    vi.advanceTimersByTime(150);
  }
  expect(of.restarts).toBe(0);
  vi.advanceTimersByTime(200);
  expect(take).toHaveBeenCalledTimes(1);
  answered();
});
