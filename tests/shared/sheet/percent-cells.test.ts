// Per cents of a workbook as a spreadsheet writes it (ECMA-376): the number is a share, and the cell's format alone says so.

import { expect, test } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { sheetTexts } from '../../../shared/sheet/merged.ts';
import { readPartList } from '../../../shared/sheet/part-list.ts';
import { percentStyles, showPercents } from '../../../shared/sheet/percent-cells.ts';

const share = (value: number, format: string) => ({ value, type: Number, format });

test('a number that is shown as per cent is read as it is shown, beside 0.8 % too; one in another format is not', async () => {
  const buffer = await writeXlsxFile([
    {
      data: [
        [{ value: 'Part' }, { value: 'Tol' }],
        [{ value: 'R-1' }, share(0.01, '0%')],
        [{ value: 'R-2' }, share(0.008, '0.0%')],
        [{ value: 'C-1' }, share(0.8, '0.00%')],
        [{ value: 'C-2' }, share(5, '0.00')],
        [{ value: 'C-3' }, share(20, '0"%"')],
      ],
      sheet: 'Parts',
    },
  ]).toBuffer();
  const bytes = new Uint8Array(buffer);
  const rows = [
    ['Part', 'Tol'],
    ['R-1', 0.01],
    ['R-2', 0.008],
    ['C-1', 0.8],
    ['C-2', 5],
    ['C-3', 20],
  ];
  const shown = showPercents(rows, sheetTexts(bytes)[0] ?? '', percentStyles(bytes));
  expect(shown.map(([, tolerance]) => tolerance)).toEqual(['Tol', '1 %', '0.8 %', '80 %', 5, 20]);
  expect(readPartList(shown).parts.map(({ part }) => part.tolerance)).toEqual([
    '1 %',
    '0.8 %',
    '80 %',
    '5 %',
    '20 %',
  ]);
});

test('bytes that are no workbook show nothing as per cent', () => {
  expect(percentStyles(Uint8Array.of(1, 2, 3)).size).toBe(0);
  expect(showPercents([['A', 0.01]], '', new Set())).toEqual([['A', 0.01]]);
});
