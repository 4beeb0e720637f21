// How long does a store of 20,000 packages hold the page up? The built app in Chromium, its thread six times slower; each act as a finger does it, every
// task of the page's main thread as the browser's trace has it: the list, a search, the places, a pick list. Wanted: in nineteen
// of twenty times none above 50 ms; baseline in the same run: the same acts in a store of a few hundred. REELWARD_PACKAGES changes the number.

import path from 'node:path';
import type { Browser } from 'playwright-core';
import { peopleOf } from '../../demo/people.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { startBrowser } from '../e2e/support/browser.ts';
import { dist } from '../e2e/support/demo.ts';
import { openAt } from '../e2e/support/floor.ts';
import { serveVersions } from '../e2e/support/versions.ts';
import { fillLog, longLog, openOffline, slowDown, spread } from './app-page.ts';
import { printTasks, tasksWhile } from './page-tasks.ts';

const PACKAGES = Number(process.env['REELWARD_PACKAGES'] ?? 20_000);
const FEW = 300;
const SLOWER = 6;
/** How often each act is done: the first time its screen's code is fetched and drawn too. */
const ROUNDS = Number(process.env['REELWARD_ROUNDS'] ?? 20);

/** The log of a line that builds, and so many packages put into its store after it. */
function storeLog(packages: number, nowMs: number): readonly Entry[] {
  const line = longLog({ entries: 1500, slots: 120, nowMs });
  let hlc = line.at(-1)?.hlc ?? null;
  let prev = firstPrev;
  const put = Array.from({ length: packages }, (_, at): Entry => {
    hlc = tickClock(hlc, nowMs - 40_000);
    const entry = sealEntry({
      v: 1,
      tablet: 'bench-store',
      epoch: 'bench-store',
      seq: at + 1,
      at: new Date(hlc.ms).toISOString().replace('Z', '+00:00'),
      hlc,
      who: peopleOf('operator')[0]?.person ?? null,
      kind: 'reel.put',
      payload: {
        reel: `BS-${at}`,
        part: `BW-${1000 + (at % 800)}`,
        supplierPart: null,
        quantity: 1000 + (at % 4000),
        lot: `LT-${at % 4000}`,
        dateCode: `25${String(1 + (at % 52)).padStart(2, '0')}`,
        place: `S${at % 90}-${at % 40}`,
        via: 'wedge',
      },
      prev,
    });
    prev = entry.hash;
    return entry;
  });
  return [...line, ...put];
}

async function measure(browser: Browser, url: string, packages: number): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await openOffline(context, url);
  await fillLog(page, storeLog(packages, Date.now()));
  await page.reload();
  await page.getByTestId('runbar').waitFor({ timeout: 180_000 });
  await page.waitForTimeout(12_000); // the snapshot is kept and the store put in order while nothing else is to be done
  await slowDown(page, SLOWER);
  console.log(`\n${packages} packages`);
  const longest = new Map<string, number[]>();
  const during = async (name: string, act: () => Promise<unknown>) => {
    const tasks = await tasksWhile(browser, page, async () => {
      await act();
      await page.waitForTimeout(2000);
    });
    if (!longest.has(name)) printTasks(`  ${name}, first`, tasks);
    longest.set(name, [...(longest.get(name) ?? []), Math.max(...tasks.map(({ busy }) => busy))]);
  };
  // A finger presses and lets go: a click of the driver is one task, and its own looking for what is hit is in it.
  const tap = async (testId: string) => {
    const box = await page.getByTestId(testId).boundingBox();
    if (!box) throw new Error(`Cannot tap ${testId} as it must be on the page`);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.waitForTimeout(80);
    await page.mouse.up();
  };
  const search = (text: string) => page.getByTestId('reel-search').fill(text);
  await openAt(page, '#/stock');
  for (let round = 0; round < ROUNDS; round++) {
    await during('what is to be brought', async () => {
      await tap('stock-bring');
      await page.getByTestId('pick-list').or(page.locator('main .empty')).first().waitFor();
    });
    await during('every reel', async () => {
      await tap('stock-reels');
      await page.getByTestId('reel-list').waitFor();
    });
    await during('a letter of a search', () => search('L'));
    await during('more letters of it', () => search('LT-221'));
    await during('the search cleared', () => search(''));
    await during('a filter', () => page.getByTestId('reels-filter').selectOption('store'));
    await during('the places', async () => {
      await tap('stock-store');
      await page.getByTestId('store-places').waitFor();
      await tap('store-places');
      await page.getByTestId('places').waitFor();
    });
  }
  for (const [name, each] of longest)
    console.log(`  ${name.padEnd(30)} longest task by the processor: ${spread(each)}`);
  await context.close();
}

const server = await serveVersions(path.join(dist, 'app'), null);
const browser = await startBrowser();
try {
  console.log(`the page's thread, ${SLOWER} times slower; wanted: p95 of the longest tasks at most 50 ms`);
  await measure(browser, server.url, FEW);
  await measure(browser, server.url, PACKAGES);
} finally {
  await browser.close();
  await server.stop();
}
