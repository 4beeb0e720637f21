// The README's pictures, taken of the demo as a person would see it: `npm run pictures`, after `npm run build`. Look at them before they are kept.

import path from 'node:path';
import type { Page } from 'playwright-core';
import { it } from 'vitest';
import { drawn } from './support/clock.ts';
import { firstSlot, goTo, keepRunning, reelLabel, scan, type TabletOptions } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const folder = path.resolve(import.meta.dirname, '../../demo/pictures');
const demo = useDemo({ badge: 'BADGE-2201', offlineCopy: true });

async function take(page: Page, name: string): Promise<void> {
  await page.locator('[data-testid="offline"][data-state="ready"]').waitFor({ state: 'attached' });
  await drawn(page);
  await page.screenshot({ path: path.join(folder, `${name}.jpg`), type: 'jpeg', quality: 80 });
}

const picture = (name: string, prepare: (page: Page) => Promise<void>, options: TabletOptions = {}) =>
  it(name, () =>
    demo.onTablet(async ({ page }) => {
      await prepare(page);
      await take(page, name);
    }, options),
  );

picture('line', (page) => keepRunning(page));

picture('refused', async (page) => {
  await goTo(page, 'load');
  await scan(page, await firstSlot(page, 'missing'));
  await scan(page, reelLabel({ P: '10-0603-101', '1P': 'KF-0603-101', '3S': 'R-90001' }));
  await page.getByTestId('verdict').waitFor();
});

picture('load', (page) => goTo(page, 'load'));

picture(
  'change',
  async (page) => {
    await keepRunning(page);
    await goTo(page, 'change');
    await page.getByTestId('plan-greenhouse-node-top-F').click();
    await page.getByTestId('changeover').waitFor();
    await page.getByTestId('last-panel').click();
    await page.getByTestId('last-panel-yes').click();
    await page.getByTestId('release').waitFor();
    await page.mouse.move(0, 0);
  },
  { badge: 'BADGE-3301' },
);

picture('log', (page) => goTo(page, 'log'));

picture('phone-dark', (page) => keepRunning(page), { width: 390, height: 844, dark: true });
