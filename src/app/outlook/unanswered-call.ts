// Tells a lead's tablet of warnings on other lines that nobody answers: seen above every screen, and heard. The tablet's own line has its
// own band and chip, which call from the first moment. Method: other lines' outlooks are computed every few seconds only, whatever is written
// meanwhile; what somebody took note of goes at once.

import { effect, type Signal } from '@preact/signals';
import { needKey } from '../../../shared/floor/state.ts';
import { isAtLeast } from '../../../shared/floor/vocabulary.ts';
import { isUnheard, type Unanswered, unanswered } from '../../../shared/outlook/unanswered.ts';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';
import { linesServed } from '../lines-served.ts';

/** It looks again after this long, and as soon as another person or another line is there. */
const LOOK_EVERY_MS = 15_000;
/** It calls again after this long. */
const CALL_EVERY_MS = 60_000;

/** Starts looking and tells `open`; the longest waiting comes first. Empty where nobody is signed in who leads. */
export function callForUnanswered(
  app: App,
  alarm: Pick<Alarm, 'call'>,
  open: Signal<readonly Unanswered[]>,
): void {
  const called = new Map<string, number>();
  function look(): void {
    const nowMs = app.clock.nowMs();
    const person = app.person.peek();
    const leads = person !== null && isAtLeast(person.role, 'lead') && app.practice === null;
    const found = leads ? unanswered(app.store.floor(), nowMs, linesServed(app)) : [];
    if (found.length > 0 || open.peek().length > 0) open.value = found;
    const isDue = found.filter(({ line, slot, need, level }) => {
      const key = `${needKey(line, slot, need)}#${level}`;
      // A clock that was set back makes nobody wait.
      if (Math.abs(nowMs - (called.get(key) ?? Number.NEGATIVE_INFINITY)) < CALL_EVERY_MS) return false;
      called.set(key, nowMs);
      return true;
    });
    if (isDue.length > 0) alarm.call(isDue.some(({ level }) => level === 'late') ? 'late' : 'due');
  }
  effect(() => {
    app.tick.value;
    const floor = app.store.floor();
    const left = open.peek().filter((each) => isUnheard(floor, each));
    if (left.length < open.peek().length) open.value = left;
  });
  effect(() => {
    app.line.value;
    app.beside.value;
    app.person.value;
    look();
  });
  setInterval(look, LOOK_EVERY_MS);
}
