// A tap or a key unlocks sound; once it is unlocked, what is typed costs nothing more.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createAlarm } from '../../../../src/app/device/alarm.ts';

let press: () => void = () => undefined;
let context: { state: string; onstatechange: (() => void) | null } | null = null;

beforeEach(() => {
  context = null;
  vi.useFakeTimers();
  vi.stubGlobal('navigator', {}); // tells of no touch
  vi.stubGlobal('addEventListener', (kind: string, heard: () => void) => {
    if (kind === 'keydown') press = heard;
  });
  vi.stubGlobal(
    'AudioContext',
    class {
      state = 'suspended';
      onstatechange: (() => void) | null = null;
      constructor() {
        context = this;
      }
      async resume(): Promise<void> {
        this.state = 'running';
      }
    },
  );
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('is unlocked by the first key, and told so a moment later', async () => {
  const alarm = createAlarm(() => true);
  press();
  expect(alarm.unlocked.value).toBe(false);
  await vi.runAllTimersAsync();
  expect(alarm.unlocked.value).toBe(true);
});

test('makes no player while what a key or a finger did is waited for, nor before the browser counts the touch', async () => {
  const touched = { hasBeenActive: false };
  vi.stubGlobal('navigator', { userActivation: touched });
  createAlarm(() => true);
  press();
  await vi.runAllTimersAsync();
  expect(context).toBeNull();
  touched.hasBeenActive = true;
  press();
  press();
  await vi.advanceTimersByTimeAsync(0);
  expect(context).toBeNull();
  await vi.runAllTimersAsync();
  expect(context).toMatchObject({ state: 'running' });
});

test('a key begins nothing while it is unlocked, and unlocks it anew once the browser locked it', async () => {
  const alarm = createAlarm(() => true);
  press();
  await vi.runAllTimersAsync();
  for (let key = 0; key < 40; key += 1) press();
  await vi.advanceTimersByTimeAsync(0);
  expect(vi.getTimerCount()).toBe(0);
  if (context !== null) context.state = 'suspended';
  press();
  await vi.runAllTimersAsync();
  expect(context).toMatchObject({ state: 'running' });
  expect(alarm.unlocked.value).toBe(true);
});
