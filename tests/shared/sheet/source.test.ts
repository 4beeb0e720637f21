// Signatures from published format notes: ZIP local file header `PK\x03\x04` (APPNOTE 6.3.10, 4.3.7), compound file
// `D0 CF 11 E0` (MS-CFB 2.2).

import { describe, expect, test } from 'vitest';
import { sheetHeaderWords } from '../../../shared/sheet/fields.ts';
import { guessColumns } from '../../../shared/sheet/headers.ts';
import {
  columnLetters,
  joinPages,
  nameHeaders,
  pickSheet,
  readTitle,
  sheetFileKind,
  toSheetCell,
} from '../../../shared/sheet/source.ts';

describe('sheetFileKind()', () => {
  test.each([
    ['nothing', [], 'empty'],
    ['a ZIP archive', [0x50, 0x4b, 0x03, 0x04, 0x14], 'workbook'],
    ['a compound file', [0xd0, 0xcf, 0x11, 0xe0, 0xa1], 'old-workbook'],
    ['plain letters', [0x53, 0x6c, 0x6f, 0x74], 'text'],
    ['one byte of a ZIP', [0x50], 'text'],
  ] as const)('tells %s', (_, bytes, kind) => {
    expect(sheetFileKind(new Uint8Array(bytes))).toBe(kind);
  });
});

test('`toSheetCell()` writes a date as ISO text and keeps numbers, yes and no', () => {
  expect(toSheetCell(new Date(Date.UTC(2026, 2, 2)))).toBe('2026-03-02T00:00:00.000Z');
  expect([toSheetCell(4.5), toSheetCell(true), toSheetCell(undefined)]).toEqual([4.5, true, null]);
});

test('`pickSheet()` takes the sheet that reads most like a setup, wherever it stands', () => {
  const cover = [['Brae Works'], ['Part list']];
  const slots = [
    ['Slot', 'Part number', 'Qty per panel', 'Tape width'],
    ['M1-F-001', 'A', 1, 8],
  ];
  expect(pickSheet([cover, slots])).toBe(1);
  expect(pickSheet([slots, cover])).toBe(0);
  expect(pickSheet([cover])).toBe(0);
});

test('`columnLetters()` names columns as a spreadsheet does', () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
});

describe('nameHeaders()', () => {
  test('gives repeated and missing headers names of their own', () => {
    const rows = [
      ['Slot', 'Part', 'Alt', 'alt', '', ''],
      ['M1-F-1', 'A', 'B', 'C', 'x', ''],
    ];
    expect(nameHeaders(rows, 1)[0]).toEqual(['Slot', 'Part', 'Alt', 'alt (2)', '(E)', '']);
    expect(nameHeaders(rows, 1)[1]).toBe(rows[1]);
  });

  test('changes nothing of what the columns are taken for', () => {
    const rows = [
      ['Slot', 'Part', 'Alt', 'Alt', 'Qty'],
      ['M1-F-1', 'A', 'B', 'C', '4'],
    ];
    const fields = (given: typeof rows | ReturnType<typeof nameHeaders>) =>
      guessColumns(given, sheetHeaderWords).columns.map(({ field }) => field);
    expect(fields(nameHeaders(rows, 1))).toEqual(fields(rows));
    expect(fields(rows)).toEqual(['slot', 'part', 'alternates', 'alternates', 'perPanel']);
  });
});

describe('readTitle()', () => {
  test.each([
    [
      'cells beside their labels',
      [
        ['Product:', 'Heather board', 'Side:', 'Top'],
        ['Revision', 'C'],
      ],
      { product: 'Heather board', revision: 'C', side: 'top' },
    ],
    [
      'labels and values in one cell, the revision behind the product',
      [['Produkt: Heidebrett rev D2'], ['Seite: unten']],
      { product: 'Heidebrett', revision: 'D2', side: 'bottom' },
    ],
    ['nothing of the kind', [['Brae Works'], ['']], { product: null, revision: null, side: null }],
  ] as const)('reads %s', (_, lines, title) => {
    const rows = [...lines, ['Slot', 'Part']];
    expect(readTitle(rows, rows.length)).toEqual(title);
  });

  test('does not read below the header', () => {
    expect(
      readTitle(
        [
          ['Slot', 'Part'],
          ['Product:', 'X'],
        ],
        1,
      ).product,
    ).toBeNull();
  });
});

describe('joinPages()', () => {
  const bill = {
    name: 'Bill',
    rows: [
      ['Item', 'Designator', 'Part Number', 'Value', 'Footprint', 'Description'],
      ['1', 'R1', 'BW-1', '10k', '0603', 'resistor'],
    ],
  };
  const top = {
    name: 'Top',
    rows: [
      ['Designator', 'X', 'Y', 'Layer'],
      ['R1', '1', '2', 'top'],
    ],
  };
  const bottom = {
    name: 'Bottom',
    rows: [
      ['Designator', 'X', 'Y', 'Layer'],
      ['R2', '1', '2', 'bottom'],
    ],
  };

  test('takes the sheet with coordinates for the placement file and the other one for the bill', () => {
    expect(joinPages([bill, top], 'placements').rows).toEqual(top.rows);
    expect(joinPages([top, bill], 'bill')).toEqual({ rows: bill.rows, problems: [] });
  });

  test('adds sheets under the same header, and says so', () => {
    const { rows, problems } = joinPages([bill, top, bottom], 'placements');
    expect(rows).toEqual([...top.rows, ['R2', '1', '2', 'bottom']]);
    expect(problems).toMatchObject([{ code: 'sheetAdded', row: 3, facts: { found: 'Bottom' } }]);
  });
});
