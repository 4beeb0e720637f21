// An engineer brings setup sheets in on a tablet of the demo plant: as CSV and as XLSX, with columns corrected and errors that
// block; and what cannot be read costs nothing of what was there.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { drawn } from './support/clock.ts';
import { endRun, ownEntries, type Tablet } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';
import { holdWorkers } from './support/workers.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/plant/sheet' });

const onTablet = (work: (tablet: Tablet) => Promise<void>) =>
  demo.onTablet(async (tablet) => {
    await tablet.page.getByTestId('file-sheet').waitFor({ state: 'attached' });
    await work(tablet);
  });

const header = 'Address,Item,Units,Carrier,Pitch,Maker ref\n';
const rowOf = (at: number) => `M1-F-${String(at).padStart(3, '0')},BW-${1000 + at},${at},8,4,AC-${at}\n`;
const rows = Array.from({ length: 24 }, (_, at) => rowOf(at + 1));
const good = `Product:,Loch sensor,Revision:,A,Side:,Top\n\n${header}${rows.join('')}`;

/** Gives the page a file, and waits until it has been read or refused. */
async function give(page: Page, name: string, content: string | Buffer, input = 'sheet'): Promise<void> {
  const buffer = typeof content === 'string' ? Buffer.from(content) : content;
  const mimeType = 'application/octet-stream';
  await page.getByTestId(`file-${input}`).first().setInputFiles({ name, mimeType, buffer });
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached', timeout: 60_000 });
}

async function choose(page: Page, index: number, field: string): Promise<void> {
  await page.getByTestId(`columns-${index}`).locator('select').selectOption(field);
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached' });
}

const isBlocked = (page: Page) => page.getByTestId('sheet-take').getAttribute('aria-disabled');

describe('a CSV sheet', () => {
  it('has its columns corrected, is taken in, compared with the next revision, and built', async () => {
    await onTablet(async ({ page }) => {
      await give(page, 'loch.csv', good);
      await expect.poll(() => page.getByTestId('take-product').inputValue()).toBe('Loch sensor');
      // "Units", "Carrier" and "Maker ref" are no words of the trade for what they hold: said by hand.
      await choose(page, 2, 'perPanel');
      await choose(page, 3, 'tapeWidth');
      await choose(page, 5, 'supplierParts');
      await expect.poll(() => page.getByTestId('problems').textContent()).toContain('Nothing to correct');
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-taken').waitFor();
      const [taken] = await ownEntries(page, 'setup.taken');
      expect(taken?.payload).toMatchObject({
        product: 'Loch sensor',
        revision: 'A',
        side: 'top',
        line: 'L2',
        source: 'loch.csv',
        slots: rows.map((_, at) => ({
          slot: `M1-F-${String(at + 1).padStart(3, '0')}`,
          part: `BW-${1001 + at}`,
          perPanel: at + 1,
          tapeWidthMm: 8,
          pitchMm: 4,
          positions: 1,
          supplierParts: [`AC-${at + 1}`],
        })),
      });

      await page.getByTestId('sheet-next').click();
      await give(
        page,
        'loch-b.csv',
        good.replace(',A,Side', ',B,Side').replace(rowOf(3), rowOf(3).replace('BW-1003', 'BW-2003')),
      );
      // The header is the same: its columns are read as they were corrected.
      await expect
        .poll(() => page.getByTestId('columns').textContent())
        .toContain('as you set them last time');
      for (const change of ['revision A', 'BW-1003 → BW-2003', '23 slots stay as they are'])
        await expect.poll(() => page.getByTestId('changes').textContent()).toContain(change);
      await page.getByTestId('take-revision').fill('A');
      await expect.poll(() => isBlocked(page)).toBe('true');
      await page.getByTestId('take-revision').fill('B');
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-taken').waitFor();
      expect(await ownEntries(page, 'setup.taken')).toHaveLength(2);

      await endRun(page);
      await page.goto(`${demo.url}#/plant/sheet`);
      await page.getByTestId('sheet-build').click();
      await page.getByTestId('screen-load').waitFor();
      const chosen = (await ownEntries(page, 'setup.chosen')).at(-1);
      const second = (await ownEntries(page, 'setup.taken')).at(-1);
      expect(chosen?.payload['setup']).toBe(second?.payload['setup']);
    });
  });

  it('keeps every column chosen while it is still read by the one before, and is taken in by none but all of them', async () => {
    await onTablet(async ({ page }) => {
      await give(page, 'loch.csv', good);
      await choose(page, 3, 'tapeWidth');
      // By what is guessed of the rest it could be taken in, with other numbers per panel.
      await expect.poll(() => isBlocked(page)).toBe('false');
      await holdWorkers(page, true);
      const column = (index: number) => page.getByTestId(`columns-${index}`).locator('select');
      await column(2).selectOption('perPanel');
      await column(5).selectOption('supplierParts');
      await page.getByTestId('reading').waitFor();
      await expect.poll(() => column(2).inputValue()).toBe('perPanel');
      await expect.poll(() => column(5).inputValue()).toBe('supplierParts');
      await expect.poll(() => page.getByTestId('sheet-take').textContent()).toContain('Checking');
      await look(page, { where: 'columns chosen while the sheet is read' });
      await holdWorkers(page, false);
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-taken').waitFor();
      const [taken] = await ownEntries(page, 'setup.taken');
      expect(taken?.payload['slots']).toContainEqual(
        expect.objectContaining({ slot: 'M1-F-003', perPanel: 3, supplierParts: ['AC-3'] }),
      );
    });
  });

  it('is kept out by errors, each named by row and column, until it is corrected', async () => {
    await onTablet(async ({ page }) => {
      const twice = good.replace(rowOf(5), rowOf(4)).replace(',7,8,4', ',seven,8,4');
      await give(page, 'loch.csv', twice);
      await choose(page, 2, 'perPanel');
      await choose(page, 3, 'tapeWidth');
      // The header stands in row 3.
      for (const told of ['Row 8', 'M1-F-004 is in row 7 already', 'Row 10', '"seven"'])
        await expect.poll(() => page.getByTestId('problems').textContent()).toContain(told);
      await expect.poll(() => isBlocked(page)).toBe('true');
      await expect.poll(() => page.getByTestId('sheet-take').textContent()).toContain('Correct the 2 errors');
      await page.getByTestId('take-revision').fill('Q');
      await give(page, 'loch.csv', good);
      await expect.poll(() => page.getByTestId('take-revision').inputValue()).toBe('Q');
      await expect.poll(() => isBlocked(page)).toBe('false');
      expect(await ownEntries(page, 'setup.taken')).toEqual([]);
    });
  });

  it('may come pasted, and defines a line of its own', async () => {
    await onTablet(async ({ page }) => {
      const pasted =
        'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-002\tBW-1\t3\t12\t8\nK2-R-001\tBW-2\t1\t8\t4\n';
      await page.getByTestId('sheet-paste').fill(pasted);
      await page.getByTestId('sheet-paste-read').click();
      await page.getByTestId('take-product').fill('Fell switch');
      await page.getByTestId('take-revision').fill('1');
      await page.getByTestId('take-bottom').click();
      await page.getByTestId('take-new-line').click();
      await expect.poll(() => page.getByTestId('growth').textContent()).toContain('K1 Front: 3 positions');
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-taken').waitFor();
      const written = await ownEntries(page, 'line.defined', 'line.ruled', 'setup.taken');
      expect(written.map(({ kind }) => kind)).toEqual(['line.defined', 'line.ruled', 'setup.taken']);
      expect(written[0]?.payload).toMatchObject({
        line: 'L1',
        machines: [
          { machine: 'K1', banks: [{ bank: 'F', positions: 3 }] },
          { machine: 'K2', banks: [{ bank: 'R', positions: 1 }] },
        ],
      });
    });
  });
});

describe('an XLSX sheet', () => {
  it('is read from the page of the workbook that holds the slots, with usage from a placement file', async () => {
    const cells = (lines: readonly (readonly (string | number)[])[]) =>
      lines.map((line) => line.map((value) => ({ value })));
    const book = await writeXlsxFile([
      { sheet: 'Cover', data: cells([['Brae Works'], ['Made up for practice']]) },
      {
        sheet: 'Slots',
        data: cells([
          ['Slot', 'Part number', 'Tape width', 'Pitch'],
          ['M1-F-001', 'BW-1', 8, 4],
          ['M1-F-002', 'BW-2', 8, 4],
        ]),
      },
    ]).toBuffer();
    await onTablet(async ({ page }) => {
      await give(page, 'glen.xlsx', book);
      await expect.poll(() => page.getByTestId('sheet-count').textContent()).toContain('2 slots');
      const placed = ['R1,BW-1,1,1,Top', 'R2,BW-1,2,1,Top', 'R3,BW-2,3,1,Top'].join('\n');
      await give(page, 'glen-xy.csv', `Designator,Part,X,Y,Side\n${placed}\n`, 'placements');
      await expect
        .poll(() => page.getByTestId('placement-count').textContent())
        .toContain('3 placements of 2 parts');
      await page.getByTestId('take-revision').fill('1');
      await page.getByTestId('take-top').click();
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-taken').waitFor();
      const [taken] = await ownEntries(page, 'setup.taken');
      expect(taken?.payload).toMatchObject({
        product: 'glen',
        slots: [
          { part: 'BW-1', perPanel: 2 },
          { part: 'BW-2', perPanel: 1 },
        ],
      });
    });
  });
});

describe('what cannot be read', () => {
  it('gives a message each, and nothing that was there is lost', async () => {
    const lines = Array.from({ length: 260_000 }, (_, at) => `M1-F-${at},BW-${at},3,8,4,AC-${at}`);
    const big = `${header}${lines.join('\n')}`;
    expect(big.length).toBeGreaterThan(7_000_000);
    const noise = Buffer.from(Array.from({ length: 4000 }, (_, at) => (at * 7919) & 255));
    await onTablet(async ({ page }) => {
      await give(page, 'loch.csv', good);
      await page.getByTestId('take-revision').fill('Z9');
      const cases: readonly (readonly [string, string | Buffer, string])[] = [
        ['empty.csv', '', 'is empty'],
        ['blank.csv', '\n  \n\n', 'only blank lines'],
        ['noise.bin', noise, 'neither a CSV nor an XLSX'],
        ['torn.xlsx', Buffer.from('PK\u0003\u0004 torn'), 'damaged'],
        ['big.csv', big, 'more than 5,000 slots'],
      ];
      for (const [name, content, sentence] of cases) {
        await give(page, name, content);
        for (const told of [sentence, 'still here'])
          await expect
            .poll(() => page.getByTestId('sheet-fault').textContent(), { message: name })
            .toContain(told);
        await expect.poll(() => page.locator('.sheet-name').textContent()).toBe('loch.csv');
        await expect.poll(() => page.getByTestId('take-revision').inputValue()).toBe('Z9');
      }
      await page.getByTestId('nav-log').click();
      await page.getByTestId('screen-log').waitFor();
      await page.goBack();
      await expect.poll(() => page.getByTestId('take-revision').inputValue()).toBe('Z9');
    });
  });

  it('shows broken quotation marks and unknown columns as errors that say what to do', async () => {
    await onTablet(async ({ page }) => {
      await give(page, 'broken.csv', good.replace('M1-F-004', '"M1-F-004'));
      const problems = page.getByTestId('problems');
      await expect.poll(() => problems.textContent()).toContain('quotation mark');
      await expect.poll(() => isBlocked(page)).toBe('true');
      await give(page, 'unknown.csv', 'Aaa,Bbb,Ccc\nM1-F-001,BW-1,3\n');
      await expect
        .poll(() => problems.textContent())
        .toContain('No column for slot found among: Aaa, Bbb, Ccc');
      await expect.poll(() => isBlocked(page)).toBe('true');
      await choose(page, 0, 'slot');
      await choose(page, 1, 'part');
      await page.getByTestId('take-revision').fill('1');
      await page.getByTestId('take-top').click();
      await expect.poll(() => isBlocked(page)).toBe('false');
    });
  });

  it('leaves the page alive while a large file is read, and can be stopped', async () => {
    const lines = Array.from({ length: 300_000 }, (_, at) => `M1-F-${at},BW-${at},3,8,4,AC-${at}`);
    await onTablet(async ({ page }) => {
      await give(page, 'loch.csv', good);
      const buffer = Buffer.from(`${header}${lines.join('\n')}`);
      await page
        .getByTestId('file-sheet')
        .first()
        .setInputFiles({ name: 'big.csv', mimeType: 'text/csv', buffer });
      await page.getByTestId('reading').getByRole('button').click();
      await page.getByTestId('reading').waitFor({ state: 'detached' });
      await expect.poll(() => page.locator('.sheet-name').textContent()).toBe('loch.csv');
      await give(page, 'loch.csv', good);
      await expect.poll(() => page.getByTestId('sheet-count').textContent()).toContain('24 slots');
    });
  });
});
