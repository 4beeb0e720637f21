// Labels of the invented plant's reels, in the dialects that come through a goods-in door: a Data Matrix with the envelope of
// ISO/IEC 15434 format 06, a row of Code 128 with MH10.8.2 identifiers, a QR code with a list of words. A reel's facts are
// read back off its own label by the app's reader, so that an entry never says more than a scanner saw.

import { type Chance, chanceBelow } from '../shared/kit/chance.ts';
import { DAY_MS } from '../shared/kit/moment.ts';
import { formatEnvelope } from '../shared/labels/envelope.ts';
import { parseLabel } from '../shared/labels/label.ts';
import { familyOf, supplierPartsOf } from './parts.ts';

/** Kinds of symbols on labels, by the names that decoders use. */
export const symbolFormats = ['DataMatrix', 'Code128', 'QRCode'] as const;
export type SymbolFormat = (typeof symbolFormats)[number];

/** One symbol and the text in it. */
export interface LabelSymbol {
  readonly text: string;
  readonly format: SymbolFormat;
}

/** How a label is written. */
export const dialects = ['envelope', 'loose', 'words'] as const;
export type Dialect = (typeof dialects)[number];

/** What is printed on a reel; null or absent = not printed. */
export interface ReelFacts {
  readonly reel: string | null;
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly quantity: number | null;
  readonly lot: string | null;
  /** Year and week of making, `YYWW`. */
  readonly dateCode: string | null;
  /** `YYYY-MM-DD`. */
  readonly expires?: string | null;
  readonly msl?: string | null;
}

/** A reel with its label. */
export interface LabelledReel extends ReelFacts {
  readonly symbols: readonly LabelSymbol[];
}

const identifiers = [
  ['P', 'CPN', (facts: ReelFacts) => facts.part],
  ['1P', 'MPN', (facts: ReelFacts) => facts.supplierPart],
  ['Q', 'QTY', (facts: ReelFacts) => facts.quantity?.toString() ?? null],
  ['1T', 'LOT', (facts: ReelFacts) => facts.lot],
  ['10D', 'DC', (facts: ReelFacts) => facts.dateCode],
  ['14D', 'EXP', (facts: ReelFacts) => facts.expires?.replaceAll('-', '') ?? null],
  ['13E', 'MSL', (facts: ReelFacts) => facts.msl ?? null],
  ['3S', 'RID', (facts: ReelFacts) => facts.reel],
] as const;

/** Writes a reel's label. */
export function labelReel(facts: ReelFacts, dialect: Dialect): readonly LabelSymbol[] {
  const stated = identifiers.flatMap(([id, word, read]) => {
    const value = read(facts);
    return value === null ? [] : [{ id, word, value }];
  });
  if (dialect === 'envelope')
    return [{ format: 'DataMatrix', text: formatEnvelope({ format: '06', fields: stated }) }];
  if (dialect === 'loose')
    return stated.map(({ id, value }) => ({ format: 'Code128', text: `${id}${value}` }));
  return [{ format: 'QRCode', text: `{${stated.map(({ word, value }) => `${word}:${value}`).join(',')}}` }];
}

/** What a scan of these symbols says, by the app's own reader. */
export function readSymbols(
  symbols: readonly LabelSymbol[],
): ReelFacts & { readonly expires: string | null } {
  const { reel, part, supplierPart, quantity, lot, dateCode, expires } = parseLabel(
    symbols.map((symbol) => symbol.text),
  );
  return { reel, part, supplierPart, quantity, lot, dateCode, expires };
}

/** The year and week of making a number of weeks before a moment, `YYWW` by ISO 8601. */
export function dateCodeBefore(nowMs: number, weeks: number): string {
  const day = new Date(nowMs - weeks * 7 * DAY_MS);
  // The Thursday of a week names its year (ISO 8601).
  const thursday = new Date(day.getTime() + (4 - (day.getUTCDay() || 7)) * DAY_MS);
  const start = Date.UTC(thursday.getUTCFullYear(), 0, 1);
  const week = Math.floor((thursday.getTime() - start) / DAY_MS / 7) + 1;
  return `${String(thursday.getUTCFullYear() % 100).padStart(2, '0')}${String(week).padStart(2, '0')}`;
}

/** Hands out new reels, each with its own id and lot. `nowMs`: the reels were made before it. `prefix`: what the ids begin with; `R-` where none is given. */
export function createReelStore(
  chance: Chance,
  nowMs: number,
  { prefix = 'R-' }: { readonly prefix?: string } = {},
) {
  let last = 0;
  return {
    /** A new reel of a part with a quantity, and maybe an expiry date, printed on it. */
    next: (
      part: string,
      { quantity, expires }: { readonly quantity: number; readonly expires?: string },
    ): LabelledReel => {
      last += 1;
      const family = familyOf(part);
      const facts: ReelFacts = {
        reel: `${prefix}${410_000 + last * 7}`,
        part,
        supplierPart: supplierPartsOf(part)[chance() < 0.75 ? 0 : 1],
        quantity,
        lot: `LT-${1000 + chanceBelow(chance, 8000)}-${'ABCDEFGH'[chanceBelow(chance, 8)]}`,
        dateCode: dateCodeBefore(nowMs, 4 + chanceBelow(chance, 60)),
        expires: expires ?? null,
        msl: family.msl ?? null,
      };
      const dialect = dialects[chanceBelow(chance, dialects.length)] ?? 'envelope';
      return { ...facts, symbols: labelReel(facts, dialect) };
    },
  };
}

export type ReelStore = ReturnType<typeof createReelStore>;
