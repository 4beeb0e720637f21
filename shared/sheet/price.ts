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

/**
 * Codes of money in use (ISO 4217, from memory), so that no other word of three capitals is taken for one: `STD COST`. Without ALL and TOP, which
 * are words of a header more often; a column of currencies may hold any.
 */
const CURRENCIES: ReadonlySet<string> = new Set(
  (
    'AED AFN AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP CRC CUP CVE CZK ' +
    'DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR ' +
    'KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB ' +
    'PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TRY TTD TWD TZS ' +
    'UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XCG XOF XPF YER ZAR ZMW ZWG'
  ).split(' '),
);
/** So many parts a price may be for; any other number of a header may be a year, a month or a column's. */
const SO_MANY: ReadonlySet<number> = new Set([1, 10, 100, 1000, 10_000]);
/** A number before the slash too: `03/2025`, `2024/10`. */
const DATE = /\d\s*\/\s*\d/;
const SIGN = /[$€£¥₩₫₹₺₽฿]/;
const FOR_MANY =
  /(?:\bper|\/|\bje|\bpro|\bpar|\bpor|\bpour|\bcada|\bfor|\bfür|\bfuer)\s*(?:(\d[\d.,' ]*\d|\d)\s*(k\b)?|(thousand|tausend|mil\b|mille|k\b))/i;
/** A number of so many digits is no mere number of a column. */
const MANY = /\d{2,}/;

/** Reads the number of parts and the currency out of a header: "Price per 1000 (EUR)", "Preis/100 €", "Unit price". Never throws. */
export function parsePriceHeader(header: string): PriceHeader {
  const code = [...header.matchAll(/\b[A-Z]{3}\b/g)]
    .map(([text]) => text)
    .find((text) => CURRENCIES.has(text));
  const currency = code ?? SIGN.exec(header)?.[0] ?? null;
  const many = FOR_MANY.exec(header);
  if (many) {
    const number = many[1] === undefined ? 1 : parseNumber(many[1].trim(), 'count');
    const per = number === null ? null : number * (many[2] || many[3] ? 1000 : 1);
    return { per: per !== null && SO_MANY.has(per) && !DATE.test(header) ? per : null, currency };
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
