// What lost parts cost, worked by hand: no price is made up, and no two currencies are added.

import { describe, expect, test } from 'vitest';
import { emptyState } from '../../../shared/floor/state.ts';
import { attritionOf } from '../../../shared/shift/attrition.ts';
import type { PartSeen } from '../../../shared/shift/report.ts';
import { beginStory, tellPlant } from '../floor/story.ts';

const seen = (part: string, lost: number, sd = 0): PartSeen => ({ part, lost, sd, picks: 1000 });

function floorWith(prices: Readonly<Record<string, { each: number; currency: string | null } | null>>) {
  const story = beginStory();
  tellPlant(story);
  const parts = Object.entries(prices).map(([part, price]) => ({ part, price }));
  story.tell('parts.priced', { source: 'parts.csv', parts });
  return story.floor();
}

describe('attritionOf()', () => {
  test('multiplies what was lost by the price of one, and counts part numbers without a price', () => {
    const floor = floorWith({
      'R-1': { each: 0.01, currency: 'EUR' },
      'U-1': { each: 4, currency: 'EUR' },
      'C-1': null,
    });
    const found = attritionOf(floor, [
      seen('R-1', 100),
      seen('U-1', 2),
      seen('C-1', 50),
      seen('X-1', 5),
      seen('Z-1', 0),
    ]);
    expect(found.sums).toEqual([{ currency: 'EUR', cost: 9 }]);
    expect(found).toMatchObject({ lost: 157, picks: 5000, unpriced: 2, isCertain: true });
    expect(found.parts.map(({ part, cost }) => [part, cost])).toEqual([
      ['R-1', 1],
      ['U-1', 8],
      ['C-1', null],
      ['X-1', null],
    ]);
  });

  test('keeps currencies apart, those without a name too', () => {
    const floor = floorWith({
      'R-1': { each: 1, currency: 'USD' },
      'R-2': { each: 2, currency: 'EUR' },
      'R-3': { each: 3, currency: 'EUR' },
      'R-4': { each: 4, currency: null },
    });
    const all = ['R-1', 'R-2', 'R-3', 'R-4'].map((part) => seen(part, 10));
    expect(attritionOf(floor, all).sums).toEqual([
      { currency: 'EUR', cost: 50 },
      { currency: null, cost: 40 },
      { currency: 'USD', cost: 10 },
    ]);
  });

  test('has no sum where no price is known, and says where a loss is only believed', () => {
    const found = attritionOf(emptyState(), [seen('R-1', 12.5, 3)]);
    expect(found).toMatchObject({ sums: [], unpriced: 1, isCertain: false });
  });
});
