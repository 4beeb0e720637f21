// Headers, marks of comments, numbers, names of places: each text with what a person reads in it.

import { describe, expect, it } from 'vitest';
import { firstText, uncomment, uncommentHeader, uncommentText } from '../../../shared/sheet/comment.ts';
import {
  areDesignators,
  designatorKey,
  listDesignators,
  looksLikeDesignator,
  oddThing,
  parseDesignators,
} from '../../../shared/sheet/designators.ts';
import { sheetHeaderWords as words } from '../../../shared/sheet/fields.ts';
import { joinHeaderRows } from '../../../shared/sheet/header-pair.ts';
import {
  cellText,
  findHeaderRow,
  guessColumns,
  matchHeader,
  reduceHeader,
  type SheetCell,
  scoreHeaderRow,
} from '../../../shared/sheet/headers.ts';

describe('a header', () => {
  it.each<[header: string, fields: readonly string[], strength: number]>([
    ['Part', ['part'], 100],
    ['Part 2', ['part'], 100],
    ['my part number', ['part'], 19],
    ['my own part number', ['part'], 18],
    ['one of our part number', [], 0],
    ['Part number of house', ['part'], 29],
    ['Tape width pitch', ['tapeWidth', 'pitch'], 19],
    ['our pn', [], 0],
    ['Feeder ID', [], 0],
    ['feeder-id', [], 0],
    ['moon', [], 0],
    ['2', [], 0],
  ])('%j means %j, strength %i', (header, fields, strength) => {
    expect(matchHeader(header, words)).toEqual({ fields, strength });
    // Answered before: the same again.
    expect(matchHeader(header, words)).toEqual({ fields, strength });
  });

  it('is understood whatever thousands were looked at before', () => {
    for (let at = 0; at < 4001; at++) matchHeader(`moon ${at}x`, words);
    expect(matchHeader('Part', words).fields).toEqual(['part']);
  });

  it('row is worth one for each field named whole, less for a part of a phrase', () => {
    expect(scoreHeaderRow(['my part number', 'Slot'], words)).toBe(1.4);
    expect(scoreHeaderRow(['Slot', 5, null, true], words)).toBe(1);
    expect(scoreHeaderRow(['my part number', 'Part'], words)).toBe(1);
    expect(scoreHeaderRow(['Part', 'my part number'], words)).toBe(1);
    expect(scoreHeaderRow([`Slot${' '.repeat(56)}`], words)).toBe(1);
    expect(scoreHeaderRow([`Slot${' '.repeat(57)}`], words)).toBe(0);
  });

  it('row is the first of the highest score in 60, else that of most cells; a choice comes before', () => {
    const below = (blank: number, ...rows: readonly string[][]) => [
      ...Array.from({ length: blank }, () => ['x']),
      ...rows,
    ];
    const find = (rows: readonly SheetCell[][], ...chosen: readonly string[]) =>
      findHeaderRow(rows, words, chosen);
    expect(find([['a'], ['b', 'c'], ['d', 'e']])).toBe(1);
    expect(find([['Slot'], ['b', 'c']])).toBe(1);
    expect(
      find([
        ['Slot', 'my part number'],
        ['b', 'c', 'd'],
      ]),
    ).toBe(1);
    expect(
      find([
        ['Slot', 'Part'],
        ['Slot', 'Part'],
      ]),
    ).toBe(0);
    expect(
      find(
        [
          ['Slot', 'Part'],
          ['u', 'v'],
        ],
        'U',
      ),
    ).toBe(1);
    expect(
      find(
        [
          ['u', ''],
          ['', 'Slot', 'Part'],
        ],
        'v',
      ),
    ).toBe(1);
    for (const header of [
      ['Slot', 'my part number', 'our tape width'],
      ['my part number', 'our tape width', 'Slot'],
    ])
      expect(find([header, ['a', 'b', 'c', 'd']])).toBe(0);
    expect([find([]), find(below(59, ['Slot', 'Part'])), find(below(60, ['Slot', 'Part']))]).toEqual([
      0, 59, 0,
    ]);
  });

  it('that fits one field only comes first; a field taken twice is a rival, unless it may have several columns', () => {
    const guess = (headers: readonly string[], map = {}) => {
      const { columns, rivals, notFound } = guessColumns([headers], words, map);
      return [columns.map(({ header, field }) => `${header}=${field ?? '-'}`).join(' '), rivals, notFound];
    };
    expect(guess(['Qty', 'Usage', 'Slot'])).toEqual([
      'Qty=perPanel Usage=- Slot=slot',
      [{ index: 1, field: 'perPanel' }],
      [],
    ]);
    expect(guess(['Reference', 'Part', 'Slot'])[0]).toBe('Reference=- Part=part Slot=slot');
    expect(guess(['my part number', 'Référence'])[0]).toBe('my part number=- Référence=part');
    expect(guess(['my part number', 'Part'])[0]).toBe('my part number=- Part=part');
    expect(guess(['Tape width pitch', 'Tape width'])[0]).toBe('Tape width pitch=pitch Tape width=tapeWidth');
    expect(guess(['Alt 1', 'Alt 2', 'MPN', 'Supplier part'])[0]).toBe(
      'Alt 1=alternates Alt 2=alternates MPN=supplierParts Supplier part=supplierParts',
    );
    expect(guess(['Slot', 'Part', 'Old'], { part: 'Old', slot: null })).toEqual([
      'Slot=- Part=- Old=part',
      [],
      [],
    ]);
    expect(guess(['Cart', 'Part'], { part: 'part', note: 'CART' })[0]).toBe('Cart=note Part=part');
    expect(guess(['Cart', 'Part'], { part: 'part' })[0]).toBe('Cart=- Part=part');
    expect(guess(['A', 'a'], { alternates: ['A', 'a'] })[0]).toBe('A=alternates a=alternates');
    expect(guess(['Slot', 'Part'], { part: 'Q', note: 'R' })[2]).toEqual([
      { field: 'part', header: 'Q' },
      { field: 'note', header: 'R' },
    ]);
    const long = guessColumns([['x'.repeat(201)]], words, { part: `${'X'.repeat(200)}y` });
    expect(long.columns).toEqual([{ index: 0, header: 'x'.repeat(200), field: 'part' }]);
  });

  it.each([
    ['Tape width (mm)', 'tape width'],
    ['Anzahl №', 'anzahl no'],
    ['X#', 'x no'],
    ['slotID', 'slot id'],
    ['ÉTÉ', 'ete'],
    ['[x] y {z} w', 'y w'],
    ['Millimeters', ''],
  ])('%j is reduced to %j', (header, wanted) => {
    expect(reduceHeader(header)).toBe(wanted);
  });
});

it.each<[cell: SheetCell, text: string]>([
  ['  a \n b\u00a0c ', 'a b c'],
  ['a\u200bb', 'a b'],
  ['ab', 'ab'],
  [4.5, '4.5'],
  [false, 'false'],
  [null, ''],
  [undefined, ''],
])('a cell %j is the text %j', (cell, text) => {
  expect(cellText(cell)).toBe(text);
});

describe('a header over two rows', () => {
  const data = ['x', '8', '4'];
  const joined = (...rows: readonly string[][]) => joinHeaderRows(rows, words);
  it('joins the words above to those below, over empty cells to the right and however long either row is', () => {
    expect(joined(['Tape', '', 'Part'], ['width', 'pitch'], data)).toEqual([
      [],
      ['Tape width', 'Tape pitch', 'Part'],
      data,
    ]);
    expect(joined(['Slot', 'Part', 'Tape'], ['', 'number', 'width', 'Qty 2'], data)[1]).toEqual([
      'Slot',
      'Part number',
      'Tape width',
      'Qty 2',
    ]);
    expect(joined(['', 'Tape', ''], ['Slot', 'width', 'pitch'], data)[1]).toEqual(['Slot', 'width', 'pitch']);
  });

  it('is the best pair among the first 60 rows, and none where it says little more than one row', () => {
    const pair = [
      ['Slot', '', 'Part', 'Tape', '', 'Usage'],
      ['', '', 'number', 'width', 'pitch', 'per panel'],
    ];
    const title = (count: number) => Array.from({ length: count }, () => ['made by us']);
    expect(joined(...title(58), ...pair)[58]).toEqual([]);
    expect(joined(...title(60), ...pair)[60]).toEqual(pair[0]);
    const rows = [
      ['Slot', 'Part'],
      ['Slot', 'Part'],
    ];
    expect(joinHeaderRows(rows, words)).toBe(rows);
    const last = [['x'], ['Tape', '']];
    expect(joinHeaderRows(last, words)).toBe(last);
    const one = [['Tape'], ['width', 'pitch']];
    expect(joinHeaderRows(one, words)).toBe(one);
    const two = [['Tape', ''], ['width']];
    expect(joinHeaderRows(two, words)).toBe(two);
    const numbered = [
      ['Tape', '', ''],
      ['width', 'pitch', '-2'],
    ];
    expect(joinHeaderRows(numbered, words)).toBe(numbered);
  });
});

describe('the mark of a comment', () => {
  it('before a header is taken off, columns staying where they are', () => {
    expect(uncommentText('  # Fields: Ref, Part')).toBe('            Ref, Part');
    expect(uncommentText('// Ref')).toBe('   Ref');
    expect(uncomment(['# Ref', 'x'])).toEqual(['Ref', 'x']);
    for (const row of [['Ref', 'x'], [' Ref ', 'x'], [5, '# x'], []]) expect(uncomment(row)).toBe(row);
    expect([firstText(['', null, ' b ', 'c']), firstText([])]).toEqual(['b', '']);
  });

  it('is taken off the best header alone, among the first 60 rows of two cells or more', () => {
    const head = ['# Slot', 'Part'];
    const better = [head, ['Slot', 'Part', 'Qty'], ['a']];
    expect(uncommentHeader(better, words)).toBe(better);
    const least = [['# Slot', 'my part number', 'our tape width']];
    expect(uncommentHeader(least, words)[0]?.[0]).toBe('Slot');
    expect(uncommentHeader([head, head], words)).toEqual([['Slot', 'Part'], head]);
    for (const rows of [[['# Slot Part'], ['a', 'b']], [['# Slot', 'x']], []])
      expect(uncommentHeader(rows, words)).toBe(rows);
    const below = (blank: number) =>
      uncommentHeader([...Array.from({ length: blank }, () => ['']), head], words).at(-1);
    expect([below(59), below(60)]).toEqual([['Slot', 'Part'], head]);
  });
});

describe('designators', () => {
  it.each<[text: string, wanted: string]>([
    ['R01-R03', 'R01 R02 R03'],
    ['R9-R11', 'R9 R10 R11'],
    ['R5-1', 'R5-1'],
    ['R5-5', 'R5-5'],
    ['R5-R5', 'R5'],
    ['R7-R5', 'R5 R6 R7'],
    ['r1-R3', 'r1 r2 r3'],
    ['A_1-3', 'A_1 A_2 A_3'],
    ['(R1) [R2] "R3". R4:', 'R1 R2 R3 R4'],
    ['R1 and R2 und R3 y R4 et R5', 'R1 R2 R3 R4 R5'],
    ['R1 bis R3', 'R1 R2 R3'],
    ['R1 a R3', 'R1 R2 R3'],
    ['R1 (2x) R2', 'R1 R2'],
    ['R1,2-3,C4,5', 'R1 R2 R3 C4 C5'],
    ['R1, -, 2', 'R1 R2'],
    ['1, 2', '1 2'],
    ['R1 R1', 'R1'],
    [' n/a ', ''],
  ])('%s are %s', (text, wanted) => {
    expect(parseDesignators(text).join(' ')).toBe(wanted);
  });

  it('are opened up to 10,000 of them; a list keeps what it names twice', () => {
    expect([parseDesignators('R1-R10000').length, parseDesignators('R1-R10001').length]).toEqual([10_000, 1]);
    expect(listDesignators('R1 R1')).toEqual(['R1', 'R1']);
    expect([designatorKey(' r 1'), designatorKey('R1'), designatorKey('R1a')]).toEqual(['R1', 'R1', 'R1A']);
  });

  it('have letters, a number and perhaps a unit', () => {
    expect(['R1', 'IC12A', 'R5_2', 'R1-abcdef', 'ABCDEF1234'].map(looksLikeDesignator)).toEqual(
      Array.from({ length: 5 }, () => true),
    );
    expect(['R12345', 'ABCDEFG1', 'R', '1R', 'R1_', 'R1_abcdefg'].map(looksLikeDesignator)).toEqual(
      Array.from({ length: 6 }, () => false),
    );
  });

  it('are told from part numbers where five or more differ and nine of ten have the usual letters', () => {
    const are = (...entries: readonly string[]) => areDesignators(entries);
    const eight = Array.from({ length: 8 }, (_, at) => `R${at + 1}`);
    expect([are('R1', 'R2', 'R3', 'R4'), are('R1', 'R2', 'R3', 'R4', 'R5')]).toEqual([false, true]);
    expect(are('R1', 'R2', 'R3', 'R4', 'r 4')).toBe(false);
    expect([are(...eight, 'R9', 'BW-1'), are(...eight, 'BW-2', 'BW-1')]).toEqual([true, false]);
  });

  it.each<[designator: string, texts: readonly string[], thing: string | null]>([
    ['R1', ['x', 'Fiducial'], 'fiducial'],
    ['R1', ['10k', 'testpoint'], 'testPoint'],
    ['R1', ['mount plate', 'mounting hole'], 'hole'],
    ['R1', ['oshw logo'], 'mark'],
    ['R1', ['10k', ''], null],
    ['FID1', ['TestPad'], 'testPoint'],
    ['FID1', [], 'fiducial'],
    [' TP 1 ', [], 'testPoint'],
    ['H1', [], 'hole'],
    ['LOGO', [], 'mark'],
  ])('%s with %j is %s', (designator, texts, thing) => {
    expect(oddThing(designator, texts)).toBe(thing);
  });
});
