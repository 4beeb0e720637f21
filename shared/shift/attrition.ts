// What did the lost parts of a span cost? By the prices of the plant's list as they are now. Parts without a price are counted and never put a
// price on; amounts of different currencies are never added.

import type { PartPrice } from '../floor/kinds-parts.ts';
import type { FloorState } from '../floor/state.ts';
import { compareText } from '../log/order.ts';
import type { PartSeen } from './report.ts';

/** Lost parts of one number with their cost; price and cost null where the list has no price. */
export interface PartCost extends PartSeen {
  readonly price: PartPrice | null;
  /** Lost parts times the price of one, in the price's currency. */
  readonly cost: number | null;
}

/** A sum in one currency. */
export interface CurrencySum {
  /** As the plant writes it; null where the list names none. */
  readonly currency: string | null;
  readonly cost: number;
}

/** What was lost, in parts and in money. */
export interface Attrition {
  /** Most lost first. */
  readonly parts: readonly PartCost[];
  readonly lost: number;
  readonly picks: number;
  /** True where every loss was counted and none only believed. */
  readonly isCertain: boolean;
  /** The largest number of parts first. */
  readonly sums: readonly CurrencySum[];
  /** Part numbers that lost parts and have no price. */
  readonly unpriced: number;
}

/** The cost of lost parts. `parts`: from a shift's report; those that lost none are left out. */
export function attritionOf({ prices }: Pick<FloorState, 'prices'>, parts: readonly PartSeen[]): Attrition {
  const costs = parts
    .filter(({ lost }) => lost > 0)
    .map((each): PartCost => {
      const price = prices.get(each.part) ?? null;
      return { ...each, price, cost: price === null ? null : price.each * each.lost };
    });
  const sums = new Map<string | null, { cost: number; numbers: number }>();
  for (const { price, cost } of costs) {
    if (price === null || cost === null) continue;
    const sum = sums.get(price.currency) ?? { cost: 0, numbers: 0 };
    sums.set(price.currency, { cost: sum.cost + cost, numbers: sum.numbers + 1 });
  }
  return {
    parts: costs,
    lost: costs.reduce((sum, { lost }) => sum + lost, 0),
    picks: parts.reduce((sum, { picks }) => sum + picks, 0),
    isCertain: costs.every(({ sd }) => sd === 0),
    sums: [...sums]
      .sort(([a, one], [b, other]) => other.numbers - one.numbers || compareText(a ?? '', b ?? ''))
      .map(([currency, { cost }]) => ({ currency, cost })),
    unpriced: costs.filter(({ price }) => price === null).length,
  };
}
