// A tap or a key unlocks sound; once it is unlocked, what is typed costs nothing more. What was to be heard at sign-in is heard then. Vibration
// needs no sound.

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type AlarmSettings, createAlarm } from '../../../../src/app/device/alarm.ts';

let press: () => void = () => undefined;
let context: { state: string; onstatechange: (() => void) | null } | null = null;
/** The tones that were played, Hz. */
let played: number[] = [];

const loud: AlarmSettings = { mayCall: () => true, hasSound: () => true };

const volume = { setValueAtTime: () => undefined, exponentialRampToValueAtTime: () => undefined };

/** As much of a tone as the player asks for. */
function tone() {
  const frequency = { value: 0 };
  const start = () => void played.push(frequency.value);
  return { frequency, type: '', connect: (next: unknown) => next, start, stop: () => undefined };
}

beforeEach(() => {
  context = null;
  played = [];
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
      readonly currentTime = 0;
      readonly createOscillator = tone;
      readonly createGain = () => ({ gain: volume, connect: (next: unknown) => next });
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
  const alarm = createAlarm(loud);
  press();
  expect(alarm.unlocked.value).toBe(false);
  await vi.runAllTimersAsync();
  expect(alarm.unlocked.value).toBe(true);
});

test('makes no player while what a key or a finger did is waited for, nor before the browser counts the touch', async () => {
  const touched = { hasBeenActive: false };
  vi.stubGlobal('navigator', { userActivation: touched });
  createAlarm(loud);
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
  const alarm = createAlarm(loud);
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

test('a tone that is to be heard waits until sound is unlocked, and is heard once', async () => {
  const alarm = createAlarm(loud);
  press(); // the badge that signs somebody in is the first that is typed
  alarm.callOnceHeard();
  alarm.callOnceHeard();
  expect(played).toEqual([]);
  await vi.runAllTimersAsync();
  expect(played).toHaveLength(1);
  press();
  await vi.runAllTimersAsync();
  expect(played).toHaveLength(1);
  alarm.callOnceHeard();
  expect(played).toHaveLength(2);
});

test('a tone that waits is not heard where nothing is to be heard by then, nor after the test tone', async () => {
  let isOn = false;
  const alarm = createAlarm({ mayCall: () => isOn, hasSound: () => true });
  alarm.callOnceHeard();
  press();
  await vi.runAllTimersAsync();
  isOn = true;
  press();
  await vi.runAllTimersAsync();
  expect(played).toEqual([]);
  if (context !== null) context.state = 'suspended';
  alarm.callOnceHeard();
  alarm.test();
  await vi.runAllTimersAsync();
  expect(played).toEqual([660, 880]);
});

test('no two calls are the same, so that a counted panel is not taken for a warning', async () => {
  const alarm = createAlarm(loud);
  press();
  await vi.runAllTimersAsync();
  const heard = (['soon', 'due', 'late', 'counted', 'not-counted'] as const).map((tone) => {
    played = [];
    alarm.call(tone);
    return played.join(' ');
  });
  expect(new Set(heard).size).toBe(heard.length);
  expect(heard.every((tones) => tones !== '')).toBe(true);
});

describe('vibration', () => {
  let felt: number[][] = [];
  const touched = { hasBeenActive: true };
  beforeEach(() => {
    felt = [];
    touched.hasBeenActive = true;
    const vibrate = (pattern: number[]) => felt.push(pattern);
    vi.stubGlobal('navigator', { vibrate, userActivation: touched });
  });

  test('comes where no sound is to be had, and where sound is off', async () => {
    const locked = createAlarm(loud);
    locked.call('due');
    expect([felt, played]).toEqual([[[180, 60, 180]], []]);
    const off = createAlarm({ mayCall: () => true, hasSound: () => false });
    press();
    await vi.runAllTimersAsync();
    off.call('late');
    expect([felt.length, played]).toEqual([2, []]);
  });

  test('stays away where nothing is to call, and before anybody touched the page', () => {
    const quiet = createAlarm({ mayCall: () => false, hasSound: () => true });
    quiet.call('late');
    touched.hasBeenActive = false;
    const untouched = createAlarm(loud);
    untouched.call('late');
    expect(felt).toEqual([]);
  });

  test('tells the levels apart: the louder the longer', () => {
    const alarm = createAlarm(loud);
    for (const level of ['soon', 'due', 'late'] as const) alarm.call(level);
    const lengths = felt.map((pattern) => pattern.reduce((sum, ms) => sum + ms, 0));
    expect(lengths).toEqual([...new Set(lengths)].sort((a, b) => a - b));
  });
});
