// The rows of a workbook as people see them, where the reader of spreadsheets gives less: per cents as such, merged cells filled.

import type { SheetRows } from './headers.ts';
import { fillMerged, mergedRanges, sheetTexts } from './merged.ts';
import { percentStyles, showPercents } from './percent-cells.ts';

/** Looks a workbook over; the answer lays what it found over the rows of its sheet `at`, 0 = the first. The bytes are read once, here. */
export function readShown(bytes: Uint8Array): (rows: SheetRows, at: number) => SheetRows {
  const texts = sheetTexts(bytes);
  const percents = percentStyles(bytes);
  const merged = mergedRanges(texts);
  return (rows, at) => fillMerged(showPercents(rows, texts[at] ?? '', percents), merged[at] ?? []);
}
