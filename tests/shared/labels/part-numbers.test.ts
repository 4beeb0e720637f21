import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  comparePartNumbers,
  differingCharacters,
  type PartComparison,
} from '../../../shared/labels/part-numbers.ts';

const EXACTLY: PartComparison = {
  ignoreCase: false,
  ignoreSpaces: false,
  ignoreDashes: false,
  packingSuffixes: [],
};
const ALL: PartComparison = {
  ignoreCase: true,
  ignoreSpaces: true,
  ignoreDashes: true,
  packingSuffixes: ['-TR', '/R7', 'TRL'],
};

describe('comparePartNumbers()', () => {
  it.each([
    ['MK-1', 'MK-1', EXACTLY, 'exact'],
    ['MK-1', 'mk-1', EXACTLY, null],
    ['MK-1', 'mk-1', { ...EXACTLY, ignoreCase: true }, 'case'],
    ['MK-1', 'MK -1', { ...EXACTLY, ignoreSpaces: true }, 'spaces'],
    ['MK-1', 'MK1', { ...EXACTLY, ignoreDashes: true }, 'dashes'],
    ['MK-1', 'MK\u20131', { ...EXACTLY, ignoreDashes: true }, 'dashes'],
    ['MK-1', 'MK_1', { ...EXACTLY, ignoreDashes: true }, null],
    ['MK-1', 'MK-1-TR', { ...EXACTLY, packingSuffixes: ['-TR'] }, 'packing-suffix'],
    ['MK-1-TR', 'MK-1', { ...EXACTLY, packingSuffixes: ['-TR'] }, 'packing-suffix'],
    ['MK-1-TR', 'MK-1/R7', ALL, 'packing-suffix'],
    ['MK-1', 'mk1tr', ALL, 'combined'],
    ['MK-1', 'MK-1-TR-TR', { ...EXACTLY, packingSuffixes: ['-TR'] }, null],
    ['-TR', '/R7', ALL, null],
    ['MK-1', 'MK-2', ALL, null],
    ['', '', ALL, null],
    ['-', ' ', ALL, null],
    ['MK-1', '', ALL, null],
  ] as const)('%j and %j under %o: %s', (wanted, found, rules, by) => {
    expect(comparePartNumbers(wanted, found, rules)).toBe(by);
  });

  it('is the same in both directions, and exact where nothing differs', () => {
    const text = fc.stringMatching(/^[A-Ca-c1 \-TR/7]{0,10}$/);
    const rules = fc.record({
      ignoreCase: fc.boolean(),
      ignoreSpaces: fc.boolean(),
      ignoreDashes: fc.boolean(),
      packingSuffixes: fc.subarray(['-TR', '/R7', 'R']),
    });
    fc.assert(
      fc.property(text, text, rules, (a, b, comparison) => {
        expect(comparePartNumbers(a, b, comparison)).toBe(comparePartNumbers(b, a, comparison));
        if (a !== '') expect(comparePartNumbers(a, a, comparison)).toBe('exact');
        if (comparePartNumbers(a, b, EXACTLY) !== null) expect(a).toBe(b);
      }),
    );
  });
});

describe('differingCharacters()', () => {
  it.each([
    [
      'MK-103',
      'MK-130',
      [
        [true, 'MK-1', 'MK-1'],
        [false, '03', '30'],
      ],
    ],
    [
      'ABC',
      'ABBC',
      [
        [true, 'AB', 'AB'],
        [false, '', 'B'],
        [true, 'C', 'C'],
      ],
    ],
    [
      'MK-1-TR',
      'MK-1',
      [
        [true, 'MK-1', 'MK-1'],
        [false, '-TR', ''],
      ],
    ],
    ['0O', 'O0', [[false, '0O', 'O0']]],
    ['', 'A', [[false, '', 'A']]],
    ['', '', []],
    ['A', 'A', [[true, 'A', 'A']]],
  ] as const)('of %j and %j', (wanted, found, pieces) => {
    const got = differingCharacters(wanted, found);
    expect(got.map((piece) => piece.wanted).join('')).toBe(wanted);
    expect(got.map((piece) => piece.found).join('')).toBe(found);
    expect(got.map((piece) => [piece.same, piece.wanted, piece.found])).toEqual(pieces);
  });

  /** The edit distance by its plain recursive definition, as referee. */
  function distance(a: string, b: string): number {
    if (a === '' || b === '') return a.length + b.length;
    const change = a[0] === b[0] ? 0 : 1;
    return Math.min(
      change + distance(a.slice(1), b.slice(1)),
      1 + distance(a.slice(1), b),
      1 + distance(a, b.slice(1)),
    );
  }

  it('gives both texts back, marks as the same only what is, and marks no more than needed', () => {
    const text = fc.stringMatching(/^[AB1-]{0,6}$/);
    fc.assert(
      fc.property(text, text, (wanted, found) => {
        const pieces = differingCharacters(wanted, found);
        expect(pieces.map((piece) => piece.wanted).join('')).toBe(wanted);
        expect(pieces.map((piece) => piece.found).join('')).toBe(found);
        let marked = 0;
        for (const piece of pieces) {
          if (piece.same) expect(piece.wanted).toBe(piece.found);
          else marked += Math.max(piece.wanted.length, piece.found.length);
        }
        expect(marked).toBeLessThanOrEqual(distance(wanted, found));
        expect(marked === 0).toBe(wanted === found);
      }),
    );
  });

  it('keeps characters outside the basic plane whole, and gives up on very long texts', () => {
    expect(differingCharacters('A\u{1f600}', 'A\u{1f601}')).toEqual([
      { same: true, wanted: 'A', found: 'A' },
      { same: false, wanted: '\u{1f600}', found: '\u{1f601}' },
    ]);
    expect(differingCharacters('A'.repeat(300), 'B')).toHaveLength(1);
  });
});
