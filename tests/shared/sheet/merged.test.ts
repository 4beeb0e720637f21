import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { fillMerged, mergedRanges, sheetTexts } from '../../../shared/sheet/merged.ts';

describe('mergedRanges() and fillMerged()', () => {
  it('fills a merged cell down in its own sheet, not to the right', async () => {
    const cell = (value: string, rowSpan = 1, columnSpan = 1) => ({ value, rowSpan, columnSpan });
    const buffer = await writeXlsxFile([
      { data: [[cell('Title', 1, 2), null]], sheet: 'Cover' },
      {
        data: [
          [cell('Part'), cell('Ref')],
          [cell('A', 3), cell('R1')],
          [null, cell('R2')],
          [null, cell('R3')],
        ],
        sheet: 'Bill',
      },
    ]).toBuffer();
    const ranges = mergedRanges(sheetTexts(new Uint8Array(buffer)));
    expect(ranges).toHaveLength(2);
    const rows = [
      ['Part', 'Ref'],
      ['A', 'R1'],
      [null, 'R2'],
      [null, 'R3'],
    ];
    expect(fillMerged(rows, ranges[1] ?? [])).toEqual([
      ['Part', 'Ref'],
      ['A', 'R1'],
      ['A', 'R2'],
      ['A', 'R3'],
    ]);
    expect(fillMerged([['Title', null]], ranges[0] ?? [])).toEqual([['Title', null]]);
  });

  it('has no ranges for bytes that are no workbook', () => {
    expect(mergedRanges(sheetTexts(Uint8Array.of(1, 2, 3)))).toEqual([]);
  });
});
