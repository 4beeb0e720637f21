// How long from the scan to the verdict? From the scanner's last key to the frame that shows the verdict, its entry durable by
// then (strict), on a page slowed down six times, with a log of weeks and a setup of 240 slots, running and forecast.
// Baseline in the same run: one row written durably in the same slowed page and nothing else, the least that any verdict costs.

import path from 'node:path';
import type { Page } from 'playwright-core';
import { startBrowser, waitReady } from '../e2e/support/browser.ts';
import { dist } from '../e2e/support/demo.ts';
import { reelLabel, scan, scannerKeys, signIn } from '../e2e/support/floor.ts';
import { serveVersions } from '../e2e/support/versions.ts';
import { fillLog, longLog, openOffline, percentile, slowDown, spread, wideSlots } from './app-page.ts';

const ENTRIES = Number(process.env['REELWARD_ENTRIES'] ?? 20_000);
const SLOTS = 240;
const TIMES = Number(process.env['REELWARD_TIMES'] ?? 60);
const SLOWER = 6;
/** A USB keyboard reports a key each 8 ms at full speed, a fast scanner each 2 ms. */
const KEY_GAP_MS = 2;

interface Moments {
  keyMs: number;
  shownMs: number | null;
}

/** Notes the last key and the frame in which a verdict stands, inside the page. */
async function noteMoments(page: Page): Promise<void> {
  await page.evaluate(() => {
    const moments: Moments = { keyMs: 0, shownMs: null };
    (globalThis as unknown as { moments: Moments }).moments = moments;
    addEventListener(
      'keydown',
      (event) => {
        moments.keyMs = event.timeStamp;
      },
      true,
    );
    new MutationObserver(() => {
      const band = document.querySelector('[data-testid=verdict]');
      if (!band) moments.shownMs = null;
      if (!band || moments.shownMs !== null) return;
      moments.shownMs = Number.NaN; // one frame is asked for
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => {
          moments.shownMs = performance.now();
        };
        channel.port2.postMessage(null); // comes after the frame was drawn
      });
    }).observe(document, { childList: true, subtree: true });
  });
}

/** A scan whose keys come when a scanner sends them. */
async function scanAtPace(page: Page, text: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const sent: Promise<unknown>[] = [];
  for (const strokes of scannerKeys(text)) {
    for (const stroke of strokes) sent.push(session.send('Input.dispatchKeyEvent', stroke));
    await new Promise((resolve) => setTimeout(resolve, KEY_GAP_MS));
  }
  await Promise.all(sent);
  await session.detach();
}

async function verdictTime(page: Page, codes: readonly string[]): Promise<number> {
  for (const code of codes.slice(0, -1)) await scan(page, code);
  await page.waitForTimeout(150); // the hand turns the reel
  await scanAtPace(page, codes.at(-1) ?? '');
  await page.waitForFunction(() => {
    const { shownMs } = (globalThis as unknown as { moments: Moments }).moments;
    return shownMs !== null && !Number.isNaN(shownMs);
  });
  const took = await page.evaluate(() => {
    const { keyMs, shownMs } = (globalThis as unknown as { moments: Moments }).moments;
    return (shownMs ?? Number.NaN) - keyMs;
  });
  const verdict = await page.getByTestId('verdict').getAttribute('data-verdict');
  if (verdict !== 'accepted')
    throw new Error(`Cannot time as the verdict must be accepted: current value is ${verdict}`);
  await page.getByTestId('verdict-go-on').click();
  await page.getByTestId('verdict').waitFor({ state: 'detached' });
  return took;
}

/** Times of a bare durable write in the page. */
async function bareWrites(page: Page): Promise<readonly number[]> {
  return page.evaluate(async (times) => {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('bench-floor', 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore('rows', { autoIncrement: true });
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const took: number[] = [];
    for (let n = 0; n < times; n++) {
      const from = performance.now();
      await new Promise<void>((resolve, reject) => {
        const writing = db.transaction('rows', 'readwrite', { durability: 'strict' });
        writing.objectStore('rows').add({ text: 'x'.repeat(900) });
        writing.oncomplete = () => resolve();
        writing.onerror = () => reject(writing.error);
      });
      took.push(performance.now() - from);
    }
    db.close();
    return took;
  }, TIMES);
}

const server = await serveVersions(path.join(dist, 'app'), null);
const browser = await startBrowser();
try {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await openOffline(context, server.url);
  const log = longLog({ entries: ENTRIES, slots: SLOTS, nowMs: Date.now() });
  await fillLog(page, log);
  await page.reload();
  await waitReady(page);
  await signIn(page, 'BADGE-2201');
  await page.getByTestId('runbar').waitFor();
  await page.waitForTimeout(5000); // the snapshot is kept
  await slowDown(page, SLOWER);
  await noteMoments(page);
  const slots = wideSlots(SLOTS);
  const splices: number[] = [];
  for (const [index, slot] of slots.slice(0, TIMES).entries()) {
    const label = reelLabel({ P: slot.part, Q: '5000', '1T': `LN-${index}`, '3S': `RN-${index}` });
    splices.push(await verdictTime(page, [slot.slot, label]));
  }
  const bare = await bareWrites(page);
  console.log(
    `log ${log.length} entries, setup ${SLOTS} slots, page ${SLOWER} times slower; target p95 <= 100 ms`,
  );
  console.log(`scan to verdict, entry durable: ${spread(splices)}`);
  console.log(`baseline, a bare durable write: ${spread(bare)}`);
  console.log(`ratio of the medians ${(percentile(splices, 0.5) / percentile(bare, 0.5)).toFixed(1)}`);
} finally {
  await browser.close();
  await server.stop();
}
