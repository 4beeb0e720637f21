import { describe, expect, it } from 'vitest';
import {
  isNotTape,
  packageKindOf,
  parseBank,
  parseComesIn,
  parseCount,
  parseFlag,
  parseLengthMm,
  parseList,
  parseMachine,
  parseNumber,
  parseSheetMsl,
  parseSide,
  parseTapePair,
} from '../../../shared/sheet/cells.ts';
import { parseDesignators } from '../../../shared/sheet/designators.ts';
import { isNotFittedMark } from '../../../shared/sheet/not-placed.ts';

describe('parseNumber()', () => {
  it.each<[string, 'count' | 'length', number | null, string]>([
    ['4', 'length', 4, 'plain'],
    ['4.0', 'length', 4, 'decimal point'],
    ['4,0', 'length', 4, 'decimal comma'],
    ['0,55', 'length', 0.55, 'decimal comma'],
    ['1.234', 'length', 1.234, 'no tape is a metre wide'],
    ['1.234', 'count', 1234, 'no count has three decimals'],
    ['1,234', 'count', 1234, 'thousands comma'],
    ['1,234,567', 'count', 1_234_567, 'two thousands commas'],
    ['1.234.567', 'length', 1_234_567, 'two marks can only be thousands'],
    ['1.234,5', 'length', 1234.5, 'both marks: the last is the decimal one'],
    ['1,234.5', 'count', 1234.5, 'both marks: the last is the decimal one'],
    ['1 234', 'count', 1234, 'space'],
    ['1\u00a0234', 'count', 1234, 'no-break space'],
    ["1'234", 'count', 1234, 'apostrophe'],
    ['12,0', 'count', 12, 'decimal comma in a count'],
    ['0.125', 'count', 0.125, 'a leading 0 is no thousand'],
    ['-3', 'count', -3, 'negative'],
    ['1,23,456', 'count', null, 'groups of two'],
    ['1.2.3', 'length', null, 'a version'],
    ['12,34.56,7', 'length', null, 'mixed marks'],
    ['', 'count', null, 'nothing'],
    ['four', 'count', null, 'a word'],
    ['1e3', 'count', null, 'an exponent'],
  ])('reads %j as %s: %s (%s)', (text, kind, wanted) => {
    expect(parseNumber(text, kind)).toBe(wanted);
  });
});

describe('parseCount()', () => {
  it.each([
    [12, 12],
    ['12 pcs', 12],
    ['12 Stk.', 12],
    ['4x', 4],
    ['1 200', 1200],
    [1.5, null],
    ['1,5', null],
    ['12 mm', null],
    ['', null],
  ])('reads %j as %s', (cell, wanted) => {
    expect(parseCount(cell)).toBe(wanted);
  });
});

describe('parseLengthMm()', () => {
  it.each([
    [8, 8],
    ['8', 8],
    ['8mm', 8],
    ['8 mm', 8],
    ['8 MM', 8],
    ['8,0 mm', 8],
    ['8 mm paper', 8],
    ['8 embossed', 8],
    ['W8', 8],
    ['P4', 4],
    ['0.3 in', null],
    ['0.8 cm', null],
    ['8"', null],
    ['8x4', null],
    ['wide', null],
    ['', null],
    [Number.NaN, null],
  ])('reads %j as %s mm', (cell, wanted) => {
    expect(parseLengthMm(cell)).toBe(wanted);
  });
});

describe('parseTapePair()', () => {
  it.each([
    ['8x4', 8, 4],
    ['8/4', 8, 4],
    ['8 mm x 4 mm', 8, 4],
    ['W12P8', 12, 8],
    ['8×2', 8, 2],
  ])('reads %j as %s and %s mm', (cell, widthMm, pitchMm) => {
    expect(parseTapePair(cell)).toEqual({ widthMm, pitchMm });
  });

  it.each(['8', '8 mm', '8 mm paper', ''])('gives null for %j', (cell) => {
    expect(parseTapePair(cell)).toBeNull();
  });
});

describe('parseList()', () => {
  it.each<[string, boolean, string[], string]>([
    ['A;B', false, ['A', 'B'], 'semicolon'],
    ['A, B', false, ['A', 'B'], 'comma'],
    ['A/B', false, ['A', 'B'], 'slash'],
    ['A | B', false, ['A', 'B'], 'bar'],
    ['A\nB', false, ['A', 'B'], 'line break'],
    ['A/1; B/2', false, ['A/1', 'B/2'], 'a slash inside entries that a semicolon separates'],
    ['A;;A; -', false, ['A'], 'empty, doubled and dashed entries'],
    ['', false, [], 'nothing'],
    ['n/a', false, [], 'a mark for nothing, although it holds a slash'],
    ['MX100/REEL', true, ['MX100/REEL'], "a slash inside a maker's number"],
    ['MX100 / MX200', true, ['MX100', 'MX200'], 'a slash with spaces'],
    ['MX100,215', true, ['MX100,215'], "a comma inside a maker's number"],
    ['MX100,MX200', true, ['MX100', 'MX200'], 'a comma between numbers'],
  ])('splits %j (careful %s) into %j: %s', (text, careful, wanted) => {
    expect(parseList(text, { careful })).toEqual(wanted);
  });
});

describe('parseDesignators()', () => {
  it.each([
    ['R1, R2', ['R1', 'R2']],
    ['R1 R2;R3', ['R1', 'R2', 'R3']],
    ['R1-R4', ['R1', 'R2', 'R3', 'R4']],
    ['R1 - R3', ['R1', 'R2', 'R3']],
    ['R1..3', ['R1', 'R2', 'R3']],
    ['C9 to C11', ['C9', 'C10', 'C11']],
    ['R4-R1', ['R1', 'R2', 'R3', 'R4']],
    ['R1-C4', ['R1-C4']],
    ['', []],
  ])('reads %j', (text, wanted) => {
    expect(parseDesignators(text)).toEqual(wanted);
  });
});

describe('other cells', () => {
  it.each([
    ['1', 'M1'],
    ['01', 'M1'],
    ['Machine 2', 'M2'],
    ['Maschine 2', 'M2'],
    ['m1', 'M1'],
    ['', null],
  ])('parseMachine() reads %j as %s', (text, wanted) => {
    expect(parseMachine(text)).toBe(wanted);
  });

  it.each([
    ['front', 'F'],
    ['vorne', 'F'],
    ['avant', 'F'],
    ['delantero', 'F'],
    ['Rear', 'R'],
    ['hinten', 'R'],
    ['arrière', 'R'],
    ['trasero', 'R'],
    ['a', 'A'],
    ['', null],
  ])('parseBank() reads %j as %s', (text, wanted) => {
    expect(parseBank(text)).toBe(wanted);
  });

  it.each([
    ['3', '3'],
    ['MSL 3', '3'],
    ['MSL-2A', '2a'],
    ['Level 5a', '5a'],
    ['7', null],
    ['2b', null],
  ])('parseSheetMsl() reads %j as %s', (text, wanted) => {
    expect(parseSheetMsl(text)).toBe(wanted);
  });

  it.each([
    ['T', 'top'],
    ['TopLayer', 'top'],
    ['oben', 'top'],
    ['dessus', 'top'],
    ['superior', 'top'],
    ['B', 'bottom'],
    ['Bottom', 'bottom'],
    ['unten', 'bottom'],
    ['dessous', 'bottom'],
    ['inferior', 'bottom'],
    ['inner 2', null],
  ])('parseSide() reads %j as %s', (text, wanted) => {
    expect(parseSide(text)).toBe(wanted);
  });

  it.each([
    ['x', true],
    ['Ja', true],
    ['sí', true],
    [true, true],
    [1, true],
    ['no', false],
    ['non', false],
    [0, false],
    ['perhaps', null],
    ['', null],
  ])('parseFlag() reads %j as %s', (cell, wanted) => {
    expect(parseFlag(cell)).toBe(wanted);
  });

  it.each(['DNP', 'dnf', 'Do not place', 'not fitted', 'nicht bestückt', 'no montar', 'non monté', 'NF'])(
    'isNotFittedMark() knows %j',
    (text) => {
      expect(isNotFittedMark(text)).toBe(true);
    },
  );

  it.each(['DNP-100', 'NF100', 'fitted', ''])('isNotFittedMark() leaves %j alone', (text) => {
    expect(isNotFittedMark(text)).toBe(false);
  });

  it.each(['tray', 'Stick', 'Stange', 'bandeja', 'plateau'])('isNotTape() knows %j', (text) => {
    expect(isNotTape(text)).toBe(true);
  });

  // Common words of the trade, from memory: a width's cell is read as a list's own column is.
  it.each([
    ['Beutel', 'bulk'],
    ['a granel', 'bulk'],
    ['barra', 'tube'],
    ['Gurtabschnitt', 'cut-tape'],
    ['bande coupée', 'cut-tape'],
    ['matrix', 'tray'],
    ['vrac', 'bulk'],
  ])('%j in place of a width is %s in every list', (text, kind) => {
    expect(packageKindOf(text)).toBe(kind);
    expect(parseComesIn(text)).toBe(kind);
  });

  it.each(['Gurt', 'reel', '8 mm', ''])('%j names nothing but tape', (text) => {
    expect(packageKindOf(text)).toBe(null);
    expect(isNotTape(text)).toBe(false);
  });
});
