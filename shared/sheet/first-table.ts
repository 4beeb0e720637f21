// A file chosen as a setup sheet that names no slot: is it a placement file, or a bill of materials?
// Method: a placement file says where each designator stands; a bill names designators and the part at them. A file in which a column holds full
// addresses of slots is a sheet, whatever else it says. Refused: the name's ending, which programs choose freely.

import { isFullAddress } from '../floor/address.ts';
import { type BillReading, readBill } from './bill.ts';
import { designatorKey, looksLikeDesignator } from './designators.ts';
import type { PlacementField, SheetField } from './fields.ts';
import { cellText, type SheetColumn, type SheetRows } from './headers.ts';
import type { PlacementReading } from './placements.ts';

/** What a file without slots may be. */
export type FirstTable = 'placements' | 'bill';

/** What the three readers made of one file; `rows` as a sheet has them. */
export interface FirstReadings {
  readonly rows: SheetRows;
  readonly sheet: { readonly columns: readonly SheetColumn<SheetField>[] };
  readonly placements: PlacementReading;
  readonly bill: () => BillReading;
}

const lookedRows = 200;

/** Whether a column holds addresses with machine, bank and position: slots, under whatever header. */
function holdsSlots(rows: SheetRows): boolean {
  const width = Math.max(0, ...rows.slice(0, 60).map((row) => row.length));
  for (let index = 0; index < width; index++) {
    const entries = rows
      .slice(0, lookedRows)
      .map((row) => cellText(row[index]))
      .filter((text) => text !== '');
    const full = entries.filter(isFullAddress).length;
    if (full >= 2 && full >= entries.length * 0.6) return true;
  }
  return false;
}

/** Whether the file says where designators stand. Without a header they must look like those that boards have, each once. */
function placesDesignators(reading: PlacementReading): boolean {
  const { columns, headerRow, placements, leftOut } = reading;
  const fields = new Set<PlacementField | null>(columns.map(({ field }) => field));
  if (!fields.has('designator')) return false;
  if (!fields.has('place') && !(fields.has('x') && fields.has('y'))) return false;
  const names = [...placements, ...leftOut.map(({ placement }) => placement)].map(
    ({ designator }) => designator,
  );
  if (headerRow > 0) return true;
  const single = new Set(names.map(designatorKey));
  return names.length > 0 && single.size === names.length && names.every(looksLikeDesignator);
}

/** Whether the file has a slot's column that is not one of those by which it places designators. */
function namesSlots({ sheet, placements }: FirstReadings, isPlaced: boolean): boolean {
  const used = new Set(
    placements.columns.flatMap(({ field, header }) => (field === null ? [] : [header.toLowerCase()])),
  );
  return sheet.columns.some(
    ({ field, header }) =>
      (field === 'slot' || field === 'number') && !(isPlaced && used.has(header.toLowerCase())),
  );
}

/** What a file is that was taken for a setup sheet; null = a sheet, or nothing that is known. */
export function firstTable(readings: FirstReadings): FirstTable | null {
  if (holdsSlots(readings.rows)) return null;
  const isPlaced = placesDesignators(readings.placements);
  if (namesSlots(readings, isPlaced)) return null;
  if (isPlaced) return 'placements';
  const bill = readings.bill();
  return bill.lines.some(({ designators }) => designators.length > 0) ? 'bill' : null;
}

/** Reads rows as a bill only to see whether they are one. */
export function billToSee(rows: SheetRows): BillReading {
  return readBill(rows, { mostProblems: 1 });
}
