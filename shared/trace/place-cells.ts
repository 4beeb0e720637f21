// A place of a trace as cells of a table: the same words and numbers in every table that tells of it, whatever its columns and their order.

import { hasOwnId } from '../floor/reel-id.ts';
import type { TracedPlace } from './ask.ts';

/** What a table can tell of a place by that place alone. */
export type PlaceColumn =
  | Exclude<keyof TracedPlace, 'sure' | 'possible' | 'mixed'>
  | `${'sure' | 'possible'}${'First' | 'Last'}`;

/** The cell of each column; null where nothing is known. Names that only the log knows packages by are in none. */
export const placeCells: Readonly<Record<PlaceColumn, (place: TracedPlace) => string | number | null>> = {
  line: ({ line }) => line,
  run: ({ run }) => run,
  product: ({ product }) => product,
  slot: ({ slot }) => slot,
  feeder: ({ feeder }) => feeder,
  reel: ({ reel }) => reel,
  part: ({ part }) => part,
  supplierPart: ({ supplierPart }) => supplierPart,
  lot: ({ lot }) => lot,
  dateCode: ({ dateCode }) => dateCode,
  sureFirst: ({ sure }) => sure?.first ?? null,
  sureLast: ({ sure }) => sure?.last ?? null,
  possibleFirst: ({ possible }) => possible?.first ?? null,
  possibleLast: ({ possible }) => possible?.last ?? null,
  serials: ({ serials }) => serials.join(' '),
  guessed: ({ guessed }) => guessed.join(' '),
  madeOf: ({ madeOf }) => madeOfCell(madeOf),
  goesOn: ({ goesOn }) => (goesOn ? 'yes' : 'no'),
  at: ({ at }) => at,
  who: ({ who }) => who,
  entry: ({ entry }) => entry,
};

/** The packages that one is made of, as far as people know them by an id; empty where there are none. */
export function madeOfCell(madeOf: readonly string[] = []): string {
  return madeOf.filter(hasOwnId).join(' ');
}
