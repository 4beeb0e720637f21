// The answer of a trace for a spreadsheet, in the same words and numbers whatever language the page speaks: column names as the export
// has them, numbers plain, moments by ISO 8601, and names of people and lines beside their ids.

import { lineEver } from '../../../../shared/floor/lanes.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { toCsv } from '../../../../shared/log/table-csv.ts';
import type { TracedPlace } from '../../../../shared/trace/ask.ts';
import { placeCells } from '../../../../shared/trace/place-cells.ts';

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

type TraceColumn = (typeof traceColumns)[number];

/** The places as CSV (RFC 4180) with a byte order mark; texts that look like formulas are guarded. */
export function placesToCsv(places: readonly TracedPlace[], floor: FloorState): string {
  const rows = places.map((place) => traceColumns.map((column) => cellOf(place, column, floor)));
  return toCsv(traceColumns, rows);
}

function cellOf(place: TracedPlace, column: TraceColumn, floor: FloorState): string | number | null {
  switch (column) {
    case 'lineName':
      return lineEver(floor, place.line)?.name ?? null;
    case 'runStarted': {
      const startedMs = floor.runs.get(place.run)?.startedMs;
      return startedMs === undefined ? null : new Date(startedMs).toISOString();
    }
    case 'whoName':
      return place.who === null ? null : (floor.people.get(place.who)?.name ?? null);
    default:
      return placeCells[column](place);
  }
}
