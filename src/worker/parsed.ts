// A file as it was parsed, why one cannot be, and its columns with what stands in them.

import { cellText, type SheetColumn, type SheetRows } from '../../shared/sheet/headers.ts';
import type { PlacementText } from '../../shared/sheet/placement-rows.ts';
import type { SheetProblem } from '../../shared/sheet/problems.ts';
import type { SheetFault, ShownColumn } from './sheet-protocol.ts';

/** A source as it was parsed. */
export interface Parsed {
  readonly number: number;
  readonly name: string;
  readonly isExchange: boolean;
  readonly pages: readonly { readonly name: string; readonly rows: SheetRows }[];
  /** The text of a text file. */
  readonly text: string | null;
  /** The text of a placement file, split by its own rules; null of any other file. */
  readonly placed: PlacementText | null;
  readonly problems: readonly SheetProblem[];
}

/** An expected failure, with what the person is to be told. */
export class Unreadable extends Error {
  readonly fault: SheetFault;
  constructor(fault: SheetFault, detail = '') {
    super(detail);
    this.fault = fault;
  }
}

const mostSamples = 3;
const sampleRows = 200;

/** Columns with their first entries; columns that hold nothing at all are not shown. */
export function showColumns<F extends string>(
  columns: readonly SheetColumn<F>[],
  rows: SheetRows,
  headerRow: number,
): readonly ShownColumn<F>[] {
  const below = rows.slice(headerRow, headerRow + sampleRows);
  return columns.flatMap((column) => {
    const samples = new Set<string>();
    for (const row of below) {
      const text = cellText(row[column.index]);
      if (text !== '' && samples.size < mostSamples) samples.add(text.slice(0, 60));
    }
    return column.header === '' && samples.size === 0 ? [] : [{ ...column, samples: [...samples] }];
  });
}
