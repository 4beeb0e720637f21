// Facts that are lists of parts: what splices cost by width of tape, what a machine placed and spoiled by place; and what the camera saw:
// labels passed over, pictures kept.

import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { PartPrice } from '../../../../shared/floor/kinds-parts.ts';
import type { Json } from '../../../../shared/log/entry.ts';
import { visible } from '../../ui/visible.ts';
import { type FactName, factWords } from '../../words/log-facts.ts';
import { formatMoney } from '../../words/money.ts';
import { formatCount, formatFigure, formatNumber, say } from '../../words/words.ts';
import { number, oneOf, parts, type Say, text, withUnit, yesNo } from './plain-sayings.ts';

/** What a splice costs, width by width. */
export function sayCosts(value: Json): string | null {
  if (!Array.isArray(value)) return null;
  const words = say(factWords);
  const costs = value as unknown as PayloadOf<'line.splices-ruled'>['costs']; // as the kind's schema read it
  return costs
    .map(({ parts: lost, tapeWidthMm: width }) =>
      words.spliceCost(words.parts(formatCount(lost)), width === null ? null : `${formatNumber(width)} mm`),
    )
    .join(' · ');
}

/** What a machine placed and spoiled, place by place. */
export function sayUses(value: Json): string | null {
  if (!Array.isArray(value)) return null;
  const uses = value as unknown as PayloadOf<'parts.used'>['uses']; // as the kind's schema read it
  return uses
    .map(({ slot, used, spoiled }) =>
      say(factWords).usedAt(visible(slot ?? '?'), formatCount(used), formatCount(spoiled)),
    )
    .join(' · ');
}

/** Faults of picking, place by place. */
export function sayMisses(value: Json): string | null {
  if (!Array.isArray(value)) return null;
  const misses = value as unknown as PayloadOf<'parts.missed'>['misses']; // as above
  return misses.map(({ slot, times }) => `${visible(slot ?? '?')}: ${formatCount(times)}`).join(' · ');
}

/** What a machine has loaded, as it believes. */
export function sayBelieved(value: Json): string | null {
  if (!Array.isArray(value)) return null;
  const places = value as unknown as NonNullable<PayloadOf<'machine.loaded'>['places']>; // as the kind's schema read it
  return places
    .map(({ slot, reel, part }) => {
      const what = [reel, part].filter((each) => each !== null).join(' ');
      return say(factWords).believedAt(visible(slot), what === '' ? null : visible(what));
    })
    .join(' · ');
}

/** What a machine was answered, place by place: result and reason as they were sent. */
export function sayAnswers(value: Json): string | null {
  if (!Array.isArray(value)) return null;
  const results = value as unknown as PayloadOf<'station.answered'>['results']; // as above
  return results
    .map(({ slot, reel, result, why }) =>
      say(factWords).answeredAt(visible(slot ?? '?'), visible(reel ?? '–'), result, why),
    )
    .join(' · ');
}

/** Parts named; the rest is counted. */
const NAMED = 6;

/** Parts put on the plant's list, the first by their numbers, with prices where such were set; null for a list of anything else. */
export function sayListed(value: readonly Json[]): string | null {
  const listed = value as readonly { readonly part?: Json; readonly price?: PartPrice | null }[]; // as the kind's schema read it; texts have no part
  const numbers = listed.flatMap(({ part, price }) => {
    if (typeof part !== 'string') return [];
    return price === undefined ? [visible(part)] : [`${visible(part)}: ${priceText(price)}`];
  });
  if (numbers.length === 0) return null;
  const more = numbers.length - NAMED;
  return `${numbers.slice(0, NAMED).join(', ')}${more > 0 ? ` +${formatCount(more)}` : ''}`;
}

function priceText(price: PartPrice | null): string {
  return price === null ? '–' : `${formatMoney(price.each)} ${visible(price.currency ?? '')}`.trim();
}

/** Bar codes that the camera reads besides the usual ones, by their lengths; null where it reads none. */
export function sayLengths(value: Json): string | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null;
  const { code93, itf } = value as unknown as NonNullable<PayloadOf<'line.ruled'>['alsoRead']>; // as the kind's schema read it
  const named = [
    ['Code 93', code93],
    ['Interleaved 2 of 5', itf],
  ] as const;
  const said = named.filter(([, lengths]) => lengths.length > 0);
  return said.length === 0
    ? null
    : said.map(([name, lengths]) => `${name} (${lengths.join(', ')})`).join(' · ');
}

/** What the camera saw: how each of its facts is told. */
export const pictureSayings = {
  looks: number,
  copies: number,
  belongs: oneOf(() => say(factWords).belongings),
  evidence: yesNo,
  days: withUnit('d'),
  megabytes: withUnit('MB'),
  sha256: text,
  bytes: withUnit('B'),
} as const satisfies Partial<Record<FactName, Say>>;

/** How a stack of trays is laid out. */
function sayTrays(value: Json): string | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null;
  const { rows, columns, trays } = value as unknown as NonNullable<PayloadOf<'reel.packed'>['tray']>; // as above
  return `${formatCount(rows)} × ${formatCount(columns)} × ${formatCount(trays)}`;
}

/** How many tubes of how many parts. */
function sayTubes(value: Json): string | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null;
  const { tubes, parts } = value as unknown as NonNullable<PayloadOf<'reel.packed'>['tube']>; // as above
  return `${formatCount(tubes)} × ${formatCount(parts)}`;
}

/** What a package holds that is no tape: how each of its facts is told. */
export const packSayings = { tray: sayTrays, tube: sayTubes } as const satisfies Partial<
  Record<FactName, Say>
>;

/** Jobs of a plan, each with its panels. */
export const sayJobs: Say = (value, _, floor) =>
  Array.isArray(value)
    ? value
        .map((each) => {
          const { setup: of, panels: wanted } = each as { setup: string; panels: number }; // checked when it was written
          return say(factWords).panelsOf(
            formatCount(wanted),
            floor.setups.get(of)?.product ?? say(factWords).unknown,
          );
        })
        .join(', ') || null
    : null;

/** A figure of a measurement, in its own unit. */
const measured: Say = (value, entry) => {
  const { unit } = entry.payload;
  return typeof value === 'number'
    ? `${formatFigure(value)} ${typeof unit === 'string' ? unit : ''}`.trim()
    : null;
};

/** A quantity counts parts, but for a measurement, which has a unit of its own. */
export const quantity: Say = (value, entry, floor) =>
  entry.kind === 'panel.measured' || entry.kind === 'reel.measured'
    ? measured(value, entry, floor)
    : parts(value, entry, floor);

/** A guard band: as it was kept from the limits, or as a line's rule has it, in percent of the uncertainty. */
const guardBand: Say = (value, entry, floor) =>
  entry.kind === 'reel.measured' ? measured(value, entry, floor) : withUnit('%')(value, entry, floor);

/** What was measured and between which limits: how each of its facts is told. */
export const measureSayings = {
  nominal: measured,
  guard: guardBand,
  uncertainty: measured,
  least: measured,
  most: measured,
} as const satisfies Partial<Record<FactName, Say>>;
