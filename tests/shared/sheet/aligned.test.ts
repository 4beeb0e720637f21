// Text whose columns are aligned with blanks, each table written out by hand with the cells that a person reads in it.

import { describe, expect, it } from 'vitest';
import { alignedHeaderScore, alignedRows, alignedWithoutHeader } from '../../../shared/sheet/aligned.ts';
import { billHeaderWords } from '../../../shared/sheet/bill-fields.ts';
import { readPlacements } from '../../../shared/sheet/placements.ts';

const HEADER = ['Ref', 'Part number', 'PosX', 'PosY', 'Side'];
const PLAIN = 'Ref Val PosX PosY Side';
const cells = (...lines: readonly string[]) => alignedRows(lines.join('\n'))?.rows;

describe('alignedRows()', () => {
  const rows = [HEADER, ['R1', 'BW-1', '1.0', '2.0', 'top'], ['C12', 'BW 2 blue', '11.25', '2.0', 'bottom']];
  const open = ['U1', '', '3.5', '4.25', 'top'];
  const widths = [5, 13, 7, 6, 8];
  const laid = (all: readonly (readonly string[])[], side: 'padEnd' | 'padStart') =>
    all.map((row) => row.map((cell, at) => cell[side](widths[at] ?? 0)).join(''));

  it.each(['padEnd', 'padStart'] as const)(
    'cuts columns set by %s, cells of several words and empty ones among them, under a header of two words',
    (side) => {
      const lines = laid([...rows, open], side);
      expect(cells(...lines)).toEqual([...rows, open]);
      const { parts, problems } = readPlacements(lines.join('\n'));
      expect(parts.map(({ part, top, bottom }) => [part, top, bottom])).toEqual([
        ['BW-1', 1, 0],
        ['BW 2 blue', 0, 1],
      ]);
      expect(problems.map(({ code, row }) => [code, row])).toEqual([['placementPartMissing', 4]]);
    },
  );

  it('keeps columns apart by one blank where a row ends before the last of them', () => {
    expect(cells('Ref Value PosX Side', 'R1  10k a 1.00 top', 'C12 1 uF  2.00')).toEqual([
      ['Ref', 'Value', 'PosX', 'Side'],
      ['R1', '10k a', '1.00', 'top'],
      ['C12', '1 uF', '2.00', ''],
    ]);
  });

  it('cuts at wide gaps where the rows line up with nothing', () => {
    const lines = [
      'Ref  Part number  PosX  PosY  Side',
      ' R1  a b c  1  2  top',
      'C100  "d e"  100  2  bottom',
    ];
    expect(cells(...lines)).toEqual([
      HEADER,
      ['R1', 'a b c', '1', '2', 'top'],
      ['C100', 'd e', '100', '2', 'bottom'],
    ]);
  });

  it('keeps words in quotation marks together where single blanks separate', () => {
    expect(cells('Ref "Part number" PosX PosY Side', 'R1 "B 1" 1 2 top', 'R2 "B 2" 1 2 "top"')).toEqual([
      HEADER,
      ['R1', 'B 1', '1', '2', 'top'],
      ['R2', 'B 2', '1', '2', 'top'],
    ]);
  });

  it('takes a tab for blanks, and any end of a line', () => {
    const wanted = [
      ['Ref', 'Val', 'PosX'],
      ['R1', '10k', '1'],
      ['R2', '10k', '2'],
    ];
    expect(cells('Ref\tVal\tPosX', 'R1\t10k\t1', 'R2\t10k\t2')).toEqual(wanted);
    expect(alignedRows('Ref Val PosX\r\nR1 10k 1\rR2 10k 2')?.rows).toEqual(wanted);
  });

  it('leaves comments, rules, totals, blank lines and what stands above the header without cells', () => {
    const lines = [
      '# made',
      `# ${PLAIN}`,
      '',
      'R1 10k 1 2 top',
      '# no row 1 2 3',
      '-----',
      'C1 1u 3 4 bottom',
      '  Total 2',
    ];
    expect(cells(...lines)).toEqual([
      [],
      PLAIN.split(' '),
      [],
      ['R1', '10k', '1', '2', 'top'],
      [],
      [],
      ['C1', '1u', '3', '4', 'bottom'],
      [],
    ]);
  });

  it('takes the first of two headers that name as much, and the one that names more before it', () => {
    expect(cells(PLAIN, PLAIN, 'R1 1k 2 3 top')?.[0]).toEqual(PLAIN.split(' '));
    expect(cells('Ref Val', PLAIN, 'R1 1k 2 3 top')).toEqual([
      [],
      PLAIN.split(' '),
      ['R1', '1k', '2', '3', 'top'],
    ]);
  });

  it('finds a header among the first 100 lines, and none that names one field only', () => {
    const below = (blank: number) =>
      cells(...Array.from({ length: blank }, () => ''), PLAIN, 'R1 1k 2 3 top');
    expect(below(99)?.[100]).toEqual(['R1', '1k', '2', '3', 'top']);
    expect(below(100)).toBeUndefined();
    expect(alignedRows('Ref moon\nR1 2')).toBeNull();
    expect(alignedRows('')).toBeNull();
    expect(cells(PLAIN)).toEqual([PLAIN.split(' ')]);
  });

  it('reads a row that reaches over a column at its own blanks, and tells one that fits in no way', () => {
    const lines = [
      'Ref  Part  PosX  PosY  Side',
      'R1   A     1.0   2.0   top',
      'R2 A and so on 1.0',
      'R3 verylong 1 2 top',
    ];
    const { rows: read, problems } = alignedRows(lines.join('\n')) ?? { rows: [], problems: [] };
    expect(read.slice(1)).toEqual([
      ['R1', 'A', '1.0', '2.0', 'top'],
      [],
      ['R3', 'verylong', '1', '2', 'top'],
    ]);
    expect(problems.map(({ code, row, facts }) => [code, row, facts])).toEqual([
      ['rowUnreadable', 3, { found: 6, wanted: 5 }],
    ]);
  });

  it('goes on cutting where few rows of many reach over: one of 25, not one of 24', () => {
    const good = (count: number) => Array.from({ length: count }, (_, at) => `R${10 + at}   a b   1.0   top`);
    const over = 'R99  a_long_name  2.0  top';
    const read = (count: number) => cells('Ref   Val   PosX  Side', ...good(count), over);
    expect(read(24)?.slice(24)).toEqual([
      ['R33', 'a b', '1.0', 'top'],
      ['R99', 'a_long_name', '2.0', 'top'],
    ]);
    expect(read(23)?.at(-1)).toEqual(['R99', 'a_long_name', '2.0', 'top']);
  });

  it('lists no more than 1000 rows that cannot be read', () => {
    const bad = Array.from({ length: 1005 }, () => 'R2 A and so on 1.0');
    const { problems } = alignedRows([PLAIN, 'R1 A 1.0 2.0 top', ...bad].join('\n')) ?? { problems: [] };
    expect(problems).toHaveLength(1000);
  });

  it('reads a bill in its own words', () => {
    const text = 'Reference  Qty  Value\nR1 R2      2    10k\nC1         1    1u';
    expect(alignedRows(text, billHeaderWords)?.rows).toEqual([
      ['Reference', 'Qty', 'Value'],
      ['R1 R2', '2', '10k'],
      ['C1', '1', '1u'],
    ]);
  });
});

it('`alignedHeaderScore()` counts the fields of the best header in the first 100,000 characters', () => {
  expect(alignedHeaderScore(PLAIN)).toBe(5);
  expect(alignedHeaderScore(`moon\r${PLAIN}\rR1`)).toBe(5);
  expect(alignedHeaderScore('Ref\tVal\tPosX')).toBe(3);
  expect(alignedHeaderScore('Reference  Qty  Value', billHeaderWords)).toBe(3);
  expect(alignedHeaderScore('foo bar')).toBe(0);
  const after = (count: number) => alignedHeaderScore(`${'x'.repeat(count - PLAIN.length - 1)}\n${PLAIN}`);
  expect([after(100_000), after(100_001)]).toEqual([5, 4]);
});

describe('alignedWithoutHeader()', () => {
  const bare = (...lines: readonly string[]) => alignedWithoutHeader(lines.join('\n'));

  it('cuts at every blank where all rows have four words or more, as many in each', () => {
    const lines = ['Heather board', 'R1 1.0 2.0 90', '', '# 1 2 3', 'R2 1.5 2.0 "0"'];
    const rows = [[], ['R1', '1.0', '2.0', '90'], [], [], ['R2', '1.5', '2.0', '0']];
    expect(bare(...lines)).toEqual({ rows, problems: [] });
    expect(alignedWithoutHeader('R1\t1\t2\t3\rR2\t1\t2\t3\r\nR3 1 2 3')?.rows).toHaveLength(3);
    expect(bare('R1 1 2 90', 'Heather board')?.rows[1]).toEqual([]);
  });

  it('cuts at the blanks that rows have in common where a cell is empty', () => {
    expect(
      bare(
        'C101  1234.50  567.80   90.0  m  cap0603  0.1uF',
        'R101  2234.50  567.80    0.0     res0603  10k',
        'U101  3234.50 1567.80  270.0     qfp48    mcu x100',
      ),
    ).toEqual({
      rows: [
        ['C101', '1234.50', '567.80', '90.0', 'm', 'cap0603', '0.1uF'],
        ['R101', '2234.50', '567.80', '0.0', '', 'res0603', '10k'],
        ['U101', '3234.50', '1567.80', '270.0', '', 'qfp48', 'mcu x100'],
      ],
      problems: [],
    });
  });

  it('keeps a last column of several words whole where four columns line up', () => {
    expect(bare('R1  1.0  2.0  10 k', 'R2  3.0  4.0  1uFx')?.rows).toEqual([
      ['R1', '1.0', '2.0', '10 k'],
      ['R2', '3.0', '4.0', '1uFx'],
    ]);
  });

  it('takes name and numbers that all rows begin with, the last word, and what is left between', () => {
    const lines = [
      'C1 10.16 20.32 90 100n C0603',
      'FID1 1.00 +1,50 -5 FIDUCIAL',
      'R1 12.70 25.40 270 10 k R0603',
    ];
    expect(bare(...lines)?.rows).toEqual([
      ['C1', '10.16', '20.32', '90', '100n', 'C0603'],
      ['FID1', '1.00', '+1,50', '-5', '', 'FIDUCIAL'],
      ['R1', '12.70', '25.40', '270', '10 k', 'R0603'],
    ]);
    // Five numbers: the fifth is no place and no angle any more.
    expect(bare('A1 1 22 3 4 5 6 x', 'B10 11 2 3 4 y')?.rows).toEqual([
      ['A1', '1', '22', '3', '4', '5 6', 'x'],
      ['B10', '11', '2', '3', '4', '', 'y'],
    ]);
    expect(bare('R1 1.0 22.0', 'R2 1.5 2.0')?.rows).toEqual([
      ['R1', '1.0', '22.0', '', ''],
      ['R2', '1.5', '2.0', '', ''],
    ]);
  });

  it('cuts no words where one line begins otherwise', () => {
    const rows = bare('R1 1.0 2.0 90 10 k R0603', 'see 7 below 12 and more')?.rows ?? [];
    expect(rows.flat()).not.toContain('below');
  });

  it('is nothing without two numbers in some row', () => {
    expect(bare('a b c', 'R 2 x')).toBeNull();
    expect(bare('')).toBeNull();
  });
});
