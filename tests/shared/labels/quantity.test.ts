import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../../shared/labels/quantity.ts';

describe('parseQuantity()', () => {
  it.each([
    ['4000', 4000, null, false, 'digits'],
    ['0004000', 4000, null, false, 'leading noughts'],
    ['4,000', 4000, null, true, 'comma before three digits'],
    ['4.000', 4000, null, true, 'point before three digits'],
    ['10 000', 10000, null, true, 'blank before three digits'],
    ["1'250'000", 1250000, null, true, 'apostrophes'],
    ['1,250,000 PCS', 1250000, 'PCS', true, 'marks and unit'],
    ['12.5', 12.5, null, false, 'a decimal'],
    ['4000.00', 4000, null, false, 'decimals behind four digits'],
    ['4000PCS', 4000, 'PCS', false, 'unit without blank'],
    ['4000 pcs', 4000, 'pcs', false, 'unit as printed'],
    ['5000NAR000', 5000, 'NAR', false, 'unit and three decimals (MAT-Label)'],
    ['5000NAR250', 5000.25, 'NAR', false, 'unit and three decimals that count'],
    ['10 M', 10, 'M', false, 'metres'],
    ['0', 0, null, false, 'an empty reel'],
  ])('reads %s as %d %s (marks %s): %s', (text, quantity, unit, marks, _reason) => {
    expect(parseQuantity(text)).toEqual({ quantity, unit, marks });
  });

  it.each([
    ['2N3904', 'a part number'],
    ['4K', 'thousands or a unit'],
    ['-5', 'below nought'],
    ['', 'nothing'],
    ['T1500', 'a tag'],
    ['4,00,000', 'groups of two'],
    ['1,2,3', 'a list'],
    ['12,', 'a mark and nothing'],
    ['99999999999999999999', 'more than a number holds'],
    ['4000 ABC', 'no unit'],
  ])('gives null for %s: %s', (text) => {
    expect(parseQuantity(text)).toBeNull();
  });

  it('reads every whole number with and without thousands marks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 40 }),
        fc.constantFrom(',', '.', ' ', "'"),
        (number, mark) => {
          const grouped = String(number).replace(/\B(?=(\d{3})+$)/g, mark);
          expect(parseQuantity(String(number))?.quantity).toBe(number);
          expect(parseQuantity(grouped)?.quantity).toBe(number);
        },
      ),
    );
  });
});
