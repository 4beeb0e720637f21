// Lost parts as the report shows them: in parts always, in money only where a price is known, the same in words and in the spreadsheet.

import { expect, test } from 'vitest';
import { emptyState } from '../../../../../shared/floor/state.ts';
import { attritionPlots } from '../../../../../src/app/screens/log/attrition-plots.ts';
import { plotToCsv } from '../../../../../src/app/screens/log/shift-files.ts';

const parts = [
  { part: 'R-100', lost: 35, sd: 0, picks: 10_000 },
  { part: 'U-300', lost: 2, sd: 0, picks: 400 },
];

function floorWith(prices: Readonly<Record<string, { each: number; currency: string | null }>>) {
  const floor = emptyState();
  for (const [part, price] of Object.entries(prices))
    floor.prices.set(part, { ...price, source: 'parts.csv' });
  return floor;
}

test('no price is known: parts alone, and that is said', () => {
  const plots = attritionPlots(emptyState(), parts);
  expect(plots.map(({ id }) => id)).toEqual(['parts']);
  expect(plots[0]?.answer).toBe(
    'Parts lost: 37 of 10,400 picked. None of these parts has a price. Import a list with prices.',
  );
});

test('a price is known: what was lost in money, how many have none, and a spreadsheet with plain numbers', () => {
  const plots = attritionPlots(floorWith({ 'R-100': { each: 0.012, currency: 'EUR' } }), parts);
  const [, money] = plots;
  expect(plots.map(({ id }) => id)).toEqual(['parts', 'money']);
  expect(money?.answer).toBe(
    'Lost: 0.42 EUR. 1 part number has no price. Prices as the part list has them now.',
  );
  expect(money?.bars).toEqual([{ name: 'R-100', isCode: true, value: 0.42, text: '0.42 EUR · 35 parts' }]);
  const csv = money ? plotToCsv(money).replace('\ufeff', '').split('\r\n') : [];
  expect(csv.slice(0, 3)).toEqual([
    '"part","lost","lost sd","picked","price","currency","cost"',
    '"R-100",35,0,10000,0.012,"EUR",0.42',
    '"U-300",2,0,400,,,',
  ]);
});

test('two currencies: both sums, the bars of the one with more parts, and none named is said', () => {
  const prices = { 'R-100': { each: 1, currency: null }, 'U-300': { each: 2, currency: 'CHF' } };
  const [, money] = attritionPlots(floorWith(prices), parts);
  expect(money?.answer).toContain('Lost: 35.00 + 4.00 CHF.');
  expect(money?.answer).toContain('The list names no currency.');
  expect(money?.bars.map(({ name }) => name)).toEqual(['R-100']);
});
