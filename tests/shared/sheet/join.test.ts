// A placement file laid over a bill: which part is placed how often on which side, what is not, and what differs, worked out by hand.

import { describe, expect, it } from 'vitest';
import { readBill } from '../../../shared/sheet/bill.ts';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import { type JoinOptions, joinBill, makersOf, namedPlacements } from '../../../shared/sheet/join.ts';
import { readPlacements } from '../../../shared/sheet/placements.ts';

function join(file: readonly string[], bill: readonly string[], options: JoinOptions = {}) {
  const placements = readPlacements(file.join('\n'), { hasBill: true });
  const joined = joinBill(placements, readBill(billRows(bill.join('\n')).rows), options);
  return {
    joined,
    placements,
    parts: joined.parts.map(
      ({ part, top, bottom, designators, supplierParts }) =>
        `${part} ${top}/${bottom} ${designators.join('+')}${supplierParts.length > 0 ? ` [${supplierParts}]` : ''}`,
    ),
    named: joined.placements.map(
      ({ designator, part, package: name, isNamedByValue }) =>
        `${designator} ${part} ${name}${isNamedByValue ? '*' : ''}`,
    ),
    notPlaced: joined.notPlaced.join(' '),
    told: joined.problems.map(({ file: where, code, row, column }) => `${where} ${code} ${row} ${column}`),
    facts: joined.problems.map(({ facts }) => facts),
  };
}

describe('both files name a part, a value and a side', () => {
  it('and the bill counts for the part, the placement file for the side; what differs is told', () => {
    const { parts, told, facts, notPlaced } = join(
      [
        'Ref,Part,Value,Side',
        'R1,A,10k,T',
        'R2,B,4700,T',
        'R3,KP-1,9k,B',
        'R4,a,10 kOhm,T',
        'R5,10k,10K,T',
        'R6,,10001,T',
      ],
      ['Part,Value,Ref,MPN,Side', 'A,10k,"R1,R2,R3,R4,R5,R6",KP-1,top'],
    );
    expect([parts, notPlaced]).toEqual([['A 5/1 R1+R2+R3+R4+R5+R6 [KP-1]'], '']);
    expect(told).toEqual([
      'placements partOfFileDiffers 3 Ref',
      'placements valueOfFileDiffers 4 Ref',
      'placements sideOfFileDiffers 4 Ref',
    ]);
    expect(facts).toEqual([
      { designator: 'R2', first: 2, found: 'B', wanted: 'A' },
      { designator: 'R3', first: 2, found: '9k', wanted: '10k' },
      { designator: 'R3', first: 2, found: 'bottom', wanted: 'top' },
    ]);
  });

  // Values as they are written on drawings (IEC 60062 puts the letter where the decimal mark stands).
  it.each<[file: string, bill: string, differs: boolean]>([
    ['4k7', '4.7k', false],
    ['4k7', '4700R', false],
    ['4k7', '47k', true],
    ['100n', '0.1uF', false],
    ['100nF 16V', '0.1µF', false],
    ['100n', '100p', true],
    ['1p', '0.001n', false],
    ['1p', '2p', true],
    ['2M2', '2200k', false],
    ['1G', '1000M', false],
    ['1G', '1M', true],
    ['10m', '0.01R', false],
    ['1K', '1k', false],
    ['1 Ohms', '2 ohm', true],
    ['5H', '6H', true],
    ['1k', '1.0005k', false],
    ['1k', '1.002k', true],
    ['1.002k', '1k', true],
    ['0R', '10R', true],
    ['10R', '0R', true],
    ['0R', '0 Ohm', false],
    // No quantity: a plain number, the name of a part.
    ['100', '100n', false],
    ['4R7', '4.8', false],
    ['BAT54', 'BAT55', false],
    ['1u0X', '2u', false],
  ])('%s against %s: differs %s', (file, bill, differs) => {
    const { told } = join(
      [`Ref,Part,Value,Side`, `R1,A,${file},T`, 'C9,Z,1,T'],
      ['Part,Value,Ref', `A,"${bill}",R1`, 'Z,1,C9'],
    );
    expect(told).toEqual(differs ? ['placements valueOfFileDiffers 2 Ref'] : []);
  });
});

it('what is not placed is listed in the order of the file, then of the bill; only doubts are told', () => {
  const file = ['R1,A', 'J1,B', 'R2,A', 'R3,A', 'R4,A', 'FID1,F', 'TP1,', 'TP2,', 'X9,Q', 'H1,', 'H2,'].map(
    (row) => `${row},T,${row.startsWith('J') ? 'THT' : 'SMT'}`,
  );
  const { parts, notPlaced, told, facts } = join(
    ['Ref,Part,Side,Type', ...file, 'r1,A,T,SMT', 'R2,A,T,SMT'],
    [
      'Part,Value,Ref,DNP',
      'A,,"R1,R2,R3",',
      'A,,R4,x',
      'B,,J1,',
      ',pad,TP1,',
      'C,,TP2,',
      ',MountingHole,H1,',
      'F,,FID1,',
      'D,,"D7,D8",',
      ',Test point,TP5,',
      'G,,G1,x',
      'K,,FID9,',
      'L,,H9,',
    ],
  );
  expect(parts).toEqual(['A 3/0 R1+R2+R3', 'C 1/0 TP2']);
  expect(notPlaced).toBe('J1 R4 FID1 TP1 X9 H1 H2 D7 D8 TP5 G1 FID9 H9');
  expect(told).toEqual([
    'placements designatorNotInBill 10 Ref',
    'bom oddPlaced 6 Ref',
    'bom designatorNotPlaced 9 Ref',
    'bom designatorNotPlaced 9 Ref',
    'bom designatorNotPlaced 13 Ref',
  ]);
  expect(facts.slice(0, 3)).toEqual([
    { designator: 'X9' },
    { designator: 'TP2', part: 'C' },
    { designator: 'D7', part: 'D' },
  ]);
});

it('a fitted row of the bill speaks for a designator before one that is not, and a part without a name is not placed', () => {
  const file = ['Ref,X,Y,Side', 'R1,1,1,T', 'R2,2,2,T'];
  expect(join(file, ['Part,Ref,DNP', 'A,R1,x', 'B,R1,', 'C,R2,', 'D,R2,x']).parts).toEqual([
    'B 1/0 R1',
    'C 1/0 R2',
  ]);
  const nameless = join(file, ['Part,Ref', 'A,R1', ',R2']);
  expect([nameless.parts, nameless.notPlaced, nameless.told]).toEqual([['A 1/0 R1'], 'R2', []]);
  const unread = join(file, ['Qty', '1']);
  expect([unread.parts, unread.notPlaced, unread.told]).toEqual([[], 'R1 R2', []]);
});

it('a row without a designator is told where a bill is to name its part', () => {
  const { facts, notPlaced } = join(['Ref,Part,X,Y,Side', 'R1,A,1,1,T', ',B,2,2,T'], ['Part,Ref', 'A,R1']);
  expect([facts, notPlaced]).toEqual([[{ designator: '(none)' }], '']);
});

describe('boards', () => {
  const panel = ['Ref,X,Y,Side', 'R1,1,1,T', 'R2,2,2,B', 'R1,51,1,T', 'R2,52,2,B'];
  const bill = ['Part,Ref', 'A,"R1,R2"'];
  it('of a file that holds a panel are not multiplied again', () => {
    expect(join(panel, bill).parts).toEqual(['A 2/2 R1+R2']);
    expect(join(panel, bill, { boardsPerPanel: 2 })).toMatchObject({ parts: ['A 2/2 R1+R2'], told: [] });
    const other = join(panel, bill, { boardsPerPanel: 3 });
    expect([other.parts, other.told, other.facts]).toEqual([
      ['A 2/2 R1+R2'],
      ['placements boardsInFile null null'],
      [{ found: 2, wanted: 3 }],
    ]);
    expect(join(panel.slice(0, 3), bill, { boardsPerPanel: 3 }).parts).toEqual(['A 3/3 R1+R2']);
  });
});

it('parts stand in the order of the bill, as do their designators; packages are the bill’s, else the file’s', () => {
  const file = ['Ref,X,Y,Side,Package', 'R2,1,1,T,X1', 'C1,3,3,B,X2', 'R1,2,2,B,X3', 'R3,4,4,T,X4'];
  const parts = join(file, ['Part,Ref,Package', 'b,C1,', 'A,"R1,R2",0603', 'a,R3,0603']);
  expect(parts.parts).toEqual(['b 0/1 C1', 'A 2/1 R1+R2+R3']);
  expect(parts.named).toEqual(['R2 A 0603', 'C1 b X2', 'R1 A 0603', 'R3 a 0603']);
  const values = join(file, ['Value,Ref,Package', '10k,R1,0603', '10k,"R2,R3",0805', '1u,C1,']);
  expect(values.parts).toEqual(['10k 0603 0/1 R1', '10k 0805 2/0 R2+R3', '1u 0/1 C1']);
  expect(values.named[0]).toBe('R2 10k 0805 0805*');
  expect([values.told, values.facts]).toEqual([
    ['bom valueInPackages 2 Package'],
    [{ part: '10k', found: '0603', wanted: '0805', first: 3 }],
  ]);
});

it('of many problems the first are listed for each file, and how many more there are', () => {
  const file = ['Ref,X,Y,Side', 'R1,1,1,T', 'R9,1,2,T', 'R8,1,4,T'];
  expect(join(file, ['Part,Ref', 'A,R1', 'B,"R5,R6"'], { mostProblems: 1 }).told).toEqual([
    'placements designatorNotInBill 3 Ref',
    'placements moreErrors null null',
    'bom designatorNotPlaced 3 Ref',
    'bom moreProblems null null',
  ]);
});

it('`namedPlacements()` gives the file with the bill’s parts, `makersOf()` the makers by part in capitals', () => {
  const { joined, placements } = join(
    ['Ref,X,Y,Side', 'R1,1,1,T', 'R2,2,2,B'],
    ['Part,Ref,MPN', 'bw-1,R1,KP-1', 'A,R2,'],
  );
  expect(namedPlacements(placements, joined).parts).toEqual([
    { part: 'bw-1', top: 1, bottom: 0, firstRow: 2 },
    { part: 'A', top: 0, bottom: 1, firstRow: 3 },
  ]);
  expect([...makersOf(joined)]).toEqual([
    ['BW-1', ['KP-1']],
    ['A', []],
  ]);
  expect([...makersOf(null)]).toEqual([]);
});
