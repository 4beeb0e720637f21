// A tablet that joins a plant's real server by a code, and how far it is with it.

import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { waitReady } from './browser.ts';
import { giveClock } from './clock.ts';

/** The chip that tells how the tablet stands to its own copy and to the server. */
export const chip = (page: Page) => page.getByTestId('offline');

/** Waits until sync is in this phase, once a key has unlocked the sound of the page: till then it tells that in the same place. */
export async function untilSync(page: Page, phase: string): Promise<void> {
  await page.keyboard.press('Shift');
  await expect.poll(() => chip(page).getAttribute('data-sync'), { timeout: 60_000 }).toBe(phase);
}

/** Waits until the server holds all that this tablet wrote. */
export async function untilSent(page: Page): Promise<void> {
  await untilSync(page, 'live');
  await expect.poll(() => chip(page).getAttribute('data-backlog'), { timeout: 60_000 }).toBe('0');
}

/** Opens the app by the link of a code, as a scanned code does, and joins. `before`: what is to be so before the page is opened. */
export async function joinPlant(
  browser: Browser,
  url: string,
  how: {
    readonly code: string;
    readonly name: string;
    readonly before?: (page: Page) => Promise<unknown>;
  },
): Promise<Page> {
  const { code, name, before } = how;
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await before?.(page);
  await page.goto(`${url}#enrol=${code}`);
  await waitReady(page);
  await enrolAs(page, code, name);
  return page;
}

/** Joins with a code that the page has from its link. */
export async function enrolAs(page: Page, code: string, name: string): Promise<void> {
  await expect.poll(() => page.getByTestId('enrol-code').inputValue()).toBe(code);
  await page.getByTestId('enrol-name').fill(name);
  await page.getByTestId('enrol').click();
  await untilSync(page, 'live');
}
