// How an amount of money is written. Apart from the other numbers, as the first screen tells none.

import { locale } from './words.ts';

/** An amount of money without its currency: two digits behind the point, below 1 three digits that count, e.g. `12.40`, `0.0123`. */
export function formatMoney(amount: number): string {
  const digits =
    amount < 1 ? { maximumSignificantDigits: 3 } : { minimumFractionDigits: 2, maximumFractionDigits: 2 };
  return new Intl.NumberFormat(locale(), digits).format(amount);
}
