// Columns that a person has just chosen, while the files in hand are still read by them: the screen shows them, and the next choice builds on them.

import { type ColumnMap, listed, sameHeader } from '../../../../../shared/sheet/headers.ts';
import type { SheetSettings, SheetSummary, ShownColumn } from '../../../../worker/sheet-protocol.ts';

/** How the columns of each file are to be read; null = by what is remembered, or guessed. */
type ChosenColumns = Pick<SheetSettings, 'columns' | 'placementColumns' | 'billColumns'>;

/** What was read, with each column taken for what it is read for by now; as it was read where nothing was chosen since (null). */
export function asChosen(summary: SheetSummary, chosen: ChosenColumns | null): SheetSummary {
  if (chosen === null) return summary;
  const { placements, bill } = summary;
  return {
    ...summary,
    columns: takenFor(summary.columns, chosen.columns),
    placements: placements && {
      ...placements,
      columns: takenFor(placements.columns, chosen.placementColumns),
    },
    bill: bill && { ...bill, columns: takenFor(bill.columns, chosen.billColumns) },
  };
}

/** As a reading takes them: of columns with one name the first that nothing has taken. */
function takenFor<F extends string>(
  columns: readonly ShownColumn<F>[],
  map: ColumnMap<F> | null,
): readonly ShownColumn<F>[] {
  if (map === null) return columns;
  const taken = new Map<number, F>();
  const fields = Object.keys(map) as F[]; // a map names fields alone
  for (const field of fields) {
    for (const header of listed(map, field)) {
      const at = columns.findIndex((column, index) => sameHeader(column.header, header) && !taken.has(index));
      if (at !== -1) taken.set(at, field);
    }
  }
  return columns.map((column, at) => ({ ...column, field: taken.get(at) ?? null }));
}
