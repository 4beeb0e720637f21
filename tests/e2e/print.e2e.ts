// Labels that the plant prints: a reel without an id gets one as it comes off, and its label, seen as a picture, brings it back with count and id; a new package at the
// store; a whole line's slots in walking order; the plant's own paper; and that a reprint says so.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { sortByWalk } from '../../shared/floor/address.ts';
import { parseLabel } from '../../shared/labels/label.ts';
import { readPackageId } from '../../shared/labels/package-id.ts';
import {
  goOn,
  goTo,
  ownEntries,
  reelAct,
  reelLabel,
  scan,
  scanAll,
  showSlot,
  type Tablet,
  type TabletOptions,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

/** The browser's own print dialog is not part of the page: how often it was asked for is counted. */
const onTablet = (options: TabletOptions, work: (tablet: Tablet) => Promise<void>) =>
  demo.onTablet(async (tablet) => {
    await tablet.page.evaluate(() => {
      window.print = () => {
        document.body.dataset['prints'] = String(Number(document.body.dataset['prints'] ?? 0) + 1);
      };
    });
    await work(tablet);
  }, options);

beforeAll(() => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });
});

const printed = (page: Page, times: number) =>
  expect.poll(() => page.evaluate(() => document.body.dataset['prints'] ?? '0')).toBe(String(times));

/** Waits until the log has it so often that labels were printed. */
const told = (page: Page, times: number) =>
  expect.poll(async () => (await ownEntries(page, 'labels.printed')).length).toBe(times);

/** What is on the paper, as a reader sees it: every code of the first page. */
async function codesOnPaper(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ media: 'print' });
  const picture = await page.locator('.label-page').first().screenshot();
  await page.emulateMedia({ media: 'screen' });
  const found = await readBarcodes(new Uint8Array(picture), {
    formats: ['DataMatrix'],
    textMode: 'Plain',
    tryHarder: true,
  });
  return found.map(({ text }) => text);
}

/** The words on the first page. */
const wordsOnPaper = (page: Page) => page.locator('.label-page').first().textContent();

// A slot that the demo leaves empty.
const [slot, feeder, part] = ['M2-F-023', 'F-0112', '22-0603-B'] as const;

it('a reel without an id gets one as it comes off, and comes back by its printed label with its count', async () => {
  await onTablet({ hash: '#/load' }, async ({ page }) => {
    const makers = reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-U' });
    await scanAll(page, slot, feeder, makers);
    await goOn(page);
    await (await showSlot(page, slot)).click();
    await page.getByTestId('slot-unload').click();
    await page.getByTestId('unload-count').click();
    await page.getByTestId('count-machine').click();
    await page.getByTestId('count-field-parts').fill('1234');
    await page.getByTestId('count-take').click();
    await page.getByTestId('label-preview').waitFor();
    await page.getByTestId('label-print').click();
    await printed(page, 1);
    await told(page, 1);
    const [named, labels] = await ownEntries(page, 'reel.named', 'labels.printed');
    const id = String(named?.payload['reel']);
    expect(readPackageId(id)).toEqual({ id });
    expect(named?.payload).toMatchObject({ part, lot: 'LT-9100-U', quantity: 1234, basis: 'machine' });
    expect(labels?.payload).toMatchObject({ what: 'reel', reel: id, names: [id], again: [] });
    const [code] = await codesOnPaper(page);
    expect(parseLabel([code ?? ''])).toMatchObject({
      reel: id,
      part,
      quantity: 1234,
      lot: 'LT-9100-U',
      ambiguous: [],
    });
    await expect.poll(() => wordsOnPaper(page)).toContain(id);
    await scanAll(page, slot, feeder, code ?? '');
    const verdicts = await ownEntries(page, 'reel.verified');
    expect(verdicts.at(-1)?.payload).toMatchObject({
      reel: id,
      quantity: 1234,
      basis: 'machine',
      verdict: 'accepted',
    });
  });
});

it('a new package at the store gets an id from one scan and two taps; printed again, it says so', async () => {
  await onTablet({ hash: '#/stock' }, async ({ page }) => {
    await scan(page, reelLabel({ P: part, Q: '5000', '1T': 'LT-9100-V', '10D': '2618' }));
    await page.getByTestId('label-new').click();
    await page.getByTestId('label-preview').waitFor();
    await page.getByTestId('label-print').click();
    await printed(page, 1);
    const [code] = await codesOnPaper(page);
    const read = parseLabel([code ?? '']);
    expect(read).toMatchObject({ part, quantity: 5000, lot: 'LT-9100-V', dateCode: '2618' });
    const id = read.reel ?? '';
    const [named] = await ownEntries(page, 'reel.named');
    expect([named?.payload['reel'], named?.payload['was']]).toEqual([id, null]);
    expect(await wordsOnPaper(page)).not.toContain('Reprint');
    await reelAct(page, 'mark', id);
    await page.getByTestId('label-again').waitFor();
    await page.getByTestId('label-print').click();
    await printed(page, 2);
    await expect.poll(() => wordsOnPaper(page)).toContain('Reprint 2');
    await told(page, 2);
    const labels = await ownEntries(page, 'labels.printed');
    expect(labels.map(({ payload }) => payload['again'])).toEqual([[], [id]]);
    // Typed as it was read out, in small letters and without its dash.
    await page.getByTestId('reel-search').fill('');
    await scan(page, code ?? '');
    await expect.poll(() => page.getByTestId('reel-search').inputValue()).toBe(id);
  });
});

it('a line’s slots come in walking order, on the paper that the plant entered', async () => {
  await onTablet({ hash: '#/plant/print' }, async ({ page }) => {
    await page.getByTestId('size-add').click();
    await page.getByTestId('size-name').fill('A4 of 24');
    await page.getByTestId('size-paper-sheet').click();
    for (const [field, text] of [
      ['widthMm', '70'],
      ['heightMm', '37'],
      ['columns', '4'],
      ['rows', '8'],
      ['topMm', '0.5'],
      ['dpi', '600'],
    ] as const)
      await page.getByTestId(`size-field-${field}`).fill(text);
    await expect.poll(() => page.getByTestId('size-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('size-field-columns').fill('3');
    await page.getByTestId('size-save').click();
    await page.getByTestId('size-A4 of 24').waitFor();
    const [sized] = await ownEntries(page, 'labels.sized');
    expect(sized?.payload).toMatchObject({
      size: 'A4 of 24',
      columns: 3,
      rows: 8,
      pageWidthMm: 210,
      dpi: 600,
    });
    await page.getByTestId('print-first').fill('21');
    await page.getByTestId('print-many').click();
    await printed(page, 1);
    await told(page, 1);
    const [labels] = await ownEntries(page, 'labels.printed');
    const names = labels?.payload['names'] as string[];
    expect(names.length).toBeGreaterThan(100);
    expect(names).toEqual(sortByWalk(names, (name) => name));
    // Three labels are left on the first sheet.
    expect([...(await codesOnPaper(page))].sort()).toEqual(names.slice(0, 3));
    expect(await page.locator('.label-page').count()).toBe(Math.ceil((names.length + 21) / 24));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1')).toMatch(/MediaBox \[0 0 59[45](\.\d+)? 84[12](\.\d+)?\]/);
    await goTo(page, 'stock');
    await expect.poll(() => page.locator('.label-page').count()).toBe(0);
  });
});

it('a printed badge is a new one, which signs its person in; the one before is nobody’s', async () => {
  await onTablet({ hash: '#/plant/print' }, async ({ page }) => {
    await page.getByTestId('print-badge').click();
    await expect.poll(() => page.getByTestId('print-many').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('print-names').getByRole('button', { name: 'Ailsa' }).click();
    await page.getByTestId('print-many').click();
    await printed(page, 1);
    const [code = ''] = await codesOnPaper(page);
    expect(code).toMatch(/^BADGE-[0-9A-Z]{20}$/);
    expect(
      JSON.stringify(await ownEntries(page, 'person.added', 'badges.keyed', 'labels.printed')),
    ).not.toContain(code);
    await page.keyboard.press('Escape');
    await goTo(page, 'load');
    await scan(page, 'BADGE-2201');
    await expect.poll(() => page.getByTestId('sign-in').textContent()).not.toContain('Ailsa');
    await scan(page, code);
    await page.getByTestId('sign-in').getByText('Ailsa').waitFor();
  });
});
