// What holds on whatever screen one is: it begins at its top, a verdict stands in view, the language stays. What each screen looks like
// is the tour's.

import { describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { coveredBy } from './support/finger.ts';
import { goTo, openTablet, reelLabel, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
describe('another screen', () => {
  it('begins at its top, however far down the last one was read', async () => {
    const { page, putAway } = await openTablet(demo.browser, demo.url, { width: 800, height: 1280 });
    const main = page.locator('main');
    const scrolled = () => main.evaluate((element) => element.scrollTop);
    await goTo(page, 'log');
    await page.getByTestId('entry').nth(40).scrollIntoViewIfNeeded();
    await expect.poll(() => scrolled()).toBeGreaterThan(100);
    await goTo(page, 'line');
    await page.getByTestId('timeline').waitFor();
    expect(await scrolled()).toBe(0);
    await putAway();
  });
});

describe('a verdict', () => {
  it('stands in view however far down the screen behind it was read', async () => {
    const { page, putAway } = await openTablet(demo.browser, demo.url, { width: 800, height: 1280 });
    await goTo(page, 'log');
    await page.getByTestId('entry').nth(40).scrollIntoViewIfNeeded();
    await scanAll(page, 'M2-F-022', reelLabel({ P: '10-0603-101', Q: '4000', '3S': 'R-976002' }));
    await expect.poll(() => coveredBy(page.getByTestId('verdict').locator('h1'))).toBeNull();
    await expect.poll(() => coveredBy(page.getByTestId('verdict-go-on'))).toBeNull();
    await putAway();
  });
});

describe('the language', () => {
  it('changes to Spanish and back, and is still there after a reload', async () => {
    const tablet = await openTablet(demo.browser, demo.url);
    const { page } = tablet;
    await page.goto(`${demo.url}#/plant/tablet`);
    await page.getByTestId('language-es').click();
    await expect.poll(() => page.getByTestId('nav-load').textContent()).toContain('Carga');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    await page.reload();
    await waitReady(page);
    await goTo(page, 'load');
    await expect
      .poll(() => page.getByTestId('load-progress').textContent())
      .toBe('147 de 150 posiciones cargadas');
    await page.goto(`${demo.url}#/plant/tablet`);
    await page.getByTestId('language-en').click();
    await expect.poll(() => page.getByTestId('nav-load').textContent()).toContain('Load');
    await tablet.putAway();
  });
});
