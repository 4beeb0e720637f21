// Warnings get through: the sound is unlocked by one touch, a late one takes a band of its own, and one that nobody answers is told to whoever
// leads at another line.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { pass } from './support/clock.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { lookAgain, openTablet, ownEntries, scan, steady } from './support/floor.ts';
import { look } from './support/look.ts';

let demo: RunningDemo;
let browser: Awaited<ReturnType<typeof startBrowser>>;
beforeAll(async () => {
  [demo, browser] = await Promise.all([startDemo(['--lines', '3']), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await demo?.stop();
});

/** Lets minutes go by until a warning of this tablet's line is late, then one more for nobody to answer in. */
async function untilLate(page: Page): Promise<void> {
  await expect
    .poll(
      async () => {
        await pass(page, 60_000);
        await page.keyboard.press('Shift'); // somebody is there: nobody is signed out
        const raised = await ownEntries(page, 'warning.raised');
        return raised.some(({ payload }) => payload['level'] === 'late');
      },
      { timeout: 120_000 },
    )
    .toBe(true);
  await pass(page, 60_000);
}

describe('a sound that the browser does not play yet', () => {
  it('is said in the top bar, and one touch there unlocks and plays it', async () => {
    const { page, putAway } = await openTablet(browser, demo.url, { badge: 'BADGE-3301' });
    await page.reload(); // whoever was signed in still is, and has touched nothing yet
    await waitReady(page);
    const locked = page.getByTestId('sound-locked');
    await locked.waitFor();
    await steady(page);
    await look(page, { where: 'sound locked' });
    await locked.click();
    await locked.waitFor({ state: 'detached' });
    await putAway();
  });

  it('is unlocked by the badge that a scanner types, though its keys are kept from the page', async () => {
    const { page, putAway } = await openTablet(browser, demo.url, { badge: 'BADGE-3301' });
    await page.reload();
    await waitReady(page);
    const locked = page.getByTestId('sound-locked');
    await locked.waitFor();
    await scan(page, 'BADGE-2201');
    await locked.waitFor({ state: 'detached' });
    await putAway();
  });
});

describe('a late warning', () => {
  it('takes a band of its own elsewhere, which goes when somebody goes', async () => {
    const { page, putAway } = await openTablet(browser, demo.url, { badge: 'BADGE-3301', hash: '#/load' });
    await untilLate(page);
    const band = page.getByTestId('late');
    await band.waitFor();
    await lookAgain(page); // what the minutes brought has been worked out: the band stays with its slot
    await look(page, { where: 'late, unanswered' });
    const slot = await band.locator('b.code').textContent();
    await page.getByTestId('late-go').click();
    const taken = () => ownEntries(page, 'warning.acknowledged');
    await expect.poll(async () => (await taken()).map(({ payload }) => payload['slot'])).toContain(slot);
    expect((await taken()).every(({ payload }) => payload['level'] === 'late')).toBe(true);
    // Others may be late by now; this one is no more in question.
    await expect
      .poll(async () => (await band.locator('b.code').allTextContents()).includes(slot ?? ''))
      .toBe(false);
    await putAway();
  });

  it('that nobody answers is told to whoever leads at another line, who says that they go', async () => {
    const { page, putAway } = await openTablet(browser, demo.url, { badge: 'BADGE-3301' });
    await untilLate(page);
    await page.locator('.topbar a.whereabouts').click();
    await steady(page);
    await page.getByTestId('line-L3').click();
    await page.getByTestId('screen-line').waitFor();
    await pass(page, 200_000);
    const told = page.getByTestId('unanswered');
    await told.waitFor();
    await expect.poll(() => told.textContent()).toContain('Line 2');
    await steady(page);
    await look(page, { where: 'unanswered elsewhere' });
    const before = (await ownEntries(page, 'warning.acknowledged')).length;
    await page.getByTestId('unanswered-go').click();
    await expect.poll(async () => (await ownEntries(page, 'warning.acknowledged')).length).toBe(before + 1);
    const [entry] = (await ownEntries(page, 'warning.acknowledged')).slice(-1);
    expect(entry?.payload['line']).toBe('L2');
    await putAway();
  });

  it('is not told to an operator of another line', async () => {
    const { page, putAway } = await openTablet(browser, demo.url, { badge: 'BADGE-2201' });
    await untilLate(page);
    await page.locator('.topbar a.whereabouts').click();
    await steady(page);
    await page.getByTestId('line-L3').click();
    await page.getByTestId('screen-line').waitFor();
    await pass(page, 200_000);
    await lookAgain(page);
    expect(await page.getByTestId('unanswered').count()).toBe(0);
    await putAway();
  });
});
