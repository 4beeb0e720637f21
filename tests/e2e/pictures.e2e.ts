// The picture of a label as evidence: kept after the verdict where the line's rules want it, its hash in the log, shown by its entry,
// exported beside the log; never in the way of the verdict, also where it cannot be kept.

import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { DAY_MS } from '../../shared/kit/moment.ts';
import { entryId } from '../../shared/log/entry.ts';
import { filmPan } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { pass } from './support/clock.ts';
import { tap } from './support/finger.ts';
import { keepRunning, openAt, openTablet, ownEntries, reelLabel, scan, seeVerdict } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
const open: Browser[] = [];
afterEach(async () => {
  for (const browser of open.splice(0)) await browser.close();
});

const label = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9500-H', '3S': 'R-976001' });

/** A browser whose lens shows one label. */
async function lensOn(text: string, print = '22-0603-B'): Promise<Browser> {
  const paper = { text, print, x: 560, y: 280 };
  const browser = await startBrowser(await filmPan(demo.browser, [paper], [{ x: 0, y: 0 }]));
  open.push(browser);
  return browser;
}

/** An engineer has the line keep pictures. */
async function keepPictures(page: Page): Promise<void> {
  await page.getByTestId('pictures-keep').click();
  await page.getByTestId('pictures-days').fill('30');
  await look(page, { where: 'rules' });
  await page.getByTestId('rules-save').click();
  await expect.poll(async () => (await ownEntries(page, 'line.pictures-ruled')).length).toBe(1);
}

/** Pictures that lie on the tablet, counted in its own database. */
function picturesKept(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('reelward-pictures');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const counting = opening.result.transaction('pictures').objectStore('pictures').count();
          counting.onerror = () => reject(counting.error);
          counting.onsuccess = () => {
            opening.result.close();
            resolve(counting.result);
          };
        };
      }),
  );
}

async function loadByCamera(page: Page): Promise<void> {
  await openAt(page, '#/load');
  await page.getByTestId('screen-load').waitFor();
  await scan(page, 'M2-F-023');
  await scan(page, 'F-0112');
  await tap(page, 'Camera');
  expect((await seeVerdict(page)).verdict).toBe('accepted');
}

const asEngineer = { badge: 'BADGE-4401', hash: '#/plant/rules' } as const;

describe('the picture of a label', () => {
  it('is not kept where nobody asked for it', async () => {
    const tablet = await openTablet(await lensOn(label), demo.url, { hash: '#/load' });
    const { page } = tablet;
    await page.evaluate(() => {
      const scope = globalThis as { encoded?: number };
      scope.encoded = 0;
      OffscreenCanvas.prototype.convertToBlob = () => {
        scope.encoded = (scope.encoded ?? 0) + 1;
        return Promise.reject(new Error('not asked for'));
      };
    });
    await loadByCamera(page);
    await tap(page, 'Go on');
    expect(await page.evaluate(() => (globalThis as { encoded?: number }).encoded)).toBe(0);
    expect(await ownEntries(page, 'picture.kept')).toEqual([]);
    await tablet.putAway();
  });

  it('is kept with its hash in the log, shown by its entry, and saved beside the log', async () => {
    const tablet = await openTablet(await lensOn(label), demo.url, asEngineer);
    const { page } = tablet;
    await keepPictures(page);
    await loadByCamera(page);
    await expect.poll(async () => (await ownEntries(page, 'picture.kept')).length).toBe(1);
    const [verdict] = await ownEntries(page, 'reel.verified');
    const [kept] = await ownEntries(page, 'picture.kept');
    expect(kept?.payload).toMatchObject({
      of: verdict ? entryId(verdict) : '',
      slot: 'M2-F-023',
      reel: 'R-976001',
    });
    expect(kept?.payload['bytes']).toBeLessThanOrEqual(25_000);
    // What came before the picture in the log is the verdict: it waited for nothing.
    expect((kept?.seq ?? 0) > (verdict?.seq ?? Number.POSITIVE_INFINITY)).toBe(true);
    await tap(page, 'Go on');
    await tap(page, 'Close camera');

    await openAt(page, '#/log');
    await page.getByText('Picture of a label kept').first().click();
    const picture = page.getByTestId('label-picture');
    await picture.waitFor();
    const size = await picture.evaluate((image: HTMLImageElement) =>
      image.decode().then(() => image.naturalWidth),
    );
    expect(size).toBeGreaterThan(60);
    await look(page, { where: 'picture kept' });
    await page.keyboard.press('Escape');

    await page.getByTestId('log-export').click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByTestId('export-pictures').click(),
    ]);
    const files = unzipSync(await readFile(await download.path()));
    const [[name, bytes] = ['', new Uint8Array()]] = Object.entries(files);
    expect(name).toBe(`${kept?.payload['sha256']}.jpg`);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(kept?.payload['sha256']);
    // That they left is told by the log, as for the log itself.
    await expect
      .poll(async () => (await ownEntries(page, 'log.exported')).map(({ payload }) => payload))
      .toMatchObject([{ format: 'pictures', rows: 1 }]);
    await expect
      .poll(() => page.getByTestId('notice').textContent())
      .toBe(`Saved as ${download.suggestedFilename()}.`);

    // Of the many that a trace names none is looked for before a person asks for it.
    await openAt(page, '#/log/trace');
    await page.getByTestId('trace-slot').click();
    await page.getByTestId('trace-text').fill('M1-F-003');
    await page.getByTestId('trace-ask').click();
    const opened = page.getByTestId('picture-open').first();
    await opened.waitFor();
    await look(page, { where: 'trace with pictures' });
    expect(await page.getByTestId('label-picture-none').count()).toBe(0);
    await opened.locator('summary').click();
    await expect
      .poll(() => page.getByTestId('label-picture-none').allTextContents())
      .toEqual(['No picture was found.']);
    await look(page, { where: 'trace, picture opened' });

    // Its days are over: it goes, though nobody opens the camera again.
    expect(await picturesKept(page)).toBe(1);
    await pass(page, 31 * DAY_MS);
    await expect.poll(() => picturesKept(page)).toBe(0);
    await tablet.putAway();
  });

  it('is shown by the trace, beside the reel whose verdict it was', async () => {
    const spliced = reelLabel({ P: '10-0402-330', Q: '10000', '1T': 'LT-9501-H', '3S': 'R-976002' });
    const tablet = await openTablet(await lensOn(spliced, '10-0402-330'), demo.url, asEngineer);
    const { page } = tablet;
    await keepPictures(page);
    await openAt(page, '#/load');
    await page.getByTestId('screen-load').waitFor();
    await scan(page, 'M1-F-002');
    await tap(page, 'Camera');
    expect((await seeVerdict(page)).verdict).toBe('accepted');
    await expect.poll(async () => (await ownEntries(page, 'picture.kept')).length).toBe(1);
    await keepRunning(page);
    await page.getByTestId('plus-one').click();
    await expect.poll(async () => (await ownEntries(page, 'panels.counted')).length).toBe(1);

    await openAt(page, '#/log/trace');
    await page.getByTestId('trace-reel').click();
    await page.getByTestId('trace-text').fill('R-976002');
    await page.getByTestId('trace-ask').click();
    const opened = page.getByTestId('picture-open');
    await opened.locator('summary').click();
    const width = (image: HTMLImageElement) => image.decode().then(() => image.naturalWidth);
    expect(await opened.getByTestId('label-picture').evaluate(width)).toBeGreaterThan(60);
    await look(page, { where: 'trace, picture of a verdict' });
    await tablet.putAway();
  });

  it('that could not be kept is told beside a verdict that stands', async () => {
    const tablet = await openTablet(await lensOn(label), demo.url, asEngineer);
    const { page } = tablet;
    await keepPictures(page);
    await page.evaluate(() => {
      OffscreenCanvas.prototype.convertToBlob = () => Promise.reject(new Error('no room'));
    });
    await loadByCamera(page);
    await page.getByText('The picture of the label was not kept. The verdict stands.').waitFor();
    expect(await ownEntries(page, 'picture.kept')).toEqual([]);
    expect((await ownEntries(page, 'reel.verified')).map(({ payload }) => payload['verdict'])).toEqual([
      'accepted',
    ]);
    await tablet.putAway();
  });
});
