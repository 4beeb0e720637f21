// How wide a list may be: empty cells behind the last text do not count, a thousand columns and one are told.

import { expect, test } from 'vitest';
import { fitWidth, mostColumns } from '../../../shared/sheet/width.ts';

const row = (filled: number, empty = 0) => [
  ...Array.from({ length: filled }, () => 'x'),
  ...Array.from({ length: empty }, () => ' '),
];

test('empty cells behind the last text are left out where there are many', () => {
  const fitted = fitWidth([['a', ''], row(3, 16_000), [null, undefined]]);
  expect(fitted).toEqual({ rows: [['a', ''], row(3), [null, undefined]] });
});

test('as many columns as there may be are kept, one more is told with its row', () => {
  expect(fitWidth([row(2), row(mostColumns)])).toEqual({ rows: [row(2), row(mostColumns)] });
  expect(fitWidth([row(2), row(mostColumns + 1, 5)])).toEqual({ row: 2, columns: mostColumns + 1 });
});
