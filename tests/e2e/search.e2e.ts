// One field from any screen: opened by a tap or by "/", closed by Escape; what is typed or scanned there is found and loads nothing; a tap leads
// to where the thing is.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { goTo, readLog, reelLabel, scan, steady, typeByHand } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
const onTablet = (work: (page: Page) => Promise<void>, width = 1280, height = 800) =>
  demo.onTablet(({ page }) => work(page), { width, height });

const finds = (page: Page, kind: string) => page.getByTestId(`found-${kind}`).getByTestId('find');

/** Opens the search by the button and waits until all of the log is in it. */
async function openSearch(page: Page): Promise<void> {
  await steady(page);
  await page.getByTestId('open-search').click();
  await page.getByTestId('search-coverage').waitFor();
}

async function seek(page: Page, text: string): Promise<void> {
  await page.getByTestId('search-text').fill(text);
  await drawn(page);
}

describe('the search', () => {
  for (const [width, height] of [
    [1280, 800],
    [800, 1280],
    [390, 844],
  ] as const)
    it(`is one tap from every screen at ${width}×${height}, and Escape goes back`, () =>
      onTablet(
        async (page) => {
          for (const screen of ['line', 'load', 'change', 'stock', 'log', 'plant'] as const) {
            await goTo(page, screen);
            await openSearch(page);
            await expect
              .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-testid')))
              .toBe('search-text');
            await page.keyboard.press('Escape');
            await page.getByTestId(`screen-${screen}`).waitFor();
          }
        },
        width,
        height,
      ));

  it('opens by "/" where nothing types, and not in a field or under a question', () =>
    onTablet(async (page) => {
      await goTo(page, 'line');
      await typeByHand(page, '/');
      await page.getByTestId('search-text').waitFor();
      await page.keyboard.press('Escape');
      await page.getByTestId('screen-line').waitFor();
      await goTo(page, 'log');
      await page.getByTestId('log-trace').click();
      await page.getByTestId('trace-text').focus();
      await typeByHand(page, '/');
      await expect.poll(() => page.getByTestId('trace-text').inputValue()).toBe('/');
      await expect.poll(() => page.getByTestId('screen-log').count()).toBe(1);
      await page.getByTestId('sign-in').click();
      await page.locator('dialog[open]').waitFor();
      await typeByHand(page, '/');
      expect(await page.getByTestId('search-text').count()).toBe(0);
    }));

  it('finds a slot however it is written, and leads to it', () =>
    onTablet(async (page) => {
      await openSearch(page);
      await seek(page, 'm2f22');
      const first = finds(page, 'slot').first();
      await expect.poll(() => first.locator('b').textContent()).toBe('M2-F-022');
      await expect.poll(() => first.locator('.chip').textContent()).toContain('right');
      await steady(page);
      await first.click();
      await page.locator('dialog[aria-label="M2-F-022"]').waitFor();
      await page.keyboard.press('Escape');
      await page.getByTestId('open-search').click();
      await expect.poll(() => page.getByTestId('search-text').inputValue()).toBe('m2f22');
    }));

  it('shows eight of a kind, tells how many more there are, and shows them', () =>
    onTablet(async (page) => {
      await openSearch(page);
      await seek(page, '22-');
      const reels = finds(page, 'reel');
      await expect.poll(() => reels.count()).toBe(8);
      const more = page.getByTestId('found-reel').getByRole('button');
      const rest = Number(/\d+/.exec((await more.textContent()) ?? '')?.[0]);
      expect(rest).toBeGreaterThan(0);
      await steady(page);
      await more.click();
      await expect.poll(() => reels.count()).toBe(Math.min(60, 8 + rest));
    }));

  it('says so where nothing has the text', () =>
    onTablet(async (page) => {
      await openSearch(page);
      await seek(page, 'no such thing');
      await expect.poll(() => page.getByTestId('search-none').textContent()).toContain('no such thing');
    }));
});

describe('a scan in the search', () => {
  it('fills the field and is no load: neither desk nor log hear of it', () =>
    onTablet(async (page) => {
      const before = (await readLog(page)).length;
      await openSearch(page);
      const label = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9400-H', '3S': 'R-970001' });
      await scan(page, label);
      await expect.poll(() => page.getByTestId('search-text').inputValue()).toBe('R-970001');
      await expect.poll(() => page.getByTestId('search-others').textContent()).toContain('LT-9400-H');
      await steady(page);
      await page.getByTestId('search-others').getByText('22-0603-B').click();
      await expect.poll(() => page.getByTestId('search-text').inputValue()).toBe('22-0603-B');
      await scan(page, 'M2-F-022');
      await expect.poll(() => page.getByTestId('search-text').inputValue()).toBe('M2-F-022');
      await expect.poll(() => page.getByTestId('well-idle').count()).toBe(1);
      expect(await page.getByTestId('verdict').count()).toBe(0);
      const kinds = (await readLog(page)).slice(before).map(({ kind }) => kind);
      expect(kinds.filter((kind) => kind !== 'warning.raised')).toEqual([]);
    }));

  it('of a badge finds its person by name, shows no badge and signs nobody in', () =>
    onTablet(async (page) => {
      const who = await page.getByTestId('sign-in').textContent();
      await openSearch(page);
      await scan(page, 'BADGE-3301');
      await finds(page, 'person').first().waitFor();
      expect(await page.locator('main').textContent()).not.toContain('BADGE-3301');
      expect(await page.getByTestId('search-text').inputValue()).not.toBe('');
      await expect.poll(() => page.getByTestId('sign-in').textContent()).toBe(who);
      const name = await page.getByTestId('search-text').inputValue();
      await steady(page);
      await finds(page, 'person').first().click();
      await page.getByTestId('screen-log').waitFor();
      await expect.poll(() => page.getByTestId('filters-told').textContent()).toContain(name);
    }));
});

describe('what was found', () => {
  it('leads to the reel’s own page, to the lot’s trace and to the very entry', () =>
    onTablet(async (page) => {
      const verified = (await readLog(page)).find(
        ({ kind, payload }) =>
          kind === 'reel.verified' && payload['reel'] !== null && payload['lot'] !== null,
      );
      const reel = String(verified?.payload['reel']);
      const lot = String(verified?.payload['lot']);
      await openSearch(page);
      await seek(page, reel);
      await steady(page);
      await finds(page, 'reel').first().click();
      await page.locator(`dialog[aria-label="${reel}"]`).waitFor();
      await page.keyboard.press('Escape');
      await openSearch(page);
      await seek(page, lot);
      await steady(page);
      await finds(page, 'lot').first().click();
      await page.getByTestId('trace-places').waitFor();
      await expect.poll(() => page.getByTestId('trace-text').inputValue()).toBe(lot);
      await openSearch(page);
      await seek(page, reel);
      await steady(page);
      await finds(page, 'entry').last().click();
      await page.locator('dialog[open]').waitFor();
      await expect.poll(() => page.locator('dialog[open]').textContent()).toContain(reel);
    }));

  it('is found without a network too', () =>
    demo.onTablet(async ({ page, context }) => {
      await openSearch(page);
      await page.keyboard.press('Escape');
      await context.setOffline(true);
      await openSearch(page);
      await seek(page, 'm1-f-001');
      await expect.poll(() => finds(page, 'slot').first().locator('b').textContent()).toBe('M1-F-001');
      await context.setOffline(false);
    }));
});
