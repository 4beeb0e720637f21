// Supplier parts, feeders and blocks kept on a tablet of the demo plant, and what the line makes of them; the scanner's own test.

import { expect, it } from 'vitest';
import { fullCalibration, stripedCalibration } from '../../src/app/scan/calibration.ts';
import {
  goOn,
  goTo,
  ownEntries,
  readLog,
  reelLabel,
  scan,
  scanAll,
  type Tablet,
  type TabletOptions,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

const onTablet = (options: TabletOptions, work: (tablet: Tablet) => Promise<void>) =>
  demo.onTablet(work, options);

const slot = 'M2-F-023';
const feeder = 'F-0112';
const part = '22-0603-B';
const supplierLabel = (reel: string) =>
  reelLabel({ '1P': 'NEW-SUP-77', Q: '4000', '1T': 'LT-9300', '3S': reel });

it('a supplier part is approved by scanning it; where the product has a list of makers, a lead still decides', async () => {
  await onTablet({ hash: '#/plant/parts' }, async ({ page }) => {
    await scan(page, supplierLabel('R-970001'));
    await expect.poll(() => page.getByTestId('search').inputValue()).toBe('NEW-SUP-77');
    await page.getByTestId('search').fill('');
    await page.getByTestId('approve-add').click();
    await scan(page, supplierLabel('R-970001'));
    await expect.poll(() => page.getByTestId('approve-supplier').inputValue()).toBe('NEW-SUP-77');
    await page.getByTestId('approve-part').fill(part);
    await page.getByTestId('approve-save').click();
    await page.getByTestId('approve-save').waitFor({ state: 'detached' });
    await goTo(page, 'load');
    // The demo's setups list two makers for each part: what is approved by hand is for products that list none.
    const seen = await scanAll(page, slot, feeder, supplierLabel('R-970002'));
    expect(seen.verdict).toBe('held');
    expect(seen.text).toContain('not on this product’s list');
  });
});

it('a lot is blocked by scanning it and is refused from then on, until a lead lifts the block', async () => {
  await onTablet({ badge: 'BADGE-3301', hash: '#/plant/parts/blocks' }, async ({ page }) => {
    const label = (reel: string) => reelLabel({ P: part, Q: '4000', '1T': 'LT-9400', '3S': reel });
    await page.getByTestId('block-add').click();
    await scan(page, label('R-970010'));
    await expect.poll(() => page.getByTestId('block-value').inputValue()).toBe('LT-9400');
    await page.getByTestId('block-reason').fill('Terminations look dull');
    await page.getByTestId('block-save').click();
    await page.getByTestId('block-LT-9400').waitFor();
    await goTo(page, 'load');
    const seen = await scanAll(page, slot, feeder, label('R-970011'));
    expect(seen.verdict).toBe('refused');
    expect(seen.text).toContain('Terminations look dull');
    await goOn(page);
    await page.goto(`${demo.url}#/plant/parts/blocks`);
    await page.getByTestId('lift-LT-9400').click();
    await page.getByTestId('why').fill('Checked under the lens');
    await page.getByTestId('why-done').click();
    await page.getByTestId('block-LT-9400').waitFor({ state: 'detached' });
    const [released] = await ownEntries(page, 'material.released');
    expect(released?.payload).toMatchObject({ reason: 'Checked under the lens', by: 'p-3301' });
  });
});

it('feeders are taken in from pasted rows, wrong rows are named, and one is withdrawn with its reason', async () => {
  await onTablet({ hash: '#/plant/parts/feeders' }, async ({ page }) => {
    await page.getByTestId('feeder-paste').click();
    await page
      .getByTestId('feeder-rows')
      .fill('Feeder;Tape width;Pitch\nF-9001;8;2/4\nF-9002;9;4\nF-0001;8;2/4\n');
    await expect.poll(() => page.getByTestId('feeder-found').textContent()).toContain('1 new');
    await expect.poll(() => page.locator('.faults').textContent()).toContain('Row 3');
    await page.getByTestId('feeder-take').click();
    await page.getByTestId('feeder-take').waitFor({ state: 'detached' });
    await scan(page, 'F-9001');
    const row = page.getByTestId('feeder-F-9001');
    await expect.poll(() => row.textContent()).toContain('8 mm tape');
    await row.getByRole('button', { name: 'Withdraw' }).click();
    await page.getByRole('button', { name: 'In repair' }).click();
    await page.getByTestId('why-done').click();
    await row.waitFor({ state: 'detached' });
    const written = await ownEntries(page, 'feeder.known', 'feeder.withdrawn');
    expect(written.map(({ kind, payload }) => [kind, payload['feeder']])).toEqual([
      ['feeder.known', 'F-9001'],
      ['feeder.withdrawn', 'F-9001'],
    ]);
  });
});

it('adding a feeder that is there says so, changing it names what no longer fits, and a loaded one is withdrawn knowingly', async () => {
  await onTablet({ hash: '#/plant/parts/feeders' }, async ({ page }) => {
    const entries = await readLog(page);
    const loaded = [...entries]
      .reverse()
      .find(
        ({ kind, payload }) =>
          kind === 'reel.verified' && payload['slot'] === 'M1-F-001' && payload['feeder'],
      );
    const { feeder: id, reel } = loaded?.payload ?? {};
    await page.getByTestId('feeder-add').click();
    await scan(page, String(id));
    const there = page.getByTestId('feeder-there');
    await expect.poll(() => there.textContent()).toContain(`${id} is already on the list: 8 mm tape`);
    await expect.poll(() => there.textContent()).toContain(`on M1-F-001 with ${reel}`);
    await page.getByTestId('feeder-width').selectOption('24');
    await expect.poll(() => page.getByTestId('feeder-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('feeder-change-it').click();
    await page.getByTestId('feeder-width').selectOption('24');
    await page.getByTestId('feeder-positions').fill('');
    const changes = page.getByTestId('feeder-changes');
    await expect
      .poll(() => changes.textContent())
      .toContain(`M1-F-001 wants 8 mm tape: feeder ${id} would not fit there`);
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();

    await page.getByTestId('feeder-paste').click();
    await page.getByTestId('feeder-rows').fill(`F-9010;8;4\n${id};24;4\n`);
    await expect.poll(() => page.getByTestId('feeder-changed').textContent()).toContain('no longer fits');
    await page.getByTestId('feeder-take').click();
    await expect.poll(async () => (await ownEntries(page, 'feeder.known')).length).toBe(1);
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();

    await scan(page, String(id));
    await page.getByTestId(`feeder-${id}`).getByRole('button', { name: 'Withdraw' }).click();
    await expect
      .poll(() => page.getByTestId('why-caution').textContent())
      .toContain(`on M1-F-001 with ${reel}`);
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();
    expect(await ownEntries(page, 'feeder.withdrawn')).toEqual([]);
  });
});

it('an operator may look but not change', async () => {
  await onTablet({ badge: 'BADGE-2201', hash: '#/plant/parts' }, async ({ page }) => {
    await expect.poll(() => page.getByTestId('approve-add').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('parts-blocks').click();
    await expect.poll(() => page.getByTestId('block-add').getAttribute('aria-disabled')).toBe('true');
  });
});

it('the scanner is told right from wrong, and its test scans go nowhere else', async () => {
  await onTablet({ badge: 'BADGE-2201' }, async ({ page }) => {
    // Opened after the badge: this page keeps every scan to itself.
    await page.goto(`${demo.url}#/plant/scanner`);
    await page.getByTestId('calibration-code').first().waitFor();
    await scan(page, fullCalibration.text);
    const outcome = page.getByTestId('scanner-outcome');
    await outcome.waitFor();
    await expect.poll(() => outcome.getAttribute('data-fitness')).toBe('right');
    await scan(page, fullCalibration.text.replaceAll(/[\u0000-\u001f]/g, ''));
    await page.waitForFunction(
      () =>
        document.querySelector('[data-testid=scanner-outcome]')?.getAttribute('data-fitness') ===
        'plain-only',
    );
    await expect.poll(() => outcome.textContent()).toContain('GS');
    await page.locator('.striped summary').click();
    await page.getByTestId('calibration-bars').first().waitFor();
    await scan(page, stripedCalibration.text);
    await page.waitForFunction(
      () => document.querySelector('[data-testid=scanner-outcome]')?.getAttribute('data-fitness') === 'right',
    );
    // A slot scanned here is shown, and does not begin a load.
    await scan(page, slot);
    await expect.poll(() => page.getByTestId('arrived').first().textContent()).toContain('Slot');
    await page.getByTestId('scanner-keep').click();
    await goTo(page, 'load');
    await scan(page, slot);
    await page.getByText('scan the feeder').waitFor();
  });
});
