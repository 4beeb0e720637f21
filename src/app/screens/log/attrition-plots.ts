// Lost parts, in parts and in money: pure, as the other questions of the report.

import type { FloorState } from '../../../../shared/floor/state.ts';
import { type Attrition, attritionOf, type PartCost } from '../../../../shared/shift/attrition.ts';
import type { PartSeen } from '../../../../shared/shift/report.ts';
import { formatMoney } from '../../words/money.ts';
import { shiftWords } from '../../words/shift.ts';
import { formatCount, formatShare, say } from '../../words/words.ts';
import { MOST_BARS, type Plot } from './plot.ts';

/** Columns of a spreadsheet: alike in every language, as those who compute with them need. */
const HEADS = ['part', 'lost', 'lost sd', 'picked', 'price', 'currency', 'cost'] as const;

/** An amount with its currency, as the plant writes that. */
export const moneyText = (amount: number, currency: string | null): string =>
  currency === null ? formatMoney(amount) : `${formatMoney(amount)} ${currency}`;

/** How many parts were lost; and what they cost, where any of them has a price. */
export function attritionPlots(
  floor: Pick<FloorState, 'prices'>,
  parts: readonly PartSeen[],
): readonly Plot[] {
  const found = attritionOf(floor, parts);
  return found.sums.length === 0 ? [partsPlot(found)] : [partsPlot(found), moneyPlot(found)];
}

const about = ({ isCertain }: Attrition) => (isCertain ? '' : '≈ ');

function rowsOf(parts: readonly PartCost[]): NonNullable<Plot['table']>['rows'] {
  const round = (value: number | null) => (value === null ? null : Number(value.toPrecision(9)));
  return parts.map(({ part, lost, sd, picks, price, cost }) => [
    part,
    round(lost),
    round(sd),
    picks,
    round(price?.each ?? null),
    price?.currency ?? null,
    round(cost),
  ]);
}

function partsPlot(found: Attrition): Plot {
  const words = say(shiftWords);
  const { parts, lost, picks, sums } = found;
  const answer = words.feedersSome(`${about(found)}${formatCount(lost)}`, formatCount(picks));
  const noPrice = sums.length === 0 && parts.length > 0 ? ` ${words.noPrices}` : '';
  return {
    id: 'parts',
    question: words.parts,
    answer: picks === 0 ? words.feedersNone : `${answer}${noPrice}`,
    unit: 'parts',
    bars: parts.slice(0, MOST_BARS).map((each) => {
      const spread = each.sd === 0 ? '' : ` ± ${formatCount(Math.ceil(each.sd))}`;
      const share = formatShare(each.lost / each.picks);
      return {
        name: each.part,
        isCode: true,
        value: each.lost,
        text: `${formatCount(each.lost)}${spread} · ${share}`,
      };
    }),
    table: { heads: HEADS, rows: rowsOf(parts) },
  };
}

function moneyPlot(found: Attrition): Plot {
  const words = say(shiftWords);
  const { parts, sums, unpriced } = found;
  const all = sums.map(({ currency, cost }) => `${about(found)}${moneyText(cost, currency)}`).join(' + ');
  const [main] = sums;
  // Bars of two currencies would have no common length: those of the one with the most parts are drawn.
  const priced = parts
    .filter(({ price }) => price !== null && price.currency === main?.currency)
    .sort((a, b) => (b.cost ?? 0) - (a.cost ?? 0));
  return {
    id: 'money',
    question: words.money,
    answer: [
      words.moneySum(all),
      ...(unpriced > 0 ? [words.unpriced(unpriced)] : []),
      ...(main?.currency === null ? [words.noCurrency] : []),
      words.pricesNow,
    ].join(' '),
    unit: 'money',
    bars: priced.slice(0, MOST_BARS).map(({ part, cost, lost, price }) => ({
      name: part,
      isCode: true,
      value: cost ?? 0,
      text: `${moneyText(cost ?? 0, price?.currency ?? null)} · ${words.lostAt(formatCount(lost))}`,
    })),
    table: { heads: HEADS, rows: rowsOf(parts) },
  };
}
