import { describe, expect, test } from 'vitest';
import { median } from '../../../shared/kit/median.ts';

describe('median()', () => {
  test.each([
    [[], null],
    [[7], 7],
    [[9, 1, 5], 5],
    [[4, 1, 10, 2], 3],
  ])('of %j is %s', (list, expected) => {
    expect(median(list)).toBe(expected);
  });
});
