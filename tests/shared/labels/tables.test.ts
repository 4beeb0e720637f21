// The tables that labels are read by, row by row: letters of IEC 60062 and EIA-96, prefixes of ISO 80000-1, dates of ANS MH10.8.2, written out here once
// more from the published lists and not from the code.

import { describe, expect, it } from 'vitest';
import { IDENTIFIERS } from '../../../shared/labels/identifiers.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { comparePartNumbers } from '../../../shared/labels/part-numbers.ts';
import { readPlainValue } from '../../../shared/labels/plain-values.ts';
import { parseQuantity } from '../../../shared/labels/quantity.ts';
import { isFit, matchPattern } from '../../../shared/labels/rule-fit.ts';
import { labelRulesSchema } from '../../../shared/labels/rules.ts';
import { deriveRule } from '../../../shared/labels/teach.ts';
import { readValueCode } from '../../../shared/labels/value-codes.ts';

describe('IEC 60062', () => {
  const read = (code: string, kind: 'resistor' | 'capacitor', system = 'IEC 60062') =>
    readValueCode(code, kind).find((one) => one.code === system);

  it.each([
    ['L', 0.0047],
    ['R', 4.7],
    ['K', 4700],
    ['M', 4.7e6],
    ['G', 4.7e9],
    ['T', 4.7e12],
  ])('4%s7 is %d Ω', (letter, ohms) => {
    expect(read(`4${letter}7`, 'resistor')?.value).toBe(ohms);
  });

  it.each([
    ['p', 4.7e-12],
    ['n', 4.7e-9],
    ['u', 4.7e-6],
    ['µ', 4.7e-6],
    ['μ', 4.7e-6],
    ['m', 4.7e-3],
    ['F', 4.7],
  ])('4%s7 is %d F', (letter, farads) => {
    expect(read(`4${letter}7`, 'capacitor')?.value).toBe(farads);
  });

  it.each([
    ['E', 0.005],
    ['L', 0.01],
    ['P', 0.02],
    ['W', 0.05],
    ['B', 0.1],
    ['C', 0.25],
    ['D', 0.5],
    ['F', 1],
    ['G', 2],
    ['H', 3],
    ['J', 5],
    ['K', 10],
    ['M', 20],
    ['N', 30],
  ])('tolerance %s is ±%d %% on a resistor', (letter, limit) => {
    const tolerance = { plus: limit, minus: limit, unit: '%' };
    expect(read(`4K7${letter}`, 'resistor')?.tolerance).toEqual(tolerance);
  });

  it.each([
    ['P', 100, 0],
    ['Q', 30, 10],
    ['S', 50, 20],
    ['T', 50, 10],
    ['Z', 80, 20],
    ['J', 5, 5],
  ])('tolerance %s is +%d −%d %% on a capacitor', (letter, plus, minus) => {
    expect(read(`4n7${letter}`, 'capacitor')?.tolerance).toEqual({ plus, minus, unit: '%' });
  });

  it.each([
    ['B', 0.1],
    ['C', 0.25],
    ['D', 0.5],
    ['F', 1],
    ['G', 2],
  ])('tolerance %s is ±%d pF below 10 pF, and percent from there on', (letter, limit) => {
    expect(read(`9p9${letter}`, 'capacitor')?.tolerance).toEqual({ plus: limit, minus: limit, unit: 'pF' });
    expect(read(`10p${letter}`, 'capacitor')?.tolerance?.unit).toBe('%');
  });

  it.each([
    ['Z', 0.1],
    ['Y', 1],
    ['R', 1],
    ['X', 10],
    ['S', 10],
    ['A', 100],
    ['B', 1000],
    ['H', 1000],
    ['C', 1e4],
    ['D', 1e5],
    ['E', 1e6],
    ['F', 1e7],
  ])('EIA-96: 01%s is %d Ω', (letter, ohms) => {
    expect(read(`01${letter}`, 'resistor', 'EIA-96')?.value).toBe(ohms);
  });
});

it.each([
  ['p', 1e-12],
  ['P', 1e-12],
  ['n', 1e-9],
  ['N', 1e-9],
  ['u', 1e-6],
  ['U', 1e-6],
  ['µ', 1e-6],
  ['m', 1e-3],
  ['', 1],
])('the prefix %s of a farad is %d', (prefix, farads) => {
  expect(readPlainValue(`1 ${prefix}F`, 'capacitor').map(({ value }) => value)).toEqual([farads]);
});

it.each([
  ['u', 1e-6],
  ['m', 1e-3],
  ['', 1],
  ['k', 1e3],
  ['K', 1e3],
  ['M', 1e6],
  ['G', 1e9],
  ['T', 1e12],
])('the prefix %s of an ohm is %d', (prefix, ohms) => {
  expect(readPlainValue(`1 ${prefix}Ω`, 'resistor').map(({ value }) => value)).toEqual([ohms]);
});

describe('dates of ANS MH10.8.2', () => {
  // 2 March 2026, a Monday of week 10 and day 61 of the year.
  it.each([
    ['D', '260302'],
    ['1D', '020326'],
    ['2D', '030226'],
    ['4D', '26061'],
    ['9D', '2610'],
    ['10D', '2610'],
    ['11D', '202610'],
    ['12D', '20260302'],
    ['16D', '20260302'],
    ['17D', '02032026'],
  ])('%s%s is of week 10', (id, value) => {
    const envelope = `[)>\x1e06\x1dPR-1\x1d${id}${value}\x1e\x04`;
    expect(parseLabel([envelope]).made).toEqual({ year: 2026, week: 10 });
    const { length = 0, separate = false } = IDENTIFIERS.get(id) ?? {};
    expect(length === 0 || length === value.length).toBe(true);
    // As a code of its own beside two others, where labels have it so.
    if (separate) expect(parseLabel(['PR-1', 'Q5', `${id}${value}`]).made).toEqual({ year: 2026, week: 10 });
  });

  it.each([
    ['14D', '20260302'],
    ['15D', '02032026'],
    ['25D', '20260302'],
  ])('%s%s is the last day of use', (id, value) => {
    expect(parseLabel([`[)>\x1e06\x1dPR-1\x1d${id}${value}\x1e\x04`]).expires).toBe('2026-03-02');
    expect(IDENTIFIERS.get(id)?.length).toBe(value.length);
  });

  it('are believed in this order where several say when it was made: week, day, and the loosest last', () => {
    const order = ['10D', '11D', '9D', '12D', '16D', '17D', 'D', '1D', '2D', '4D', '13D'];
    const ranks = order.map((id) => IDENTIFIERS.get(id)?.rank ?? -1);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(ranks).size).toBe(order.length);
    expect(['14D', '15D', '25D'].map((id) => IDENTIFIERS.get(id)?.rank)).toEqual([0, 1, 2]);
  });
});

describe('quantities', () => {
  it.each([
    ['5000', 5000, null],
    ['5,000', 5000, null],
    ["1'000'000", 1_000_000, null],
    ['5000PCS', 5000, 'PCS'],
    ['100MTR', 100, 'MTR'],
    ['100MTR250', 100.25, 'MTR'],
    ['1.5MTR', 1.5, 'MTR'],
  ])('%s is %d %s', (text, quantity, unit) => {
    expect(parseQuantity(text)).toMatchObject({ quantity, unit });
  });

  it.each(['', 'X', '5000XYZ', '100MTR25', '1.5MTR250', '100XYZ250', '100MTR2X0', '12.'])(
    '%j is none',
    (text) => {
      expect(parseQuantity(text)).toBeNull();
    },
  );
});

describe('rules of the site', () => {
  it('take digits from 0 to 9 and letters from A to Z, a to z', () => {
    const only = (takes: 'digits' | 'letters' | 'alphanumeric', text: string) =>
      isFit(matchPattern({ pieces: [{ takes, field: 'lot' }] }, text));
    for (let code = 33; code < 127; code += 1) {
      const char = String.fromCharCode(code);
      expect([char, only('digits', char)]).toEqual([char, /[0-9]/.test(char)]);
      expect([char, only('letters', char)]).toEqual([char, /[A-Za-z]/.test(char)]);
      expect([char, only('alphanumeric', char)]).toEqual([char, /[A-Za-z0-9]/.test(char)]);
    }
  });

  it('are derived as what the tapped text is: digits, letters, both, or anything; names are wider than the one that was tapped', () => {
    const takes = (value: string, field: 'dateCode' | 'lot' = 'dateCode', end = '#') => {
      const code = `#${value}${end}`;
      const rule = deriveRule([code], [{ code: 0, from: 1, to: 1 + value.length, field }], {
        rule: 'r',
      });
      const piece = rule.ok ? rule.value.codes[0]?.pieces.find((each) => 'takes' in each) : undefined;
      return piece && 'takes' in piece ? piece.takes : null;
    };
    const values = ['123', 'AB', 'A1', 'A-1'];
    expect(values.map((value) => takes(value))).toEqual(['digits', 'letters', 'alphanumeric', 'any']);
    // Up to the mark behind it; without one, letters and digits.
    expect(values.map((value) => takes(value, 'lot'))).toEqual(['any', 'any', 'any', 'any']);
    expect(values.map((value) => takes(value, 'lot', ''))).toEqual([
      'alphanumeric',
      'alphanumeric',
      'alphanumeric',
      'any',
    ]);
  });

  it('are at most 500 in one document', () => {
    const rule = { rule: 'r', version: 1, codes: [{ pieces: [{ takes: 'any', field: 'lot' }] }] };
    const of = (count: number) =>
      labelRulesSchema.safeParse(Array.from({ length: count }, () => rule)).success;
    expect([of(500), of(501)]).toEqual([true, false]);
  });
});

it('a whole envelope is no other keyboard’s, whatever letters its values hold', () => {
  expect(parseLabel(['[)>\x1e06\x1dPGRÖßE\x1dQ5\x1e\x04'])).toMatchObject({
    part: 'GRÖßE',
    quantity: 5,
    warnings: [],
  });
});

it('a code with the mark of its symbology and nothing behind it says nothing', () => {
  for (const text of [']C1', ']A0', ']d2'])
    expect(parseLabel([text]).warnings).toEqual([{ code: 'no-code' }]);
  expect(parseLabel([']C']).unidentified).toEqual([']C']);
});

it('a number that is nothing but a packing suffix stays whole', () => {
  const rules = {
    ignoreCase: false,
    ignoreSpaces: false,
    ignoreDashes: false,
    packingSuffixes: ['-TR'],
  };
  expect(comparePartNumbers('-TR', '-TR-TR', rules)).toBe('packing-suffix');
});
