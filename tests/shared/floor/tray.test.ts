// Pockets of trays against worked counts of full trays in the common outline (JEDEC publication 95, CO-029 family; rows and columns from memory),
// and against a walk over the pockets in the order in which a person would tick them.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leftFrom, pocketAt, pocketsOf, type TrayForm, takenBefore } from '../../../shared/floor/tray.ts';
import { corners } from '../../../shared/floor/vocabulary.ts';

const form = (rows: number, columns: number, trays = 1, more: Partial<TrayForm> = {}): TrayForm => ({
  rows,
  columns,
  trays,
  first: 'top-left',
  along: 'rows',
  pin1: null,
  ...more,
});

const forms = fc.record({
  rows: fc.integer({ min: 1, max: 12 }),
  columns: fc.integer({ min: 1, max: 12 }),
  trays: fc.integer({ min: 1, max: 5 }),
  first: fc.constantFrom(...corners),
  along: fc.constantFrom('rows' as const, 'columns' as const),
  pin1: fc.constant(null),
});

describe('a stack of trays', () => {
  // Full trays of the common outline, 322.6 × 135.9 mm; from memory: bodies of 7, 10, 14, 20 and 28 mm square, and 12 × 20 mm.
  test.each([
    [10, 25, 250],
    [8, 20, 160],
    [6, 15, 90],
    [5, 12, 60],
    [3, 8, 24],
    [8, 12, 96],
  ])('%i × %i pockets hold %i parts', (rows, columns, parts) => {
    expect(pocketsOf(form(rows, columns))).toBe(parts);
    expect(pocketsOf(form(rows, columns, 10))).toBe(10 * parts);
    expect(leftFrom(form(rows, columns, 10), { tray: 1, row: 1, column: 1 })).toBe(10 * parts);
  });

  test('worked: 6 × 15, two trays, third row, fifth pocket is next', () => {
    expect(takenBefore(form(6, 15, 2), { tray: 1, row: 3, column: 5 })).toBe(34);
    expect(leftFrom(form(6, 15, 2), { tray: 1, row: 3, column: 5 })).toBe(146);
    expect(leftFrom(form(6, 15, 2), { tray: 2, row: 6, column: 15 })).toBe(1);
  });

  test.each([
    ['top-left', 'rows', { tray: 1, row: 1, column: 2 }],
    ['top-left', 'columns', { tray: 1, row: 2, column: 1 }],
    ['top-right', 'rows', { tray: 1, row: 1, column: 2 }],
    ['bottom-left', 'columns', { tray: 1, row: 1, column: 1 }],
    ['bottom-right', 'rows', { tray: 1, row: 2, column: 2 }],
  ] as const)('from %s along the %s, the second pocket of 2 × 3 is %o', (first, along, second) => {
    expect(pocketAt(form(2, 3, 1, { first, along }), 1)).toEqual(second);
  });

  test('each pocket comes once, and its place is its number', () => {
    fc.assert(
      fc.property(forms, (each) => {
        const seen = new Set<string>();
        for (let taken = 0; taken < pocketsOf(each); taken++) {
          const pocket = pocketAt(each, taken);
          seen.add(JSON.stringify(pocket));
          expect(takenBefore(each, pocket)).toBe(taken);
          expect(leftFrom(each, pocket)).toBe(pocketsOf(each) - taken);
        }
        expect(seen.size).toBe(pocketsOf(each));
      }),
    );
  });

  test('what no tray holds is no pocket', () => {
    expect(() => pocketAt(form(2, 3), 6)).toThrow(RangeError);
    expect(() => pocketAt(form(2, 3), 1.5)).toThrow(RangeError);
    expect(() => takenBefore(form(2, 3), { tray: 1, row: 3, column: 1 })).toThrow(RangeError);
    expect(() => takenBefore(form(2, 3), { tray: 2, row: 1, column: 1 })).toThrow(RangeError);
  });
});
