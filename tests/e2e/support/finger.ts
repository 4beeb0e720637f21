// Touches the page as a finger does: the control is found by the name that is read on it, and the tap goes to its centre, at
// coordinates, after a look at what lies on top there. A click that reaches a covered control proves nothing.

import assert from 'node:assert/strict';
import type { Locator, Page } from 'playwright-core';

/** What lies on top at the middle of a control: `null` where that is the control itself, else what covers it. */
export async function coveredBy(control: Locator): Promise<string | null> {
  return control.evaluate((element) => {
    const { x, y, width, height } = element.getBoundingClientRect();
    if (width === 0 || height === 0) return 'nothing: it has no size';
    const [atX, atY] = [x + width / 2, y + height / 2];
    const top = document.elementFromPoint(atX, atY);
    if (top === null)
      return `the edge of the window: its middle is at ${Math.round(atX)}, ${Math.round(atY)}`;
    return element === top || element.contains(top) ? null : `${top.tagName} .${top.className}`;
  });
}

/** A hand is slower than this: a second press of one button within it counts as a tremble. */
const TREMBLE_MS = 400;
/** When the finger came down last, by the page's own time. */
const lastTap = new WeakMap<Page, number>();

/** Taps the middle of a control with the mouse; fails where something else lies on top there. */
export async function tapOn(page: Page, control: Locator): Promise<void> {
  await control.waitFor();
  const last = lastTap.get(page) ?? null;
  // The page's own time begins anew where it was loaded anew: so does its memory of taps.
  if (last !== null)
    await page.waitForFunction(({ atMs, ms }) => performance.now() > atMs + ms || performance.now() < atMs, {
      atMs: last,
      ms: TREMBLE_MS,
    });
  assert.equal(await coveredBy(control), null);
  const box = await control.boundingBox();
  assert.ok(box, 'the control has no place on the page');
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  lastTap.set(page, await page.evaluate(() => performance.now()));
}

/** Taps the button with this name. */
export async function tap(page: Page, name: string): Promise<void> {
  await tapOn(page, page.getByRole('button', { name, exact: true }));
}
