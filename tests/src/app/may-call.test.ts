// When a tablet calls out: quiet hours go by its own clock, also over midnight, and hold for vibration as for sound.

import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { App } from '../../../src/app/app.ts';
import { mayCallHere } from '../../../src/app/may-call.ts';

/** A tablet at a time of its own day. */
function tablet(facts: Readonly<Record<string, unknown>> = {}) {
  const preferences = signal({ sound: true, quiet: null as { from: string; to: string } | null });
  const now = { ms: 0 };
  const clock = { nowMs: () => now.ms };
  const app = { practice: null, isScreen: false, preferences, clock, ...facts } as unknown as App; // the part of it that is asked
  const { mayCall, hasSound } = mayCallHere(app);
  const at = (hours: number, minutes: number) => {
    now.ms = new Date(2026, 2, 2, hours, minutes).getTime();
    return mayCall();
  };
  return { preferences, at, hasSound };
}

test('it calls at any time where no quiet hours are set, and within none that are', () => {
  const { preferences, at } = tablet();
  expect(at(23, 0)).toBe(true);
  preferences.value = { sound: true, quiet: { from: '22:00', to: '06:00' } };
  expect([at(21, 59), at(22, 0), at(5, 59), at(6, 0)]).toEqual([true, false, false, true]);
});

test('without sound it still calls, by vibration', () => {
  const { preferences, at, hasSound } = tablet();
  expect(hasSound()).toBe(true);
  preferences.value = { sound: false, quiet: null };
  expect([at(12, 0), hasSound()]).toEqual([true, false]);
});

test('a floor to practise on and a screen on a wall call never', () => {
  expect(tablet({ practice: {} }).at(12, 0)).toBe(false);
  expect(tablet({ isScreen: true }).at(12, 0)).toBe(false);
});
