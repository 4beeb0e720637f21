// How long does a store of 20,000 packages hold the page up? The built app in Chromium, its thread six times slower; each act as a finger does it, every
// task of the page's main thread as the browser's trace has it: the list, a search, the places, a pick list. Wanted: none above 50 ms but for what a
// screen costs to draw; baseline in the same run: the same acts in a store of a few hundred. REELWARD_PACKAGES changes the number.

import path from 'node:path';
import type { Browser } from 'playwright-core';
import { peopleOf } from '../../demo/people.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { startBrowser } from '../e2e/support/browser.ts';
import { dist } from '../e2e/support/demo.ts';
import { serveVersions } from '../e2e/support/versions.ts';
import { fillLog, longLog, openOffline, slowDown } from './app-page.ts';
import { printTasks, tasksWhile } from './page-tasks.ts';

const PACKAGES = Number(process.env['REELWARD_PACKAGES'] ?? 20_000);
const FEW = 300;
const SLOWER = 6;

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
  const during = async (name: string, act: () => Promise<unknown>) => {
    const tasks = await tasksWhile(browser, page, async () => {
      await act();
      await page.waitForTimeout(3000);
    });
    printTasks(`  ${name}`, tasks);
  };
  const goTo = (hash: string) =>
    page.evaluate((to) => {
      location.hash = to;
    }, hash);
  await during('what is to be brought, first', async () => {
    await goTo('#/stock');
    await page.getByTestId('stock-bring').waitFor();
  });
  await during('every reel, first', async () => {
    await page.getByTestId('stock-reels').click();
    await page.getByTestId('reel-list').waitFor();
  });
  await during('a letter of a search', () => page.getByTestId('reel-search').fill('L'));
  await during('more letters of it', () => page.getByTestId('reel-search').fill('LT-221'));
  await during('a filter', () => page.getByTestId('reels-filter').selectOption('store'));
  await during('the places, first', async () => {
    await page.getByTestId('stock-store').click();
    await page.getByTestId('store-places').click();
    await page.getByTestId('places').waitFor();
  });
  await during('what is to be brought, again', () => page.getByTestId('stock-bring').click());
  await context.close();
}

const server = await serveVersions(path.join(dist, 'app'), null);
const browser = await startBrowser();
try {
  console.log(`the page's thread, ${SLOWER} times slower; wanted: no task above 50 ms`);
  await measure(browser, server.url, FEW);
  await measure(browser, server.url, PACKAGES);
} finally {
  await browser.close();
  await server.stop();
}
