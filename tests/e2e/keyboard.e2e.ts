// At the keyboard: a few tabs lead to where a scan is typed, the map of the line is one stop, a dialog gives the place back, and controls
// that do the same to different slots say to which.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { goTo, steady } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const onTablet = (work: (page: Page) => Promise<void>) => demo.onTablet(({ page }) => work(page));

const focused = (page: Page, name: 'testid' | 'slot') =>
  page.evaluate((key) => (document.activeElement as HTMLElement | null)?.dataset[key] ?? null, name);

/** Presses Tab until a control has the focus; answers how often. */
async function tabsTo(page: Page, testId: string, most = 60): Promise<number> {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  for (let tabs = 1; tabs <= most; tabs += 1) {
    await page.keyboard.press('Tab');
    if ((await focused(page, 'testid')) === testId) return tabs;
  }
  throw new Error(`${testId} is further than ${most} tabs`);
}

describe('the keyboard', () => {
  it('skips to the dock from the top of any screen', () =>
    onTablet(async (page) => {
      for (const screen of ['line', 'load', 'log']) {
        await goTo(page, screen);
        await page.reload();
        await page.waitForSelector('html[data-ready]');
        await page.getByTestId('dock-type').waitFor();
        await page.keyboard.press('Tab');
        await expect.poll(() => focused(page, 'testid')).toBe('skip-to-dock');
        await expect.poll(() => page.getByTestId('skip-to-dock').isVisible()).toBe(true);
        await page.keyboard.press('Enter');
        await expect.poll(() => focused(page, 'testid')).toBe('dock-type');
      }
    }));

  it('comes to "Type" on Load in a few tabs: the map is one stop with arrow keys', () =>
    onTablet(async (page) => {
      await goTo(page, 'load');
      await page.locator('.slotmap button').first().waitFor();
      await steady(page); // what is still being drawn may take the place of what has the focus
      expect(await tabsTo(page, 'dock-type')).toBeLessThan(30);
      await expect.poll(() => page.locator('.slotmap button[tabindex="0"]').count()).toBe(1);
      const slots = await page
        .locator('.plan [data-cell]')
        .evaluateAll((cells) => cells.map((cell) => (cell as HTMLElement).dataset['cell'] ?? ''));
      await page.locator('.slotmap button[tabindex="0"]').focus();
      await page.keyboard.press('Home');
      await expect.poll(() => focused(page, 'slot')).toBe(slots[0]);
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => focused(page, 'slot')).toBe(slots[1]);
      await page.keyboard.press('End');
      await expect.poll(() => focused(page, 'slot')).toBe(slots.at(-1));
      await expect.poll(() => page.locator('.slotmap button[tabindex="0"]').count()).toBe(1);
      await expect
        .poll(() => page.locator('.slotmap').getAttribute('aria-label'))
        .toContain('slots of the line');
    }));

  it('gives the place back after a slot is closed and after "Done"', () =>
    onTablet(async (page) => {
      await goTo(page, 'load');
      const stop = page.locator('.slotmap button[tabindex="0"]');
      const slot = await stop.getAttribute('data-slot');
      await steady(page); // apart from the scan before it
      await stop.press('Enter');
      await page.locator('dialog').waitFor();
      await page.keyboard.press('Escape');
      await page.locator('dialog').waitFor({ state: 'detached' });
      await expect.poll(() => focused(page, 'slot')).toBe(slot);
      await tabsTo(page, 'dock-type');
      await page.keyboard.press('Enter');
      // All at once: keys as fast as a machine sends them are a scanner's.
      await page.getByTestId('typed').fill(slot ?? '');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await page.getByTestId('well-slot').waitFor();
      // "Type" is gone while a slot is in hand, and "Clear" stands there: nobody must find himself on that.
      await expect.poll(() => focused(page, 'testid')).toBe('dock');
    }));

  it('says of each "Splice" for which slot it is', () =>
    onTablet(async (page) => {
      await goTo(page, 'line');
      await page.locator('[data-testid^="splice-"]').first().waitFor();
      const names = await page
        .locator('[data-testid^="splice-"]')
        .evaluateAll((buttons) => buttons.map((button) => button.getAttribute('aria-label')));
      expect(new Set(names).size).toBe(names.length);
      for (const name of names) expect(name).toMatch(/^Splice M\d-[FR]-\d+$/);
    }));
});
