// While a verdict is written and until it is drawn, what nobody waits for holds still, whether it is written in the end or not.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { emptyDesk } from '../../../../shared/desk/model.ts';
import type { App } from '../../../../src/app/app.ts';
import { openDesk } from '../../../../src/app/desk/state.ts';
import { type JudgedReel, keepVerdict } from '../../../../src/app/desk/verdict.ts';
import { unlessAwaited } from '../../../../src/app/device/awaited.ts';
import { beginStory, startMs, tellPlant } from '../../../shared/floor/story.ts';

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A desk at which a reel was judged; the write ends as it is told to. */
function judgedDesk() {
  const story = beginStory();
  tellPlant(story);
  const floor = story.floor();
  let [resolve, reject] = [(_: readonly []) => {}, (_: Error) => {}];
  const writing = new Promise<readonly []>((...ends) => {
    [resolve, reject] = ends;
  });
  const app = {
    line: signal('L1'),
    clock: { nowMs: () => startMs },
    store: { floor: () => floor },
    write: () => writing,
  } as unknown as App; // all that keeping a verdict asks
  const none = () => undefined;
  const state = openDesk(app, { onBadge: none, onPanel: none, onTakeOut: none });
  const judged = {
    act: 'load',
    drafts: [],
    answer: { verdict: 'accepted', reasons: [] },
    reel: {},
  } as unknown as JudgedReel; // nothing else of it is asked
  const seen = { floor, line: 'L1', beside: [] };
  const kept = keepVerdict(state, { ...emptyDesk, slot: 'M1-F-001' }, { seen, judged });
  return { state, kept, resolve, reject };
}

test('what nobody waits for comes after the verdict is drawn', async () => {
  const { state, kept, resolve } = judgedDesk();
  const other = vi.fn();
  unlessAwaited(other);
  resolve([]);
  await kept;
  expect(state.shown.value).not.toBeNull();
  expect(other).not.toHaveBeenCalled();
  vi.advanceTimersByTime(100);
  expect(other).toHaveBeenCalledTimes(1);
});

test('a verdict that cannot be written holds nothing up', async () => {
  const { kept, reject } = judgedDesk();
  const other = vi.fn();
  unlessAwaited(other);
  reject(new Error('full'));
  await expect(kept).rejects.toThrow('full');
  vi.advanceTimersByTime(100);
  expect(other).toHaveBeenCalledTimes(1);
});
