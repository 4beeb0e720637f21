// A tablet serves two lines: both warn on it, a tap and a scan go to the line that they are for, and what is in hand comes along.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JsonObject } from '../../shared/log/entry.ts';
import { startBrowser } from './support/browser.ts';
import { pass } from './support/clock.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import {
  goTo,
  lookAgain,
  openAt,
  openTablet,
  ownEntries,
  readLog,
  reelLabel,
  scan,
  seeVerdict,
  signIn,
  steady,
} from './support/floor.ts';
import { look } from './support/look.ts';

let demo: RunningDemo;
let browser: Awaited<ReturnType<typeof startBrowser>>;
beforeAll(async () => {
  [demo, browser] = await Promise.all([startDemo(['--lines', '2']), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await demo?.stop();
});

/** A tablet of line 2 that serves line 3 too. */
async function onBoth(work: (page: Page) => Promise<void>): Promise<void> {
  const tablet = await openTablet(browser, demo.url);
  const { page } = tablet;
  await openAt(page, '#/plant/tablet');
  await page.getByTestId('also-L3').click();
  await goTo(page, 'line');
  await page.getByTestId('beside-L3').waitFor();
  await work(page);
  await tablet.putAway();
}

const lineOf = (page: Page) => page.locator('.topbar .whereabouts b').textContent();

/** The id of a reel that runs on a line, and its slot, as its last load in the log says. */
async function runningOn(
  page: Page,
  line: string,
  isWanted: (payload: JsonObject) => boolean = () => true,
): Promise<{ reel: string; slot: string; part: string }> {
  const off = new Set<unknown>();
  for (const { kind, payload } of [...(await readLog(page))].reverse()) {
    if (payload['line'] !== line) continue;
    if (kind === 'reel.unloaded') off.add(payload['slot']);
    const { slot, reel, part, verdict } = payload;
    if (kind !== 'reel.verified' || verdict !== 'accepted' || off.has(slot) || !isWanted(payload)) continue;
    if (typeof slot === 'string' && typeof reel === 'string' && typeof part === 'string')
      return { reel, slot, part };
  }
  throw new Error(`No reel runs on ${line}`);
}

describe('a tablet of two lines', () => {
  it('shows the other line in one row, and a tap goes there and back', () =>
    onBoth(async (page) => {
      const row = page.getByTestId('beside-L3');
      await expect.poll(() => row.textContent(), { timeout: 60_000 }).toMatch(/Line 3/);
      await expect.poll(() => row.getAttribute('data-state')).toBe('running');
      await look(page, { where: 'line beside' });
      await steady(page);
      await row.click();
      await expect.poll(() => lineOf(page)).toBe('Line 3');
      await page.getByTestId('runbar').waitFor();
      await steady(page);
      await page.getByTestId('beside-L2').click();
      await expect.poll(() => lineOf(page)).toBe('Line 2');
    }));

  it('raises the warnings of both lines, says which line on other screens, and one tap goes there', () =>
    onBoth(async (page) => {
      const lines = async () =>
        new Set((await ownEntries(page, 'warning.raised')).map(({ payload }) => payload['line']));
      await expect
        .poll(
          async () => {
            await pass(page, 60_000);
            await page.keyboard.press('Shift'); // somebody is there: nobody is signed out
            return (await lines()).size;
          },
          { timeout: 120_000 },
        )
        .toBe(2);
      await goTo(page, 'load');
      const chip = page.getByTestId('warning');
      await chip.waitFor();
      await look(page, { where: 'warned of two lines' });
      await lookAgain(page); // no warning of the other line takes its place before it is pressed
      const [named] = /Line \d/.exec((await chip.textContent()) ?? '') ?? [];
      expect(named).toMatch(/Line [23]/);
      await steady(page);
      await chip.click();
      await page.getByTestId('screen-line').waitFor();
      await expect.poll(() => lineOf(page)).toBe(named);
    }));

  it('takes the scan of a reel to the line on which it runs', () =>
    onBoth(async (page) => {
      const { reel, slot } = await runningOn(page, 'L3');
      await scan(page, reel);
      await expect.poll(() => lineOf(page)).toBe('Line 3');
      const well = page.getByTestId('well-slot');
      await expect.poll(() => well.textContent()).toContain(slot);
      await expect.poll(() => well.textContent()).toContain('Line 3');
      await look(page, { where: 'scanned for the other line' });
    }));

  it('closes the slot that was opened on one line when a scan is for the other', () =>
    onBoth(async (page) => {
      const { reel } = await runningOn(page, 'L3');
      const { slot } = await runningOn(page, 'L2');
      await openAt(page, `#/load/${slot}`);
      const dialog = page.locator('dialog[open]');
      await dialog.waitFor();
      await expect.poll(() => dialog.textContent()).toContain(slot);
      await scan(page, reel);
      await expect.poll(() => lineOf(page)).toBe('Line 3');
      await expect.poll(() => dialog.count()).toBe(0);
    }));

  it('asks which line a slot is on that both have, and keeps the reel in hand', () =>
    onBoth(async (page) => {
      const { slot, part } = await runningOn(page, 'L3');
      await scan(page, reelLabel({ P: part, Q: '900', '1T': 'LOT-TWO', '3S': 'TWO-1' }));
      await page.getByTestId('well-reel').waitFor();
      await scan(page, slot);
      const options = page.getByTestId('which-slot');
      await options.first().waitFor();
      await expect.poll(() => options.allTextContents()).toEqual(['Slot · Line 2', 'Slot · Line 3']);
      await look(page, { where: 'which line' });
      await steady(page);
      await options.last().click();
      await expect.poll(() => lineOf(page)).toBe('Line 3');
      const seen = await Promise.race([
        seeVerdict(page).then(({ text }) => text),
        page
          .getByTestId('well-old-reel')
          .waitFor()
          .then(() => page.getByTestId('dock').textContent()),
      ]);
      expect(seen).toContain('TWO-1');
      const told = (await ownEntries(page, 'reel.verified')).map(({ payload }) => payload['line']);
      expect(told.filter((line) => line !== 'L3')).toEqual([]);
    }));

  it('says on which line a blocked reel stands, and one tap goes there', () =>
    onBoth(async (page) => {
      const lotsOn = async (line: string) =>
        new Set(
          (await readLog(page)).flatMap(({ payload }) => (payload['line'] === line ? [payload['lot']] : [])),
        );
      const here = await lotsOn('L2');
      const { reel } = await runningOn(page, 'L3', ({ lot }) => typeof lot === 'string' && !here.has(lot));
      const lot = (await readLog(page)).find(({ payload }) => payload['reel'] === reel)?.payload['lot'];
      await signIn(page, 'BADGE-3301');
      await openAt(page, '#/plant/parts/blocks');
      await page.getByTestId('block-add').click();
      await page.getByTestId('block-value').fill(String(lot));
      await page.getByTestId('block-reason').fill('Cracked bodies');
      await steady(page);
      await page.getByTestId('block-save').click();
      const banner = page.getByTestId('blocked');
      await banner.waitFor();
      await expect.poll(() => banner.textContent()).toContain('Line 3 · M');
      await look(page, { where: 'blocked on the other line' });
      await steady(page);
      await page.getByTestId('blocked-show').click();
      await expect.poll(() => lineOf(page)).toBe('Line 3');
      await page.getByTestId('blocked-show').waitFor({ state: 'detached' });
      await page.getByTestId('beside-L2').waitFor();
    }));
});
