// What runs consumed and scrapped as a file for whatever system the plant owns: the same column names and numbers in every language.

import { lineEver } from '../../../../shared/floor/lanes.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { toCsv } from '../../../../shared/log/table-csv.ts';
import type { Consumption } from '../../../../shared/trace/consumption.ts';
import { stampOf } from './export-log.ts';

/** The columns, in their order. */
export const consumptionColumns = [
  'run',
  'runStarted',
  'runEnded',
  'line',
  'lineName',
  'product',
  'panels',
  'panelsScrapped',
  'what',
  'slot',
  'part',
  'reel',
  'supplierPart',
  'lot',
  'parts',
  'partsAtLeast',
  'partsAtMost',
] as const;

const moment = (ms: number | null | undefined) => (ms == null ? null : new Date(ms).toISOString());
const whole = (parts: number | null) => (parts === null ? null : Math.round(parts));

/** The rows as CSV (RFC 4180) with a byte order mark; parts as whole numbers, empty where nobody can know. */
export function consumptionToCsv(rows: readonly Consumption[], floor: FloorState): string {
  const cells = rows.map(({ kind, line, run, product, slot, part, reel, supplierPart, lot, ...count }) => {
    const known = floor.runs.get(run);
    return [
      run,
      moment(known?.startedMs),
      known?.phase === 'ended' ? moment(known.sinceMs) : null,
      line,
      lineEver(floor, line)?.name ?? null,
      product,
      known?.done ?? null,
      known?.scrapped ?? null,
      kind,
      slot,
      part,
      reel,
      supplierPart,
      lot,
      whole(count.parts),
      whole(count.least),
      whole(count.most),
    ];
  });
  return toCsv(consumptionColumns, cells);
}

/** The file's name: of which plant ('' = nobody named it), from when. `nowMs`: ms since 1970. */
export function consumptionName(nowMs: number, plant: string): string {
  return `reelward-consumption-${stampOf(nowMs, plant)}.csv`;
}
