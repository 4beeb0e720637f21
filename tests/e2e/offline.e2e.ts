// Without a network, with a newer version, with a second window. A network is taken away in three ways, as they differ: the
// browser is told that it is offline; the server is gone while the browser believes to be online; the server takes calls and
// never answers.

import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { drawn, giveClock, pass } from './support/clock.ts';
import { dist, startDemo } from './support/demo.ts';
import {
  expectWhole,
  goOn,
  goTo,
  openAt,
  openTablet,
  ownEntries,
  readLog,
  reelLabel,
  scan,
  scanAll,
} from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';
import { buildVersion, serveVersions } from './support/versions.ts';

const demo = useDemo();
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-versions-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const empty = [
  { slot: 'M2-F-023', feeder: 'F-0112', part: '22-0603-B' },
  { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' },
  { slot: 'M2-R-005', feeder: 'F-0114', part: '10-0603-3R3' },
] as const;

/** Waits until the page says that it can work offline, once a key has unlocked its sound: till then it tells that in the same place. */
async function untilReady(page: Page): Promise<void> {
  await page.keyboard.press('Shift');
  const offline = page.getByTestId('offline');
  await expect.poll(() => offline.getAttribute('data-state'), { timeout: 60_000 }).toBe('ready');
}

async function loadAll(page: Page): Promise<void> {
  for (const [index, place] of empty.entries()) {
    const reel = reelLabel({ P: place.part, Q: '4000', '1T': 'LT-9200-F', '3S': `R-93000${index}` });
    for (const code of [place.slot, place.feeder, reel]) await scan(page, code);
    // The verdict before may be there still.
    await page.locator('[data-verdict=accepted]', { hasText: `R-93000${index}` }).waitFor();
  }
  await goOn(page);
}

/** Something to wait for, opened by hand. */
function gate(): { readonly passed: Promise<void>; readonly open: () => void } {
  let open = () => {};
  const passed = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { passed, open: () => open() };
}

/** Takes calls and never answers. */
function startTarpit(port: number): Promise<Server> {
  const pit = createServer();
  return new Promise((resolve) => pit.listen(port, '127.0.0.1', () => resolve(pit)));
}

describe('without a network', () => {
  it('works after the first visit alone, once it says so: reload, every screen, a whole load', async () => {
    const tablet = await openTablet(demo.browser, demo.url, { hash: '#/load', offlineCopy: true });
    const { page, context } = tablet;
    await untilReady(page);
    const kept = await page.evaluate(async () => {
      const names: string[] = [];
      for (const key of await caches.keys())
        for (const request of await (await caches.open(key)).keys())
          names.push(new URL(request.url).pathname);
      return names;
    });
    // What reads a code, and what draws one on a label.
    expect(kept.filter((name) => /\/zxing_(reader|writer)[^/]*\.wasm$/.test(name))).toHaveLength(2);
    expect(kept.some((name) => /CameraOverlay/.test(name))).toBe(true);

    await context.setOffline(true);
    await page.reload();
    await waitReady(page);
    await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe('147 of 150 slots loaded');
    await loadAll(page);
    await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe('150 of 150 slots loaded');
    await page.getByText('Every slot has its reel.').waitFor();
    for (const screen of ['line', 'change', 'stock', 'log', 'plant']) await goTo(page, screen);
    await page.getByTestId('tile-tablet').click();
    await page.getByText('Ready to work offline').last().waitFor();
    await page.reload();
    await waitReady(page);
    expect((await ownEntries(page, 'reel.verified')).map(({ payload }) => payload['verdict'])).toEqual([
      'accepted',
      'accepted',
      'accepted',
    ]);
    expectWhole(await readLog(page));
    // An address of the server is no page of the app: offline it fails as such.
    const answer = await page.evaluate(() =>
      fetch('/api/hello').then(
        () => 'answered',
        () => 'failed',
      ),
    );
    expect(answer).toBe('failed');
    await context.setOffline(false);
    await tablet.putAway();
  });

  it('does not say that it is ready while its copy is not complete', async () => {
    const context = await demo.browser.newContext();
    const [asked, held] = [gate(), gate()];
    await context.route('**/*.wasm*', async (route) => {
      asked.open();
      await held.passed;
      await route.continue();
    });
    const tablet = await openTablet(demo.browser, demo.url, { context });
    await asked.passed;
    const worker = await tablet.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return { installing: registration?.installing?.state, active: registration?.active?.state };
    });
    expect(worker).toEqual({ installing: 'installing', active: undefined });
    await drawn(tablet.page);
    await expect
      .poll(() => tablet.page.getByTestId('offline').getAttribute('data-state'))
      .toBe('getting-ready');
    held.open();
    await untilReady(tablet.page);
    await tablet.putAway();
    await context.close();
  });

  it.each(['the server is gone', 'the server takes calls and never answers'])(
    'starts and verifies where %s, though the browser believes to be online',
    async (how) => {
      const own = await startDemo();
      const tablet = await openTablet(demo.browser, own.url, { offlineCopy: true });
      const { page } = tablet;
      await untilReady(page);
      await own.stop();
      const pit = how.includes('never') ? await startTarpit(Number(new URL(own.url).port)) : null;
      await page.reload();
      await waitReady(page);
      expect(await page.evaluate(() => navigator.onLine)).toBe(true);
      await loadAll(page);
      expect(await ownEntries(page, 'reel.verified')).toHaveLength(3);
      await tablet.putAway();
      pit?.close();
    },
  );
});

it('says that a part of the page is out of reach, goes on with the rest, and fetches it at a tap', async () => {
  await demo.onTablet(async ({ page, context }) => {
    await context.route('**/Search-*.js', (route) => route.abort());
    await page.getByTestId('open-search').click();
    await page.getByTestId('part-away').waitFor();
    await look(page, { where: 'a part out of reach', axe: true });
    await goTo(page, 'load');
    await page.getByTestId('open-search').click();
    await page.getByTestId('part-away').waitFor();
    await context.unroute('**/Search-*.js');
    await page.getByTestId('part-again').click();
    await page.getByTestId('search-text').waitFor();
  });
});

describe('a first visit', () => {
  it('waits for a server that is slow to answer, as without it there is no plant', async () => {
    const context = await demo.browser.newContext();
    await giveClock(context);
    const page = await context.newPage();
    const [asked, held] = [gate(), gate()];
    await page.route('**/demo/state.json', async (route) => {
      asked.open();
      await held.passed;
      await route.continue();
    });
    await page.goto(`${demo.url}#/load`);
    await asked.passed;
    await pass(page, 10_000);
    held.open();
    await waitReady(page);
    await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe('147 of 150 slots loaded');
    await context.close();
  });
});

describe('a newer version', () => {
  const old = path.join(dist, 'app');

  async function versionOf(page: Page): Promise<string> {
    await openAt(page, '#/plant/tablet');
    const text = await page.getByText(/Version \d/).textContent();
    return /Version ([\d.]+)/.exec(text ?? '')?.[1] ?? '';
  }

  it('is offered where no task is open, moves both windows together, and is never forced', async () => {
    const next = path.join(folder, 'next');
    await buildVersion('0.0.2', next);
    const server = await serveVersions(old, demo.url);
    const context: BrowserContext = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
    const one = await openTablet(demo.browser, server.url, { context });
    await untilReady(one.page);
    const two = await openTablet(demo.browser, server.url, { context, badge: null });
    await untilReady(two.page);
    const first = await versionOf(one.page);
    expect(first).not.toBe('0.0.2');

    server.serve(next);
    await one.page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await one.page.getByTestId('update').waitFor();
    await two.page.getByTestId('update').waitFor();
    // A reload is no consent.
    await one.page.reload();
    await waitReady(one.page);
    expect(await versionOf(one.page)).toBe(first);
    await one.page.getByTestId('update').waitFor();

    // A task is open in the second window: nothing is offered there, and the first is refused.
    await scan(two.page, 'M2-F-023');
    await two.page.getByTestId('update').waitFor({ state: 'detached' });
    await one.page.getByTestId('update').getByRole('button').click();
    await one.page.getByText('It waits until no task is open.').waitFor();
    expect(await versionOf(one.page)).toBe(first);
    await expect.poll(() => two.page.getByTestId('well-slot').textContent()).toContain('M2-F-023');

    // A chunk that was never loaded still comes from the old version's own copy.
    await goTo(one.page, 'log');

    await two.page.getByTestId('dock-clear').click();
    await two.page.getByTestId('update').waitFor();
    const moved = Promise.all([one.page, two.page].map((page) => page.waitForEvent('load')));
    await one.page.getByTestId('update').getByRole('button').click();
    await moved;
    for (const { page } of [one, two]) {
      await waitReady(page);
      expect(await versionOf(page)).toBe('0.0.2');
      expect(await page.getByTestId('update').count()).toBe(0);
    }
    expectWhole(await readLog(one.page));
    await one.putAway();
    await two.putAway();
    await context.close();
    await server.stop();
  });

  it('that takes the database in another window stops this one, which then writes nothing', async () => {
    const context = await demo.browser.newContext();
    const one = await openTablet(demo.browser, demo.url, { context });
    const two = await context.newPage();
    await two.goto(`${demo.url}demo/labels.css`);
    const version = await two.evaluate(
      () =>
        new Promise<number>((resolve, reject) => {
          const opening = indexedDB.open('reelward-demo', 2000);
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            resolve(opening.result.version);
            opening.result.close();
          };
        }),
    );
    expect(version).toBe(2000);
    const fault = one.page.getByTestId('fault');
    await fault.waitFor();
    const before = (await readLog(two)).length; // until here a warning may have been written
    await expect.poll(() => fault.getAttribute('data-fault')).toBe('closed-by-newer');
    await expect.poll(() => fault.textContent()).toContain('A newer version is open in another window');
    await expect.poll(() => fault.textContent()).toContain('All that was accepted is safe');
    for (const code of [empty[0].slot, empty[0].feeder, reelLabel({ P: empty[0].part, Q: '1', '3S': 'R-9' })])
      await scan(one.page, code);
    await drawn(one.page);
    expect(await one.page.getByTestId('verdict').count()).toBe(0);
    expect(await readLog(two)).toHaveLength(before);
    await context.close();
  });
});

describe('a second window', () => {
  it('shows what the first writes, and both keep one whole chain while both write', async () => {
    const context = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
    const one = await openTablet(demo.browser, demo.url, { context });
    const two = await openTablet(demo.browser, demo.url, { context, badge: null, hash: '#/load' });
    await scanAll(
      one.page,
      empty[0].slot,
      empty[0].feeder,
      reelLabel({ P: empty[0].part, Q: '4000', '3S': 'R-940001' }),
    );
    await expect
      .poll(() => two.page.getByTestId('load-progress').textContent())
      .toBe('148 of 150 slots loaded');
    await goOn(one.page);

    // People come and go at both windows at once: every sign-in is an entry.
    const signedIn = async () => (await ownEntries(two.page, 'person.signed-in')).map(({ who }) => who);
    const before = (await signedIn()).length;
    const come = async (page: Page, badges: readonly number[]) => {
      for (const badge of badges) await scan(page, `BADGE-${badge}`);
    };
    await Promise.all([
      come(one.page, [2201, 2202, 2203, 2201, 2202, 2203, 2201, 2202]),
      come(two.page, [2204, 2205, 2206, 2204, 2205, 2206, 2204, 2205]),
    ]);
    await expect.poll(async () => (await signedIn()).length).toBe(before + 16);
    expectWhole(await readLog(one.page));
    await goTo(one.page, 'line');
    await goTo(two.page, 'line');
    const done = async (page: Page) => page.locator('.runbar .panels').textContent();
    await expect.poll(async () => new Set([await done(one.page), await done(two.page)]).size).toBe(1);
    await one.putAway();
    await two.putAway();
    await context.close();
  });
});
