// Whoever takes the tablet for a shift hears what its warnings sound like, or sees that they cannot be heard.

import { effect } from '@preact/signals';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';

/**
 * Shorter than from the beginning of a person's shift to that of the next one: whoever signs in again within it has heard the tone, and on a
 * tablet that goes from hand to hand it would be taken for a warning, ms.
 */
const SHIFT_MS = 8 * 3_600_000;

/** Asks for the tone with each person's first sign-in of a shift. Whoever is signed in already has heard it, or sees that there is no sound. */
export function soundAtSignIn(
  { person, clock }: Pick<App, 'person' | 'clock'>,
  alarm: Pick<Alarm, 'callOnceHeard'>,
): void {
  const askedMs = new Map<string, number>();
  let before = person.peek()?.person ?? null;
  if (before !== null) askedMs.set(before, clock.nowMs());
  effect(() => {
    const now = person.value?.person ?? null;
    const isNew = now !== before;
    before = now;
    if (now === null || !isNew) return;
    const nowMs = clock.nowMs();
    // A clock that was set back asks once more than it must.
    if (Math.abs(nowMs - (askedMs.get(now) ?? Number.NEGATIVE_INFINITY)) < SHIFT_MS) return;
    askedMs.set(now, nowMs);
    alarm.callOnceHeard();
  });
}
