// The tablet's storage against the world: full, cleared behind the app's back, its clock set back. What was accepted stays, and
// no entry's name is ever used twice.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { chromiumPath, quietSwitches, waitReady } from './support/browser.ts';
import { giveClock } from './support/clock.ts';
import {
  expectWhole,
  goOn,
  goTo,
  openTablet,
  ownEntries,
  readLog,
  reelLabel,
  scan,
  scanAll,
  signIn,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const load = (n: number) => reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9500-J', '3S': `R-98000${n}` });

/** Entries without the signature that a head carries until a later head is signed. */
const withoutHeads = (entries: readonly Entry[]) => entries.map((entry) => ({ ...entry, sig: null }));

it('stops visibly when the tablet is full; all that was accepted is there afterwards', async () => {
  const tablet = await openTablet(demo.browser, demo.url, { offlineCopy: true });
  const { page, context } = tablet;
  await scanAll(page, 'M2-F-023', 'F-0112', load(1));
  await goOn(page);
  await page.locator('[data-testid=offline][data-state=ready]').waitFor({ timeout: 120_000 });
  const before = await ownEntries(page);
  const session = await context.newCDPSession(page);
  const origin = new URL(demo.url).origin;
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await page.reload();
  await waitReady(page);
  // The browser goes by an older look at its quota for small writes, so that it takes some until the wall is met.
  const fault = page.getByTestId('fault');
  const until = Date.now() + 75_000;
  for (let n = 1; Date.now() < until && (await fault.count()) === 0; n++) {
    await scan(page, `BADGE-220${1 + (n % 6)}`);
  }
  for (const code of ['M2-F-026', 'F-0113', reelLabel({ P: '25-0023-113', Q: '3000', '3S': 'R-980009' })])
    await scan(page, code);
  await fault.waitFor();
  await expect.poll(() => fault.getAttribute('data-fault')).toBe('disk-full');
  await expect.poll(() => fault.textContent()).toContain('This tablet is full');
  await expect.poll(() => fault.textContent()).toContain('All that was accepted is safe');
  expect(await page.getByTestId('verdict').count()).toBe(0);
  const full = await ownEntries(page);
  expect(withoutHeads(full).slice(0, before.length)).toEqual(withoutHeads(before));
  expect(full.filter(({ kind }) => kind === 'reel.verified')).toHaveLength(1);

  await session.send('Storage.overrideQuotaForOrigin', { origin });
  await fault.getByRole('button', { name: 'Try again' }).click();
  await page.waitForSelector('[data-testid=dock]');
  await waitReady(page);
  const reel = reelLabel({ P: '25-0023-113', Q: '3000', '3S': 'R-980009' });
  expect((await scanAll(page, 'M2-F-026', 'F-0113', reel)).verdict).toBe('accepted');
  expect(withoutHeads(await ownEntries(page)).slice(0, full.length)).toEqual(withoutHeads(full));
  expectWhole(await readLog(page));
  await tablet.putAway();
});

it('goes on in order after its clock was set back a day', async () => {
  const context = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(() => {
    const real = Date.now.bind(Date);
    Date.now = () => real() + Number(localStorage.getItem('test-clock-off') ?? 0);
  });
  const { page, putAway } = await openTablet(demo.browser, demo.url, { context });
  await scanAll(page, 'M2-F-023', 'F-0112', load(2));
  await page.evaluate(() => localStorage.setItem('test-clock-off', String(-86_400_000)));
  await page.reload();
  await waitReady(page);
  // Nobody can tell how long the tablet lay there.
  await signIn(page, 'BADGE-2201');
  const seen = await scanAll(
    page,
    'M2-F-026',
    'F-0113',
    reelLabel({ P: '25-0023-113', Q: '3000', '3S': 'R-980010' }),
  );
  expect(seen.verdict).toBe('accepted');
  await goOn(page);
  const log = await readLog(page);
  expectWhole(log);
  const [first, second] = log.filter(
    ({ kind, tablet }) => kind === 'reel.verified' && !tablet.startsWith('demo0'),
  );
  // The wall clock is told as it was read; the order is not taken from it.
  expect(Date.parse(second?.at ?? '')).toBeLessThan(Date.parse(first?.at ?? '') - 86_000_000);
  expect(second?.seq).toBeGreaterThan(first?.seq ?? 0);
  // A warning, which the tablet writes by itself, may have come since.
  expect(log.filter(({ kind }) => kind !== 'warning.raised').at(-1)?.payload['reel']).toBe('R-980010');
  await goTo(page, 'load');
  await expect.poll(() => page.getByTestId('load-progress').textContent()).toBe('149 of 150 slots loaded');
  await putAway();
  await context.close();
});

it('gives a database that was deleted behind its back a new life, tells the old one, and uses no name twice', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-wiped-'));
  const open = async () => {
    const context = await chromium.launchPersistentContext(folder, {
      executablePath: chromiumPath(),
      args: [...quietSwitches],
    });
    await giveClock(context);
    return context;
  };
  const first = await open();
  const page = first.pages()[0] ?? (await first.newPage());
  page.setDefaultTimeout(60_000);
  await page.goto(demo.url);
  await waitReady(page);
  await signIn(page, 'BADGE-2201');
  await scanAll(page, 'M2-F-023', 'F-0112', load(3));
  // The app is left: nothing is written between this look and the end.
  await page.goto(`${demo.url}demo/labels.css`);
  const before = await ownEntries(page);
  const last = before.at(-1);
  await first.close();
  await rm(path.join(folder, 'Default', 'IndexedDB'), { recursive: true });

  const second = await open();
  const again = second.pages()[0] ?? (await second.newPage());
  again.setDefaultTimeout(60_000);
  await again.goto(demo.url);
  await waitReady(again);
  const after = await ownEntries(again);
  const [opened] = after;
  expect(opened).toMatchObject({
    kind: 'tablet.opened',
    tablet: last?.tablet,
    seq: 1,
    payload: { previous: { epoch: last?.epoch, seq: last?.seq } },
  });
  expect(opened?.epoch).not.toBe(last?.epoch);
  const nameOf = ({ tablet, epoch, seq }: { tablet: string; epoch: string; seq: number }) =>
    `${tablet}/${epoch}/${seq}`;
  const names = new Set(before.map(nameOf));
  expect(after.filter((entry) => names.has(nameOf(entry)))).toEqual([]);
  expectWhole(await readLog(again));
  await second.close();
  await rm(folder, { recursive: true, force: true });
});
