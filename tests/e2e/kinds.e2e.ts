// What parts come in: a tray counted by a tap on its picture and exchanged, bulk poured over bulk with "either lot" on the trace, a second feeder made
// ready away from the line and put on by one scan, a feeder set aside, a piece cut off.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn, pass } from './support/clock.ts';
import {
  goOn,
  goTo,
  openAt,
  ownEntries,
  reelAct,
  reelLabel,
  scan,
  scanAll,
  showSlot,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

// A slot that the demo leaves empty, with a feeder of its width and another.
const [slot, feeder, second, part] = ['M2-F-023', 'F-0112', 'F-0113', '22-0603-B'] as const;
const label = (reel: string, quantity = '4000') =>
  reelLabel({ P: part, Q: quantity, '1T': `LT-${reel}`, '3S': reel });

async function openSlot(page: Page): Promise<void> {
  await goTo(page, 'load');
  await (await showSlot(page, slot)).click();
  await page.locator('dialog[open]').waitFor();
}

/** Waits until this tablet has written so many entries of a kind: a message that is there may be of the act before. */
async function written(page: Page, kind: string, times: number): Promise<void> {
  await expect.poll(async () => (await ownEntries(page, kind)).length).toBe(times);
}

/** Says what stands on the slot. */
async function packAs(page: Page, kind: string): Promise<void> {
  await openSlot(page);
  await page.getByTestId('slot-pack').click();
  await page.getByTestId(`pack-${kind}`).click();
}

it('a tray is counted by a tap on its next pocket, and the next one is an exchange, no splice', async () => {
  await demo.onTablet(async ({ page }) => {
    await goTo(page, 'load');
    await scanAll(page, slot, feeder, label('R-980001', '80'));
    await goOn(page);
    await packAs(page, 'tray');
    for (const [name, figure] of [
      ['rows', '4'],
      ['columns', '10'],
      ['trays', '2'],
    ] as const)
      await page.getByTestId(`pack-${name}`).fill(figure);
    const picture = page.getByTestId('tray-picture').locator('svg');
    await drawn(page); // with the last figure
    const box = await picture.boundingBox();
    if (!box) throw new TypeError('The tray must be drawn');
    const left = () => page.getByTestId('pack-next').textContent();
    // A key takes one pocket more, from the last of a tray into the tray below.
    await picture.click({ position: { x: (box.width * 9.5) / 10, y: (box.height * 3.5) / 4 } });
    await expect.poll(left).toContain('41 parts left of 80');
    await pass(page, 1000); // an Enter right after a scan is the scanner's own
    await page.getByTestId('tray-picture').press('Enter');
    await expect.poll(left).toContain('40 parts left of 80');
    await page.getByTestId('pack-open').selectOption('1');
    await expect.poll(left).toContain('80 parts left of 80');
    // The third pocket of the second row: 12 are taken before it.
    await picture.click({ position: { x: (box.width * 2.5) / 10, y: (box.height * 1.5) / 4 } });
    await expect.poll(left).toContain('68 parts left of 80');
    await page.getByTestId('pack-save').click();
    await written(page, 'reel.counted', 1);
    const [counted] = await ownEntries(page, 'reel.counted');
    expect(counted?.payload).toMatchObject({ slot, quantity: 68, sd: 0, basis: 'one-by-one' });
    await scan(page, slot);
    const { verdict, text } = await scanAll(page, label('R-980002', '80'));
    expect(verdict).toBe('accepted');
    expect(text).toContain('No splice');
    const verdicts = await ownEntries(page, 'reel.verified');
    expect(verdicts.at(-1)?.payload).toMatchObject({ act: 'exchange', slot, comesIn: 'tray' });
  });
});

it('bulk is poured over bulk: both lots are told until the feeder was emptied out', async () => {
  await demo.onTablet(async ({ page }) => {
    await goTo(page, 'load');
    await scanAll(page, slot, feeder, label('R-980003'));
    await goOn(page);
    await packAs(page, 'bulk');
    await page.getByTestId('pack-save').click();
    await written(page, 'reel.packed', 1);
    await scan(page, slot);
    await scanAll(page, label('R-980004'));
    await goOn(page);
    await openSlot(page);
    await expect
      .poll(() => page.getByTestId('slot-mixed').textContent())
      .toContain('LT-R-980003, LT-R-980004');
    await page.getByTestId('slot-unload').click();
    await page.getByTestId('unload-purged').click();
    await written(page, 'reel.unloaded', 1);
    const [off] = await ownEntries(page, 'reel.unloaded');
    expect(off?.payload).toMatchObject({ slot, purged: true, quantity: 0 });
    const acts = (await ownEntries(page, 'reel.verified')).map(({ payload }) => payload['act']);
    expect(acts).toEqual(['load', 'refill']);
  });
});

it('a second feeder is made ready away from the line and goes on by one scan; one set aside is refused', async () => {
  await demo.onTablet(async ({ page }) => {
    await goTo(page, 'load');
    await scanAll(page, slot, feeder, label('R-980005'));
    await goOn(page);
    await openSlot(page);
    await page.getByTestId('slot-feeder').click();
    await page.getByTestId('feeder-ready').click();
    await page.getByTestId('ready-dialog').waitFor();
    await scan(page, second);
    await scan(page, label('R-980006'));
    await page.getByTestId(`ready-${second}`).waitFor();
    await page.getByTestId('feeder-dialog').getByText('Close').click();
    await openSlot(page);
    await page.getByTestId('slot-use').click();
    const { verdict } = await scanAll(page, second);
    expect(verdict).toBe('accepted');
    const verdicts = await ownEntries(page, 'reel.verified');
    expect(verdicts.at(-1)?.payload).toMatchObject({
      act: 'exchange',
      slot,
      feeder: second,
      reel: 'R-980006',
    });
    await goOn(page);
    await openSlot(page);
    await page.getByTestId('slot-feeder').click();
    await page.getByTestId('feeder-aside').click();
    await page.getByTestId('aside-why').fill('loses parts');
    await page.getByTestId('aside-save').click();
    await page.getByTestId('notice').waitFor();
    await openSlot(page);
    await page.getByTestId('slot-unload').click();
    await page.getByTestId('unload-uncounted').click();
    await written(page, 'reel.unloaded', 1);
    const again = await scanAll(page, slot, second, label('R-980006'));
    expect(again.verdict).toBe('refused');
    expect(again.text).toContain('loses parts');
  });
});

it('a feeder that is due for care is said to be when it is put on, and goes on all the same', async () => {
  const [there, worked, wanted] = ['M1-F-001', 'F-0002', '10-0402-100'] as const;
  await demo.onTablet(
    async ({ page }) => {
      await openAt(page, '#/plant/parts/types');
      await page.getByTestId('care-every').fill('50');
      await page.getByTestId('care-save').click();
      await page.getByTestId(`care-${worked}`).waitFor();
      await goTo(page, 'load');
      await (await showSlot(page, there)).click();
      await page.getByTestId('slot-unload').click();
      await page.getByTestId('unload-uncounted').click();
      await written(page, 'reel.unloaded', 1);
      const reel = reelLabel({ P: wanted, Q: '4000', '1T': 'LT-980021', '3S': 'R-980021' });
      const { verdict, text } = await scanAll(page, there, worked, reel);
      expect(verdict).toBe('accepted');
      expect(text).toContain('Feeder is due for care');
      expect(text).toContain(worked);
      const [told] = (await ownEntries(page, 'reel.verified')).slice(-1);
      expect(told?.payload['reasons']).toMatchObject([{ code: 'feeder-care', feeder: worked, after: 50 }]);
    },
    { badge: 'BADGE-4401' },
  );
});

it('a piece cut off a reel gets an id and a label of its own; the rest keeps what is left', async () => {
  await demo.onTablet(async ({ page }) => {
    await goTo(page, 'stock');
    await scan(page, label('R-980007', '3000'));
    await page.getByTestId('put-new').click();
    await page.getByTestId('put-place').fill('R90-S01');
    await page.getByTestId('put-yes').click();
    await page.getByTestId('reel-search').fill('R-980007');
    await reelAct(page, 'split', 'R-980007');
    await page.getByTestId('split-parts').fill('250');
    await page.getByTestId('split-yes').click();
    await page.getByTestId('label-dialog').waitFor();
    const [cut, packed] = await ownEntries(page, 'reel.split', 'reel.packed');
    expect(cut?.payload).toMatchObject({
      reel: 'R-980007',
      part,
      lot: 'LT-R-980007',
      quantity: 250,
      left: 2750,
    });
    expect(packed?.payload).toMatchObject({ reel: cut?.payload['into'], comesIn: 'cut-tape' });
  });
});
