// A blocked reel on the line is called for with the entry that blocks it, whoever wrote that; again until somebody says that they go.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { App } from '../../../../src/app/app.ts';
import { blockedNeed, callForBlocked } from '../../../../src/app/outlook/blocked-call.ts';
import { beginStory, tellPlant, verified } from '../../../shared/floor/story.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('calls at once, again after a while, and no more once somebody has taken note', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LOT7' }));
  const tick = signal(0);
  const heard: string[] = [];
  const app = { tick, line: signal('L1'), beside: signal([]), store: { floor: () => story.floor() } };
  callForBlocked(app as unknown as App, { call: (level) => heard.push(level) }); // the part of the app that it asks
  vi.advanceTimersByTime(60_000);
  expect(heard).toEqual([]);
  story.tell(
    'material.blocked',
    { block: 'b1', reel: null, lot: 'LOT7', part: null, reason: 'bent' },
    { tablet: 'T2' },
  );
  tick.value++;
  expect(heard).toEqual(['late']);
  tick.value++;
  expect(heard).toHaveLength(1);
  vi.advanceTimersByTime(15_000);
  expect(heard).toHaveLength(2);
  const need = blockedNeed({ block: 'b1' });
  story.tell('warning.acknowledged', { line: 'L1', slot: 'M1-F-001', need, level: 'late' });
  tick.value++;
  vi.advanceTimersByTime(60_000);
  expect(heard).toHaveLength(2);
  // Another reel of the lot on another slot is another thing to hear of.
  story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LOT7' }));
  tick.value++;
  expect(heard).toHaveLength(3);
});
