// A setup with a lift of trays and a feeder of three lanes, as a finger finds it: each tray a place on the map, three of them in turn; the lanes side by
// side on one position; verified by scans, a tray without a feeder, and exchanged for the next one.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { beaconSetup, stickFeeder, traysPut } from '../../demo/trays.ts';
import { endRun, goOn, openAt, ownEntries, reelLabel, scan, scanAll, showSlot } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301' });

/** Ends what is built, and has the line made ready for the setup with trays. */
async function chooseBeacon(page: Page): Promise<void> {
  await endRun(page);
  await openAt(page, '#/plant/setups');
  await page.getByTestId(`choose-${beaconSetup.setup}`).click();
  await page.getByTestId('next-slot').waitFor();
}

const trayLabel = (at: number) => {
  const { reel, part, quantity, lot } = traysPut[at] ?? { reel: '', part: '', quantity: 0, lot: '' };
  return reelLabel({ P: part ?? '', Q: String(quantity), '1T': lot ?? '', '3S': reel });
};
/** Where they stand, in one look: what is above them may still move. */
const boxesOf = async (page: Page, selectors: readonly string[]) => {
  for (const selector of selectors) await page.locator(selector).waitFor();
  return page.evaluate(
    (all) =>
      all.map((selector) => {
        const box = document.querySelector(selector)?.getBoundingClientRect();
        if (box === undefined) throw new TypeError('It must be drawn');
        return { x: box.x, y: box.y, width: box.width };
      }),
    selectors,
  );
};

it('trays of a lift lie above each other on the map, are walked one after the other, and verified without a feeder', async () => {
  await demo.onTablet(async ({ page }) => {
    await chooseBeacon(page);
    await showSlot(page, 'M3-T-001');
    const shown = page.locator('.places.lift button');
    await expect
      .poll(() => shown.evaluateAll((all) => all.map((each) => each.getAttribute('data-slot'))))
      .toEqual(['M3-T-001', 'M3-T-002', 'M3-T-003', 'M3-T-004', 'M3-T-007']);
    const [first, second] = await boxesOf(page, ['[data-slot="M3-T-001"]', '[data-slot="M3-T-002"]']);
    expect(second?.x).toBe(first?.x);
    expect(second?.y).toBeGreaterThan(first?.y ?? Number.NaN);
    await expect.poll(() => page.locator('[data-slot="M3-T-002"]').textContent()).toContain('number 2');
    // Up and down lead along the lift, and off its end to the bank before.
    await page.locator('[data-slot="M3-T-001"]').focus();
    await page.keyboard.press('ArrowDown');
    const focused = () => page.evaluate(() => (document.activeElement as HTMLElement).dataset['slot']);
    await expect.poll(() => focused()).toBe('M3-T-002');
    const { verdict } = await scanAll(page, 'M3-T-001', trayLabel(0));
    expect(verdict).toBe('accepted');
    await goOn(page);
    const wrong = await scanAll(page, 'M3-T-002', trayLabel(3));
    expect(wrong.verdict).toBe('refused');
    await goOn(page);
    await scan(page, 'M3-T-001');
    const next = await scanAll(page, trayLabel(1));
    expect([next.verdict, next.text.includes('No splice')]).toEqual(['accepted', true]);
    const told = await ownEntries(page, 'reel.verified');
    expect(
      told.map(({ payload }) => [payload['slot'], payload['act'], payload['verdict'], payload['comesIn']]),
    ).toEqual([
      ['M3-T-001', 'load', 'accepted', 'tray'],
      ['M3-T-002', 'load', 'refused', 'tray'],
      ['M3-T-001', 'exchange', 'accepted', 'tray'],
    ]);
  });
});

it('lanes of one feeder stand side by side on its position, each verified by its own scan with the same feeder', async () => {
  await demo.onTablet(async ({ page }) => {
    await chooseBeacon(page);
    await showSlot(page, 'M3-R-050-1');
    const frame = page.getByTestId('lanes-50');
    await expect.poll(() => frame.getAttribute('aria-label')).toBe('50 · 3 lanes');
    await expect
      .poll(() => frame.locator('button .head span').allTextContents())
      .toEqual(['50-1', '50-2', '50-3']);
    const lanes = await boxesOf(
      page,
      ['1', '2', '3'].map((lane) => `[data-slot="M3-R-050-${lane}"]`),
    );
    expect(new Set(lanes.map(({ y }) => y)).size).toBe(1);
    const cells = await boxesOf(
      page,
      ['1', '2', '3'].map((lane) => `[data-cell="M3-R-050-${lane}"]`),
    );
    for (const [at, cell] of cells.entries()) {
      const before = cells[at - 1];
      expect(cell.y).toBe(cells[0]?.y);
      if (before) expect(cell.x).toBeGreaterThanOrEqual(before.x + before.width - 1);
    }
    for (const [at, part] of ['51-0612-002', '51-0612-003'].entries()) {
      const label = reelLabel({ P: part, Q: '40', '1T': `LT-39${at}-S`, '3S': `R-39100${at}` });
      const { verdict } = await scanAll(page, `M3-R-050-${at + 1}`, stickFeeder.feeder, label);
      expect(verdict, part).toBe('accepted');
      await goOn(page);
    }
    await showSlot(page, 'M3-R-050-1');
    await expect.poll(() => frame.textContent()).toContain(stickFeeder.feeder);
    const told = await ownEntries(page, 'reel.verified');
    expect(told.map(({ payload }) => [payload['slot'], payload['feeder'], payload['comesIn']])).toEqual([
      ['M3-R-050-1', stickFeeder.feeder, 'tube'],
      ['M3-R-050-2', stickFeeder.feeder, 'tube'],
    ]);
    // Out of the machine the feeder takes both along, in one act and with one way back.
    await page.locator('[data-slot="M3-R-050-1"]').click();
    await page.getByTestId('slot-unload').click();
    await page.getByTestId('unload-whole').click();
    await page.getByTestId('unload-uncounted').click();
    const off = async () => (await ownEntries(page, 'reel.unloaded')).map(({ payload }) => payload['slot']);
    await expect.poll(off).toEqual(['M3-R-050-1', 'M3-R-050-2']);
    await page.getByTestId('notice').getByRole('button').first().click();
    await expect.poll(async () => (await ownEntries(page, 'entry.corrected')).length).toBe(2);
    await expect.poll(() => frame.textContent()).toContain(stickFeeder.feeder);
  });
});
