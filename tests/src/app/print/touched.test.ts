// Pages for the printer go at a person's next touch; a scanner that types meanwhile does not take them away before they are drawn.

import { expect, test, vi } from 'vitest';
import { onceTouched } from '../../../../src/app/print/sheet.tsx';

const event = (kind: string) => new Event(kind, { cancelable: true });

/** A page, and what listens to it from its start on, as the wedge does. */
function page(): { readonly target: EventTarget; keeps: boolean } {
  const target = new EventTarget();
  const made = { target, keeps: false };
  const wedge = (kept: Event) => {
    if (made.keeps) kept.preventDefault();
  };
  target.addEventListener('keydown', wedge, true);
  return made;
}

const onTouch = (target: EventTarget, act: () => void) => onceTouched(target as Window, act); // listening is all that is asked of it

test.each(['pointerdown', 'keydown'])('a %s of a person is answered once', (kind) => {
  const { target } = page();
  const act = vi.fn();
  onTouch(target, act);
  target.dispatchEvent(event(kind));
  target.dispatchEvent(event(kind));
  target.dispatchEvent(event('pointerdown'));
  expect(act).toHaveBeenCalledTimes(1);
});

test('keys of a scanner, which the wedge keeps from the page, are passed over', () => {
  const made = page();
  const act = vi.fn();
  onTouch(made.target, act);
  made.keeps = true;
  made.target.dispatchEvent(event('keydown'));
  made.keeps = false;
  // Before a capital letter, where a scan may begin.
  for (const key of ['Shift', 'Unidentified'])
    made.target.dispatchEvent(Object.assign(event('keydown'), { key }));
  expect(act).not.toHaveBeenCalled();
  made.target.dispatchEvent(event('keydown'));
  expect(act).toHaveBeenCalledTimes(1);
});

test('what is no longer waited for is not answered', () => {
  const { target } = page();
  const act = vi.fn();
  onTouch(target, act)();
  target.dispatchEvent(event('pointerdown'));
  expect(act).not.toHaveBeenCalled();
});
