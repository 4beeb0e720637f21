// Cells made to hurt a reader that goes back: each is 200,000 characters. With work that grows with the square they would need minutes each;
// no clock is read here.

import { expect, it } from 'vitest';
import { parseDesignators } from '../../../shared/sheet/designators.ts';

const N = 200_000;

it.each([
  ['digits behind a designator', `R1 ${'1'.repeat(N)}`],
  ['digits behind letters', `R${'1'.repeat(N)}-`],
  ['letters', `${'A'.repeat(N)}-5`],
  ['closing brackets', `${')'.repeat(N)}x`],
  ['opening brackets', `x${'('.repeat(N)}`],
  ['blanks behind a count', `R1 (1${' '.repeat(N)}`],
  ['hyphens', `R1${'-'.repeat(N)}`],
])('reads a cell of very many %s', (_, text) => {
  expect(() => parseDesignators(text)).not.toThrow();
});

it('still takes off brackets, full stops and counts, and opens ranges', () => {
  expect(parseDesignators('(R1), "R3-R5". [R7] (2x) R9 ( 3 pcs )')).toEqual([
    'R1',
    'R3',
    'R4',
    'R5',
    'R7',
    'R9',
  ]);
  expect(parseDesignators('()')).toEqual([]);
});
