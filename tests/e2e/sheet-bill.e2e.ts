// An engineer brings a sheet whose rows name designators, lays placement file and bill of materials over each other, and sees what was
// joined and what was not before anything is taken in.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { ownEntries } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/plant/sheet' });

async function give(page: Page, name: string, content: string, input: string): Promise<void> {
  const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) };
  await page.getByTestId(`file-${input}`).first().setInputFiles(file);
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached', timeout: 60_000 });
}

const sheet =
  'Slot,Part,Tape width,Pitch,Designators\nM1-F-001,BW-1,8,4,"R1,R2"\nM1-F-003,BW-2,8,4,C1\nM1-F-005,BW-3,12,8,U1\n';
const places = 'Designator,X,Y,Side\nR1,1,1,Top\nR2,2,1,Top\nC1,3,1,Top\nU1,4,1,Top\nFID1,0,0,Top\n';

it('joins placement file and bill by designator, shows both ways what does not fit, and takes in what does', async () => {
  await demo.onTablet(async ({ page }) => {
    await page.getByTestId('file-sheet').waitFor({ state: 'attached' });
    await give(page, 'tarn.csv', sheet, 'sheet');
    await give(page, 'tarn.pos', places, 'placements');
    await give(
      page,
      'tarn-bill.csv',
      'Part,Qty,Designators,MPN\nBW-1,3,R1-R2,KP-1\nBW-2,1,C1,KP-2\n',
      'bill',
    );
    await expect.poll(() => page.getByTestId('bill-count').textContent()).toContain('2 parts');
    await expect.poll(() => page.getByTestId('not-placed').textContent()).toContain('U1 FID1');
    await expect.poll(() => page.getByTestId('sheet-take').getAttribute('aria-disabled')).toBe('true');
    // The bill corrected: nothing is in the way any more.
    const bill = 'Part,Qty,Designators,MPN\nBW-1,2,R1-R2,KP-1\nBW-2,1,C1,KP-2\nBW-3,1,U1,KP-3\n';
    await give(page, 'tarn-bill.csv', bill, 'bill');
    await expect.poll(() => page.getByTestId('bill-count').textContent()).toContain('3 parts');
    await expect.poll(() => page.getByTestId('joined').textContent()).toContain('R1 R2');
    await page.getByTestId('take-product').fill('Tarn switch');
    await page.getByTestId('take-revision').fill('1');
    await page.getByTestId('take-top').click();
    await page.getByTestId('sheet-take').click();
    await page.getByTestId('sheet-taken').waitFor();
    const [taken] = await ownEntries(page, 'setup.taken');
    expect(taken?.payload).toMatchObject({
      product: 'Tarn switch',
      slots: [
        { part: 'BW-1', perPanel: 2, supplierParts: ['KP-1'] },
        { part: 'BW-2', perPanel: 1, supplierParts: ['KP-2'] },
        { part: 'BW-3', perPanel: 1, supplierParts: ['KP-3'] },
      ],
    });
  });
});
