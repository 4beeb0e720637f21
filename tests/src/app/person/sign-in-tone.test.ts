// Whoever takes the tablet hears a tone with their first sign-in of a shift, and not with each one after.

import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { App } from '../../../../src/app/app.ts';
import { soundAtSignIn } from '../../../../src/app/person/sign-in-tone.ts';

const HOUR_MS = 3_600_000;

/** A tablet where `before` is signed in when it starts. */
function tablet(before: string | null) {
  const person = signal(before === null ? null : { person: before });
  const now = { ms: 0 };
  let asked = 0;
  const app = { person, clock: { nowMs: () => now.ms } } as unknown as App; // the part of it that is asked
  soundAtSignIn(app, {
    callOnceHeard: () => {
      asked += 1;
    },
  });
  const take = (who: string | null) => {
    person.value = who === null ? null : { person: who };
    return asked;
  };
  return { now, take };
}

test('each person is met with a tone once a shift', () => {
  const { now, take } = tablet(null);
  expect(take('elif')).toBe(1);
  expect(take('noor')).toBe(2);
  expect(take('elif')).toBe(2);
  expect(take(null)).toBe(2);
  now.ms += HOUR_MS;
  expect(take('noor')).toBe(2);
  now.ms += 23 * HOUR_MS;
  expect(take('elif')).toBe(3);
  expect(take('noor')).toBe(4);
});

test('whoever was signed in as the page began hears none, and the next one does', () => {
  const { take } = tablet('elif');
  expect(take(null)).toBe(0);
  expect(take('elif')).toBe(0);
  expect(take('noor')).toBe(1);
});
