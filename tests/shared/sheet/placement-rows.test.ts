// Rows of a placement file with what each of them places, in mm and degrees; and what stands twice in it, worked out by hand.

import { describe, expect, it } from 'vitest';
import { checkPackages, dropDoubled } from '../../../shared/sheet/placement-checks.ts';
import { unitOf } from '../../../shared/sheet/placement-row.ts';
import { placementRows } from '../../../shared/sheet/placement-rows.ts';
import { type Placement, type PlacementOptions, readPlacements } from '../../../shared/sheet/placements.ts';
import { problemSink } from '../../../shared/sheet/problems.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

const read = (lines: readonly string[], options: PlacementOptions = {}) => {
  const { placements, leftOut, problems } = readPlacements(lines.join('\n'), options);
  return {
    placed: placements.map(
      ({ designator, part, isNamedByValue, value, package: name, side, x, y, rotation }) =>
        [designator, `${part}${isNamedByValue ? '*' : ''}`, value, name, side, x, y, rotation].join(' | '),
    ),
    left: leftOut.map(({ placement, reason }) => `${placement.designator} ${reason}`),
    told: problems.map(({ code, row, column }) => `${code} ${row} ${column}`),
  };
};
const sides = (lines: readonly string[], options: PlacementOptions = {}) => {
  const { placements, problems } = readPlacements(lines.join('\n'), options);
  return [placements.map(({ side }) => side).join(' '), problems.map(({ code }) => code).join(' ')];
};

describe('a row', () => {
  it('places a part at its coordinates, each with a unit of its own or the file’s; marks for nothing say nothing', () => {
    expect(
      read([
        'Ref,Part,Value,Package,X,Y,Rotation,Side',
        'R1,BW-1,10k,0603,1,2,90,top',
        'R2,-,4k7,n/a,1mm,2.5in,M90,B',
        'R3,,-,,1,1,0,top',
        'TP1,BW-9,x,,100mil,10",0,top',
        'TP2,,pad,,1,1,0,top',
        'H1,n/a,,,1,1,0,T',
        'C1,BW-2,1u,0402,-1.5,1e1,x,left',
      ]),
    ).toEqual({
      placed: [
        'R1 | BW-1 | 10k | 0603 | top | 1 | 2 | 90',
        'R2 | 4k7* | 4k7 |  | bottom | 1 | 63.5 | 90',
        'TP1 | BW-9 | x |  | top | 2.54 | 254 | 0',
        'C1 | BW-2 | 1u | 0402 | top | -1.5 | 10 | ',
      ],
      left: ['R3 noPart', 'TP2 testPoint', 'H1 hole'],
      told: [
        'valueWithoutPackage 3 Package',
        'placementPartMissing 4 Part',
        'oddPlaced 5 Part',
        'placementSideUnknown 8 Side',
      ],
    });
  });

  it.each<[what: string, lines: readonly string[], x: number, y: number]>([
    ['a unit in the headers', ['Ref,Part,X(mil),Y(mil),Side', 'R1,A,1000,2000,T'], 25.4, 50.8],
    ['a cell’s own unit first', ['Ref,Part,X(mil),Y(mil),Side', 'R1,A,1 mm,40mil,T'], 1, 1.016],
    ['mm', ['Ref,Part,X_mm,Y_mm,Side', 'R1,A,1000,2000,T'], 1000, 2000],
    ['a line above', ['Units: inch', '', 'Ref,Part,X,Y,Side', 'R1,A,1,2,T'], 25.4, 50.8],
    ['another way to say it', ['# X,Y in mils', 'Ref,Part,X,Y,Side', 'R1,A,1,2,T'], 0.0254, 0.0508],
    ['none', ['Units: parsec', 'Ref,Part,X,Y,Side', 'R1,A,1,2,T'], 1, 2],
  ])('takes its coordinates by %s', (_, lines, x, y) => {
    expect(readPlacements(lines.join('\n')).placements[0]).toMatchObject({ x, y });
  });

  it('takes both coordinates out of one cell, and what the columns of their own say before', () => {
    const lines = ['Ref,Part,X,Position,Side', 'R1,A,,(3 4),T', 'R2,A,5,(3 4),T'];
    expect(readPlacements(lines.join('\n')).placements.map(({ x, y }) => [x, y])).toEqual([
      [3, 4],
      [5, 4],
    ]);
  });

  it('is named by its value, then by its library’s name', () => {
    const lines = ['Ref,Value,Device,Side', 'R1,,RES,T', 'R2,-,RES,T', 'R3,1k,RES,T', 'R4,,-,T'];
    expect(read(lines)).toMatchObject({
      placed: [
        'R1 | RES* |  |  | top |  |  | ',
        'R2 | RES* |  |  | top |  |  | ',
        'R3 | 1k* | 1k |  | top |  |  | ',
      ],
      left: ['R4 noPart'],
      told: ['placementPartMissing 5 Value'],
    });
  });

  it('needs no name where a bill gives it, and tells neither test points nor holes then', () => {
    const lines = ['Ref,X,Y,Side', 'R1,1,1,T', 'FID1,2,2,T', 'TP1,3,3,T'];
    const { left, told, placed } = read(lines, { hasBill: true });
    expect([placed.length, left, told]).toEqual([1, ['FID1 fiducial', 'TP1 testPoint'], []]);
  });

  it('is fitted unless it says otherwise; a flag that is neither is told', () => {
    const lines = [
      'Ref,Part,Side,Fitted,DNP',
      'R1,A,T,yes,',
      'R2,A,T,perhaps,',
      'R3,A,T,yes,who',
      'R4,A,T,yes,x',
      'R5,A,T,no,',
      'R6,A,T,-,',
    ];
    expect(read(lines)).toMatchObject({
      left: ['R4 notFitted', 'R5 notFitted', 'R6 notFitted'],
      told: ['flagUnreadable 3 Fitted', 'flagUnreadable 4 DNP'],
    });
  });

  it('is no entry where it is a total, units, a title or words below the table', () => {
    const lines = [
      'Ref,Part,X,Y,Side',
      'R1,A,1,1,T',
      ',,mm,mm,',
      'see below,,,,',
      'D 2x,Q,,,',
      '* END *,,,,',
      'R3,A,1,,T',
      'R4,A,,,T',
      'FID_A,F,2,2,T',
    ];
    const { placed, left, told } = read(lines);
    expect(placed.map((each) => each.split(' ')[0])).toEqual(['R1', 'R3', 'R4']);
    expect([left, told]).toEqual([['FID_A fiducial'], []]);
  });

  it('with more filled cells than the header is told; empty ones more are none', () => {
    const lines = ['Ref,Part,X,Y,Side', 'R1,A,1,1,T,,', 'R2,A,2,2,T,x,'];
    const { problems } = readPlacements(lines.join('\n'));
    expect(problems).toMatchObject([{ code: 'rowTooLong', row: 3, facts: { found: 6, wanted: 5 } }]);
  });
});

it.each<[text: string, mm: number | null]>([
  ['mm', 1],
  ['Millimetres', 1],
  ['(mils)', 0.0254],
  ['thou', 0.0254],
  ['Unit = inch', 25.4],
  ['in', 25.4],
  ['µm', 0.001],
  ['microns', 0.001],
  ['min', null],
  ['', null],
])('a unit of %j is %s mm', (text, mm) => {
  expect(unitOf(text)).toBe(mm);
});

describe('the side', () => {
  const rows = ['Ref,Part,X,Y', 'R1,A,1,1'];
  it.each<[what: string, lines: readonly string[], options: PlacementOptions, wanted: readonly string[]]>([
    ['mirrored angles', ['Ref,Part,X,Y,Rotation', 'R1,A,1,1,R90', 'R2,A,2,1,MR90'], {}, ['top bottom', '']],
    [
      'some mirrored angles',
      ['Ref,Part,X,Y,Rotation', 'R1,A,1,1,90', 'R2,A,2,1,M90'],
      {},
      ['top bottom', 'placementSideMissing'],
    ],
    [
      'a mirror column',
      ['Ref,Part,Mirror', 'R1,A,', 'R2,A,m', 'R3,A,yes', 'R4,A,no'],
      {},
      ['top bottom bottom top', ''],
    ],
    [
      'the side before the mirror',
      ['Ref,Part,Side,Mirror', 'R1,A,,yes', 'R2,A,top,yes', 'R3,A,,'],
      {},
      ['bottom top top', ''],
    ],
    ['a line above', ['Board side: bottom', ...rows], {}, ['bottom', '']],
    ['a line above that says nothing known', ['Layer: inner', ...rows], {}, ['top', 'placementSideMissing']],
    [
      'the file’s own name, not its folder’s',
      rows,
      { fileName: '/x/board-top/heather.bottom.csv' },
      ['bottom', 'placementSideFromName'],
    ],
    ['another name', rows, { fileName: 'C:\\bot\\heather_TOP.csv' }, ['top', 'placementSideFromName']],
    ['a name that says both', rows, { fileName: 'top-bottom.csv' }, ['top', 'placementSideMissing']],
    ['a name in which it is no word', rows, { fileName: 'stopper.csv' }, ['top', 'placementSideMissing']],
    ['an ending', rows, { fileName: 'x.mnb' }, ['bottom', 'placementSideFromName']],
    [
      'headings between rows',
      [...rows, 'Side: bottom,,,', 'R2,A,1,2', 'TOP,,,', 'R3,A,1,3', 'B,,,', 'R4,A,1,4'],
      {},
      ['top bottom top top', ''],
    ],
    [
      'headings of a list without coordinates',
      ['Ref,Part', 'Layer: bottom,', 'R1,A', '== Top ==,', 'R2,A'],
      {},
      ['bottom top', ''],
    ],
  ])('by %s', (_, lines, options, wanted) => {
    expect(sides(lines, options)).toEqual(wanted);
  });

  it('of rows of a spreadsheet stands above the header too', () => {
    const reading = readPlacements([
      ['Layer:', 'bottom'],
      ['Ref', 'Part'],
      ['R1', 'A'],
    ]);
    expect(reading.placements[0]?.side).toBe('bottom');
    expect(reading.headerRow).toBe(2);
  });
});

describe('columns that are missing', () => {
  it.each<[lines: readonly string[], options: PlacementOptions, told: readonly string[]]>([
    [['Part,X,Y,Side', 'BW-1,1,1,T'], {}, ['columnAbsent 1 null']],
    [['Part,X,Y,Side', 'BW-1,1,1,T'], { hasBill: true }, ['columnMissing 1 null']],
    [['Ref,X,Y,Side', 'R1,1,1,T'], {}, ['columnMissing 1 null']],
    [['Ref,X,Y,Side', 'R1,1,1,T'], { hasBill: true }, []],
    [['Ref,Part,Side'], {}, ['noRows 1 null']],
    [['Ref,Part,Side', 'R1,A,T'], { columns: { value: 'Moon' } }, ['columnNotFound 1 null']],
  ])('%j %j', (lines, options, told) => {
    expect(read(lines, options).told).toEqual(told);
  });
});

describe('what stands twice', () => {
  const at = (
    designator: string,
    row: number,
    x: number | null,
    y: number | null = 1,
    side: Placement['side'] = 'top',
  ) => ({ designator, row, x, y, side }) as Placement; // what is asked of it
  const drop = (...placements: readonly Placement[]) => {
    const sink = problemSink(99);
    const { placements: kept, doubled, boards } = dropDoubled(placements, 'Ref', sink);
    return {
      kept: kept.map(({ row }) => row).join(' '),
      doubled: doubled.map(({ row }) => row).join(' '),
      boards,
      told: sink.list().map(({ code, row, column, facts }) => [code, row, column, facts]),
    };
  };

  it('at one place counts once; elsewhere, on the other side or without coordinates it is no repetition', () => {
    expect(drop(at('R1', 2, 1), at('r 1', 3, 1), at('R2', 4, 1), at('', 5, 1), at('', 6, 1))).toEqual({
      kept: '2 4 5 6',
      doubled: '3',
      boards: 1,
      told: [['placementTwice', 3, 'Ref', { designator: 'r 1', first: 2 }]],
    });
    const apart = drop(at('R1', 2, 1), at('R1', 3, 2), at('R1', 4, 1, 2), at('R1', 5, 1, 1, 'bottom'));
    expect(apart).toMatchObject({ kept: '2 3 4 5', boards: 4 });
    expect(drop(at('R1', 2, null), at('R1', 3, null)).boards).toBe(2);
    expect(drop(at('R1', 2, 1, null), at('R1', 3, 1, null)).boards).toBe(2);
  });

  it('is a panel where six designators of ten stand as often; the others are told', () => {
    const all = (twice: number) =>
      Array.from({ length: 10 }, (_, index) => [
        at(`R${index}`, index + 2, index),
        ...(index < twice ? [at(`R${index}`, index + 20, index + 100)] : []),
      ]).flat();
    const panel = drop(...all(6));
    expect([panel.boards, panel.doubled, panel.told.length]).toEqual([2, '', 4]);
    expect(panel.told[0]).toEqual(['designatorSeldom', 8, 'Ref', { designator: 'R6', found: 1, wanted: 2 }]);
    const single = drop(...all(5));
    expect([single.boards, single.doubled]).toEqual([1, '20 21 22 23 24']);
    expect(single.told[1]).toEqual(['designatorTwice', 21, 'Ref', { designator: 'R1', first: 3 }]);
  });

  it('more often than on every board is told', () => {
    const { boards, doubled, told } = drop(
      at('A1', 2, 1),
      at('A1', 3, 2),
      at('B1', 4, 3),
      at('B1', 5, 4),
      at('C1', 6, 5),
      at('C1', 7, 6),
      at('C1', 8, 7),
    );
    expect([boards, doubled, told.map(([code]) => code)]).toEqual([2, '8', ['designatorTwice']]);
  });
});

describe('parts and their packages', () => {
  const of = (part: string, name: string, isNamedByValue: boolean, row: number) =>
    ({ designator: `R${row}`, part, package: name, isNamedByValue, row }) as Placement; // what is asked of it
  it('are told apart by package where only a value names them', () => {
    const sink = problemSink(99);
    const named = checkPackages(
      [
        of('10k', '0603', true, 2),
        of('10K', '0805', true, 3),
        of('10k', '', true, 4),
        of('10k', '0402', false, 5),
        of('1u', '0603', true, 6),
        of('1u', '0603', true, 7),
        of('10k', '0603', true, 8),
      ],
      'Package',
      sink,
    );
    expect(named.map(({ part }) => part)).toEqual([
      '10k 0603',
      '10K 0805',
      '10k',
      '10k',
      '1u',
      '1u',
      '10k 0603',
    ]);
    expect(sink.list().map(({ code, row, facts }) => [code, row, facts])).toEqual([
      ['valueInPackages', 3, { part: '10K', found: '0805', wanted: '0603', first: 2 }],
      ['valueWithoutPackage', 4, { part: '10k', designator: 'R4' }],
    ]);
  });

  it('are one part in any package where a number names them; a file without packages tells nothing', () => {
    const sink = problemSink(99);
    const given = [
      of('A', '', false, 2),
      of('A', 'X', false, 3),
      of('A', 'Y', false, 4),
      of('A', 'Z', false, 5),
    ];
    expect(checkPackages(given, 'Package', sink)).toEqual(given);
    expect(sink.list().map(({ code, row }) => [code, row])).toEqual([
      ['partInPackages', 4],
      ['partInPackages', 5],
    ]);
    const bare = [of('10k', '', true, 2)];
    expect(checkPackages(bare, null, problemSink(0))).toBe(bare);
  });
});

it('`placementRows()` takes the layout whose header names more, else that of which more is understood', () => {
  const second = (text: string) => placementRows(text).rows[1];
  expect(second('Ref,Value,X\nR1,10 k,1')).toEqual(['R1', '10 k', '1']);
  expect(second('Ref  Value  X\nR1   10 k   1,5')).toEqual(['R1', '10 k', '1,5']);
  expect(second('R1;1;2;10 k\nR2;3;4;10 k')).toEqual(['R2', '3', '4', '10 k']);
  expect(second('R1  1,5 2,5 10k\nR2  3,5 4,5 10k')).toEqual(['R2', '3,5', '4,5', '10k']);
  const { problems } = placementRows('Ref  Value  X  Y  Side\nR1 a b c d e f 1.0');
  expect(problems.map(({ code, row }) => [code, row])).toEqual([['rowUnreadable', 2]]);
  expect(placementRows('Ref,Value\nR1,"x').problems.map(({ code }) => code)).toEqual(['quoteBroken']);
});

it('`readPlacements()` says the same of a text and of its rows split before, with what stands above them', () => {
  const texts = [
    'Ref,Val,Package,PosX,PosY,Rot,Side\nR1,10k,R0603,1,2,90,top\nC1,100n,C0402,3,4,0,bottom',
    'Units used = mils\nSide: bottom\nRef  Value  X  Y\nR1  10k  100.0  200.0\nC1  100n  300.0  400.0',
    'R1,10k,R0603,1.0,2.0,90,T\nR2,22k,R0603,3.0,2.0,0,B\nC1,100n,C0402,3.0,4.0,0,T',
    'Ref,Value\nR1,"x',
  ];
  for (const text of texts) {
    const split = placementRows(text, textToRows(text));
    expect(readPlacements(split, { hasBill: true })).toEqual(readPlacements(text, { hasBill: true }));
    expect(split.text).toBe(text);
  }
});
