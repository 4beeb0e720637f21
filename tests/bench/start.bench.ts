// How long does a warm start without a network take, on a slow tablet with a long log? The page's thread is slowed down six times,
// the network is off, and the time runs from the navigation until the line's first screen stands and takes scans.
// Baselines in the same run: the same start with an empty log, and the start that has no snapshot and must fold the whole log.

import path from 'node:path';
import type { Page } from 'playwright-core';
import { startBrowser } from '../e2e/support/browser.ts';
import { dist } from '../e2e/support/demo.ts';
import { serveVersions } from '../e2e/support/versions.ts';
import { fillLog, longLog, openOffline, percentile, slowDown, spread } from './app-page.ts';

const ENTRIES = Number(process.env['REELWARD_ENTRIES'] ?? 50_000);
const STARTS = Number(process.env['REELWARD_TIMES'] ?? 12);
const SLOWER = 6;

/** Starts the page again and tells the moments, in ms after the navigation: taking scans, and the screen's content too. */
async function start(page: Page): Promise<{ ready: number; content: number }> {
  await page.reload();
  await page.waitForFunction(() => (globalThis as { stood?: number }).stood !== undefined, undefined, {
    timeout: 180_000,
  });
  return page.evaluate(() => {
    const scope = globalThis as unknown as { ready: number; stood: number };
    return { ready: scope.ready, content: scope.stood };
  });
}

/** Notes the moments inside the page, so that the bench's own calls do not count. */
const noteMoments = `
  new MutationObserver(() => {
    if (globalThis.ready === undefined && document.documentElement.dataset.ready) globalThis.ready = performance.now();
    if (globalThis.stood === undefined && globalThis.ready !== undefined && document.querySelector('[data-testid=runbar], main .empty'))
      globalThis.stood = performance.now();
  }).observe(document, { childList: true, subtree: true, attributes: true });
`;

async function measure(label: string, page: Page): Promise<number> {
  const times: number[] = [];
  const ready: number[] = [];
  for (let n = 0; n < STARTS; n++) {
    const moment = await start(page);
    times.push(moment.content);
    ready.push(moment.ready);
  }
  console.log(`${label}: screen stands ${spread(times)}; takes scans ${spread(ready)}`);
  return percentile(times, 0.5);
}

const server = await serveVersions(path.join(dist, 'app'), null);
const browser = await startBrowser();
try {
  console.log(
    `warm start, network off, page ${SLOWER} times slower; target <= 1000 ms with ${ENTRIES} entries`,
  );
  const bare = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await bare.addInitScript(noteMoments);
  const emptyPage = await openOffline(bare, server.url);
  await bare.setOffline(true);
  await slowDown(emptyPage, SLOWER);
  await start(emptyPage);
  const empty = await measure('baseline, empty log', emptyPage);
  await bare.close();

  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(noteMoments);
  const page = await openOffline(context, server.url);
  const log = longLog({ entries: ENTRIES, slots: null, nowMs: Date.now() });
  await fillLog(page, log);
  await context.setOffline(true);
  await slowDown(page, SLOWER);
  const { content: whole } = await start(page);
  console.log(`baseline, whole log folded (${log.length} entries): ${whole.toFixed(0)} ms (once)`);
  await page.waitForTimeout(8000); // the snapshot is kept while nothing else is to be done
  const warm = await measure(`${log.length} entries`, page);
  console.log(
    `ratio to the empty log ${(warm / empty).toFixed(2)}, to the whole fold ${(warm / whole).toFixed(3)}`,
  );
} finally {
  await browser.close();
  await server.stop();
}
