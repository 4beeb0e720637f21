// A second plant from the file of the first: named, saved at one tablet, told clearly where it is no such file, and begun from at another.

import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { drawn, giveClock } from './support/clock.ts';
import { press, tapOn } from './support/finger.ts';
import { expectWhole, readLog } from './support/floor.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let browser: Browser;
let server: PlantServer;
beforeAll(async () => {
  [browser, server] = await Promise.all([startBrowser(), startServe()]);
});
afterAll(async () => {
  await Promise.all([browser.close(), server.stop()]);
});

async function tablet(hash: string, size = { width: 1280, height: 800 }): Promise<Page> {
  const context = await browser.newContext({ viewport: size, acceptDownloads: true });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(`${server.url}${hash}`);
  await waitReady(page);
  return page;
}

async function give(page: Page, name: string, content: string): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(content) };
  await page.getByTestId('plant-file').setInputFiles(file);
  await drawn(page);
}

/** A plant with a name and one line, as its file. */
async function firstPlant(): Promise<string> {
  const page = await tablet('#/plant/begin');
  await page.getByTestId('plant-name').fill('Fell Works');
  await press(page, 'plant-save');
  await expect.poll(() => page.getByTestId('step-plant').getAttribute('data-state')).toBe('done');
  await page.goto(`${server.url}#/plant/lines`);
  await page.getByTestId('bank-first-1').fill('M1-F-001');
  await page.getByTestId('bank-last-1').fill('M1-F-025');
  await press(page, 'line-add-bank');
  await page.getByTestId('bank-first-2').fill('M1-T-001');
  await page.getByTestId('bank-last-2').fill('M1-T-004');
  await press(page, 'bank-trays-2');
  await press(page, 'line-save');
  await page.getByTestId('line-L1').waitFor();
  await expect.poll(() => page.getByTestId('line-L1').textContent()).toContain('trays');
  await page.goto(`${server.url}#/plant/this`);
  await page.getByTestId('plant-form').waitFor();
  await look(page, { where: 'this plant' });
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'plant-file-save')]);
  expect(download.suggestedFilename()).toBe('reelward-plant-Fell-Works.json');
  const text = await readFile(await download.path(), 'utf8');
  await page.context().close();
  return text;
}

it('begins from the file of another plant, with its lines and rules and none of its people', async () => {
  const text = await firstPlant();
  const page = await tablet('#/plant/begin', { width: 800, height: 1280 });
  await tapOn(page, page.getByRole('link', { name: 'Begin from another plant’s file' }));
  await page.getByTestId('plant-begin').waitFor();
  await give(page, 'notes.txt', 'hello');
  await expect.poll(() => page.getByTestId('plant-file-fault').textContent()).toContain('not a plant’s file');
  await look(page, { where: 'a file that is none' });
  await give(page, 'plant.json', text.replace('"zone": "', '"zoned": "'));
  await expect.poll(() => page.getByTestId('plant-file-fault').textContent()).toContain('is damaged');
  expect((await readLog(page, 'reelward-log')).filter(({ kind }) => kind === 'line.defined')).toEqual([]);
  await give(page, 'plant.json', text);
  await expect.poll(() => page.getByTestId('plant-file-brings').textContent()).toContain('Fell Works');
  await expect.poll(() => page.getByTestId('plant-file-brings').textContent()).toContain('Slots: 29');
  await look(page, { where: 'what a file brings' });
  await press(page, 'plant-file-take');
  await expect.poll(() => page.getByTestId('step-line').getAttribute('data-state')).toBe('done');
  // The name is not the other plant's.
  await expect.poll(() => page.getByTestId('step-plant').getAttribute('data-state')).toBe('next');
  const log = await readLog(page, 'reelward-log');
  const told = log.find(({ kind }) => kind === 'line.defined')?.payload;
  expect(told).toMatchObject({ line: 'L1', machines: [{ banks: [{ positions: 25 }, { holds: 'trays' }] }] });
  expect(log.some(({ kind }) => kind.startsWith('person.'))).toBe(false);
  expectWhole(log);
  // Once there are lines, no file is laid over them.
  await page.goto(`${server.url}#/plant/this`);
  await page.getByTestId('plant-form').waitFor();
  expect(await page.getByTestId('plant-file').count()).toBe(0);
  await page.context().close();
});
