import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedValues, inPlainUnit, valueUnits } from '../../../shared/floor/part-value.ts';

const asText = (text: string, isNote = false) =>
  expectedValues(text, { isNote }).map(
    ({ nominal, unit, plusPercent, minusPercent }) =>
      `${nominal} ${unit}${plusPercent === null ? '' : ` +${plusPercent} -${minusPercent}`}`,
  );

describe('expectedValues()', () => {
  // Letter codes after IEC 60062: a letter for the decimal point, then one for the tolerance (J 5 %, F 1 %, K 10 %, Z +80/-20 %).
  test.each([
    ['4k7', ['4.7 kΩ'], 'letter code'],
    ['4K7J', ['4.7 kΩ +5 -5'], 'with its tolerance'],
    ['100n', ['100 nF'], 'capacitor'],
    ['4p7C', ['4.7 pF +5.31914893617 -5.31914893617'], 'below 10 pF C is 0.25 pF'],
    ['104Z', ['100 nF +80 -20'], 'a one-sided letter is no resistor’s'],
    ['10 kΩ ±1 %', ['10 kΩ +1 -1'], 'number and unit'],
    ['2,2 µF', ['2.2 µF'], 'decimal comma'],
    ['2.2 \u03bcF', ['2.2 µF'], 'the other micro sign'],
    ['10 \u2126', ['10 Ω'], 'the other ohm sign'],
    ['0.01 ohm', ['0.01 Ω'], 'a word for the unit'],
    ['103', ['10 kΩ', '10 nF'], 'three digits may be either'],
    ['nothing', [], 'no value'],
    ['100 nF', ['100 nF'], 'the figures of a number with its unit are no code'],
    ['100 µH', ['100 µH'], 'nor with a unit that no code has'],
    ['4.7k', ['4.7 kΩ'], 'a decimal mark and a prefix'],
    ['4,7 kOhm', ['4.7 kΩ'], 'a comma and the unit written out'],
    ['10 kOhm 5 %', ['10 kΩ +5 -5'], 'limits without their sign'],
    ['10 kΩ 5 %', ['10 kΩ +5 -5'], 'the same with the sign of the ohm'],
    ['4.7k ±1 %', ['4.7 kΩ +1 -1'], 'limits with their sign'],
    ['0.1uF', ['0.1 µF'], 'kept in the unit that it was written in'],
    ['47', ['47 Ω', '47 pF', '47 µF'], 'a bare number may be any of them'],
    ['4,700 Ω', ['4.7 Ω', '4.7 kΩ'], 'a decimal comma or one of thousands'],
    ['4,700k', ['4.7 kΩ', '4.7 MΩ'], 'the same without a unit, and never the code 700k'],
  ])('reads %s as %j: %s', (text, expected) => {
    expect(asText(text)).toEqual(expected);
  });

  test.each([
    ['Check R5 and C12 at 100 %', [], 'designators and shares are no values'],
    ['4k7 on both boards', ['4.7 kΩ'], 'figures before the letter are'],
    ['Variant S only: not placed on this order', [], 'plain words'],
    ['47 µH ±20 %', ['47 µH +20 -20'], 'number and unit'],
    ['R5: 4.7k', ['4.7 kΩ'], 'a decimal mark and a prefix'],
    ['R5 1,5k ±1 %, turned', ['1.5 kΩ +1 -1'], 'a decimal comma, and never the code 5k'],
    ['use 4,7 kOhm', ['4.7 kΩ'], 'the unit written out'],
    ['0.01 ohm shunt', ['0.01 Ω'], 'once, in the unit that it was written in'],
    ['47 pieces a panel, rev 1.2, 0.5m apart', [], 'numbers and metres are no values'],
    ['File 4.7k.2 and V1.5K', [], 'pieces of names are none'],
  ])('reads the note %j as %j: %s', (text, expected) => {
    expect(asText(text, true)).toEqual(expected);
  });
});

describe('inPlainUnit()', () => {
  test.each([
    [4700, 'Ω', 4.7, 'kΩ'],
    [0, 'Ω', 0, 'Ω'],
    [0.005, 'Ω', 5, 'mΩ'],
    [1e-7, 'F', 100, 'nF'],
    [1e-6, 'F', 1, 'µF'],
    [4.7e-12, 'F', 4.7, 'pF'],
  ] as const)('says %s %s as %s %s', (value, si, quantity, unit) => {
    expect(inPlainUnit(value, si)).toEqual({ quantity, unit });
  });

  test('keeps the value whatever unit it picks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 1e9, noNaN: true }),
        fc.constantFrom('Ω', 'F'),
        (value, si) => {
          const { quantity, unit } = inPlainUnit(value, si as 'Ω' | 'F'); // one of both
          expect(Math.abs((quantity * valueUnits[unit]) / value - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });
});
