// Room for the work: how many slots of the line are in view at once, what stands around them, and that a warning is within one touch
// on every screen.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { coveredBy, tapOn } from './support/finger.ts';
import { goTo, keepRunning, lookAgain, ownEntries } from './support/floor.ts';
import { look, withLargeText } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

/** Sizes of the window, each with the slots that are to be in view at least and the bounds of what stands around them, px. */
const sizes = [
  { width: 1280, height: 800, slots: 10, header: 56, dock: 72 },
  { width: 800, height: 1280, slots: 16, header: 56, dock: 72 },
  { width: 390, height: 844, slots: 6, header: 48, dock: 72 },
] as const;

/** Rows that are wholly in the window and lie on top at their middle, with their heights, px. */
function rowsInView(page: Page): Promise<readonly number[]> {
  return page.locator('.slotrow').evaluateAll((rows) => {
    const area = document.querySelector('main')?.getBoundingClientRect();
    return rows.flatMap((row) => {
      const box = row.getBoundingClientRect();
      const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
      const isWhole = area !== undefined && box.top >= area.top && box.bottom <= area.bottom + 0.5;
      return isWhole && top !== null && row.contains(top) ? [box.height] : [];
    });
  });
}

const heightOf = async (page: Page, selector: string) =>
  (await page.locator(selector).boundingBox())?.height ?? Number.NaN;

describe.each(sizes)('the line at $width × $height', ({ width, height, slots, header, dock }) => {
  it('shows its slots, each in one line, and one blue act', () =>
    demo.onTablet(
      async ({ page }) => {
        await goTo(page, 'line');
        await keepRunning(page);
        await page.getByTestId('warning').waitFor();
        await page.locator('.walkmark').first().waitFor();
        await expect.poll(async () => (await rowsInView(page)).length).toBeGreaterThanOrEqual(slots);
        const rows = await rowsInView(page);
        for (const row of rows) {
          expect(row).toBeGreaterThanOrEqual(48);
          expect(row).toBeLessThanOrEqual(52);
        }
        await expect.poll(() => heightOf(page, '.topbar')).toBeLessThanOrEqual(header);
        await expect.poll(() => heightOf(page, '.dock')).toBeLessThanOrEqual(dock);
        const blue = page.locator('.button.act:not([aria-disabled=true])').filter({ visible: true });
        await expect
          .poll(() => blue.evaluateAll((all) => all.map((each) => each.getAttribute('data-testid'))))
          .toEqual(['warning-ack']);
        await expect.poll(() => coveredBy(page.getByTestId('warning-ack'))).toBeNull();
        // Said by the band, so not by a chip too.
        await expect.poll(() => page.getByTestId('warning').count()).toBe(1);
        await look(page, { where: `line at ${width}`, axe: true });
        // However far down one reads, the axis is at the top of what is read.
        await page.locator('main').evaluate((area) => area.scrollTo({ top: 600, behavior: 'instant' }));
        const below = () =>
          page.evaluate(() => {
            const topOf = (selector: string) =>
              document.querySelector(selector)?.getBoundingClientRect().top ?? Number.NaN;
            return Math.abs(topOf('.axisrow') - topOf('main'));
          });
        await expect.poll(below).toBeLessThan(2);
        await page.locator('main').evaluate((area) => area.scrollTo({ top: 0, behavior: 'instant' }));
        await withLargeText(page, () =>
          look(page, { where: `line at ${width}, large letters`, texts: false }),
        );
      },
      { width, height },
    ));

  it('opens a slot at a tap on its row, where one goes, splices, and reads the rest', () =>
    demo.onTablet(
      async ({ page }) => {
        await goTo(page, 'line');
        await keepRunning(page);
        const first = page.locator('.slotrow:is(.due, .soon, .late)').first();
        await first.waitFor();
        await lookAgain(page); // the rows stay in their order
        const slot = ((await first.getAttribute('data-testid')) ?? '').slice('row-'.length);
        await tapOn(page, page.getByTestId(`row-${slot}`).locator('.strip'));
        const sheet = page.getByRole('dialog', { name: slot });
        await sheet.getByText('Runs out').waitFor();
        await look(page, { where: `slot at ${width}`, axe: true });
        await withLargeText(page, () =>
          look(page, { where: `slot at ${width}, large letters`, texts: false }),
        );
        await tapOn(page, page.getByTestId(`ack-${slot}`));
        await page.getByTestId(`ack-${slot}`).waitFor({ state: 'detached' });
        const taken = await ownEntries(page, 'warning.acknowledged');
        expect(taken.map(({ payload, who }) => [payload['slot'], who])).toEqual([[slot, 'p-2201']]);
        await tapOn(page, page.getByTestId('slot-splice'));
        await sheet.waitFor({ state: 'detached' });
        await expect.poll(() => page.getByTestId('well-slot').textContent()).toContain(slot);
      },
      { width, height },
    ));

  it('has its warning one touch away on every other screen, which cannot be put away there', () =>
    demo.onTablet(
      async ({ page }) => {
        for (const screen of ['load', 'change', 'stock', 'log', 'plant']) {
          await goTo(page, screen);
          const chip = page.locator('.topbar').getByTestId('warning');
          await chip.waitFor();
          const least = async () => {
            const box = await chip.boundingBox();
            return Math.min(box?.width ?? 0, box?.height ?? 0);
          };
          await expect.poll(least, { message: screen }).toBeGreaterThanOrEqual(48);
          await expect.poll(() => coveredBy(chip), { message: screen }).toBeNull();
          await expect.poll(() => heightOf(page, '.topbar'), { message: screen }).toBeLessThanOrEqual(header);
          await expect.poll(() => page.locator('.warned').textContent()).toMatch(/M\d-[FR]-\d{3}/);
          expect(await page.locator('.warned [role=button], .warned button').count(), screen).toBe(0);
          await tapOn(page, chip);
          await page.getByTestId('screen-line').waitFor();
          await page.locator('.nowband').and(page.getByTestId('warning')).waitFor();
        }
      },
      { width, height },
    ));
});

describe('to go on a walk', () => {
  it('takes note of what warns along it in one append, says who goes, and leaves the rest open', () =>
    demo.onTablet(async ({ page }) => {
      await goTo(page, 'line');
      await keepRunning(page);
      const band = page.locator('.nowband');
      await band.locator('.stops').waitFor();
      await lookAgain(page); // what warns and the walk to it are of one look
      const stops = (await band.locator('.stops').textContent()) ?? '';
      const slots: readonly string[] = stops.match(/M\d-[FR]-\d{3}/g) ?? [];
      const warned = await page
        .locator('.slotrow:is(.due, .soon, .late)')
        .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-testid')?.slice('row-'.length)));
      const expected = warned.filter((slot) => slots.includes(slot ?? ''));
      expect(expected.length).toBeGreaterThan(0);
      await tapOn(page, page.getByTestId('warning-ack'));
      await expect
        .poll(async () =>
          (await ownEntries(page, 'warning.acknowledged'))
            .map(({ payload }) => String(payload['slot']))
            .sort(),
        )
        .toEqual([...expected].sort());
      // What no part of this walk serves still warns, or the walk now says who goes.
      await expect
        .poll(async () => {
          const text = (await band.textContent()) ?? '';
          return /\w goes/.test(text) || !slots.every((slot) => text.includes(slot));
        })
        .toBe(true);
    }));
});

describe('from right to left', () => {
  it('rows are mirrored, the time axis and the tapes are not', () =>
    demo.onTablet(async ({ page }) => {
      await goTo(page, 'line');
      const row = page.locator('.slotrow').first();
      await row.waitFor();
      await page.evaluate(() => {
        dispatchEvent(new CustomEvent('reelward-speak', { detail: { pseudo: 'mirrored' } }));
      });
      await expect.poll(() => page.evaluate(() => document.documentElement.dir)).toBe('rtl');
      const leftOf = (selector: string) =>
        page
          .locator(selector)
          .first()
          .evaluate((part) => part.getBoundingClientRect().left);
      expect(await leftOf('.slotrow .who')).toBeGreaterThan(await leftOf('.slotrow .due'));
      expect(Math.abs((await leftOf('.axisrow .axis i')) - (await leftOf('.axisrow .axis')))).toBeLessThan(2);
      expect(
        Math.abs((await leftOf('.slotrow .tape .band')) - (await leftOf('.slotrow .strip'))),
      ).toBeLessThan(2);
      expect(Math.abs((await leftOf('.slotrow .strip')) - (await leftOf('.axisrow .axis')))).toBeLessThan(2);
      await look(page, { where: 'line from right to left', sentences: false });
    }));
});
