// Touches the page as a finger does: the control is found by the name that is read on it, and the tap goes to its centre, at
// coordinates, after a look at what lies on top there. A click that reaches a covered control proves nothing.

import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** The middle of a control, and what lies on top there: `null` where that is the control itself, else what covers it. */
function lookAt(
  control: Locator,
): Promise<{ readonly x: number; readonly y: number; readonly cover: string | null }> {
  return control.evaluate((element) => {
    const box = element.getBoundingClientRect();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    if (box.width === 0 || box.height === 0) return { x, y, cover: 'nothing: it has no size' };
    const top = document.elementFromPoint(x, y);
    if (top === null)
      return { x, y, cover: `the edge of the window: its middle is at ${Math.round(x)}, ${Math.round(y)}` };
    const isOnTop = element === top || element.contains(top);
    return { x, y, cover: isOnTop ? null : `${top.tagName} .${top.className}` };
  });
}

/** What lies on top at the middle of a control: `null` where that is the control itself, else what covers it. */
export async function coveredBy(control: Locator): Promise<string | null> {
  return (await lookAt(control)).cover;
}

/** The middle of a control, once nothing else lies on top there. */
export async function reach(control: Locator): Promise<{ readonly x: number; readonly y: number }> {
  await control.waitFor();
  // Place and cover come from one look: what follows the camera's picture has moved by the next.
  let seen = await lookAt(control);
  await expect
    .poll(async () => {
      seen = await lookAt(control);
      return seen.cover;
    })
    .toBeNull();
  return seen;
}

/** A hand is slower than this: a second press of one button within it counts as a tremble. */
const TREMBLE_MS = 400;

const lastTaps = new WeakMap<Page, number>();

/** Taps the middle of a control with the mouse; fails where something else lies on top there. */
export async function tapOn(page: Page, control: Locator): Promise<void> {
  await control.waitFor();
  await expect.poll(() => Date.now() - (lastTaps.get(page) ?? 0)).toBeGreaterThan(TREMBLE_MS);
  const { x, y } = await reach(control);
  await page.mouse.click(x, y);
  lastTaps.set(page, Date.now());
}

/** Scrolls to a control and taps its middle. */
export async function touch(page: Page, control: Locator): Promise<void> {
  await control.scrollIntoViewIfNeeded();
  await tapOn(page, control);
}

/** Scrolls to the control with this test id, the first of several, and taps its middle. */
export async function press(page: Page, testId: string): Promise<void> {
  await touch(page, page.getByTestId(testId).first());
}

/** Taps the button with this name. */
export async function tap(page: Page, name: string): Promise<void> {
  await tapOn(page, page.getByRole('button', { name, exact: true }));
}
