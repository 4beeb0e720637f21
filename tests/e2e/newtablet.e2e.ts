// A new tablet at a plant that runs already: it starts from another tablet's state, says that the history is still to come and
// what that means, and says no more of it when it is here.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { simulateShift } from '../../demo/simulate.ts';
import { createReplica, foldIn, snapshotOf } from '../../shared/floor/replica.ts';
import { entryId } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { giveBootstrap } from '../../src/app/store/bootstrap-handover.ts';
import { packBootstrap } from '../../src/app/store/pack.ts';
import { foldName } from '../../src/app/store/store.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { giveSnapshot } from '../../src/app/sync/snapshot.ts';
import { newTablet, until } from '../src/server/tablets.ts';
import { startBrowser } from './support/browser.ts';
import { chip, joinPlant } from './support/joined.ts';
import { type PlantServer, startServe } from './support/serve.ts';

const shift = [...simulateShift({ seed: 6, hours: 4, startMs: Date.now() - 5 * 3_600_000 }).entries].sort(
  compareEntries,
);

let server: PlantServer;
let browser: Browser;

/** A tablet that wrote the shift, and gave its state to the server. */
async function startPlant(): Promise<void> {
  const old = await newTablet('old', server.url.replace(/\/$/, ''));
  const enrolled = await enrolTablet(old, { code: server.firstCode, name: 'Old' });
  if (!enrolled.ok) throw new Error(enrolled.error.code);
  await old.log.takeIn(shift);
  old.start();
  await until(
    'the shift on the server',
    // The server's own entries stand in the log too.
    () => Number(old.log.memory.cursor?.split('.')[0]) >= shift.length,
    60_000,
  );
  await old.stop();
  const first = createReplica();
  foldIn(first, shift.slice(0, 600));
  const replica = createReplica(snapshotOf(first) ?? undefined);
  foldIn(replica, shift.slice(600));
  // What the server itself has told.
  const has = new Set(shift.map(entryId));
  foldIn(
    replica,
    old.log
      .entries()
      .filter((entry) => !has.has(entryId(entry)))
      .sort(compareEntries),
  );
  const handed = giveBootstrap(foldName, replica, await old.log.heads());
  if (!handed) throw new Error('no bootstrap snapshot to give');
  const snapshots = { fold: foldName, make: async () => packBootstrap(handed), take: async () => false };
  await giveSnapshot({ log: { ...old.log, snapshots }, caller: old.caller, cursor: old.log.memory.cursor });
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
  await startPlant();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('a new tablet', () => {
  it('works at once, and says how much history is still to come', async () => {
    let letGo = () => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const holdHistory = (page: Page) =>
      page.route(/\/api\/pull\?after=0\./, async (route) => {
        await held;
        await route.continue();
      });
    const code = await server.newCode();
    const page = await joinPlant(browser, server.url, { code, name: 'New', before: holdHistory });
    await expect.poll(() => chip(page).getAttribute('data-behind'), { timeout: 60_000 }).not.toBe('no');
    const words = 'Loading history: 0';
    await expect.poll(() => chip(page).textContent()).toContain(words);
    await page.goto(`${server.url}#/plant/server`);
    await expect.poll(() => page.getByTestId('behind').textContent()).toContain(words);
    await page.goto(`${server.url}#/line`);
    await page.getByTestId('runbar').waitFor();
    await page.goto(`${server.url}#/log`);
    await expect.poll(() => page.getByTestId('log-behind').textContent()).toContain(words);
    await page.getByTestId('log-export').click();
    for (const button of ['export-csv', 'export-json', 'check-seals'])
      await expect
        .poll(() => page.getByTestId(button).getAttribute('aria-disabled'), { message: button })
        .toBe('true');
    letGo();
    await expect.poll(() => chip(page).getAttribute('data-behind'), { timeout: 60_000 }).toBe('no');
    await page.getByTestId('log-behind').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByTestId('check-seals').getAttribute('aria-disabled')).toBe('false');
    await page.getByTestId('check-seals').click();
    await page
      .getByText(/All \d+ seals are intact/)
      .first()
      .waitFor();
    await page.context().close();
  });
});
