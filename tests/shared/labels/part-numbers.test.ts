import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparePartNumbers, type PartComparison } from '../../../shared/labels/part-numbers.ts';

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
    ['MK-1', 'mk -1', { ...EXACTLY, ignoreCase: true }, null],
    ['MK-1', 'mk1', { ...EXACTLY, ignoreCase: true }, null],
    ['MK-1', 'mk -1', { ...EXACTLY, ignoreSpaces: true }, null],
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
