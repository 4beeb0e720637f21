// What stands above the screens and in the rows of the line: a banner and a warning on a phone leave room for the screen and lose nothing; a
// blocked reel has a mark in its row; the store's times say what they hang on; no word of the stop's reasons is broken.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pass } from './support/clock.ts';
import { coveredBy } from './support/finger.ts';
import { goTo, keepRunning, lookAgain, openAt, ownEntries, pad, readLog, steady } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301' });
const phone = { width: 390, height: 844 } as const;

/** Blocks the lot that stands on a slot. */
async function blockLotOn(page: Page, slot: string): Promise<void> {
  const isThere = ({ kind, payload }: Awaited<ReturnType<typeof readLog>>[number]) =>
    kind === 'reel.verified' && payload['slot'] === slot && payload['verdict'] === 'accepted';
  const lot = (await readLog(page)).filter(isThere).at(-1)?.payload['lot'];
  await openAt(page, '#/plant/parts/blocks');
  await page.getByTestId('block-add').click();
  await page.getByTestId('block-value').fill(String(lot));
  await page.getByTestId('block-reason').fill('Cracked bodies');
  await steady(page);
  await page.getByTestId('block-save').click();
  await page.getByTestId('blocked').waitFor();
}

/** Counts until a slot warns. */
async function warn(page: Page): Promise<void> {
  await keepRunning(page);
  await page.getByTestId('plus-many').click();
  await pad(page, '150');
  await page.getByTestId('warning').waitFor();
}

const heightOf = async (page: Page, testId: string) =>
  (await page.getByTestId(testId).boundingBox())?.height ?? 0;

describe('a blocked reel and a warning on a phone', () => {
  it('take a line and a chip over a screen, a line and a band on the line, and tell and offer the rest when asked', () =>
    demo.onTablet(async ({ page }) => {
      await warn(page);
      await blockLotOn(page, 'M1-F-001');
      await goTo(page, 'load');
      await expect.poll(() => heightOf(page, 'blocked')).toBeLessThan(72);
      await expect.poll(() => heightOf(page, 'warning')).toBeLessThanOrEqual(48);
      for (const act of ['blocked-off', 'blocked-more', 'warning'])
        await expect.poll(() => coveredBy(page.getByTestId(act)), { message: act }).toBeNull();
      await page.getByTestId('warning').click();
      await page.getByTestId('screen-line').waitFor();
      await page.getByTestId('timeline').waitFor();
      await expect.poll(() => heightOf(page, 'blocked')).toBeLessThan(72);
      for (const act of ['blocked-off', 'warning-ack', 'blocked-more'])
        await expect.poll(() => coveredBy(page.getByTestId(act)), { message: act }).toBeNull();
      expect(await page.getByTestId('blocked-panels').isVisible()).toBe(false);

      await page.getByTestId('blocked-more').click();
      await page.getByTestId('blocked-panels').waitFor();
      for (const act of ['blocked-off', 'blocked-trace', 'blocked-heard', 'blocked-let-run'])
        await expect.poll(() => page.getByTestId(act).isVisible(), { message: act }).toBe(true);
      await look(page, { where: 'blocked, all of it' });
      await steady(page);
      await page.getByTestId('blocked-more').click();
      await page.getByTestId('blocked-panels').waitFor({ state: 'hidden' });
      await lookAgain(page); // no other slot takes the band while it is read and pressed
      // Neither can be put away without its act.
      await expect.poll(() => page.getByTestId('blocked').isVisible()).toBe(true);
      const warned = await page.getByTestId('warning').locator('b').textContent();
      await page.getByTestId('warning-ack').click();
      await expect
        .poll(async () =>
          (await ownEntries(page, 'warning.acknowledged')).map(({ payload }) => payload['slot']),
        )
        .toContain(warned);
      await expect.poll(() => page.getByTestId('blocked').isVisible()).toBe(true);
    }, phone));
});

describe('the line on a phone with nobody signed in', () => {
  it('says once why nothing can be pressed, and each act names that sentence', () =>
    demo.onTablet(async ({ page }) => {
      await warn(page);
      await page.getByTestId('sign-in').click();
      await page.getByRole('button', { name: 'Sign out' }).click();
      await page.locator('dialog[open]').waitFor({ state: 'detached' });
      const why = page.getByText('Scan your badge first');
      await expect.poll(() => why.count()).toBe(1);
      await expect.poll(() => coveredBy(why)).toBeNull();
      for (const act of ['warning-ack', 'plus-one', 'plus-many', 'run-stop']) {
        const button = page.getByTestId(act);
        await expect.poll(() => button.getAttribute('aria-disabled'), { message: act }).toBe('true');
        const named = await button.getAttribute('aria-describedby');
        await expect
          .poll(() => page.locator(`#${named}`).textContent(), { message: act })
          .toContain('Scan your badge first');
      }
      await look(page, { where: 'line with nobody signed in' });
    }, phone));

  it('keeps the count by one in one line of its button', () =>
    demo.onTablet(async ({ page }) => {
      await keepRunning(page);
      const height = (text: string) =>
        page.getByTestId('plus-one').evaluate((button, said) => {
          const walker = document.createTreeWalker(button, NodeFilter.SHOW_TEXT);
          for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
            if (!node.textContent?.includes(said)) continue;
            const range = document.createRange();
            range.selectNodeContents(node);
            return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
          }
          return 0;
        }, text);
      expect(await height('panel')).toBe(1);
    }, phone));
});

describe('a slot with a blocked reel', () => {
  it('stands first in the rows of the line with a shape and a word, until a lead lets it run', () =>
    demo.onTablet(async ({ page }) => {
      await keepRunning(page);
      await blockLotOn(page, 'M1-F-001');
      await goTo(page, 'line');
      const mark = page.getByTestId('blocked-M1-F-001');
      await mark.waitFor();
      await expect.poll(() => mark.textContent()).toContain('Blocked reel');
      await expect.poll(() => mark.locator('svg.shape.refused').count()).toBe(1);
      await expect
        .poll(() => page.locator('.slotrow').first().getAttribute('data-testid'))
        .toBe('row-M1-F-001');
      await page.getByTestId('blocked-let-run').click();
      await page.getByTestId('badge').fill('BADGE-3301');
      await page.getByTestId('badge-enter').click();
      await pad(page, '3301');
      await page.getByTestId('let-run-reason').fill('Customer agrees in writing');
      await page.getByTestId('let-run-yes').click();
      await mark.waitFor({ state: 'detached' });
    }));
});

describe('where nobody counts', () => {
  it('each time of the store says what it hangs on', () =>
    demo.onTablet(async ({ page }) => {
      await keepRunning(page);
      await page.getByTestId('plus-one').click();
      await expect.poll(async () => (await ownEntries(page, 'panels.counted')).length).toBe(1);
      await page.getByTestId('nobody-counts').waitFor({ state: 'detached' });
      await goTo(page, 'stock');
      const list = page.getByTestId('pick-list');
      await list.waitFor();
      expect(await list.textContent()).not.toContain('if it kept its pace');
      await pass(page, 25 * 60_000);
      const told = (within: string, part: string) => async () =>
        page.getByTestId(within).locator(part).allTextContents();
      await expect.poll(() => list.locator('.hold').count()).toBeGreaterThan(0);
      // A long list is drawn anew piece by piece.
      await expect
        .poll(async () =>
          (await told('pick-list', '[data-testid^=pick-]')()).filter(
            (pick) => !pick.includes('if it kept its pace'),
          ),
        )
        .toEqual([]);
      await page.getByTestId('stock-outlook').click();
      await page.getByTestId('reel-outlook').waitFor();
      for (const needs of await told('reel-outlook', '.needs')())
        expect(needs).toContain('if it kept its pace');
    }));
});

describe('why it stopped', () => {
  it.each([
    [1280, 800, null],
    [800, 1280, 'long'],
    [390, 844, null],
    [390, 844, 'long'],
  ])('breaks no word at %i × %i, words %s', (width, height, pseudo) =>
    demo.onTablet(
      async ({ page }) => {
        await keepRunning(page);
        await page.evaluate((kind) => {
          dispatchEvent(new CustomEvent('reelward-speak', { detail: { pseudo: kind } }));
        }, pseudo);
        await page.getByTestId('run-stop').click();
        await page.getByTestId('stop-maintenance').waitFor();
        const broken = await page.locator('dialog .evenly .button').evaluateAll((buttons) =>
          buttons.flatMap((button) => {
            const walker = document.createTreeWalker(button, NodeFilter.SHOW_TEXT);
            const found: string[] = [];
            for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
              for (const word of (node.textContent ?? '').matchAll(/\S+/g)) {
                const range = document.createRange();
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
                if (lines.size > 1) found.push(word[0]);
              }
            }
            return found;
          }),
        );
        expect(broken).toEqual([]);
        await look(page, { where: 'why it stopped' });
      },
      { width, height },
    ),
  );
});
