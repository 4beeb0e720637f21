import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { E_SERIES_NUMBERS, seriesOf } from '../../../shared/labels/series.ts';
import { readValueCode } from '../../../shared/labels/value-codes.ts';

/** Readings in short: kind's first letter, value, tolerance, system. */
function short(code: string, kind?: 'resistor' | 'capacitor'): unknown[] {
  return readValueCode(code, kind).map(({ kind: of, value, tolerance, code: system }) => {
    const limit = tolerance === null ? null : [tolerance.minus, tolerance.plus, tolerance.unit].join(' ');
    return [of[0], value, limit, system];
  });
}

describe('readValueCode() on resistors', () => {
  // IEC 60062 letter codes: https://wikimili.com/en/RKM_code, https://probsee.com/p/RKM_code
  it.each([
    ['R47', 0.47],
    ['4R7', 4.7],
    ['470R', 470],
    ['4K7', 4700],
    ['4k7', 4700],
    ['47K3', 47300],
    ['4M7', 4.7e6],
    ['4L7', 0.0047],
    ['1G0', 1e9],
    ['12R0', 12], // https://pdf.datasheet.live/782b107c/kamaya/RGC1%2F16SC6191FTH.html
    ['0R', 0],
  ])('reads the letter code %s as %d', (code, ohms) => {
    expect(short(code, 'resistor')).toContainEqual(['r', ohms, null, 'IEC 60062']);
  });

  // 220: https://www.easymanua.ls/gw-instek/gds-207/manual?p=178 ; 424:
  // http://developer.wildernesslabs.co/Hardware/Reference/Components/Resistors/Reading/ ; four digits: Kamaya, above.
  it.each([
    ['103', 10000, '3-digit'],
    ['220', 22, '3-digit'],
    ['424', 420000, '3-digit'],
    ['000', 0, '3-digit'],
    ['100', 10, '3-digit'],
    ['123', 12000, '3-digit'],
    ['1000', 100, '4-digit'],
    ['1022', 10200, '4-digit'],
    ['0000', 0, '4-digit'],
  ])('reads %s as %d by %s', (code, ohms, system) => {
    expect(short(code, 'resistor')).toEqual([['r', ohms, null, system]]);
  });

  it.each([
    ['01A', 100],
    ['68C', 49900],
    ['66B', 4750],
    ['01Y', 1],
    ['96Z', 0.976],
    ['12H', 1300],
    ['24S', 17.4],
    ['48F', 30.9e6],
  ])('reads EIA-96 %s as %d, 1 %%', (code, ohms) => {
    expect(short(code, 'resistor')).toContainEqual(['r', ohms, '1 1 %', 'EIA-96']);
  });

  it('gives both readings of 10R', () => {
    expect(short('10R')).toEqual([
      ['r', 10, null, 'IEC 60062'],
      ['r', 1.24, '1 1 %', 'EIA-96'],
    ]);
  });

  it('gives all readings of a code that three systems allow', () => {
    expect(short('104K')).toEqual([
      ['r', 104000, null, 'IEC 60062'],
      ['r', 100000, '10 10 %', '3-digit'],
      ['c', 1e-7, '10 10 %', '3-digit'],
    ]);
  });

  // https://manualarchiveguide.com/manuals/Sanyo-DP19649-Service-Manual-5593413?page=41 (F to Z); B, C, D common practice.
  it.each([
    ['4K7B', '0.1 0.1 %'],
    ['4K7C', '0.25 0.25 %'],
    ['4K7D', '0.5 0.5 %'],
    ['4K7F', '1 1 %'],
    ['4K7G', '2 2 %'],
    ['4K7J', '5 5 %'],
    ['4K7K', '10 10 %'],
    ['4K7M', '20 20 %'],
    ['4K7N', '30 30 %'],
  ])('reads the tolerance of %s as %s', (code, limits) => {
    expect(short(code)).toEqual([['r', 4700, limits, 'IEC 60062']]);
  });
});

describe('readValueCode() on capacitors', () => {
  // https://wikisum.wiki/wiki/RKM_code ; three digits in pF: KEMET and Walsin part number pages.
  it.each([
    ['4n7', 4.7e-9, 'IEC 60062'],
    ['10p', 1e-11, 'IEC 60062'],
    ['1\u00b50', 1e-6, 'IEC 60062'],
    ['1u0', 1e-6, 'IEC 60062'],
    ['p47', 4.7e-13, 'IEC 60062'],
    ['1m0', 1e-3, 'IEC 60062'],
    ['104', 1e-7, '3-digit'],
    ['475', 4.7e-6, '3-digit'],
    ['101', 1e-10, '3-digit'],
    ['4R7', 4.7e-12, '3-digit'],
    ['479', 4.7e-12, '3-digit'],
    ['478', 4.7e-13, '3-digit'],
  ])('reads %s as %d by %s', (code, farads, system) => {
    expect(short(code, 'capacitor')).toEqual([['c', farads, null, system]]);
  });

  it.each([
    ['4R7C', '0.25 0.25 pF', 'below 10 pF a limit in pF'],
    ['4R7B', '0.1 0.1 pF', 'below 10 pF a limit in pF'],
    ['4R7D', '0.5 0.5 pF', 'below 10 pF a limit in pF'],
    ['4R7K', '10 10 %', 'K has no limit in pF'],
    ['104K', '10 10 %', 'percent'],
    ['104Z', '20 80 %', '+80/-20 %'],
    ['104P', '0 100 %', '+100/-0 %'],
    ['104T', '10 50 %', '+50/-10 %'],
  ])('reads the tolerance of %s as %s: %s', (code, limits) => {
    expect(short(code, 'capacitor')).toEqual([['c', expect.any(Number), limits, '3-digit']]);
  });
});

describe('readValueCode()', () => {
  it.each([
    '',
    'R',
    'K',
    'xyz',
    '00A',
    '97A',
    '012',
    '4X7',
    '10RX',
    '1.0',
    '4K7K7',
    '12345',
    '-47',
    '1e3',
    'R'.repeat(50),
  ])('gives no reading for %j', (code) => {
    expect(readValueCode(code)).toEqual([]);
  });

  it('never throws, and gives only finite values of the kind asked for', () => {
    const code = fc.oneof(fc.string({ maxLength: 8 }), fc.stringMatching(/^[0-9RKMLGpnuFABCJ]{0,6}$/));
    fc.assert(
      fc.property(code, fc.constantFrom('resistor' as const, 'capacitor' as const), (text, kind) => {
        for (const reading of readValueCode(text, kind)) {
          expect(reading.kind).toBe(kind);
          expect(Number.isFinite(reading.value)).toBe(true);
          expect(reading.unit).toBe(kind === 'resistor' ? 'Ω' : 'F');
        }
      }),
    );
  });
});

describe('the number series of IEC 60063', () => {
  // From memory of the published list; E24 is rounded by hand.
  it('has the published E12 and E24', () => {
    expect(E_SERIES_NUMBERS.E12).toEqual([10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82].map((n) => n * 10));
    expect(E_SERIES_NUMBERS.E24).toHaveLength(24);
    expect(E_SERIES_NUMBERS.E24).toEqual(
      expect.arrayContaining([110, 130, 160, 200, 240, 300, 360, 430, 510, 620, 750, 910]),
    );
  });

  // The EIA-96 table at http://developer.wildernesslabs.co/Hardware/Reference/Components/Resistors/Reading/
  it('has E96 in the order of EIA-96', () => {
    const at = (place: number) => E_SERIES_NUMBERS.E96[place - 1];
    expect([1, 12, 24, 48, 66, 68, 96].map(at)).toEqual([100, 130, 174, 309, 475, 499, 976]);
    expect(E_SERIES_NUMBERS.E96).toHaveLength(96);
  });

  it('nests E3 in E6 in E12 in E24, and E48 in E96 in E192', () => {
    const holds = (outer: readonly number[], inner: readonly number[]) =>
      inner.every((n) => outer.includes(n));
    expect(holds(E_SERIES_NUMBERS.E24, E_SERIES_NUMBERS.E12)).toBe(true);
    expect(holds(E_SERIES_NUMBERS.E12, E_SERIES_NUMBERS.E6)).toBe(true);
    expect(holds(E_SERIES_NUMBERS.E6, E_SERIES_NUMBERS.E3)).toBe(true);
    expect(holds(E_SERIES_NUMBERS.E96, E_SERIES_NUMBERS.E48)).toBe(true);
    expect(holds(E_SERIES_NUMBERS.E192, E_SERIES_NUMBERS.E96)).toBe(true);
  });

  it.each([
    [47, ['E3', 'E6', 'E12', 'E24', 'E192']],
    [4700, ['E3', 'E6', 'E12', 'E24', 'E192']],
    [11, ['E24', 'E48', 'E96', 'E192']],
    [499, ['E96', 'E192']],
    [92, ['E192']],
    [48, []],
    [0, []],
    [1234, []],
  ])('`seriesOf()` puts %d into %o', (digits, series) => {
    expect(seriesOf(digits)).toEqual(series);
  });
});
