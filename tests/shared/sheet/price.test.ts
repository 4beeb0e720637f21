// Prices of parts as plants write them: for one part or for many, with their currency or without. A price that may be for many is not read.

import { describe, expect, test } from 'vitest';
import { readPartList } from '../../../shared/sheet/part-list.ts';
import { parsePrice, parsePriceHeader } from '../../../shared/sheet/price.ts';

describe('parsePriceHeader()', () => {
  test.each([
    ['Price', 1, null],
    ['Unit price (EUR)', 1, 'EUR'],
    ['UNIT PRICE PER PCS', 1, null],
    ['Price/1000 €', 1000, '€'],
    ['Price per 1,000', 1000, null],
    ['Preis je 100 Stk [CHF]', 100, 'CHF'],
    ['Precio por mil', 1000, null],
    ['Price per 1k USD', 1000, 'USD'],
    ['Price @1000', 1, null],
    ['Price 1', 1, null],
    ['Price 1000', null, null],
    ['Price 03/2025', null, null],
    ['Preis 2024/25', null, null],
    ['Price 2024/10', null, null],
    ['Price for 2025', null, null],
    ['Price per 500', null, null],
    ['Price per 10k', 10_000, null],
    ['STD COST', 1, null],
    ['STD COST EUR', 1, 'EUR'],
    ['MAX PRICE (PLN)', 1, 'PLN'],
  ])('reads %s', (header, per, currency) => {
    expect(parsePriceHeader(header)).toEqual({ per, currency });
  });
});

describe('parsePrice()', () => {
  test.each([
    ['0.012', 0.012, null],
    ['0,012 €', 0.012, '€'],
    ['EUR 1.20', 1.2, 'EUR'],
    ['$3', 3, '$'],
    ["1'200.50 CHF", 1200.5, 'CHF'],
    ['12.5zł', 12.5, 'zł'],
  ])('reads %s', (text, amount, currency) => {
    expect(parsePrice(text)).toEqual({ amount, currency });
  });

  test.each(['0', '-1', 'soon', '', '12 EUR per thousand', '12/100', '12 EUR/k', 'EUR 12 USD', '~2'])(
    'reads nothing out of "%s"',
    (text) => {
      expect(parsePrice(text)).toBeNull();
    },
  );
});

describe('a list of parts with prices', () => {
  const read = (...rows: readonly (readonly (string | number)[])[]) => {
    const { parts, problems } = readPartList(rows);
    return {
      prices: parts.map(({ part }) => part.price ?? null),
      problems: problems.map(({ code, row }) => `${row} ${code}`),
    };
  };

  test('keeps the price of one part, the currency from column, cell or header in that order', () => {
    expect(
      read(
        ['Part', 'Price per 1000 (EUR)', 'Currency'],
        ['R-1', 12, ''],
        ['R-2', '8 USD', ''],
        ['R-3', '8 USD', 'CHF'],
        ['R-4', '', ''],
      ),
    ).toEqual({
      prices: [
        { each: 0.012, currency: 'EUR' },
        { each: 0.008, currency: 'USD' },
        { each: 0.008, currency: 'CHF' },
        null,
      ],
      problems: [],
    });
  });

  test('divides by the column that says for how many parts a price is, whatever the header leaves open', () => {
    expect(read(['Part', 'Price 1000', 'Price unit'], ['R-1', 12, 100], ['R-2', 5, 1])).toEqual({
      prices: [
        { each: 0.12, currency: null },
        { each: 5, currency: null },
      ],
      problems: [],
    });
  });

  test('divides by no date of a header, and tells that it is unclear', () => {
    expect(read(['Part', 'Price 03/2025'], ['R-1', 12])).toEqual({
      prices: [null],
      problems: ['1 listPriceUnclear'],
    });
  });

  test('reads no price where the header may mean many, and tells that once', () => {
    expect(read(['Part', 'Price 1000'], ['R-1', 12], ['R-2', 13])).toEqual({
      prices: [null, null],
      problems: ['1 listPriceUnclear'],
    });
  });

  test('tells a price that is none, and two rows that differ', () => {
    expect(read(['Part', 'Price'], ['R-1', 'soon'], ['R-2', 0.1], ['R-2', '0.2 EUR'], ['R-2', 0.1])).toEqual({
      prices: [null, { each: 0.1, currency: null }],
      problems: ['2 listPriceUnreadable', '4 partDiffers'],
    });
  });
});
