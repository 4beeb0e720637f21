// Text cut into cells, numbers and lists in cells, and how problems are listed.

import { describe, expect, it } from 'vitest';
import {
  isBlankMark,
  parseCount,
  parseLengthMm,
  parseList,
  parseNumber,
  parseTapePair,
} from '../../../shared/sheet/cells.ts';
import { checkColumns } from '../../../shared/sheet/columns.ts';
import { sheetHeaderWords } from '../../../shared/sheet/fields.ts';
import { guessColumns } from '../../../shared/sheet/headers.ts';
import {
  hasSheetErrors,
  problemSink,
  type SheetProblem,
  sheetProblem,
} from '../../../shared/sheet/problems.ts';
import { bytesToText, guessSeparator, textToRows } from '../../../shared/sheet/text.ts';

describe('cells', () => {
  it.each<[text: string, kind: 'count' | 'length', number: number | null]>([
    ['123456789012345', 'count', 123_456_789_012_345],
    ['1.234.5', 'count', null],
    ['1,234.567,8', 'length', null],
    ['12,34.5', 'length', null],
    ['1.2,3.4', 'length', null],
    ['1.234,567', 'length', 1234.567],
    ['12.345,5', 'count', 12_345.5],
    ['1,234.', 'length', 1234],
    ['+1', 'count', 1],
    ['-1,5', 'length', -1.5],
    ['.5', 'length', 0.5],
    ['5.', 'length', 5],
    ['.', 'length', null],
    ['12,5', 'count', 12.5],
    ['1234,567', 'count', 1234.567],
  ])('%s as a %s is %s', (text, kind, number) => {
    expect(parseNumber(text, kind)).toBe(number);
  });

  it('say lengths, counts and pairs only where they are whole', () => {
    expect([parseLengthMm('8 mm tape'), parseLengthMm('W 12'), parseLengthMm('0.5')]).toEqual([8, 12, 0.5]);
    expect([parseLengthMm('8 in'), parseLengthMm(Number.POSITIVE_INFINITY)]).toEqual([null, null]);
    expect([parseCount(true), parseCount('1.5 pcs'), parseCount('2 ea.'), parseCount(3.5)]).toEqual([
      null,
      null,
      2,
      null,
    ]);
    const pair = (text: string) => Object.values(parseTapePair(text) ?? {});
    expect(['8x4,0', '8-4', 'W8 P4', '12 8', '8'].map(pair)).toEqual([[8, 4], [8, 4], [8, 4], [12, 8], []]);
  });

  it('list entries, a comma cutting makers’ numbers only where four characters are left', () => {
    expect(parseList('a, b,abcd', { careful: true })).toEqual(['a, b,abcd']);
    expect(parseList('abcd, efgh', { careful: true })).toEqual(['abcd', 'efgh']);
    expect(parseList('abcd /efgh', { careful: true })).toEqual(['abcd /efgh']);
    expect([parseList('a|a|-|b'), parseList('a/b,c'), parseList(' - ')]).toEqual([
      ['a', 'b'],
      ['a/b', 'c'],
      [],
    ]);
    expect(['-', '--', 'n/a', 'none', '.', 'x', ''].map(isBlankMark)).toEqual([
      true,
      true,
      true,
      true,
      true,
      false,
      false,
    ]);
  });
});

describe('the separator', () => {
  it.each<[what: string, text: string, separator: string]>([
    ['the even one', 'a:b\nc:d', ':'],
    ['the one of most rows', `${'a;b\n'.repeat(3)}a,b,c`, ';'],
    ['the one that gives a header', 'Slot:Part,Qty\nx:y,z', ','],
    ['the first of two that are as good', 'a,b;c\nd,e;f', ','],
    ['none', 'ab\ncd', ','],
    ['the one stated, however it is written', 'SEP=~\na,b', '~'],
    ['a rare one behind a cell of many signs', 'a!b\nc!d\n@$&=?*<>', '!'],
    ['of a bill', 'x,y;Reference;Quantity\n1,2;R1;1', ';'],
  ])('is %s', (_, text, separator) => {
    expect(guessSeparator(text)).toBe(separator);
  });

  it('is looked for in the first 32,768 characters, in whole lines, and in 60 rows', () => {
    const rows = (count: number) => 'a,b\n'.repeat(count);
    const header = 'Slot;Part;Qty;Pitch\n';
    expect(guessSeparator(`${rows(8186)}${header}`)).toBe(',');
    expect(guessSeparator(`${rows(59)}${header}`)).toBe(';');
    expect(guessSeparator(`${rows(60)}${header}`)).toBe(',');
    // The first line is longer than what is looked at.
    expect(guessSeparator(`${'x;y;'.repeat(9000)}\na,b`)).toBe(';');
    const long = `Slot;Part\n${'x,'.repeat(20_000)}`;
    expect(guessSeparator(long)).toBe(';');
  });

  it('is one of the eight signs that stand in the most lines', () => {
    const signs = ['!', '@', '$', '&', '=', '?', '*', '<'];
    const lines = (some: readonly string[]) => some.map((sign) => `${sign}\n`.repeat(4)).join('');
    const header = 'Slot>Part>Qty\n'.repeat(3);
    expect(guessSeparator(lines(signs) + header)).toBe('!');
    expect(guessSeparator(header + lines(signs))).toBe('!');
    expect(guessSeparator(lines(signs.slice(1)) + header)).toBe('>');
  });

  it('given or stated cuts the rows; the line that states it is an empty row', () => {
    expect(textToRows('a;b,c', { separator: ',' })).toEqual({
      rows: [['a;b', 'c']],
      separator: ',',
      problems: [],
    });
    expect(textToRows('sep=;\na;b').rows).toEqual([[], ['a', 'b']]);
    expect(textToRows('Sep=,\na,b').rows).toEqual([[], ['a', 'b']]);
    expect(textToRows('\ufeffa,b').rows).toEqual([['a', 'b']]);
    expect(textToRows('').rows.flat().join('')).toBe('');
  });

  it('cuts nothing in quotation marks; of those that are broken 1000 rows are told', () => {
    expect(textToRows('a,"b,c"\nd,e').rows[0]).toEqual(['a', 'b,c']);
    const { problems } = textToRows(`h,k\n${'a,"b"x"\n'.repeat(1003)}`);
    expect([problems.length, problems[0]?.row, problems[0]?.facts]).toEqual([1000, 2, { row: 2 }]);
  });
});

describe('bytes', () => {
  const decoded: string[] = [];
  const read = (...bytes: readonly number[]) => {
    decoded.length = 0;
    return bytesToText(Uint8Array.from(bytes), (part, encoding) => {
      decoded.push(`${encoding} ${part.length}`);
      return new TextDecoder(encoding).decode(part);
    });
  };
  const pairs = (count: number, low: boolean, others = 0) =>
    Array.from({ length: count }, (_, at) => (at < others ? [65, 66] : low ? [65, 0] : [0, 65])).flat();

  it.each<[what: string, bytes: readonly number[], encoding: string]>([
    ['two characters in pairs, low byte first', pairs(2, true), 'utf-16le'],
    ['high byte first', pairs(2, false), 'utf-16be'],
    ['one alone says nothing', pairs(1, true), 'utf-8'],
    ['seven of ten', pairs(10, true, 3), 'utf-16le'],
    ['six of ten', pairs(10, true, 4), 'utf-8'],
    ['seven of ten, high byte first', pairs(10, false, 3), 'utf-16be'],
    ['six of ten, high byte first', pairs(10, false, 4), 'utf-8'],
    ['an odd byte at the end', [...pairs(2, true), 65], 'utf-16le'],
    ['a mark and letters of two whole bytes', [0xff, 0xfe, 0x4d, 0x4f], 'utf-16le'],
    ['the other mark', [0xfe, 0xff, 0x4f, 0x4d], 'utf-16be'],
    ['half a mark', [0xff, 65, 65], 'utf-8'],
    ['half the other mark', [0xfe, 65, 65], 'utf-8'],
  ])('%s', (_, bytes, encoding) => {
    expect(read(...bytes).encoding).toBe(encoding);
  });

  it('are looked at up to 4096', () => {
    expect(read(...pairs(2048, true, 819), ...pairs(4000, true, 4000)).encoding).toBe('utf-16le');
    expect(read(...pairs(2048, true, 820), ...pairs(4000, true)).encoding).toBe('utf-8');
  });

  it('after a mark of UTF-8 are the text; zeros within text are none', () => {
    read(0xef, 0xbb, 0xbf, 65);
    expect(decoded).toEqual(['utf-8 1']);
    read(0xef, 0xbb, 65, 65);
    expect(decoded).toEqual(['utf-8 4']);
    expect(read(65, 66, 0, 67, 68, 69).text).toBeNull();
    expect(bytesToText(Uint8Array.of(65), () => null)).toMatchObject({
      text: null,
      encoding: 'windows-1252',
    });
    expect(bytesToText(Uint8Array.of(0xff, 0xfe), () => null)).toEqual({
      text: null,
      encoding: 'utf-16le',
      problems: [],
    });
  });
});

describe('problems', () => {
  const other = (row: number | null, severity: 'error' | 'warning' = 'error') =>
    ({ ...sheetProblem('quoteBroken', { row }), severity }) as SheetProblem;

  it('stand by row, those of no row last, and how many more there are at the end', () => {
    const sink = problemSink(3);
    sink.add('noRows', { row: 5 });
    sink.addAll([other(null), other(2)]);
    expect(sink.list().map(({ row }) => row)).toEqual([2, 5, null]);
    sink.add('usageMissing', { row: 1 });
    expect(sink.list().at(-1)).toMatchObject({
      code: 'moreProblems',
      severity: 'warning',
      row: null,
      facts: { count: 1 },
    });
    sink.addAll([other(3, 'warning'), other(4)]);
    sink.add('usageMissing', { row: 1 });
    expect(sink.list().map(({ code }) => code)).toEqual([
      'quoteBroken',
      'noRows',
      'quoteBroken',
      'moreErrors',
    ]);
    expect(sink.list().at(-1)?.facts).toEqual({ count: 4 });
    expect(problemSink(0).list()).toEqual([]);
  });

  it('keep texts of 80 characters; lists of what there is stay whole', () => {
    const facts = (text: string) =>
      sheetProblem('columnMissing', { row: 1 }, { found: text, wanted: text, headers: text, most: 4 }).facts;
    expect(facts('x'.repeat(80))['found']).toBe('x'.repeat(80));
    expect(facts('x'.repeat(81))).toEqual({
      found: `${'x'.repeat(77)}...`,
      wanted: 'x'.repeat(81),
      headers: 'x'.repeat(81),
      most: 4,
    });
    expect(hasSheetErrors([other(1, 'warning')])).toBe(false);
    expect(hasSheetErrors([other(1, 'warning'), other(1)])).toBe(true);
  });
});

describe('columns of a sheet', () => {
  const told = (headers: readonly string[], supplied = false, map = {}) => {
    const sink = problemSink(99);
    checkColumns(guessColumns([headers], sheetHeaderWords, map), { supplied, sink });
    return sink
      .list()
      .map(({ code, column, row, facts }) => `${code} ${row} ${column ?? facts['wanted'] ?? ''}`);
  };
  const whole = ['Slot', 'Part', 'Qty', 'Tape width', 'Pitch'];

  it.each<[headers: readonly string[], supplied: boolean, told: readonly string[]]>([
    [whole, false, []],
    [whole.slice(1), false, ['columnMissing 1 slot']],
    [['Slot number', ...whole.slice(1)], false, []],
    [['Slot', ...whole.slice(2)], false, ['columnMissing 1 part']],
    [
      ['Slot', 'Part'],
      false,
      ['columnAbsent 1 placements per panel', 'columnAbsent 1 tape width', 'columnAbsent 1 pitch'],
    ],
    [['Slot', 'Part'], true, ['columnAbsent 1 tape width', 'columnAbsent 1 pitch']],
    [['Slot', 'Part', 'RefDes', 'Pitch'], false, ['columnAbsent 1 tape width']],
    [[...whole, 'Moon', '', 'Usage'], false, ['columnUnknown 1 Moon', 'columnTwice 1 Usage']],
    [['Slot', 'Part', 'Qty per board', 'Tape width', 'Pitch'], false, ['usagePerBoard 1 Qty per board']],
    [['Slot', 'Part', 'Qty', 'Tape width', 'Pitch', 'Note'], false, []],
  ])('%j, supplied %s', (headers, supplied, wanted) => {
    expect(told(headers, supplied)).toEqual(wanted);
  });

  it('names what a choice does not find', () => {
    expect(told(whole, false, { note: 'Moon' })).toEqual(['columnNotFound 1 Moon']);
  });
});
