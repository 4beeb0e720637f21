// Columns of a placement file whose headers are not known, or that has none: ten rows, so many cells of which look like what they hold.

import { describe, expect, it } from 'vitest';
import { lookAtColumns } from '../../../shared/sheet/column-look.ts';
import type { PlacementField } from '../../../shared/sheet/fields.ts';
import type { ColumnMap, SheetRows } from '../../../shared/sheet/headers.ts';
import {
  fieldsByLook,
  guessPlacementColumns,
  placementHeaderScore,
} from '../../../shared/sheet/placement-columns.ts';

const ten = (cell: (at: number) => string) => Array.from({ length: 10 }, (_, at) => cell(at));
const some = (count: number, word: string, other: string) => ten((at) => (at < count ? word : other));
const names = (count = 10) => ten((at) => (at < count ? `R${at + 1}` : `red no ${at}x`));
const numbers = (count = 10) => ten((at) => (at < count ? `${((at * 7) % 5) + 1}` : `x${'abcdefghij'[at]}`));
const angles = (count = 10) => ten((at) => (at < count ? `${(at * 90) % 360}` : '7'));
const values = ten((at) => `${at}k${at}`);
const counted = ten((at) => `${at + 1}`);
const sides = some(5, 'top', 'bottom');
const packages = (count = 10) => some(count, 'R0603', 'red');
const rowsOf = (...columns: readonly string[][]) =>
  ten(() => '').map((_, at) => columns.map((cells) => cells[at] ?? ''));

describe('fieldsByLook()', () => {
  const xy = [numbers(), numbers()];
  it.each<[what: string, columns: readonly string[][], wanted: string | null]>([
    [
      'every kind of column',
      [names(), values, ...xy, angles(), sides, packages()],
      'designator value x y rotation side package',
    ],
    [
      'the same in another order',
      [packages(), sides, angles(), ...xy, values, names()],
      'package side rotation x y value designator',
    ],
    ['designators in seven cells of ten', [names(7), ...xy], 'designator x y'],
    ['in six', [names(6), ...xy], null],
    ['in seven, the others numbers', [ten((at) => (at < 7 ? `R${at + 1}` : '1')), ...xy], null],
    ['sides in eight of ten', [names(), ...xy, some(8, 'top', 'no')], 'designator x y side'],
    ['in seven, which is a value then', [names(), ...xy, some(7, 'top', 'no')], 'designator x y value'],
    ['mounting in eight of ten', [names(), ...xy, some(8, 'SMD', 'no')], 'designator x y mount'],
    ['in seven', [names(), ...xy, some(7, 'SMD', 'no')], 'designator x y value'],
    ['numbers in nine of ten', [names(), numbers(9), numbers(), numbers()], 'designator x y rotation'],
    ['in eight', [names(), numbers(8), ...xy], 'designator value x y'],
    ['angles before the coordinates', [names(), angles(), ...xy], 'designator rotation x y'],
    ['angles in nine of ten', [names(), angles(9), ...xy], 'designator rotation x y'],
    ['in eight: the third is taken', [names(), angles(8), ...xy], 'designator x y rotation'],
    [
      'three columns that may all be angles',
      [names(), angles(), angles(), angles()],
      'designator x y rotation',
    ],
    ['two columns of numbers are the coordinates', [names(), numbers(), angles()], 'designator x y'],
    ['one is none', [names(), numbers()], null],
    ['the number of the row is none', [names(), counted, ...xy], 'designator - x y'],
    ['nor is it the angle', [names(), counted, ...xy, angles()], 'designator - x y rotation'],
    ['a mirror mark', [names(), ...xy, some(4, 'm', '')], 'designator x y mirrored'],
    ['a mark and other words', [names(), ...xy, some(4, 'm', 'x')], 'designator x y value'],
    ['a mark beside sides', [names(), ...xy, sides, some(4, 'Mirrored', '')], 'designator x y side value'],
    ['packages in nine of ten, and no other text', [names(), ...xy, packages(9)], 'designator x y package'],
    ['in eight: it may be the value', [names(), ...xy, packages(8)], 'designator x y value'],
    ['in five, beside a value', [names(), ...xy, packages(5), values], 'designator x y package value'],
    ['in four', [names(), ...xy, packages(4), values], 'designator x y value -'],
    ['the fuller of two', [names(), ...xy, packages(5), packages(6)], 'designator x y value package'],
    [
      'the first of two that are as full',
      [names(), ...xy, packages(6), packages(6)],
      'designator x y package value',
    ],
    ['an empty column', [names(), ...xy, some(0, '', ''), values], 'designator x y - value'],
    ['the fuller of two columns of designators', [names(8), names(), ...xy], 'value designator x y'],
    ['the first of two', [names(), names(), ...xy], 'designator value x y'],
    ['the one with more different names', [some(10, 'R1', ''), names(9), ...xy], 'value designator x y'],
    ['no designators', [values, ...xy], null],
    ['designators and one text', [names(), values], null],
  ])('%s', (_, columns, wanted) => {
    const fields = fieldsByLook(lookAtColumns(rowsOf(...columns), 0));
    const said = fields && columns.map((_cells, at) => fields.get(at) ?? '-').join(' ');
    expect(said).toBe(wanted);
  });
});

describe('guessPlacementColumns()', () => {
  const guess = (rows: SheetRows, map?: ColumnMap<PlacementField>) => {
    const { headerRow, columns, byLook, isHeaderless } = guessPlacementColumns(rows, map);
    return [
      `${isHeaderless ? 'no header' : 'header'} ${headerRow}`,
      columns.map(({ header, field }) => `${header}=${field ?? '-'}`).join(' '),
      byLook.map(({ index, field }) => `${index} ${field}`).join(', '),
    ];
  };
  const rows = rowsOf(names(), values, numbers(), numbers(), angles());
  const looked = '0 designator, 2 x, 3 y, 4 rotation, 1 value';

  it('names columns without a header by letters, and by headers in words that it does not know', () => {
    const fields = ['designator', 'value', 'x', 'y', 'rotation'];
    const under = (...headers: readonly string[]) =>
      headers.map((header, at) => `${header}=${fields[at]}`).join(' ');
    expect(guess(rows)).toEqual(['no header 0', under('(A)', '(B)', '(C)', '(D)', '(E)'), looked]);
    expect(guess([['', '', '', '', ''], ...rows])[0]).toBe('no header 0');
    const foreign = ['aa', 'bb', '', 'dd', 'ee'];
    expect(guess([foreign, ...rows])).toEqual(['no header 1', under('aa', 'bb', '(C)', 'dd', 'ee'), looked]);
    // A number in the row makes it data.
    expect(guess([['R0', 'bb', '-7,5', '2', '0'], ...rows])[0]).toBe('no header 0');
  });

  it('names the 27th column AA as a spreadsheet does, so that a person can choose each', () => {
    const wide = ten((at) => `R${at + 1}`).map((name, at) => [
      name,
      ...Array.from({ length: 60 }, (_, index) => (index < 2 ? `${(at * 7) % 5}` : `z${index}`)),
    ]);
    const { columns } = guessPlacementColumns(wide);
    expect([0, 25, 26, 27, 51, 52].map((at) => columns[at]?.header)).toEqual([
      '(A)',
      '(Z)',
      '(AA)',
      '(AB)',
      '(AZ)',
      '(BA)',
    ]);
    expect(new Set(columns.map(({ header }) => header)).size).toBe(61);
  });

  it('takes a person’s choice first, by letters too, and gives the field to no other column', () => {
    expect(guess(rows, { value: '(C)', note: '(B)' })[1]).toBe(
      '(A)=designator (B)=note (C)=value (D)=y (E)=rotation',
    );
    expect(guess(rows, { value: '(C)' })[1]).toBe('(A)=designator (B)=- (C)=value (D)=y (E)=rotation');
    expect(guess(rows, { rotation: null, value: 'Moon' })[1]).toBe('(A)=designator (B)=- (C)=x (D)=y (E)=-');
  });

  it('names by their looks what a known header leaves open, only where nothing names part or value', () => {
    const headed = [['Ref', 'bb', 'X', 'Y', 'ee'], ...rows];
    expect(guess(headed)).toEqual(['header 1', 'Ref=designator bb=value X=x Y=y ee=-', '1 value']);
    expect(guess(headed, { part: null })).toEqual(['header 1', 'Ref=designator bb=- X=x Y=y ee=-', '']);
    const more = rowsOf(names(), values, numbers(), numbers(), angles(), sides, packages());
    const named = { designator: 'Ref' };
    expect(guess([['Ref', 'bb', 'cc', 'dd', 'ee', 'ff', 'gg'], ...more], named)).toEqual([
      'header 1',
      'Ref=designator bb=value cc=x dd=y ee=rotation ff=side gg=package',
      '5 side, 2 x, 3 y, 4 rotation, 6 package, 1 value',
    ]);
    expect(guess([['Ref', 'Value', 'cc', 'dd', 'ee', 'ff', 'gg'], ...more], named)[1]).toBe(
      'Ref=designator Value=value cc=- dd=- ee=- ff=- gg=-',
    );
    // A header that is known and serves for nothing here is not taken for something else.
    expect(guess([['Ref', 'bb', 'X', 'Y', 'Rotation', 'Side', 'Footprint'], ...more])[1]).toBe(
      'Ref=designator bb=value X=x Y=y Rotation=rotation Side=side Footprint=package',
    );
  });

  it('takes nothing where nothing looks like a placement', () => {
    const none = [
      ['foo', 'bar'],
      ['1', '2'],
    ];
    expect(guess(none)).toEqual(['header 1', 'foo=- bar=-', '']);
    expect(guess([])).toEqual(['header 1', '', '']);
  });
});

it('`placementHeaderScore()` counts the fields of the best row among the first 60, of two cells or more', () => {
  const below = (blank: number) =>
    placementHeaderScore([...Array.from({ length: blank }, () => ['']), ['Ref', 'X']]);
  expect([below(0), below(59), below(60)]).toEqual([2, 2, 0]);
  expect(
    placementHeaderScore([
      ['# Ref', 'X', 'Y'],
      ['Ref', 'X'],
    ]),
  ).toBe(3);
  expect(placementHeaderScore([['Ref']])).toBe(0);
});
