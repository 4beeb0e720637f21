// Where the tour is, and how it gets from one stop to the next without minding what the last one left open.

import type { Page } from 'playwright-core';
import { waitReady } from '../browser.ts';
import { clearDock, openAt, pad, reelAct, resumeRun, scan } from '../floor.ts';

/** A tablet on tour. */
export interface Here {
  readonly page: Page;
  readonly url: string;
}

/** A part of the tour: comes to its stops one after the other and gives each its name. */
export interface Leg {
  readonly name: string;
  readonly stops: (here: Here) => AsyncGenerator<string>;
}

/** Closes every dialog by Escape, as its platform does; behind one another may stand. */
export async function closeDialogs(page: Page): Promise<void> {
  const names = () => [...document.querySelectorAll('dialog[open]')].map((each) => each.ariaLabel).join();
  for (let before = await page.evaluate(names); before !== ''; before = await page.evaluate(names)) {
    await page.keyboard.press('Escape');
    await page.waitForFunction(
      (old) => old !== [...document.querySelectorAll('dialog[open]')].map((each) => each.ariaLabel).join(),
      before,
    );
  }
}

/** Leaves what is open and goes to an address of the app. */
export async function goThere({ page }: Here, hash: string): Promise<void> {
  await closeDialogs(page);
  // Found and pressed in one: a verdict may go by itself.
  await page
    .getByTestId('verdict-go-on')
    .evaluateAll(([button]) => (button as HTMLElement | undefined)?.click());
  await page.getByTestId('verdict').waitFor({ state: 'detached' });
  await clearDock(page);
  // By way of another page, so that what is typed there is forgotten.
  for (const address of [hash === '#/log' ? '#/stock' : '#/log', hash]) {
    await openAt(page, address);
    await page.waitForFunction((next) => location.hash === next, address);
    await page.getByTestId(`screen-${/#\/(\w+)/.exec(address)?.[1]}`).waitFor();
    // A banner is there before the screen is.
    const drawn = page.locator('main :is(h1, h2, button, a, .empty):not(.banner *)');
    await drawn.filter({ visible: true }).first().waitFor();
  }
}

/** Ends practice, where it is on: back on the real floor. */
export async function endPractice({ page }: Here): Promise<void> {
  await closeDialogs(page);
  if ((await page.getByTestId('practice-band').count()) === 0) return;
  await page.getByTestId('practice-end').click();
  await page.getByTestId('practice-band').waitFor({ state: 'detached' });
  await waitReady(page);
}

/** Presses and waits for the dialog that it opens. */
export async function openBy({ page }: Here, testId: string): Promise<void> {
  await page.getByTestId(testId).first().click();
  await page.locator('dialog[open]').waitFor();
}

/** Opens the dialog of what is done with a reel, on Reels. */
export async function openReel({ page }: Here, act: 'air' | 'count', reel: string): Promise<void> {
  await reelAct(page, act, reel);
  await page.locator('dialog[open]').waitFor();
}

/** Counts so many panels that a slot comes into its window and warns. */
export async function warn(here: Here): Promise<void> {
  const { page } = here;
  await goThere(here, '#/line');
  await resumeRun(page);
  await openBy(here, 'plus-many');
  await pad(page, '150');
  await page.getByTestId('warning').waitFor();
}

/** Confirms a person in a dialog by badge and PIN, digit by digit. */
export async function confirm(page: Page, badge: string, pin: string): Promise<void> {
  await page.getByTestId('badge').waitFor();
  await scan(page, badge);
  await page.locator('.pinpad').waitFor();
  await pad(page, pin);
}
