// A tablet left alone: after the line's minutes nobody is signed in any more, what was in hand is still there, and what was open goes on
// for who left it alone. The page's own clock is moved, nobody waits.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { pass } from './support/clock.ts';
import { goTo, ownEntries, pad, scan, signIn, type Tablet } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const minuteMs = 60_000;

/** On a tablet whose clock a test can set. */
async function onTabletOf(badge: string, work: (tablet: Tablet) => Promise<void>, hash = ''): Promise<void> {
  const context = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(() => {
    const wall = Date.now.bind(Date);
    Date.now = () => wall() + Number(localStorage.getItem('test-off') ?? 0);
  });
  await demo.onTablet(work, { badge, hash, context });
  await context.close();
}

/** Somebody sets the tablet's clock back an hour. */
async function setBackAnHour(page: Page): Promise<void> {
  await page.evaluate(() =>
    localStorage.setItem('test-off', String(Number(localStorage.getItem('test-off') ?? 0) - 3_600_000)),
  );
}

const signedIn = (page: Page) => page.getByTestId('sign-in').textContent();

it('a lead is signed out after thirty minutes without a touch, and half a scan stays in hand', () =>
  onTabletOf('BADGE-3301', async ({ page }) => {
    await goTo(page, 'load');
    await scan(page, 'M2-F-023');
    await page.getByText('scan the feeder').waitFor();
    await pass(page, 29 * minuteMs);
    await expect.poll(() => signedIn(page)).toContain('Morag');
    await pass(page, 1.5 * minuteMs);
    await expect.poll(() => signedIn(page)).toContain('Sign in');
    await expect
      .poll(() => page.getByTestId('notice').textContent())
      .toContain('Morag was signed out: 30 minutes');
    await expect.poll(() => page.getByText('M2-F-023').first().isVisible()).toBe(true);
    await page.getByText('scan the feeder').waitFor();
    await expect
      .poll(async () => (await ownEntries(page, 'person.signed-out'))[0]?.payload)
      .toEqual({ person: 'p-3301', why: 'idle' });
  }));

it('with the clock set back an hour the minutes count all the same, also over a reload', () =>
  onTabletOf('BADGE-3301', async ({ page }) => {
    await setBackAnHour(page);
    await expect.poll(() => signedIn(page)).toContain('Morag');
    await pass(page, 31 * minuteMs);
    await expect.poll(() => signedIn(page)).toContain('Sign in');
    await signIn(page, 'BADGE-3301');
    await setBackAnHour(page);
    await page.reload();
    await waitReady(page);
    await expect.poll(() => signedIn(page)).toContain('Sign in');
  }));

it('what an engineer had begun comes back for the engineer, and a confirmed lead confirms again', () =>
  onTabletOf(
    'BADGE-4401',
    async ({ page }) => {
      await page.getByTestId('rule-walkSeconds').fill('77');
      await pass(page, 31 * minuteMs);
      await page.getByTestId('plant-gate').waitFor();
      await expect.poll(() => page.getByTestId('plant-gate').textContent()).toContain('is kept');
      expect(await page.getByTestId('rule-walkSeconds').isVisible()).toBe(false);
      await signIn(page, 'BADGE-4401');
      await expect.poll(() => page.getByTestId('rule-walkSeconds').inputValue()).toBe('77');

      await signIn(page, 'BADGE-3301');
      await goTo(page, 'change');
      await page.getByTestId('plan-greenhouse-node-top-F').click();
      await page.getByTestId('last-panel').click();
      await page.getByTestId('last-panel-yes').click();
      await page.getByTestId('release').click();
      await scan(page, 'BADGE-3301');
      await pad(page, '3301');
      await page.getByTestId('release-reason').fill('Half a reason');
      await pass(page, 31 * minuteMs);
      await page.getByTestId('away').waitFor();
      await scan(page, 'BADGE-3301');
      await page.getByTestId('away').waitFor({ state: 'detached' });
      await page.getByTestId('release-yes').waitFor({ state: 'detached' });
      await scan(page, 'BADGE-3301');
      await pad(page, '3301');
      await expect.poll(() => page.getByTestId('release-reason').inputValue()).toBe('Half a reason');

      // For anybody else it is closed.
      await pass(page, 31 * minuteMs);
      await page.getByTestId('away').waitFor();
      await scan(page, 'BADGE-2201');
      await page.locator('dialog').waitFor({ state: 'detached' });
      await expect.poll(() => signedIn(page)).toContain('Ailsa');
    },
    '#/plant/rules',
  ));

it('the minutes are the line’s own, and never none', () =>
  onTabletOf(
    'BADGE-4401',
    async ({ page }) => {
      await page.getByTestId('rule-idleMinutes').fill('0');
      await page.getByTestId('rules-save').click();
      await expect.poll(() => page.getByTestId('rules-wrong').textContent()).toContain('from 1 to');
      await page.getByTestId('rule-idleMinutes').fill('5');
      await pass(page, 500); // a second press of the button counts again
      await page.getByTestId('rules-save').click();
      await expect.poll(async () => (await ownEntries(page, 'line.idle-ruled')).length).toBe(1);
      await pass(page, 5.5 * minuteMs);
      await expect.poll(() => signedIn(page)).toContain('Sign in');
    },
    '#/plant/rules',
  ));
