// Which column holds what, by its header and by what stands in it: columns of ten cells, so many of which look the part.

import { describe, expect, it } from 'vitest';
import { type BillField, billHeaderWords, manyBillFields } from '../../../shared/sheet/bill-fields.ts';
import { isThroughHole, lookAt, lookAtColumns, parseMeasure } from '../../../shared/sheet/column-look.ts';
import {
  demoteGeneric,
  guessByLook,
  isGenericPart,
  placePair,
} from '../../../shared/sheet/columns-by-look.ts';
import { placementHeaderWords } from '../../../shared/sheet/fields.ts';
import type { ColumnMap } from '../../../shared/sheet/headers.ts';

type Columns = Readonly<Record<string, readonly string[]>>;
const ten = (cell: (at: number) => string) => Array.from({ length: 10 }, (_, at) => cell(at));
const some = (count: number, word: string, other: string) => ten((at) => (at < count ? word : other));
const names = (count = 10) => ten((at) => (at < count ? `R${at + 1}` : `red no ${at}x`));
const numbers = (count = 10) => ten((at) => (at < count ? `${((at * 7) % 5) + 1}` : `x${'abcdefghij'[at]}`));
const parts = ten((at) => `BW-10${at}7${at}`);
const counted = ten((at) => `${at + 1}`);

function rowsOf(columns: Columns): string[][] {
  const longest = Math.max(...Object.values(columns).map(({ length }) => length));
  return [
    Object.keys(columns),
    ...Array.from({ length: longest }, (_, at) => Object.values(columns).map((cells) => cells[at] ?? '')),
  ];
}
const fieldsOf = (guess: { columns: readonly { header: string; field: string | null }[] }) =>
  guess.columns.map(({ header, field }) => `${header}=${field ?? '-'}`).join(' ');
const bill = (columns: Columns, map: ColumnMap<BillField> = {}) =>
  fieldsOf(
    guessByLook(rowsOf(columns), billHeaderWords, { place: 'designators', many: manyBillFields, map }),
  );
const file = (columns: Columns) =>
  fieldsOf(guessByLook(rowsOf(columns), placementHeaderWords, { place: 'designator' }));

describe('a column of a bill', () => {
  const both = { Ref: names(), Part: parts };
  it.each<[what: string, columns: Columns, wanted: string]>([
    ['two designators in ten cells are none', { Ref: names(2), Part: parts }, 'Ref=- Part=part'],
    ['three leave the header its word', { Ref: names(3), Part: parts }, 'Ref=designators Part=part'],
    [
      'a second column holds designators only where it is full of them: six of ten',
      { 'Ref top': names(), 'Ref bottom': names(6), Part: parts },
      'Ref top=designators Ref bottom=- Part=part',
    ],
    [
      'seven of ten',
      { 'Ref top': names(), 'Ref bottom': names(7), Part: parts },
      'Ref top=designators Ref bottom=designators Part=part',
    ],
    [
      'without a header’s word: seven of ten',
      { What: names(7), 'Part number': parts },
      'What=- Part number=part',
    ],
    ['eight of ten', { What: names(8), 'Part number': parts }, 'What=designators Part number=part'],
    ['"Part" over designators', { Part: names(), Value: parts }, 'Part=designators Value=value'],
    ['"Part" over parts', { Part: parts, Ref: names() }, 'Part=part Ref=designators'],
    [
      '"Item" that counts rows',
      { Item: counted, Part: parts, Ref: names() },
      'Item=item Part=part Ref=designators',
    ],
    ['"Item" over part numbers', { Item: parts, Ref: names() }, 'Item=part Ref=designators'],
    ['"Item" that counts and no part', { Item: counted, Ref: names() }, 'Item=item Ref=designators'],
    [
      'a quantity in six of ten cells gives way to a better column',
      { ...both, Quantity: numbers(6), Count: numbers() },
      'Ref=designators Part=part Quantity=- Count=quantity',
    ],
    [
      'seven of ten do not',
      { ...both, Quantity: numbers(7), Count: numbers() },
      'Ref=designators Part=part Quantity=quantity Count=-',
    ],
    [
      'a value that repeats the designators',
      { Ref: names(), Value: names(), Comment: parts },
      'Ref=designators Value=- Comment=value',
    ],
    [
      'a value that counts rows',
      { Ref: names(), Value: counted, Comment: parts },
      'Ref=designators Value=- Comment=value',
    ],
    [
      'a value that says SMD',
      { Ref: names(), Value: some(9, 'SMD', 'x'), Comment: parts },
      'Ref=designators Value=- Comment=value',
    ],
    [
      'SMD in eight of ten',
      { Ref: names(), Value: some(8, 'SMD', 'x'), Comment: parts },
      'Ref=designators Value=value Comment=note',
    ],
    [
      'an empty column gives way',
      { ...both, Value: ten(() => ''), Comment: parts },
      'Ref=designators Part=part Value=- Comment=value',
    ],
    [
      'an empty one never holds designators',
      { Ref: ten(() => ''), Places: names(), Part: parts },
      'Ref=- Places=designators Part=part',
    ],
    [
      'headers alone are taken at their word',
      { Ref: [], Part: [], Qty: [] },
      'Ref=designators Part=part Qty=quantity',
    ],
  ])('%s', (_, columns, wanted) => {
    expect(bill(columns)).toBe(wanted);
  });

  it('is what a person chose, before all words and looks', () => {
    const columns = { ...both, Value: parts };
    expect(bill(columns, { part: 'value', value: null })).toBe('Ref=designators Part=- Value=part');
    expect(bill({ A: names(), Part: parts }, { designators: 'A' })).toBe('A=designators Part=part');
    expect(bill(both, { designators: null })).toBe('Ref=- Part=part');
    const map: ColumnMap<BillField> = { quantity: 'Moon', part: ['Part', 'part'] };
    expect(guessByLook(rowsOf(both), billHeaderWords, { place: 'designators', map })).toMatchObject({
      headerRow: 1,
      notFound: [
        { field: 'quantity', header: 'Moon' },
        { field: 'part', header: 'part' },
      ],
      byLook: [],
    });
  });

  it('is told where its look alone speaks for it; a header is kept up to 200 characters', () => {
    const long = 'x'.repeat(201);
    const guess = guessByLook(rowsOf({ [long]: names(), Part: parts }), billHeaderWords, {
      place: 'designators',
    });
    expect(guess.byLook).toEqual([{ index: 0, field: 'designators' }]);
    expect(guess.columns[0]).toEqual({ index: 0, header: 'x'.repeat(200), field: 'designators' });
    expect(guess.looks).toHaveLength(2);
  });

  it('without a header’s word is the fullest one with the most different designators, not numbers or packages', () => {
    const seldom = ten((at) => `R${(at % 2) + 1}`);
    expect(bill({ One: seldom, Two: names(), 'Part number': parts })).toBe(
      'One=- Two=designators Part number=part',
    );
    expect(bill({ One: names(8), Two: names(9), 'Part number': parts })).toBe(
      'One=- Two=designators Part number=part',
    );
    expect(bill({ One: names(), Two: names(), 'Part number': parts })).toBe(
      'One=designators Two=- Part number=part',
    );
    const mixed = ten((at) => (at < 5 ? `SOT${at + 1}` : `R${at}`));
    expect(bill({ One: mixed, 'Part number': parts })).toBe('One=designators Part number=part');
    const packages = ten((at) => `SOT${at + 1}`);
    expect(bill({ One: packages, Two: names(8), 'Part number': parts })).toBe(
      'One=- Two=designators Part number=part',
    );
  });
});

describe('a column of a placement file', () => {
  const both = { Ref: names(), Part: parts };
  it.each<[what: string, columns: Columns, wanted: string]>([
    ['X is one with six numbers of ten', { ...both, X: numbers(6), Y: numbers() }, 'X=x Y=y'],
    ['X is none with five', { ...both, X: numbers(5), Y: numbers() }, 'X=- Y=y'],
    ['Y likewise', { ...both, X: numbers(), Y: numbers(5) }, 'X=x Y=-'],
    ['an angle in six of ten', { ...both, Rotation: numbers(6) }, 'Rotation=rotation'],
    ['an angle with letters before it', { ...both, Rotation: some(1, 'MR90', 'xx') }, 'Rotation=rotation'],
    ['no angle', { ...both, Rotation: some(1, 'MRX90', 'xx') }, 'Rotation=-'],
    ['both coordinates in six cells of ten', { ...both, Position: some(6, '(1 2)', 'no') }, 'Position=place'],
    ['in five', { ...both, Position: some(5, '(1 2)', 'no') }, 'Position=-'],
    [
      'a side in seven of ten',
      { ...both, Side: some(7, 'top', 'no'), Layer: some(10, 'top', '') },
      'Side=side Layer=-',
    ],
    ['in six', { ...both, Side: some(6, 'top', 'no'), Layer: some(10, 'top', '') }, 'Side=- Layer=side'],
    [
      'sides as numbers go before words that are none',
      { ...both, Side: some(10, 'no', ''), Layer: some(9, '1', 'x') },
      'Side=- Layer=side',
    ],
    [
      'eight numbers do not',
      { ...both, Side: some(10, 'no', ''), Layer: some(8, '1', 'x') },
      'Side=side Layer=-',
    ],
    ['mounting in seven of ten', { ...both, Mount: some(7, 'SMD', 'no') }, 'Mount=mount'],
    ['in six', { ...both, Mount: some(6, 'SMD', 'no') }, 'Mount=fitted'],
    [
      'packages in six of ten',
      { ...both, Package: parts, Footprint: some(6, 'C0603', 'no') },
      'Package=- Footprint=package',
    ],
    [
      'in five',
      { ...both, Package: parts, Footprint: some(5, 'C0603', 'no') },
      'Package=package Footprint=-',
    ],
  ])('%s', (_, columns, wanted) => {
    expect(file(columns)).toBe(`Ref=designator Part=part ${wanted}`);
  });
});

it.each<[text: string, pair: readonly string[] | null]>([
  ['(1250 300)', ['1250', '300']],
  ['12.5; 8.25', ['12.5', '8.25']],
  ['[ +1,-2 ]', ['+1', '-2']],
  ['1', null],
  ['1 2 3', null],
  ['(x y)', null],
])('%j holds both coordinates: %j', (text, pair) => {
  expect(placePair(text)).toEqual(pair);
});

describe('a part column that names only kinds', () => {
  const columns = { part: 0, value: 1 };
  const kinds = (...rows: readonly string[]) =>
    isGenericPart([['Part', 'Value'], ...rows.map((row) => row.split(' '))], 1, columns);

  it('has most of its names beside several values, in four filled rows or more', () => {
    expect(kinds('RES 10k', 'res 4k7', 'CAP 1u', 'Cap 2u')).toBe(true);
    expect(kinds('RES 10k', 'RES 4k7', 'RES 1k')).toBe(false);
    expect(kinds('RES 10k', 'RES 4k7', 'RES 1k', 'RES')).toBe(false);
    expect(kinds('RES 10k', 'RES 4k7', 'A 1', 'B 2')).toBe(false);
    expect(kinds('RES 10k', 'RES 4k7', 'A 1', 'A 1')).toBe(false);
    expect(kinds('RES 10k', 'RES 10K', 'RES 10k', 'RES 10k')).toBe(false);
    const many = Array.from({ length: 1997 }, () => 'A 1');
    expect(kinds(...many, 'RES 1', 'A 2', 'RES 3')).toBe(true);
    expect(kinds(...many, 'RES 1', 'A 1', 'A 1', 'RES 3')).toBe(false);
  });

  it('is the device where no other column is, else of no use; a person’s choice stays', () => {
    const rows = [
      ['Part', 'Value', 'Device'],
      ...['RES 1 d', 'RES 2 d', 'RES 3 d', 'RES 4 d'].map((row) => row.split(' ')),
    ];
    const guess = (...fields: readonly (string | null)[]) => ({
      headerRow: 1,
      columns: fields.map((field, index) => ({ index, header: rows[0]?.[index] ?? '', field })),
    });
    const result = (isChosen: boolean, ...fields: readonly (string | null)[]) => {
      const { guess: left, header } = demoteGeneric(rows, guess(...fields), isChosen);
      return [header, ...left.columns.map(({ field }) => field)];
    };
    expect(result(false, 'part', 'value', 'device')).toEqual(['Part', null, 'value', 'device']);
    expect(result(false, 'part', 'value', null)).toEqual(['Part', 'device', 'value', null]);
    expect(result(true, 'part', 'value', null)).toEqual([null, 'part', 'value', null]);
    expect(result(false, 'part', null, 'device')).toEqual([null, 'part', null, 'device']);
    expect(result(false, null, 'value', 'device')).toEqual([null, null, 'value', 'device']);
    expect(result(false, 'value', 'part', 'device')).toEqual([null, 'value', 'part', 'device']);
  });
});

describe('the look of a column', () => {
  const look = (...cells: readonly string[]) =>
    lookAt(
      cells.map((cell) => [cell, 'x']),
      0,
      0,
    );

  it.each<[cells: string, isSequence: boolean]>([
    ['1 2 3 4 5', true],
    ['7 8 9 10 x', true],
    ['1 2 3 x 5', false],
    ['1', false],
    ['1 2', true],
    ['1 1', false],
    ['2 4 6 8', false],
  ])('%s counts up: %s', (cells, isSequence) => {
    expect(look(...cells.split(' ')).isSequence).toBe(isSequence);
  });

  it('counts whole numbers, angles up to a full turn and lists of designators however long', () => {
    expect(look('1', '2,0', '3.00', '4.5').integers).toBe(3 / 4);
    expect(look('360', '-360', '375', '0', '10')).toMatchObject({ angles: 3 / 5 });
    const long = Array.from({ length: 900 }, (_, at) => `R${at + 1}`).join(',');
    expect(long.length).toBeGreaterThan(4000);
    expect(look(long).designators).toBe(0);
    expect(look(long.slice(0, 3999)).designators).toBe(1);
    // The first 400 characters break off within a name.
    expect(look(`${'R1,'.repeat(133)}R-100,R2`).designators).toBe(1);
    expect(look('R1, red').designators).toBe(0);
    expect(look('-', 'R1').designators).toBe(1 / 2);
    expect(look('R1')).toMatchObject({ distinct: 1, numbers: 0, angles: 0 });
    expect(look('90')).toMatchObject({ distinct: 1, numbers: 1, angles: 1 });
  });

  it('begins below the header, passes over rows of one cell and takes 300', () => {
    const rows = [['Ref', 'x'], ['alone'], ['R1', 'x'], ['', 'x'], ['R2', 'x']];
    expect(lookAt(rows, 1, 0).entries).toEqual(['R1', 'R2']);
    const looks = lookAtColumns([['title'], ['Ref', 'X', 'Y'], ['R1', '1'], ['R2', '1', '2', '3']], 2);
    expect(looks.map(({ index, entries }) => [index, entries.join(' ')])).toEqual([
      [0, 'R1 R2'],
      [1, '1 1'],
      [2, '2'],
      [3, '3'],
    ]);
    expect(lookAtColumns([Array.from({ length: 300 }, () => 'x')], 0)).toHaveLength(200);
    expect(lookAtColumns([['a', 'b', 'c'], ['d'], ['e']], 2)).toHaveLength(1);
    const late = Array.from({ length: 302 }, (_, at) => (at === 301 ? ['1', '2', '3'] : ['1', '2']));
    expect([lookAtColumns(late, 1).length, lookAtColumns(late, 2).length]).toEqual([2, 3]);
  });

  it.each([' tht ', 'Through-hole', 'PTH'])('%j goes through the board', (text) => {
    expect(isThroughHole(text)).toBe(true);
  });

  it.each(['smd', 'th x', ''])('%j does not', (text) => {
    expect(isThroughHole(text)).toBe(false);
  });

  it.each<[text: string, number: number | null]>([
    ['+7', 7],
    ['5"', 5],
    ['2,5 mils', 2.5],
    ['-1.5E+2 deg.', -150],
    ['1.234', 1.234],
    [' 1e1 mm', 10],
    ['mm', null],
  ])('%j measures %s', (text, number) => {
    expect(parseMeasure(text)).toBe(number);
  });
});
