// All lines at one glance: every line with its run and its next walk, a tap opens it; the wall screen has nobody signed in, takes no scan, and is
// left by a touch.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser } from './support/browser.ts';
import { drawn, pass, withoutTimers } from './support/clock.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { goTo, openTablet, ownEntries, readLog, scan, steady } from './support/floor.ts';
import { look } from './support/look.ts';

let demo: RunningDemo;
let browser: Awaited<ReturnType<typeof startBrowser>>;
beforeAll(async () => {
  [demo, browser] = await Promise.all([startDemo(['--lines', '3']), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await demo?.stop();
});

async function onTablet(work: (page: Page) => Promise<void>): Promise<void> {
  const tablet = await openTablet(browser, demo.url);
  await work(tablet.page);
  await tablet.putAway();
}

/** Opens the view by the line's name in the bar and waits until each line was looked at. */
async function openLines(page: Page): Promise<void> {
  await steady(page);
  await page.locator('.topbar a.whereabouts').click();
  await page.getByTestId('line-L4').waitFor();
  for (const line of ['L2', 'L3', 'L4'])
    await expect
      .poll(
        async () => {
          await pass(page, 1000);
          return page.getByTestId(`line-${line}`).locator('.say').textContent();
        },
        { timeout: 60_000 },
      )
      .toMatch(/splice|Nobody reaches/i);
  await drawn(page);
}

describe('all lines', () => {
  it('are shown with run and next walk, and a tap opens one on this tablet', () =>
    onTablet(async (page) => {
      await goTo(page, 'line');
      await expect
        .poll(() => page.locator('.topbar a.whereabouts').locator('b').textContent())
        .toBe('Line 2');
      await openLines(page);
      await expect.poll(() => page.locator('.line-row').count()).toBe(3);
      for (const line of ['L2', 'L3', 'L4'])
        await expect
          .poll(() => page.getByTestId(`line-${line}`).locator('.rn b').textContent())
          .toMatch(/^\d+ \/ 720$/);
      await look(page, { where: 'all lines' });
      await steady(page);
      await page.getByTestId('line-L3').click();
      await page.getByTestId('screen-line').waitFor();
      await expect
        .poll(() => page.locator('.topbar a.whereabouts').locator('b').textContent())
        .toBe('Line 3');
      await page.getByTestId('runbar').waitFor();
      await expect.poll(() => page.getByTestId('nav-line').getAttribute('aria-current')).toBe('page');
    }));

  it('are as far as each line’s own screen says', () =>
    onTablet(async (page) => {
      await openLines(page);
      const told = await page.getByTestId('line-L4').locator('.rn b').textContent();
      await steady(page);
      await page.getByTestId('line-L4').click();
      await goTo(page, 'load');
      await expect
        .poll(() => page.getByTestId('run-chip').textContent())
        .toContain(`${told?.split(' / ')[0]} of 720`);
    }));
});

describe('the wall screen', () => {
  it('has nobody signed in, takes no scan, and is left by a touch', () =>
    onTablet(async (page) => {
      await openLines(page);
      await page.getByTestId('lines-wall').click();
      await page.getByTestId('screen-wall').waitFor();
      await expect.poll(() => page.locator('nav, .dock, .topbar').count()).toBe(0);
      await expect.poll(async () => (await ownEntries(page, 'person.signed-out')).length).toBeGreaterThan(0);
      const before = (await readLog(page)).map(({ kind }) => kind);
      await scan(page, 'BADGE-2201');
      await scan(page, 'M2-F-022');
      const after = (await readLog(page)).slice(before.length).map(({ kind }) => kind);
      expect(after.filter((kind) => kind !== 'warning.raised')).toEqual([]);
      // The way out goes by itself after some seconds, of which a busy machine may need more to look.
      await withoutTimers(page, async () => {
        await page.mouse.click(400, 300);
        await page.getByTestId('wall-way-out').waitFor();
        await look(page, { where: 'wall' });
        await page.getByTestId('wall-stay').click();
      });
      await page.reload();
      await page.getByTestId('screen-wall').waitFor();
      await withoutTimers(page, async () => {
        await page.mouse.click(400, 300);
        await page.getByTestId('wall-leave').click();
      });
      await page.getByTestId('screen-lines').waitFor();
      await expect.poll(() => page.getByTestId('sign-in').textContent()).toContain('Sign in');
    }));
});
