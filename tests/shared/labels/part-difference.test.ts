import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differingCharacters } from '../../../shared/labels/part-difference.ts';

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
