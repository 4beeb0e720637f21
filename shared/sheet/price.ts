// What does a list's price column say of one part? The price may be for one or for a thousand, and its currency may stand in a column, in the cell
// or in the header. Currencies are the plant's own text and never changed into one another.
// Method: the number of parts is taken from the list alone. Where a header has a number and not whether the price is for that many, nothing is read:
// a price a thousand times too high is worse than none. Refused: to guess by the size of the numbers.

import { parseNumber } from './cells.ts';

/** What a header says of the prices below it. */
export interface PriceHeader {
  /** Parts that a price is for; null where the header leaves it open. */
  readonly per: number | null;
  readonly currency: string | null;
}

/** Three capitals that are words of a header and no currency. */
const NO_CURRENCY: ReadonlySet<string> = new Set([
  'PER',
  'PCS',
  'STK',
  'PRO',
  'PAR',
  'POR',
  'FOR',
  'QTY',
  'UNI',
  'ROW',
]);
const SIGN = /[$€£¥₩₫₹₺₽฿]/;
const FOR_MANY =
  /(?:\bper|\/|\bje|\bpro|\bpar|\bpor|\bpour|\bcada|\bfor|\bfür|\bfuer)\s*(?:(\d[\d.,' ]*\d|\d)\s*(k\b)?|(thousand|tausend|mil\b|mille|k\b))/i;
/** A number of so many digits is no mere number of a column. */
const MANY = /\d{2,}/;

/** Reads the number of parts and the currency out of a header: "Price per 1000 (EUR)", "Preis/100 €", "Unit price". Never throws. */
export function parsePriceHeader(header: string): PriceHeader {
  const code = [...header.matchAll(/\b[A-Z]{3}\b/g)]
    .map(([text]) => text)
    .find((text) => !NO_CURRENCY.has(text));
  const currency = code ?? SIGN.exec(header)?.[0] ?? null;
  const many = FOR_MANY.exec(header);
  if (many) {
    const number = many[1] === undefined ? 1 : parseNumber(many[1].trim(), 'count');
    const per = number === null ? null : number * (many[2] || many[3] ? 1000 : 1);
    return { per: per !== null && per >= 1 ? per : null, currency };
  }
  return { per: MANY.test(header.replace(/@\s*\d+/g, '')) ? null : 1, currency };
}

/**
 * Reads a price cell: a number above 0, with a currency before or behind it where it has one ("0,012 €", "EUR 1.20"); null otherwise. A cell that
 * says more, such as for how many parts, is not read.
 */
export function parsePrice(
  text: string,
): { readonly amount: number; readonly currency: string | null } | null {
  const match = /^([\p{L}\p{Sc}]{1,8})?\s*(\d[\d.,'\s]*|[.,]\d+)(?<!\s)\s*([\p{L}\p{Sc}]{1,8})?$/u.exec(
    text.trim(),
  );
  const amount = match?.[2] === undefined ? null : parseNumber(match[2], 'length');
  if (amount === null || amount <= 0) return null;
  const [before, behind] = [match?.[1] ?? null, match?.[3] ?? null];
  return before !== null && behind !== null ? null : { amount, currency: before ?? behind };
}
