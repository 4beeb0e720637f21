// The shift's report takes one page of paper, upright and across, of the demo's busiest day and of a heavier one made from it, and each of its
// plots goes out as a picture and as rows. Pages are counted in the PDF that the browser makes.

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { steady } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301', hash: '#/log/shift' });

const papers = [
  { format: 'A4', landscape: false },
  { format: 'A4', landscape: true },
  { format: 'Letter', landscape: false },
  { format: 'Letter', landscape: true },
] as const;

/** Pages of a PDF: its page objects, which are told in clear even where their content is packed. */
function pagesOf(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

/** Prints as the browser's own dialog does, which tells the page before and after. */
async function printed(page: Page, paper: (typeof papers)[number]): Promise<Buffer> {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const pdf = await page.pdf(paper);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  return pdf;
}

/** The letters' size of the copy on paper, against 9 points. */
const sizes = (page: Page) =>
  page.evaluate(() => {
    dispatchEvent(new Event('beforeprint'));
    const { style } = document.getElementById('shift-page') as HTMLElement; // laid out just now
    const found = ['--portrait', '--landscape'].map((name) => Number(style.getPropertyValue(name)));
    dispatchEvent(new Event('afterprint'));
    return found;
  });

async function expectOnePage(page: Page): Promise<void> {
  for (const paper of papers) {
    const pdf = await printed(page, paper);
    expect(pagesOf(pdf), `${paper.format}, ${paper.landscape ? 'across' : 'upright'}`).toBe(1);
    expect(pdf.length).toBeGreaterThan(10_000);
  }
  expect(await page.locator('#shift-page').count()).toBe(0);
  for (const size of await sizes(page)) expect(size).toBeGreaterThanOrEqual(2 / 3);
}

it('stands on one page of the demo’s last day', () =>
  demo.onTablet(async ({ page }) => {
    await page.getByTestId('plot-reasons').waitFor();
    await page.getByTestId('span-24').click();
    await drawn(page);
    await expectOnePage(page);
  }));

it('stands on one page of a day with every list full and sixty open matters, and counts what does not go on it', () =>
  demo.onTablet(async ({ page }) => {
    await page.getByTestId('plot-reasons').waitFor();
    await page.getByTestId('span-24').click();
    await drawn(page);
    // As many bars as a plot shows, of long names, and as many matters as are handed over.
    await page.evaluate(() => {
      for (const list of document.querySelectorAll('.plot ul')) {
        const row = list.querySelector('li');
        if (!row) continue;
        (row.firstElementChild as HTMLElement).textContent = 'CAP-0402-100N-16V-X7R-LONG-NAME';
        while (list.children.length < 12) list.append(row.cloneNode(true));
      }
      for (const plot of document.querySelectorAll('.plot:not(:has(ul, ol))')) {
        const list = document.querySelector('.plot ul')?.cloneNode(true);
        if (list) plot.append(list);
      }
      const matters = document.querySelector('.matters') as HTMLElement; // the demo's shift leaves some
      const matter = matters.querySelector('li') as HTMLElement;
      while (matters.children.length < 60) matters.append(matter.cloneNode(true));
    });
    await expectOnePage(page);
    const told = await page.evaluate(() => {
      dispatchEvent(new Event('beforeprint'));
      const all = document.querySelectorAll('main .matters li').length; // the shift goes on meanwhile
      const copy = document.getElementById('shift-page') as HTMLElement; // laid out just now
      const shown = copy.querySelectorAll('.matters li').length;
      const left = copy.querySelector('.left-out')?.textContent ?? '0';
      dispatchEvent(new Event('afterprint'));
      return { all, shown, left: Number(/\d+/.exec(left)?.[0]) };
    });
    expect(told.all).toBeGreaterThanOrEqual(60);
    expect(told.shown + told.left).toBe(told.all);
    expect(told.shown).toBeGreaterThan(20);
  }));

// A page for each: browsers take no more than ten files in a second from one.
it.each(['png', 'csv'] as const)('gives each plot out as %s', (kind) =>
  demo.onTablet(async ({ page }) => {
    await expect.poll(() => page.locator('.plot').count()).toBeGreaterThanOrEqual(7);
    const plots = await page
      .locator('.plot')
      .evaluateAll((all) => all.map((each) => each.getAttribute('data-testid')?.replace('plot-', '') ?? ''));
    expect(plots.length).toBeGreaterThanOrEqual(7);
    expect(plots.length).toBeLessThanOrEqual(10);
    for (const plot of plots) {
      await steady(page);
      const waits = page.waitForEvent('download');
      await page.getByTestId(`${kind}-${plot}`).click();
      const download = await waits;
      expect(download.suggestedFilename()).toBe(`${plot}.${kind}`);
      const file = await readFile(await download.path());
      if (kind === 'png') {
        expect(file.subarray(1, 4).toString('latin1'), plot).toBe('PNG');
        expect(file.length, plot).toBeGreaterThan(2_000);
      } else {
        const [head = ''] = file.toString('utf8').split('\r\n');
        expect(head.split(',').length, plot).toBeGreaterThanOrEqual(3);
      }
    }
  }),
);

it('keeps out of the way where labels are what is printed', () =>
  demo.onTablet(async ({ page }) => {
    await page.getByTestId('plot-reasons').waitFor();
    const laid = await page.evaluate(() => {
      document.body.classList.add('prints-labels');
      dispatchEvent(new Event('beforeprint'));
      const found = [document.getElementById('shift-page') !== null, document.adoptedStyleSheets.length];
      dispatchEvent(new Event('afterprint'));
      document.body.classList.remove('prints-labels');
      return [...found, document.adoptedStyleSheets.length];
    });
    expect(laid[0]).toBe(false);
    expect(laid[1]).toBe(laid[2]);
  }));
