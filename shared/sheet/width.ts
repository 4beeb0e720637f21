// How wide may a list be? Cells without text behind a row's last one are left out, as programs write them by the thousand; a row that is
// wider than any list of parts all the same is told, since every question about columns would be asked for each.

import { cellText, type SheetRows } from './headers.ts';

/** Most filled columns of a list. */
export const mostColumns = 1000;

/** The rows, each without empty cells behind its last text; or which row (1 = first) is too wide, and how wide. */
export function fitWidth(
  rows: SheetRows,
): { readonly rows: SheetRows } | { readonly row: number; readonly columns: number } {
  const fitted: SheetRows[number][] = [];
  for (const [index, row] of rows.entries()) {
    let end = row.length;
    if (end > mostColumns) {
      while (end > 0 && cellText(row[end - 1]) === '') end -= 1;
      if (end > mostColumns) return { row: index + 1, columns: end };
    }
    fitted.push(end < row.length ? row.slice(0, end) : row);
  }
  return { rows: fitted };
}
