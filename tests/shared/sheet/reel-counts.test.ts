// Files of reel counters: any columns, the last count of a reel, and what cannot be read is told and left out.

import { expect, test } from 'vitest';
import { readReelCounts } from '../../../shared/sheet/reel-counts.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

const read = (text: string) => readReelCounts(textToRows(text).rows);

test('reels and counts are found by their headers, whatever stands beside them', () => {
  const { counts, problems } = read(
    'Date;Operator;Barcode;Part number;Qty\n2026-03-02;ana;K-1;R-100;4 987\n2026-03-02;ana;K-2;R-200;312',
  );
  expect(counts).toEqual([
    { row: 2, reel: 'K-1', count: 4987, part: 'R-100', lot: '' },
    { row: 3, reel: 'K-2', count: 312, part: 'R-200', lot: '' },
  ]);
  expect(problems.filter(({ code }) => code !== 'columnUnknown')).toEqual([]);
});

test('columns that nobody knows are chosen once by hand', () => {
  const rows = textToRows('A;B\nK-1;100').rows;
  expect(readReelCounts(rows).problems.map(({ code }) => code)).toContain('columnMissing');
  expect(readReelCounts(rows, { columns: { reel: 'A', count: 'B' } }).counts).toMatchObject([
    { reel: 'K-1', count: 100 },
  ]);
});

test('a reel counted twice has its last count, and the list says so', () => {
  const { counts, problems } = read('Reel id,Count\nK-1,100\nK-2,5\nK-1,98');
  expect(counts.map(({ reel, count }) => [reel, count])).toEqual([
    ['K-2', 5],
    ['K-1', 98],
  ]);
  expect(problems).toMatchObject([{ code: 'listReelTwice', row: 4, facts: { first: 2 } }]);
});

test('rows that name no reel or no whole number are told and left out', () => {
  const { counts, problems } = read('Reel id,Count,Lot\n,100,A\nK-1,many,B\nK-2,-3,C\nK-3,0,D');
  expect(counts).toMatchObject([{ reel: 'K-3', count: 0, lot: 'D' }]);
  expect(problems.map(({ code, row }) => `${row} ${code}`)).toEqual([
    '2 listReelEmpty',
    '3 listCountUnreadable',
    '4 listCountUnreadable',
  ]);
});
