// What is read across a hall or on grey paper is told without colour: the shift's plots on the screen and as a picture, the lines, also on the
// wall screen. Contrast of 3 to 1 for what must be seen: WCAG 2.2, 1.4.11.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { inTheme, statesApart, themes } from './support/apart.ts';
import { startBrowser } from './support/browser.ts';
import { drawn } from './support/clock.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { endRun, goOn, openTablet, reelLabel, resumeRun, scanAll, steady } from './support/floor.ts';
import { apart, silhouetteOf, withoutColour } from './support/silhouette.ts';
import { contrast, type Rgb, type View, views } from './support/views.ts';

let demo: RunningDemo;
let browser: Browser;
beforeAll(async () => {
  [demo, browser] = await Promise.all([startDemo(['--lines', '3']), startBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await demo.stop();
});

const WANTED = 3;
/** Signs of which less differs than this share look alike from afar. (Chosen here.) */
const LEAST_APART = 0.35;

/** In which views two colours are too near to each other. */
const lostIn = (one: Rgb, other: Rgb) =>
  (Object.keys(views) as View[]).filter((view) => contrast(one, other, view) < WANTED);

/** A bar as it is drawn. */
interface SeenBar {
  readonly plot: string;
  readonly said: string;
  readonly colour: Rgb;
  readonly ground: Rgb;
  readonly lengthPx: number;
  /** It stands for nothing, and is drawn so: an hour without any says no number over its bar. */
  readonly isNone: boolean;
}

/** The bars of all plots; colours as the screen shows them. */
function barsOf(page: Page): Promise<readonly SeenBar[]> {
  return page.locator('.plot li').evaluateAll((rows) => {
    const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    if (!pen) throw new TypeError('no canvas');
    const seen = (colour: string) => {
      pen.fillStyle = colour;
      pen.fillRect(0, 0, 1, 1);
      const [red = 0, green = 0, blue = 0] = pen.getImageData(0, 0, 1, 1).data;
      return [red, green, blue] as const;
    };
    return rows.map((row) => {
      const bar = row.querySelector('i') ?? row;
      const card = row.closest('.card') ?? row;
      const { width, height } = bar.getBoundingClientRect();
      return {
        plot: card.getAttribute('data-testid') ?? '',
        said: row.textContent ?? '',
        colour: seen(getComputedStyle(bar).backgroundColor),
        ground: seen(getComputedStyle(card).backgroundColor),
        lengthPx: row.closest('.hours') ? height : width,
        isNone: bar.previousElementSibling?.textContent === '',
      };
    });
  });
}

it('the shift’s plots', async () => {
  const tablet = await openTablet(browser, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  await scanAll(page, 'M2-F-023', 'F-0112', reelLabel({ P: 'NOT-IT', Q: '100', '3S': 'R-990041' }));
  await goOn(page);
  await page.goto(`${demo.url}#/log/shift`);
  await page.getByTestId('plot-reasons').waitFor();
  await page.getByTestId('span-24').click();
  await drawn(page);
  await expect
    .poll(async () => new Set((await barsOf(page)).map(({ plot }) => plot)).size)
    .toBeGreaterThanOrEqual(4);
  for (const theme of themes) {
    await inTheme(page, theme);
    const bars = await barsOf(page);
    const plots = [...new Set(bars.map(({ plot }) => plot))];
    expect(plots.length, theme).toBeGreaterThanOrEqual(4);
    for (const bar of bars) expect(lostIn(bar.colour, bar.ground), `${theme}, ${bar.plot}`).toEqual([]);
    for (const plot of plots) {
      const own = bars.filter((bar) => bar.plot === plot);
      // One series each: a second colour would say what no word says.
      expect(new Set(own.map(({ colour }) => colour.join())).size, `${theme}, ${plot}`).toBe(1);
      // Each bar says its own, and one that stands for some is seen; one of 0 has no length.
      expect(
        own.filter(({ said }) => said.trim() === ''),
        plot,
      ).toEqual([]);
      expect(
        own.filter(({ lengthPx, isNone }) => (isNone ? lengthPx > 0 : lengthPx < 2)).map(({ said }) => said),
        plot,
      ).toEqual([]);
    }
  }
  await tablet.putAway();
});

it('a plot that is saved as a picture', async () => {
  const tablet = await openTablet(browser, demo.url, { badge: 'BADGE-3301', hash: '#/log/shift' });
  const { page } = tablet;
  await page.getByTestId('span-24').click();
  await page.getByTestId('png-splices').waitFor();
  // Without a splice there would be no bar to look at.
  const most = async () => {
    const counts = await page.getByTestId('plot-splices').locator('li > span:nth-child(2)').allTextContents();
    return Math.max(...counts.map(Number));
  };
  await expect.poll(most).toBeGreaterThan(0);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('png-splices').click(),
  ]);
  const picture = await readFile(await download.path(), 'base64');
  // Its commonest colour is the paper, the next that of the bars.
  const [paper, bars] = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    if (!pen) throw new TypeError('no canvas');
    pen.drawImage(bitmap, 0, 0);
    const { data } = pen.getImageData(0, 0, bitmap.width, bitmap.height);
    const counts = new Map<string, number>();
    for (let at = 0; at < data.length; at += 4) {
      const colour = `${data[at]},${data[at + 1]},${data[at + 2]}`;
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    return [...counts]
      .sort(([, a], [, b]) => b - a)
      .map(([colour]) => colour.split(',').map(Number) as [number, number, number]); // as it was put together
  }, picture);
  expect(paper).toEqual([255, 255, 255]);
  assert.ok(bars, 'a picture of one colour');
  expect(bars).toHaveLength(3);
  expect(lostIn(bars, [255, 255, 255])).toEqual([]);
  await tablet.putAway();
});

it('what is no colour is compared with nothing', () => {
  for (const none of [Number.NaN, undefined as unknown as number]) // as of a list that was too short
    expect(() => contrast([255, none, 0], [255, 255, 255], 'plain')).toThrow(TypeError);
});

/** Which of the signs look alike without colour, in both themes. */
async function alikeInGrey(page: Page, signs: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const found: string[] = [];
  for (const theme of themes) {
    await inTheme(page, theme);
    const masks = await withoutColour(page, async () => {
      const seen: (readonly [string, readonly boolean[]])[] = [];
      for (const [name, selector] of Object.entries(signs))
        seen.push([name, await silhouetteOf(page, page.locator(selector).first())]);
      return seen;
    });
    for (const [at, [name, mask]] of masks.entries())
      for (const [other, otherMask] of masks.slice(at + 1))
        if (apart(mask, otherMask) < LEAST_APART)
          found.push(`${theme}: “${name}” and “${other}”, ${apart(mask, otherMask).toFixed(2)}`);
  }
  return found;
}

it('the lines, on a tablet and on the wall screen', async () => {
  const tablet = await openTablet(browser, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  const openLine = async (line: string) => {
    await page.goto(`${demo.url}#/lines`);
    await steady(page);
    await page.getByTestId(`line-${line}`).click();
    await resumeRun(page);
  };
  const stop = async (line: string) => {
    await openLine(line);
    await page.getByTestId('run-stop').click();
    await page.getByTestId('stop-break').click();
    await page.getByTestId('run-end').waitFor();
  };
  await openLine('L2');
  await stop('L3');
  await openLine('L4');
  await endRun(page);
  await page.goto(`${demo.url}#/lines`);
  expect(await statesApart(page, { each: '.line-row', named: 'data-state', by: '.st' })).toBe(3);
  await page.getByTestId('lines-wall').click();
  await page.getByTestId('screen-wall').waitFor();
  expect(await statesApart(page, { each: '.wall .line-row', named: 'data-state', by: '.st' })).toBe(3);
  const states = await page
    .locator('.wall .line-row')
    .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-state') ?? ''));
  const signs = Object.fromEntries(
    states.map((state) => [state, `.wall .line-row[data-state="${state}"] .st svg`]),
  );
  expect(await alikeInGrey(page, signs)).toEqual([]);
  await tablet.putAway();
});
