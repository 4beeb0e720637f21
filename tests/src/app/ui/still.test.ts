// Nothing moves under a finger: what waits comes once every finger is lifted and the press is over. (No outside source: 600 ms are chosen here.)

import { afterEach, beforeEach, expect, test, vi } from 'vitest';

type Finger = { readonly pointerId: number };
const heard = new Map<string, (finger: Finger) => void>();
let whenStill: (act: () => void) => () => void;

beforeEach(async () => {
  vi.useFakeTimers();
  vi.resetModules();
  vi.stubGlobal('addEventListener', (kind: string, listener: (finger: Finger) => void) => {
    heard.set(kind, listener);
  });
  const still = await import('../../../../src/app/ui/still.ts');
  still.followFingers();
  whenStill = still.whenStill;
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const press = (pointerId = 1) => heard.get('pointerdown')?.({ pointerId });
const lift = (pointerId = 1) => heard.get('pointerup')?.({ pointerId });

/** Waits for stillness; answers how often it came. */
function waits() {
  const act = vi.fn();
  const giveUp = whenStill(act);
  return { times: () => act.mock.calls.length, giveUp };
}

test('comes at once where nothing touches the page', () => {
  expect(waits().times()).toBe(1);
});

test('waits for a finger, and until its press is over', () => {
  press();
  const { times } = waits();
  vi.advanceTimersByTime(60_000);
  expect(times()).toBe(0);
  lift();
  vi.advanceTimersByTime(599);
  expect(times()).toBe(0);
  vi.advanceTimersByTime(1);
  expect(times()).toBe(1);
  vi.advanceTimersByTime(60_000);
  expect(times()).toBe(1);
});

test('waits for the last of two fingers, and anew where another comes meanwhile', () => {
  press(1);
  press(2);
  const { times } = waits();
  lift(1);
  vi.advanceTimersByTime(2000);
  expect(times()).toBe(0);
  lift(2);
  vi.advanceTimersByTime(500);
  press(3);
  vi.advanceTimersByTime(2000);
  lift(3);
  vi.advanceTimersByTime(500);
  expect(times()).toBe(0);
  vi.advanceTimersByTime(100);
  expect(times()).toBe(1);
});

test('counts a moment after a press as the press', () => {
  press();
  lift();
  vi.advanceTimersByTime(300);
  const { times } = waits();
  expect(times()).toBe(0);
  vi.advanceTimersByTime(300);
  expect(times()).toBe(1);
});

test('is not held up by a finger that was lifted where the page hears nothing, nor does what was given up', () => {
  press();
  const [kept, left] = [waits(), waits()];
  left.giveUp();
  heard.get('blur')?.({ pointerId: 0 });
  vi.advanceTimersByTime(600);
  expect([kept.times(), left.times()]).toEqual([1, 0]);
});
