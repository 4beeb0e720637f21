import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlacements } from '../../../shared/sheet/placements.ts';

function fixture(name: string): string {
  return readFileSync(new URL(`../../fixtures/sheets/${name}`, import.meta.url), 'utf8');
}

describe('readPlacements()', () => {
  it('reads a file aligned with spaces, with comments around the header and a value with a space', () => {
    const reading = readPlacements(fixture('placements-aligned.txt'));
    expect(reading.parts).toEqual([
      { part: 'BW-10023', top: 2, bottom: 1, firstRow: 5 },
      { part: 'BW-10107', top: 1, bottom: 0, firstRow: 8 },
      { part: 'BW-30001', top: 1, bottom: 0, firstRow: 9 },
    ]);
    expect(reading.problems).toEqual([]);
    expect(reading.ignored).toBe(2);
    expect(reading.placements[0]).toEqual({
      row: 5,
      designator: 'R1',
      part: 'BW-10023',
      isNamedByValue: false,
      value: '10k 1%',
      package: '',
      side: 'top',
      x: 12.5,
      y: 8.25,
      rotation: 90,
    });
  });

  it('reads a file separated by commas, with decimal commas in quotes, and counts a doubled line once', () => {
    const reading = readPlacements(fixture('placements-comma.csv'));
    expect(reading.parts).toEqual([
      { part: 'BW-10023', top: 3, bottom: 1, firstRow: 2 },
      { part: 'BW-10107', top: 1, bottom: 0, firstRow: 5 },
      { part: 'BW-30001', top: 1, bottom: 0, firstRow: 6 },
    ]);
    expect(reading.problems).toMatchObject([{ row: 9, code: 'placementTwice', facts: { first: 8 } }]);
    expect(reading.placements.find((placement) => placement.designator === 'R1')).toMatchObject({
      x: 12.5,
      y: 8.25,
    });
    expect(reading.ignored).toBe(2);
  });

  it('counts a designator that stands on several boards every time', () => {
    const reading = readPlacements('Ref,Part,Side,X,Y\nR1,A,T,1,1\nR1,A,T,51,1\nR1,A,T,101,1\n');
    expect(reading.parts).toEqual([{ part: 'A', top: 3, bottom: 0, firstRow: 2 }]);
    expect(reading.problems).toEqual([]);
  });

  it('leaves out fiducials, parts not fitted and rows without a part, and counts them', () => {
    const reading = readPlacements(
      [
        'Ref,Part,Side,DNP',
        'R1,A,T,',
        'R2,A,T,DNP',
        'R3,A,T,yes',
        'FID1,F,T,',
        'FM2,F,T,',
        'R4,,T,',
        'R5,DNF,T,',
      ].join('\n'),
    );
    expect(reading.parts).toEqual([{ part: 'A', top: 1, bottom: 0, firstRow: 2 }]);
    expect(reading.ignored).toBe(6);
    expect(reading.problems).toMatchObject([{ row: 7, column: 'Part', code: 'placementPartMissing' }]);
  });

  it.each([
    ['Bottom', 'bottom'],
    ['bot', 'bottom'],
    ['Unten', 'bottom'],
    ['Face inférieure', 'bottom'],
    ['TopLayer', 'top'],
    ['superior', 'top'],
  ])('takes side %j as %s', (side, wanted) => {
    const reading = readPlacements(`Ref;Part;Side\nR1;A;${side}\n`);
    expect(reading.placements[0]?.side).toBe(wanted);
    expect(reading.problems).toEqual([]);
  });

  it('takes a mirrored column as the side', () => {
    const reading = readPlacements('Ref,Part,X,Y,Mirror\nR1,A,1,1,NO\nR2,A,2,1,YES\n');
    expect(reading.parts).toEqual([{ part: 'A', top: 1, bottom: 1, firstRow: 2 }]);
    expect(reading.problems).toEqual([]);
  });

  it('counts as top, with a warning, where no column or an unknown word states the side', () => {
    const without = readPlacements('Ref,Part\nR1,A\n');
    expect(without.parts).toEqual([{ part: 'A', top: 1, bottom: 0, firstRow: 2 }]);
    expect(without.problems.map((problem) => problem.code)).toEqual(['placementSideMissing']);
    const unknown = readPlacements('Ref,Part,Side\nR1,A,left\n');
    expect(unknown.problems).toMatchObject([{ row: 2, column: 'Side', code: 'placementSideUnknown' }]);
  });

  it('takes the value for the part where the file has no part numbers', () => {
    expect(readPlacements('Ref,Val,Side\nR1,10k,top\n').parts).toMatchObject([{ part: '10k', top: 1 }]);
  });

  it('reads a header written as a comment in a separated file', () => {
    expect(readPlacements('# Ref,Part,Side\nR1,A,B\n').parts).toMatchObject([{ part: 'A', bottom: 1 }]);
  });

  it('reads words in quotation marks as one where spaces separate', () => {
    const text =
      'Designator "Mid X" "Mid Y" Layer Rotation Comment\nC1 1mm 2,5mm T 90 "P 1"\nC2 3mm 4mm B 90 "P 1"\n';
    const reading = readPlacements(text);
    expect(reading.parts).toEqual([{ part: 'P 1', top: 1, bottom: 1, firstRow: 2 }]);
    expect(reading.placements[0]).toMatchObject({ x: 1, y: 2.5 });
    expect(reading.problems).toEqual([]);
  });

  it('takes the centroid for the place where the location of pin 1 stands before it in a header of two rows', () => {
    const text = [
      'RefDes;Value;Pin 1 location;;Centroid;;Rotation;Side',
      ';;X;Y;X;Y;;',
      'R1;10k;1;2;11;12;90;top',
      'R2;10k;3;4;13;14;0;bottom',
    ];
    for (const input of [text.join('\n'), text.map((line) => line.split(';'))]) {
      const reading = readPlacements(input);
      expect(reading.placements).toMatchObject([
        { designator: 'R1', x: 11, y: 12 },
        { designator: 'R2', x: 13, y: 14 },
      ]);
      expect(reading.columns.slice(2, 6).map(({ header }) => header)).toEqual([
        'Pin 1 location X',
        'Pin 1 location Y',
        'Centroid X',
        'Centroid Y',
      ]);
    }
  });

  it('reports a row that does not line up with the header', () => {
    const reading = readPlacements(
      'Ref  Part  PosX  PosY  Side\nR1   A     1.0   2.0   top\nR2 A and so on 1.0\n',
    );
    expect(reading.problems).toMatchObject([{ row: 3, code: 'rowUnreadable', severity: 'error' }]);
    expect(reading.placements).toHaveLength(1);
  });

  it('is an error without a part column', () => {
    expect(readPlacements('foo,bar\n1,2\n').problems.map((problem) => problem.code)).toContain(
      'columnMissing',
    );
  });

  it('is an error without a row', () => {
    expect(readPlacements('Ref,Part,Side\n').problems.map((problem) => problem.code)).toEqual(['noRows']);
  });

  it('takes rows of a spreadsheet and a choice of columns', () => {
    const rows = [
      ['k1', 'k2', 'k3'],
      ['R1', 4711, 'B'],
      ['R2', 4711, 'T'],
    ];
    const reading = readPlacements(rows, { columns: { designator: 'k1', part: 'k2', side: 'k3' } });
    expect(reading.parts).toEqual([{ part: '4711', top: 1, bottom: 1, firstRow: 2 }]);
  });

  it('gives back the totals of any list, separated or aligned', () => {
    const placement = fc.record({
      part: fc.constantFrom('A-1', 'B-2', 'C-3'),
      side: fc.constantFrom('top', 'bottom'),
    });
    const layout = fc.constantFrom(',', ';', '\t', '  ');
    fc.assert(
      fc.property(fc.array(placement, { minLength: 1, maxLength: 40 }), layout, (list, gap) => {
        const line = (cells: readonly string[]) =>
          gap === '  ' ? cells.map((cell) => cell.padEnd(12)).join('') : cells.join(gap);
        const rows = list.map(({ part, side }, at) => line([`R${at}`, part, `${at}.5`, '7.25', side]));
        const reading = readPlacements([line(['Ref', 'Part', 'PosX', 'PosY', 'Side']), ...rows].join('\n'));
        for (const part of ['A-1', 'B-2', 'C-3']) {
          for (const side of ['top', 'bottom'] as const) {
            const wanted = list.filter((entry) => entry.part === part && entry.side === side).length;
            expect(reading.parts.find((total) => total.part === part)?.[side] ?? 0).toBe(wanted);
          }
        }
        expect(reading.problems).toEqual([]);
      }),
    );
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const reading = readPlacements(`Ref  Part  Side\n${text}`);
        expect(reading.placements.every((placement) => placement.part !== '')).toBe(true);
      }),
    );
  });
});
