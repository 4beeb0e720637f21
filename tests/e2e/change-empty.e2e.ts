// A plant that has nothing yet: Change says what is missing and leads to it.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser } from './support/browser.ts';
import { openTablet } from './support/floor.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let server: PlantServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

it('an empty plant is told what is missing, and each step leads there', async () => {
  const tablet = await openTablet(browser, server.url, { badge: null, hash: '#/change' });
  const { page } = tablet;
  const screen = page.getByTestId('change-nothing-yet');
  await screen.waitFor();
  await expect.poll(() => screen.textContent()).toContain('Nothing to change over yet');
  await expect.poll(() => page.locator('[data-testid=change-nothing-yet] .act').count()).toBe(1);
  await page.getByTestId('missing-people-go').click();
  await expect.poll(() => page.evaluate(() => location.hash)).toBe('#/plant/people');
  await page.goBack();
  await page.getByTestId('missing-sheet-go').click();
  await expect.poll(() => page.evaluate(() => location.hash)).toBe('#/plant/sheet');
  await tablet.putAway();
});
