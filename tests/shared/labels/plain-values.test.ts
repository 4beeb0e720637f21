import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlainValue, whyNoValue } from '../../../shared/labels/plain-values.ts';

/** Readings in short: kind's first letter, value, tolerance in percent. */
function short(text: string, kind?: 'resistor' | 'capacitor'): unknown[] {
  return readPlainValue(text, kind).map(({ kind: of, value, tolerance }) =>
    tolerance === null ? [of[0], value] : [of[0], value, tolerance.plus],
  );
}

describe('readPlainValue()', () => {
  // Prefixes and units: ISO 80000-1. Numbers without unit, and capital prefixes: common practice.
  it.each([
    ['4.7k', [['r', 4700]]],
    ['4,7 kΩ', [['r', 4700]]],
    ['4.7 k\u2126', [['r', 4700]]],
    ['10 kOhm 5 %', [['r', 10000, 5]]],
    ['10 kΩ ±0,1 %', [['r', 10000, 0.1]]],
    ['0.01 ohm', [['r', 0.01]]],
    ['1M Ω', [['r', 1e6]]],
    ['4.7R', [['r', 4.7]]],
    ['100 nF', [['c', 1e-7]]],
    ['100nF', [['c', 1e-7]]],
    ['47Ω', [['r', 47]]],
    ['0.1uF', [['c', 1e-7]]],
    ['0,1 \u03bcF', [['c', 1e-7]]],
    ['4.7 PF', [['c', 4.7e-12]]],
    ['2.2u', [['c', 2.2e-6]]],
  ])('reads %s', (text, expected) => {
    expect(short(text)).toEqual(expected);
  });

  it.each([
    [
      '47',
      [
        ['r', 47],
        ['c', 4.7e-11],
        ['c', 4.7e-5],
      ],
    ],
    [
      '4.7m',
      [
        ['r', 0.0047],
        ['c', 0.0047],
      ],
    ],
    [
      '4,700 Ω',
      [
        ['r', 4.7],
        ['r', 4700],
      ],
    ],
  ])('leaves %s open', (text, expected) => {
    expect(short(text)).toEqual(expected);
  });

  it.each([
    '470',
    '4k7',
    '10k',
    '10R',
    '100F',
    '0',
    '05',
    '10 MF',
    '10 kF',
    '10 nΩ',
    '10 µH',
    '-4.7k',
    '4.7.0k',
    '1e3',
    '',
  ])('gives no reading for %j: a code, another quantity, or none', (text) => {
    expect(readPlainValue(text)).toEqual([]);
  });

  it('reads what it is asked for only', () => {
    expect(short('47', 'resistor')).toEqual([['r', 47]]);
    expect(short('100 nF', 'resistor')).toEqual([]);
  });

  it('reads back any number with its unit', () => {
    const tenths = fc.integer({ min: 1, max: 9999 });
    const prefix = fc.constantFrom(['k', 3] as const, ['M', 6] as const, ['', 0] as const);
    fc.assert(
      fc.property(tenths, prefix, fc.constantFrom('.', ','), (number, [sign, power], mark) => {
        const text = `${Math.floor(number / 10)}${mark}${number % 10} ${sign}Ω`;
        expect(short(text)).toEqual([['r', Number(`${number}e${power - 1}`)]]);
      }),
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), (text) => {
        for (const { value } of readPlainValue(text)) expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });
});

describe('whyNoValue()', () => {
  it.each([
    ['', undefined, { code: 'empty' }],
    ['1'.repeat(40), undefined, { code: 'too-long', longest: 32 }],
    ['10 µH', undefined, { code: 'another-quantity', unit: 'H' }],
    ['50 V', undefined, { code: 'another-quantity', unit: 'V' }],
    ['32.768 kHz', undefined, { code: 'another-quantity', unit: 'Hz' }],
    ['100 nF', 'resistor', { code: 'another-kind', kind: 'capacitor' }],
    ['4k7', 'capacitor', { code: 'another-kind', kind: 'resistor' }],
    ['hello', undefined, { code: 'no-value' }],
  ] as const)('says of %j why', (text, kind, reason) => {
    expect(whyNoValue(text, kind)).toEqual(reason);
  });
});
