// Practice is a floor of its own: what is done there leaves the plant's log as it was, byte for byte, read from the browser's database
// behind the app's back; it is marked wherever one looks, and the real line breaks through with its warnings.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { goOn, goTo, openTablet, readLog, seeVerdict } from './support/floor.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let demo: RunningDemo;
let empty: PlantServer;
let browser: Browser;

beforeAll(async () => {
  [demo, empty, browser] = await Promise.all([startDemo(), startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await Promise.all([demo?.stop(), empty?.stop()]);
});

/** All rows of a database as text, and what is remembered outside it. */
async function bytesOf(page: Page, name: string): Promise<string> {
  return page.evaluate(
    (wanted) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open(wanted);
        opening.onerror = () => reject(opening.error);
        opening.onupgradeneeded = () => opening.transaction?.abort(); // looking must not make it
        opening.onsuccess = () => {
          const db = opening.result;
          const reading = db.transaction(['entries', 'meta']);
          const entries = reading.objectStore('entries').getAll();
          const meta = reading.objectStore('meta').getAll();
          reading.oncomplete = () => {
            db.close();
            const remembered = localStorage.getItem('reelward-chain');
            resolve(JSON.stringify([entries.result, meta.result, remembered]));
          };
        };
      }),
    name,
  );
}

const databases = (page: Page) =>
  page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name ?? '').sort());

async function begin(page: Page): Promise<void> {
  await goTo(page, 'plant');
  await page.getByTestId('tile-practice').click();
  await page.getByTestId('practice-start').click();
  await page.getByTestId('practice-band').waitFor();
  await page.getByTestId('practice-print').waitFor();
}

async function end(page: Page): Promise<void> {
  await page.getByTestId('practice-end').click();
  await page.getByTestId('practice-band').waitFor({ state: 'detached' });
  await waitReady(page);
}

/** Taps labels one after the other and reads the verdict that follows. */
async function tap(page: Page, ...ids: readonly string[]) {
  await goTo(page, 'plant');
  await page.getByTestId('tile-practice').click();
  for (const id of ids) await page.getByTestId(`label-${id}`).click();
  return seeVerdict(page);
}

describe('practice', () => {
  it('has a line to practise on in an empty plant, and leaves nothing there', async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(empty.url);
    await waitReady(page);
    // The tablet signs the end of its log within a second of its start.
    const isSigned = async () => (await readLog(page, 'reelward-log')).at(-1)?.sig != null;
    await expect.poll(isSigned).toBe(true);
    const before = await bytesOf(page, 'reelward-log');
    const there = await databases(page);
    await begin(page);
    expect(await page.title()).toContain('PRACTICE');
    const verdict = await tap(page, 'slot-M1-F-003', 'reel-M1-F-003');
    expect(verdict.verdict).toBe('accepted');
    expect(verdict.text).toContain('PRACTICE');
    await goOn(page);
    expect((await tap(page, 'slot-M1-F-004', 'reel-wrong')).verdict).toBe('refused');
    await goOn(page);
    // A reload goes on practising.
    await page.reload();
    await waitReady(page);
    await goTo(page, 'load');
    await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe('3 of 6 slots loaded');
    for (const screen of ['line', 'load', 'change', 'stock', 'log', 'plant']) {
      await goTo(page, screen);
      await expect.poll(() => page.getByTestId('practice-band').isVisible()).toBe(true);
    }
    // An export is gone through, and no file leaves.
    const saved: string[] = [];
    page.on('download', (download) => saved.push(download.suggestedFilename()));
    await goTo(page, 'log');
    await page.getByTestId('log-export').click();
    await page.getByTestId('export-csv').click();
    await page.getByText('Practice: no file is saved').waitFor();
    expect(saved).toEqual([]);
    await end(page);
    await expect.poll(() => page.getByText('No line yet').isVisible()).toBe(true);
    expect(await bytesOf(page, 'reelward-log')).toBe(before);
    // Whoever looks at the log asks for its pictures: where they would lie is no part of a practice.
    const left = async () => (await databases(page)).filter((name) => name !== 'reelward-pictures');
    await expect.poll(left).toEqual(there);
    await context.close();
  });

  it('marks the report that is printed, and lets none of its rows and pictures out', async () => {
    const { page, putAway } = await openTablet(browser, demo.url);
    await begin(page);
    const saved: string[] = [];
    page.on('download', (download) => saved.push(download.suggestedFilename()));
    await page.goto(`${demo.url}#/log/shift`);
    await page.getByTestId('plot-reasons').waitFor();
    for (const kind of ['csv', 'png'] as const) {
      await page.getByTestId(`${kind}-reasons`).click();
      await page.getByText(`it would be reasons.${kind}`).waitFor();
    }
    expect(saved).toEqual([]);
    const printed = await page.evaluate(() => {
      dispatchEvent(new Event('beforeprint'));
      const text = document.querySelector('#shift-page .practice-mark')?.textContent;
      dispatchEvent(new Event('afterprint'));
      return text;
    });
    expect(printed).toContain('PRACTICE');
    await end(page);
    await putAway();
  });

  it('copies the line as it is: scans there change no slot, count, export or trace of the real one', async () => {
    const { page, putAway } = await openTablet(browser, demo.url);
    const before = await readLog(page);
    await goTo(page, 'load');
    const progress = await page.getByTestId('load-progress').textContent();
    const run = await page.getByTestId('run-chip').textContent();
    await begin(page);
    await goTo(page, 'load');
    await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe(progress);
    await goTo(page, 'plant');
    await page.getByTestId('tile-practice').click();
    await page.locator('[data-testid^="label-slot-"]').first().waitFor();
    const ids = await page
      .locator('[data-testid^="label-"]')
      .evaluateAll((cards) => cards.map((card) => card.getAttribute('data-testid') ?? ''));
    const loads = ids.find((id) => id.startsWith('label-feeder-'))?.replace('label-feeder-', '') ?? '';
    expect((await tap(page, `slot-${loads}`, `feeder-${loads}`, `reel-${loads}`)).verdict).toBe('accepted');
    await goOn(page);
    const hasFeeder = (slot: string) => ids.includes(`label-feeder-${slot}`);
    const splices =
      ids
        .filter((id) => id.startsWith('label-slot-'))
        .map((id) => id.replace('label-slot-', ''))
        .find((slot) => !hasFeeder(slot)) ?? '';
    expect((await tap(page, `slot-${splices}`, `reel-${splices}`)).verdict).toBe('accepted');
    await goOn(page);
    // A dialog over the screen is marked too.
    await page.getByTestId('sign-in').click();
    await page.locator('dialog [data-testid=practice-mark]').waitFor();
    await page.keyboard.press('Escape');
    await end(page);
    await goTo(page, 'load'); // the line says it in a strip of its own
    await expect.poll(() => page.getByTestId('run-chip').textContent()).toBe(run);
    const after = await readLog(page);
    // But for what the watch writes, and where the end of the chain was signed meanwhile.
    const told = (entries: typeof after) =>
      JSON.stringify(
        entries.filter(({ kind }) => kind !== 'warning.raised').map(({ sig: _, ...entry }) => entry),
      );
    expect(told(after)).toBe(told(before));
    await putAway();
  });

  it('lets a warning of the real line through, and leads to it', async () => {
    const { page, putAway } = await openTablet(browser, demo.url);
    await page.getByTestId('warning').waitFor();
    await begin(page);
    await page.getByTestId('practice-real').waitFor();
    await expect.poll(() => page.getByTestId('practice-real').textContent()).toContain('On the real line');
    await page.getByTestId('sign-in').click();
    await page.locator('dialog [data-testid=practice-mark]').getByText('On the real line').waitFor();
    await page.keyboard.press('Escape');
    await end(page);
    await page.getByTestId('warning').waitFor();
    await expect.poll(() => page.getByTestId('screen-line').isVisible()).toBe(true);
    await putAway();
  });
});
