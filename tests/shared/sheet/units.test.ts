// The small steps of reading a sheet, each for itself with rows written out by hand: words for tapes by EIA-481-D, headers over two rows, headers in
// comments, figures per panel, packages, bytes.

import { describe, expect, it } from 'vitest';
import { billRows } from '../../../shared/sheet/bill-rows.ts';
import { lookAt, parseMeasure } from '../../../shared/sheet/column-look.ts';
import { sayHeaders } from '../../../shared/sheet/columns.ts';
import { isCommentLine, isTotalText, uncomment, uncommentHeader } from '../../../shared/sheet/comment.ts';
import { sheetHeaderWords } from '../../../shared/sheet/fields.ts';
import { joinHeaderRows } from '../../../shared/sheet/header-pair.ts';
import {
  blankMeansNo,
  carriesNotFittedMark,
  isNotFittedMark,
  parseFitted,
  parseNotFitted,
} from '../../../shared/sheet/not-placed.ts';
import { parseBodySize } from '../../../shared/sheet/package-text.ts';
import { placementRows } from '../../../shared/sheet/placement-rows.ts';
import { readPlacements } from '../../../shared/sheet/placements.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { statedUsage } from '../../../shared/sheet/sharing.ts';
import { joinSlotAddress, type SheetSlot } from '../../../shared/sheet/slot.ts';
import { toSetupSlots } from '../../../shared/sheet/taken.ts';
import { listedPitchesMm, positionsForWidth, tapeWidthsMm } from '../../../shared/sheet/tapes.ts';
import { bytesToText, guessSeparator, textToRows } from '../../../shared/sheet/text.ts';

describe('tapes by EIA-481-D', () => {
  it('have these widths, 16 mm apart from 56 mm on', () => {
    expect(tapeWidthsMm.slice(0, 7)).toEqual([4, 8, 12, 16, 24, 32, 44]);
    expect(tapeWidthsMm.slice(7)).toEqual(Array.from({ length: 10 }, (_, at) => 56 + 16 * at));
  });

  it.each([
    [4, 1],
    [8, 1],
    [12, 2],
    [16, 2],
    [24, 3],
    [32, 4],
    [44, 5],
    [56, 7],
    [72, 9],
    [88, 11],
    [104, 13],
    [200, 25],
  ])('of %i mm take %i positions', (width, positions) => {
    expect(positionsForWidth(width)).toBe(positions);
    expect(positionsForWidth(width, { [width]: 30 })).toBe(30);
  });

  it.each([
    [4, [1, 2]],
    [8, [2, 4]],
    [12, [2, 4, 8]],
    [16, [4, 8, 12]],
    [24, [4, 8, 12, 16, 20]],
    [32, [4, 8, 12, 16, 20, 24, 28, 32]],
    [10, []],
  ])('of %i mm have pockets every %j mm', (width, pitches) => {
    expect(listedPitchesMm(width)).toEqual(pitches);
    expect(positionsForWidth(width) === null).toBe(pitches.length === 0);
  });

  it('of 72 mm and more have pockets up to every 72 mm', () => {
    expect(listedPitchesMm(200).at(-1)).toBe(72);
    expect(listedPitchesMm(56).at(-1)).toBe(56);
  });
});

describe('a header over two rows', () => {
  const upper = ['Slot', '', 'Part', 'Tape', '', 'Usage'];
  const lower = ['', '', 'number', 'width', 'pitch', 'per panel'];
  const data = ['M1-F-001', '', 'R-100', '8', '4', '2'];

  it('is put into the lower row, the upper words reaching to the right; rows keep their numbers', () => {
    const rows = joinHeaderRows([['Setup for Brook'], upper, lower, data, data], sheetHeaderWords);
    expect(rows).toHaveLength(5);
    expect(rows[0]).toEqual(['Setup for Brook']);
    expect(rows[1]).toEqual([]);
    expect(rows[2]).toEqual(['Slot', '', 'Part number', 'Tape width', 'Tape pitch', 'Usage per panel']);
    expect(rows.slice(3)).toEqual([data, data]);
  });

  it('is none where one row says it all, or where numbers stand below', () => {
    const whole = [
      ['Slot', 'Part', 'Qty', 'Tape width', 'Pitch'],
      ['M1-F-001', 'R-100', '2', '8', '4'],
    ];
    expect(joinHeaderRows(whole, sheetHeaderWords)).toBe(whole);
    const titled = [['Our', 'list'], ...whole];
    expect(joinHeaderRows(titled, sheetHeaderWords)).toBe(titled);
    const numbers = [upper, ['1', '2', '3', '4', '5', '6'], data];
    expect(joinHeaderRows(numbers, sheetHeaderWords)).toBe(numbers);
    expect(joinHeaderRows([], sheetHeaderWords)).toEqual([]);
  });
});

describe('comments and totals', () => {
  it('a header written as a comment loses its mark; other comments stay', () => {
    const rows = [
      ['# made for Brook', ''],
      ['# Slot', 'Part', 'Qty'],
      ['M1-F-001', 'R-100', '2'],
      ['# end', ''],
    ];
    expect(uncommentHeader(rows, sheetHeaderWords)).toEqual([
      rows[0],
      ['Slot', 'Part', 'Qty'],
      rows[2],
      rows[3],
    ]);
    const plain = [
      ['Slot', 'Part', 'Qty'],
      ['M1-F-001', 'R-100', '2'],
    ];
    expect(uncommentHeader(plain, sheetHeaderWords)).toBe(plain);
    const none = [
      ['# one', 'two'],
      ['three', 'four'],
    ];
    expect(uncommentHeader(none, sheetHeaderWords)).toBe(none);
    expect(uncomment([])).toEqual([]);
  });

  it.each(['# x', '// x', '; x', '! x', '-- x', '=====', '- - -', '%'])(
    '%s is a comment or a rule',
    (line) => {
      expect(isCommentLine(line)).toBe(true);
    },
  );

  it.each(['R-100', '*R100*', '--', 'M1-F-001'])('%s is none', (line) => {
    expect(isCommentLine(line)).toBe(false);
  });

  it('totals and ends are told from parts that begin alike', () => {
    expect(['Total', 'Summe: 4', 'Grand total', 'End of file', '24 rows', 'page 3'].map(isTotalText)).toEqual(
      Array.from({ length: 6 }, () => true),
    );
    expect(['TOTALIZER-1', 'ENDCAP', 'rows', 'SUMMIT'].map(isTotalText)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});

it('a message names the first 30 headers, 40 characters of each', () => {
  expect(sayHeaders(['', ''])).toBe('(nothing)');
  expect(sayHeaders(['Slot', '', 'x'.repeat(41)])).toBe(`Slot, ${'x'.repeat(40)}`);
  expect(sayHeaders(Array.from({ length: 31 }, (_, at) => `h${at}`)).split(', ')).toHaveLength(30);
});

describe('parts that are not fitted', () => {
  it.each([
    'DNP',
    'dnf',
    'NC',
    'n/f',
    'no pop',
    'do not fit',
    'not fitted',
    'nicht bestückt',
    'no montar',
    'omit',
  ])('%s is a mark', (text) => {
    expect([isNotFittedMark(text), parseFitted(text), parseNotFitted(text)]).toEqual([true, false, true]);
  });

  it.each(['fitted', 'placed', 'bestückt', '●', 'montado'])('%s says the other', (text) => {
    expect([isNotFittedMark(text), parseFitted(text), parseNotFitted(text)]).toEqual([false, true, false]);
  });

  it.each([
    ['10k DNP', true],
    ['(not fitted)', true],
    ['DNP', true],
    ['DNP-100', false],
    ['10k', false],
    ['', false],
    ['union', false],
  ])('%j carries a mark: %s', (text, carries) => {
    expect(carriesNotFittedMark(text)).toBe(carries);
  });

  it('a column of crosses means no where it is empty', () => {
    expect(blankMeansNo(['x', '', 'x'])).toBe(true);
    expect(blankMeansNo(['x', 'x'])).toBe(false);
    expect(blankMeansNo(['', ''])).toBe(false);
    expect(blankMeansNo(['x', '', 'no'])).toBe(false);
  });
});

it.each<[text: string, size: readonly number[] | null]>([
  ['17x17', [17, 17]],
  ['10,3 × 7,5 mm', [10.3, 7.5]],
  ['0.2*100', [0.2, 100]],
  ['0.1x1', null],
  ['1x101', null],
  ['17', null],
])('a body of %s is %j', (text, size) => {
  expect(parseBodySize(text)).toEqual(size);
});

describe('what slots of a part state together', () => {
  const slot = (perPanel: number | null, sharing: SheetSlot['sharing'] = null) =>
    ({ perPanel, sharing }) as SheetSlot; // what is asked of it
  it.each<[what: string, slots: readonly SheetSlot[], stated: number | null]>([
    ['side by side they add up', [slot(4), slot(2, 'split')], 6],
    ['in turn one counts', [slot(12, 'inTurn'), slot(12, 'inTurn')], 12],
    ['in turn one that states none takes the other’s', [slot(12, 'inTurn'), slot(null, 'inTurn')], 12],
    ['both ways', [slot(6, 'split'), slot(12, 'inTurn'), slot(12, 'inTurn')], 18],
    ['one side by side that states none', [slot(4), slot(null)], null],
    ['in turn and nobody states any', [slot(null, 'inTurn'), slot(null, 'inTurn')], null],
    ['beside some in turn of which nobody states any', [slot(4), slot(null, 'inTurn')], null],
    ['none at all', [], 0],
  ])('%s', (_, slots, stated) => {
    expect(statedUsage(slots)).toBe(stated);
  });
});

describe('a slot’s address', () => {
  it.each([
    ['M1-F-14', '2', 'R', 'M1-F-14'],
    ['14', '1', 'F', 'M1-F-014'],
    ['14', '', '', '14'],
    ['F-14', '1', '', 'M1-F-014'],
    ['F-14', '', 'R', 'F-14'],
    ['tray', '1', 'F', 'tray'],
  ])('%s with machine %j and bank %j is %s', (text, machine, bank, slot) => {
    expect(joinSlotAddress(text, { machine, bank }).slot).toBe(slot);
  });
});

describe('usage out of a placement file', () => {
  const file = (counts: Readonly<Record<string, number>>) =>
    readPlacements(
      `Ref,Part,X,Y,Side\n${Object.entries(counts)
        .flatMap(([part, count]) =>
          Array.from({ length: count }, (_, at) => `${part}_${at + 1},${part},${at},1,top`),
        )
        .join('\n')}\n`,
    );
  const read = (rows: readonly string[], counts: Readonly<Record<string, number>>) => {
    const text = ['Slot,Part,Qty,Tape width,Pitch', ...rows.map((row) => `${row},8,4`)].join('\n');
    const reading = readSheet(textToRows(text).rows, { placements: file(counts) });
    return {
      usage: reading.slots.map(({ perPanel }) => perPanel),
      told: reading.problems
        .filter(({ code }) => code !== 'noApprovedReels')
        .map(({ code, row }) => `${code} ${row}`),
    };
  };

  it.each<
    [what: string, rows: readonly string[], counts: Record<string, number>, usage: unknown[], told: string[]]
  >([
    ['fills the one row that states none', ['F-1,A,', 'F-2,A,2'], { A: 5 }, [3, 2], []],
    ['agrees', ['F-1,A,3', 'F-2,A,2'], { A: 5 }, [3, 2], []],
    ['disagrees', ['F-1,A,3', 'F-2,A,1'], { A: 5 }, [3, 1], ['usageDisagrees 2']],
    ['cannot split what is left', ['F-1,A,', 'F-2,A,'], { A: 5 }, [null, null], ['usageSplitUnknown 2']],
    ['has nothing left for the open row', ['F-1,A,', 'F-2,A,5'], { A: 5 }, [null, 5], ['usageDisagrees 2']],
    ['does not place the part', ['F-1,A,2', 'F-2,B,1'], { B: 1 }, [2, 1], ['partNotPlaced 2']],
    ['does not place a part that wants nothing', ['F-1,A,0', 'F-2,B,1'], { B: 1 }, [0, 1], ['usageZero 2']],
    ['places a part without a slot', ['F-1,A,2'], { A: 2, B: 3 }, [2], ['partWithoutSlot null']],
  ])('%s', (_, rows, counts, usage, told) => {
    const found = read(rows, counts);
    expect(found.usage).toEqual(usage);
    expect(found.told.filter((each) => !each.startsWith('columnAbsent'))).toEqual(told);
  });

  it('of a single board is told where every part of three has the same multiple', () => {
    const rows = (factor: number) =>
      ['A,2', 'B,4', 'C,6'].map(
        (each, at) => `F-${at + 1},${each.replace(/\d/, (n) => String(Number(n) * factor))}`,
      );
    const counts = { A: 2, B: 4, C: 6 };
    const isRatio = (given: readonly string[], wanted: Record<string, number> = counts) =>
      read(given, wanted).told.some((each) => each.startsWith('usageRatio'));
    expect([isRatio(rows(1)), isRatio(rows(2)), isRatio(rows(4))]).toEqual([false, true, true]);
    expect(isRatio(['F-1,A,4', 'F-2,B,8', 'F-3,C,18'])).toBe(false);
    expect(isRatio(['F-1,A,4', 'F-2,B,8'], { A: 2, B: 4 })).toBe(false);
  });
});

describe('setup slots out of a sheet', () => {
  it('have the positions that are stated, else those of the tape, else one', () => {
    const text = 'Slot,Part,Qty,Tape width,Pitch,Positions\nF-1,A,1,8,4,3\nF-5,B,1,24,4,\nF-9,C,1,,4,\n';
    const { slots } = readSheet(textToRows(text).rows);
    expect(toSetupSlots(slots).map(({ positions }) => positions)).toEqual([3, 3, 1]);
  });
});

describe('layouts of text', () => {
  const aligned = [
    'Ref    Value   X      Y     Side',
    'R1     10k     1.0    2.0   top',
    'C12    100n    11.5   2.0   top',
  ];

  it('placement files are cut at blanks where no separator names the columns', () => {
    expect(placementRows(aligned.join('\n')).rows[1]).toEqual(['R1', '10k', '1.0', '2.0', 'top']);
    expect(placementRows('Ref,Value,X,Y,Side\nR1,10 k,1,2,top').rows[1]).toEqual([
      'R1',
      '10 k',
      '1',
      '2',
      'top',
    ]);
  });

  it('bills are cut at the separator under which a row reads like a bill’s header', () => {
    expect(billRows('Reference;Value;Quantity\nR1 R2;10k;2').rows[1]).toEqual(['R1 R2', '10k', '2']);
  });

  it('the separator is the one that the file states, else the one under which rows are most alike', () => {
    expect(guessSeparator('sep=|\nSlot;Part')).toBe('|');
    expect(guessSeparator('Slot;Part;Qty\nF-1;A;1,5')).toBe(';');
    expect(guessSeparator('a^b^c\nd^e^f\ng^h^i')).toBe('^');
    expect(guessSeparator('')).toBe(',');
  });

  it.each<[what: string, bytes: readonly number[], encoding: string]>([
    ['UTF-8 with its mark', [0xef, 0xbb, 0xbf, 0x41, 0x42], 'utf-8'],
    ['UTF-8', [0x41, 0x42], 'utf-8'],
    ['UTF-16, low byte first', [0xff, 0xfe, 0x41, 0, 0x42, 0], 'utf-16le'],
    ['UTF-16, high byte first', [0xfe, 0xff, 0, 0x41, 0, 0x42], 'utf-16be'],
  ])('%s is read', (_, bytes, encoding) => {
    const read = bytesToText(Uint8Array.from(bytes), (part, named) => new TextDecoder(named).decode(part));
    expect(read).toMatchObject({ text: 'AB', encoding, problems: [] });
  });
});

describe('the look of a column', () => {
  const look = (...cells: readonly string[]) =>
    lookAt(
      cells.map((cell) => [cell, 'x']),
      0,
      0,
    );

  it('is told in shares of its filled cells', () => {
    expect(look('R1', 'C2', '', '10k')).toMatchObject({ single: 2 / 3, numbers: 0, distinct: 1 });
    expect(look('1', '2', '3', '4')).toMatchObject({ numbers: 1, integers: 1, isSequence: true });
    expect(look('1', '2', '2.5', 'x')).toMatchObject({ numbers: 3 / 4, integers: 2 / 4, isSequence: false });
    expect(look('0', '90', '-270', '375', '7')).toMatchObject({ angles: 3 / 5 });
    expect(look('top', 'bottom', '1')).toMatchObject({ sides: 2 / 3 });
    expect(look('SMD', 'tht', 'R1')).toMatchObject({ mounts: 2 / 3 });
    expect(look('R0603', 'SOT-23', 'R1')).toMatchObject({ packages: 2 / 3 });
    expect(look('R1, R2', 'C1-C4', 'red, blue')).toMatchObject({ designators: 2 / 3 });
    expect(look('a', 'a', 'b', 'b')).toMatchObject({ distinct: 1 / 2 });
    expect(look()).toMatchObject({ numbers: 0, single: 0, distinct: 0, isSequence: false });
    expect(
      lookAt(
        Array.from({ length: 400 }, () => ['1', 'x']),
        0,
        0,
      ).entries,
    ).toHaveLength(300);
  });

  it.each<[text: string, number: number | null]>([
    ['12', 12],
    ['-1.5', -1.5],
    ['12 mm', 12],
    ['90°', 90],
    ['1.2e1', 12],
    ['x', null],
    ['', null],
  ])('%j measures %s', (text, number) => {
    expect(parseMeasure(text)).toBe(number);
  });
});
