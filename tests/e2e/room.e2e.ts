// Room for the work: how much of what a screen is for is in front of a person at once, wholly in view and touched where it stands, on the
// demo plant and at every size of tablet. A warning stands above it, as it does in a shift.

import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { coveredBy } from './support/finger.ts';
import { goTo, openTablet, showSlot } from './support/floor.ts';
import { look, withLargeText } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const sizes = [
  { name: 'wide', width: 1280, height: 800 },
  { name: 'tall', width: 800, height: 1280 },
  { name: 'phone', width: 390, height: 844 },
] as const;
type Size = (typeof sizes)[number];

/** Opens a tablet of such a size and puts it away afterwards. */
async function onSize(size: Size, work: (page: Page) => Promise<void>): Promise<void> {
  const tablet = await openTablet(demo.browser, demo.url, { width: size.width, height: size.height });
  await work(tablet.page);
  await tablet.putAway();
}

/** How many of them are wholly in view, inside the window and the area that scrolls, and topmost at their centre. */
function whollySeen(these: Locator): Promise<number> {
  return these.evaluateAll((elements) => {
    const area = document.querySelector('main')?.getBoundingClientRect();
    if (!area) return 0;
    return elements.filter((element) => {
      const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
      if (width < 1 || height < 1) return false;
      const isIn =
        top >= area.top - 1 && bottom <= area.bottom + 1 && left >= area.left - 1 && right <= area.right + 1;
      const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return isIn && hit !== null && (hit === element || element.contains(hit));
    }).length;
  });
}

const scrolled = (page: Page) => page.locator('main').evaluate(({ scrollTop }) => scrollTop);

describe.each(sizes)('Load on a $name tablet', (size) => {
  it('shows the whole line at once: every slot of 150, each bank one target', () =>
    onSize(size, async (page) => {
      await goTo(page, 'load');
      const cells = page.locator('.plan [data-cell]');
      await expect.poll(() => cells.count()).toBeGreaterThanOrEqual(150);
      expect(await scrolled(page)).toBe(0);
      await expect.poll(async () => (await cells.count()) - (await whollySeen(cells))).toBe(0);
      const banks = page.locator('.bankcard');
      await expect.poll(async () => (await banks.count()) - (await whollySeen(banks))).toBe(0);
      // What needs hands tells itself apart by form: it stands taller than what is right.
      const heightOf = (of: string) =>
        page
          .locator(`.plan .cells ${of}`)
          .first()
          .evaluate((cell) => cell.getBoundingClientRect().height);
      expect(await heightOf('.missing')).toBeGreaterThan(1.3 * (await heightOf('.verified')));
      await expect
        .poll(() => page.getByTestId('load-progress').textContent())
        .toBe('147 of 150 slots loaded');
    }));

  it('keeps what is next in view, the part largest, and has its bank open', () =>
    onSize(size, async (page) => {
      await goTo(page, 'load');
      const next = page.getByTestId('next-slot');
      await expect.poll(() => next.textContent()).toContain('M2-F-023');
      await expect.poll(() => next.textContent()).toContain('22-0603-B');
      await expect.poll(() => next.textContent()).toContain('8 mm tape');
      const sizeOf = (part: string) =>
        next.locator(part).evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
      expect(await sizeOf('.part')).toBeGreaterThanOrEqual(28);
      expect(await sizeOf('.part')).toBeGreaterThan(await sizeOf('.slot b'));
      const tile = page.locator('button[data-slot="M2-F-023"]');
      for (const side of ['width', 'height'] as const)
        await expect.poll(async () => (await tile.boundingBox())?.[side]).toBeGreaterThanOrEqual(48);
      await expect.poll(() => tile.getAttribute('aria-label')).toBe('M2-F-023: missing, next · 23 22-0603-B');
      await page.getByTestId('sweep-start').scrollIntoViewIfNeeded();
      await expect.poll(() => whollySeen(next)).toBe(1);
    }));

  it('opens any bank at a tap, and its slots with it', () =>
    onSize(size, async (page) => {
      await goTo(page, 'load');
      const tile = await showSlot(page, 'M3-R-031');
      await tile.scrollIntoViewIfNeeded();
      await expect.poll(() => coveredBy(tile)).toBeNull();
      await expect
        .poll(() => page.locator('.bankcard[aria-pressed=true]').textContent())
        .toContain('Placer 3 · Rear');
      await expect
        .poll(() => page.getByTestId('open-bank').locator('h2').textContent())
        .toBe('Placer 3 · Rear');
      await tile.click();
      await page.locator('dialog[open]').waitFor();
      await expect.poll(() => page.locator('dialog[open] h2').textContent()).toBe('M3-R-031');
    }));
});

describe.each([
  { ...sizes[0], rows: 9 },
  { ...sizes[1], rows: 9 },
  { ...sizes[2], rows: 5 },
])('on a $name tablet', (size) => {
  it('the log shows its entries at once under one row of filters', () =>
    onSize(size, async (page) => {
      await goTo(page, 'log');
      const entries = page.getByTestId('entry');
      await entries.nth(20).waitFor();
      await expect.poll(() => whollySeen(entries)).toBeGreaterThanOrEqual(size.rows);
      expect(await scrolled(page)).toBe(0);
    }));

  it('the reels are a row each', () =>
    onSize(size, async (page) => {
      await goTo(page, 'stock');
      await page.getByTestId('stock-reels').click();
      const rows = page.locator('.reel-row');
      await rows.nth(20).waitFor();
      await expect.poll(() => whollySeen(rows)).toBeGreaterThanOrEqual(size.rows);
    }));
});

it.each([sizes[0], sizes[1]])('a checklist of nine steps is seen whole on a $name tablet', (size) =>
  onSize(size, async (page) => {
    await page.goto(`${demo.url}#/change/list/shift-start`);
    await page.getByTestId('list-open').click();
    const steps = page.locator('.step');
    await steps.nth(8).waitFor();
    await expect.poll(() => whollySeen(steps)).toBeGreaterThanOrEqual(9);
    await look(page, { where: 'checklist' });
    // One act is the one to do now.
    await expect.poll(() => page.locator('.checklist .button.act').count()).toBe(1);
  }),
);

it('what filters the log is told wherever the filter itself is out of view', () =>
  onSize(sizes[2], async (page) => {
    await goTo(page, 'log');
    await page.getByTestId('entry').first().waitFor();
    expect(await page.getByTestId('filters-told').count()).toBe(0);
    await page.getByTestId('log-filters').click();
    await page.getByTestId('filter-slot').fill('m2-f-001');
    await page.getByTestId('log-filters').click();
    await page.getByTestId('filter-slot').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByTestId('filters-told').textContent()).toContain('Last 8 h · M2-F-001');
    await expect.poll(() => page.getByTestId('log-filters').textContent()).toContain('(1)');
    expect(await page.getByTestId('log-filters').getAttribute('aria-expanded')).toBe('false');
  }));

it.each(sizes)('letters twice as large and the other direction break nothing on a $name tablet', (size) =>
  onSize(size, async (page) => {
    for (const [screen, tab] of [
      ['load', null],
      ['log', null],
      ['stock', 'stock-reels'],
    ] as const) {
      await goTo(page, screen);
      if (tab !== null) await page.getByTestId(tab).click();
      await drawn(page);
      await withLargeText(page, () => look(page, { where: `${screen}, large` }));
      await page.evaluate(() => document.documentElement.setAttribute('dir', 'rtl'));
      await look(page, { where: `${screen}, right to left` });
      await page.evaluate(() => document.documentElement.removeAttribute('dir'));
    }
  }),
);
