// The plant's list of parts on a tablet: taken in from a file, changed by hand, used by a setup, look-alikes told before a run and at a mix-up,
// and counts taken over from a counter's file.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { endRun, goOn, goTo, ownEntries, reelLabel, scan, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';
import { holdWorkers } from './support/workers.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/plant/parts/list/import' });

async function give(page: Page, name: string, content: string): Promise<void> {
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(content) };
  await page.getByTestId('list-file').first().setInputFiles(file);
  await page.getByTestId('list-columns').waitFor();
  await drawn(page);
}

// Two parts of the demo's products on the line, one character apart in their sizes.
const list = [
  'Ours;Description;Value;Tol;Package;MSL;Packing;Tape width;Pitch;MPN;Age limit;Orientation',
  '22-0603-B;LED;;;;2a;Tape;8;4;NEW-LED-1;24;Green mark up',
  'NEW-100;Resistor;4k7;1 %;0402;;Tape;8;2;ZR-4701;;',
  'NEW-101;Resistor;4.7 kΩ;5 %;0402;;Tape;8;2;ZR-4702;;',
].join('\n');

it('a list is taken in with its column chosen once; the next time nothing is new and the column is known', async () => {
  await demo.onTablet(async ({ page }) => {
    await give(page, 'parts.csv', list);
    await expect.poll(() => page.getByTestId('list-take').count()).toBe(1);
    await expect.poll(() => page.getByTestId('list-take').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('list-columns-0').locator('select').selectOption('part');
    await expect.poll(() => page.getByTestId('list-changes').textContent()).toContain('NEW-100');
    await page.getByTestId('list-take').click();
    await page.getByTestId('search').fill('NEW-100');
    await page.getByTestId('listed-NEW-100').waitFor();
    const [listed] = await ownEntries(page, 'parts.listed');
    expect(listed?.payload).toMatchObject({
      source: 'parts.csv',
      parts: [
        { part: '22-0603-B', msl: '2a', ageMonths: 24, orientation: 'Green mark up' },
        { part: 'NEW-100', value: '4k7', tolerance: '1 %', package: '0402', family: 'chip', tapeWidthMm: 8 },
        { part: 'NEW-101' },
      ],
    });
    await page.getByTestId('listed-import').click();
    await give(page, 'parts.csv', list);
    await expect
      .poll(() => page.getByTestId('list-columns').textContent())
      .toContain('as you set them last time');
    await expect.poll(() => page.getByTestId('list-take').getAttribute('aria-disabled')).toBe('true');
    await expect.poll(() => page.getByTestId('list-changes').textContent()).toContain('3 as they are');
  });
});

it('while a list is read by a chosen column the choice stands, and nothing is taken in by the columns before', async () => {
  await demo.onTablet(async ({ page }) => {
    await give(page, 'parts.csv', list.replace('Ours;', 'Part;'));
    const take = page.getByTestId('list-take');
    await expect.poll(() => take.getAttribute('aria-disabled')).not.toBe('true');
    await holdWorkers(page, true);
    const choice = page.getByLabel('Value: holds');
    await choice.selectOption({ label: 'Note' });
    await page.getByTestId('reading').waitFor();
    await drawn(page);
    await expect.poll(() => choice.inputValue()).toBe('note');
    await expect.poll(() => take.getAttribute('aria-disabled')).toBe('true');
    await holdWorkers(page, false);
    await page.getByTestId('reading').waitFor({ state: 'detached' });
    await expect.poll(() => take.getAttribute('aria-disabled')).not.toBe('true');
    await take.click();
    await page.getByTestId('listed-import').waitFor();
    const [listed] = await ownEntries(page, 'parts.listed');
    expect(listed?.payload['parts']).toMatchObject([{}, { part: 'NEW-100', value: null }, {}]);
  });
});

it('a choice given up for a file that cannot be read is gone, and the list is taken in as the screen shows it', async () => {
  await demo.onTablet(async ({ page }) => {
    await give(page, 'parts.csv', list.replace('Ours;', 'Part;'));
    const take = page.getByTestId('list-take');
    await holdWorkers(page, true);
    const choice = page.getByLabel('Value: holds');
    await choice.selectOption({ label: 'Note' });
    await page.getByTestId('reading').waitFor();
    const picture = {
      name: 'parts.png',
      mimeType: 'image/png',
      buffer: Buffer.from([137, 80, 78, 71, 0, 0]),
    };
    await page.getByTestId('list-file').first().setInputFiles(picture);
    await drawn(page);
    await expect.poll(() => take.getAttribute('aria-disabled')).toBe('true');
    await holdWorkers(page, false);
    await expect.poll(() => page.getByTestId('list-fault').textContent()).toContain('parts.png');
    await expect.poll(() => choice.inputValue()).toBe('value');
    await expect.poll(() => take.getAttribute('aria-disabled')).not.toBe('true');
    await take.click();
    await page.getByTestId('listed-import').waitFor();
    const [listed] = await ownEntries(page, 'parts.listed');
    expect(listed?.payload['parts']).toMatchObject([{}, { part: 'NEW-100', value: '4k7' }, {}]);
  });
});

it('a part is changed by hand, with a picture; what the form cannot read keeps it from being saved', async () => {
  await demo.onTablet(
    async ({ page }) => {
      await page.getByTestId('listed-add').click();
      await page.getByTestId('part-part').fill('NEW-200');
      await page.getByTestId('part-pins').fill('many');
      await expect.poll(() => page.getByTestId('part-save').getAttribute('aria-disabled')).toBe('true');
      await page.getByTestId('part-pins').fill('8');
      await page.getByTestId('part-family').selectOption('soic');
      await page.getByTestId('part-makers').fill('ABC-200\nABC-201; Lamp');
      await page.getByTestId('part-save').click();
      await page.getByTestId('search').fill('NEW-200');
      await page.getByTestId('listed-NEW-200').waitFor();
      const [told] = await ownEntries(page, 'parts.listed');
      expect(told?.payload['parts']).toMatchObject([
        {
          part: 'NEW-200',
          family: 'soic',
          pins: 8,
          makers: [
            { supplierPart: 'ABC-200', product: null },
            { supplierPart: 'ABC-201', product: 'Lamp' },
          ],
        },
      ]);
      await page.getByTestId('listed-edit-NEW-200').click();
      const pixel =
        'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
      const buffer = Buffer.from(pixel, 'base64');
      await page.getByTestId('part-picture').setInputFiles({ name: 'p.png', mimeType: 'image/png', buffer });
      await page.getByTestId('part-picture-gone').waitFor();
      const [pictured] = await ownEntries(page, 'part.pictured');
      expect(String(pictured?.payload['picture'])).toMatch(/^data:image\/jpeg;base64,/);
    },
    { hash: '#/plant/parts/list' },
  );
});

it('look-alikes are told before a run, and a mix-up names the pair', async () => {
  await demo.onTablet(
    async ({ page }) => {
      await page.getByTestId('look-alikes').waitFor();
      await endRun(page);
      await page.getByTestId('run-start').click();
      await page.getByTestId('run-start-yes').waitFor();
      await page.getByTestId('look-alikes').waitFor();
      await page.keyboard.press('Escape');
      await goTo(page, 'load');
      // One character off the part that the slot wants.
      const seen = await scanAll(
        page,
        'M2-F-023',
        'F-0112',
        reelLabel({ P: '22-0603-D', Q: '100', '3S': 'R-970201' }),
      );
      expect(seen.verdict).toBe('refused');
      await expect.poll(() => page.getByTestId('mix-up').textContent()).toContain('22-0603-B and 22-0603-D');
    },
    { hash: '#/plant/parts/list' },
  );
});

it('counts come in from a counter’s file: known reels off the line are counted, and each other row says why not', async () => {
  await demo.onTablet(
    async ({ page }) => {
      const label = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9100-E', '3S': 'R-970301' });
      await scan(page, label);
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S10');
      await page.getByTestId('reel-R-970301').waitFor();
      await page.getByTestId('reels-from-file').click();
      await give(page, 'counter.csv', 'Barcode;Counted parts\nR-970301;3 812\nR-000000;5');
      const rows = page.getByTestId('list-counts');
      await expect.poll(() => rows.textContent()).toContain('4,000 → 3,812');
      await expect.poll(() => rows.textContent()).toContain('not in the log');
      await page.getByTestId('list-take').click();
      await page.getByTestId('reel-list').waitFor();
      const [counted] = await ownEntries(page, 'reel.counted');
      expect(counted?.payload).toMatchObject({
        reel: 'R-970301',
        quantity: 3812,
        basis: 'machine',
        line: null,
      });
    },
    { hash: '#/stock/reels' },
  );
});

it('a reel that goes on the line while the counter’s file is looked at is told as one to count there', async () => {
  await demo.onTablet(
    async ({ page }) => {
      const label = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9100-E', '3S': 'R-970401' });
      await scan(page, label);
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S10');
      await page.getByTestId('reel-R-970401').waitFor();
      await page.getByTestId('reels-from-file').click();
      await give(page, 'counter.csv', 'Barcode;Counted parts\nR-970401;3 812');
      const rows = page.getByTestId('list-counts');
      await expect.poll(() => rows.textContent()).toContain('will be counted');
      expect((await scanAll(page, 'M2-F-023', 'F-0112', label)).verdict).toBe('accepted');
      await goOn(page);
      await expect.poll(() => rows.textContent()).toContain('on the line: count it there');
      await expect.poll(() => page.getByTestId('list-take').getAttribute('aria-disabled')).toBe('true');
    },
    { hash: '#/stock/reels' },
  );
});
