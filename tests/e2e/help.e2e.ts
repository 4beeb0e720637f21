// Every screen has its help behind one button in one place: a picture and three lines, also on a phone and mirrored.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openAt } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const screens = ['line', 'load', 'change', 'stock', 'log', 'plant', 'search', 'lines'] as const;

async function openHelp(page: Page, screen: (typeof screens)[number]): Promise<void> {
  if (screen === 'search') await page.getByTestId('open-search').click();
  else if (screen === 'lines') await openAt(page, '#/lines');
  else await goTo(page, screen);
  await page.getByTestId(`screen-${screen}`).waitFor();
  await page.getByTestId('open-help').click();
  await page.getByTestId(`help-${screen}`).waitFor();
}

async function closeHelp(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
}

it('has a picture and three lines on every screen, by one button in one place', () =>
  demo.onTablet(async ({ page }) => {
    const places = new Set<string>();
    for (const screen of screens) {
      await openHelp(page, screen);
      await look(page, { where: `help of ${screen}`, axe: screen === 'line' });
      await expect.poll(() => page.locator('.help-lines li:has(.help-scene svg)').count()).toBe(3);
      await expect.poll(() => page.locator('.help-lines li p').count()).toBe(3);
      await closeHelp(page);
      const box = await page.getByTestId('open-help').boundingBox();
      places.add(`${box?.y},${box?.width}`);
    }
    expect([...places]).toHaveLength(1);
  }));

it('fits a phone, and runs from right to left where the words do, but for the tape', () =>
  demo.onTablet(
    async ({ page }) => {
      await page.evaluate(() =>
        dispatchEvent(new CustomEvent('reelward-speak', { detail: { language: 'ar' } })),
      );
      await page.waitForSelector('html[dir=rtl]');
      await openHelp(page, 'line');
      await look(page, { where: 'help in Arabic on a phone', axe: true });
      const turned = (selector: string) =>
        page
          .locator(selector)
          .first()
          .evaluate((each) => getComputedStyle(each).transform.startsWith('matrix(-1'));
      expect(await turned('.help-scene .then svg')).toBe(true);
      expect(await turned('.help-scene .tape')).toBe(false);
      await closeHelp(page);
      await openHelp(page, 'load');
      await look(page, { where: 'help of Load in Arabic on a phone' });
    },
    { width: 390, height: 844 },
  ));
