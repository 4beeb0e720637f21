// The answer of a trace for a spreadsheet, in the same words and numbers whatever language the page speaks: column names as the export
// has them, numbers plain, moments by ISO 8601, and names of people and lines beside their ids.

import { lineEver } from '../../../../shared/floor/lanes.ts';
import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { toCsv } from '../../../../shared/log/table-csv.ts';
import type { TracedPlace } from '../../../../shared/trace/ask.ts';

/** The columns, in their order. */
export const traceColumns = [
  'line',
  'lineName',
  'run',
  'runStarted',
  'product',
  'slot',
  'feeder',
  'reel',
  'part',
  'supplierPart',
  'lot',
  'dateCode',
  'sureFirst',
  'sureLast',
  'possibleFirst',
  'possibleLast',
  'serials',
  'at',
  'who',
  'whoName',
  'guessed',
  'madeOf',
] as const;

/** The places as CSV (RFC 4180) with a byte order mark; texts that look like formulas are guarded. */
export function placesToCsv(places: readonly TracedPlace[], floor: FloorState): string {
  const rows = places.map((place) => {
    const { line, run, product, slot, feeder, reel, part, supplierPart, lot, dateCode, at, who } = place;
    const startedMs = floor.runs.get(run)?.startedMs;
    const started = startedMs === undefined ? null : new Date(startedMs).toISOString();
    return [
      line,
      lineEver(floor, line)?.name ?? null,
      run,
      started,
      product,
      slot,
      feeder,
      reel,
      part,
      supplierPart,
      lot,
      dateCode,
      place.sure?.first ?? null,
      place.sure?.last ?? null,
      place.possible?.first ?? null,
      place.possible?.last ?? null,
      place.serials.join(' '),
      at,
      who,
      who === null ? null : (floor.people.get(who)?.name ?? null),
      place.guessed.join(' '),
      place.madeOf?.filter(hasOwnId).join(' ') ?? '',
    ];
  });
  return toCsv(traceColumns, rows);
}
