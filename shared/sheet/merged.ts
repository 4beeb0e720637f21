// Which cells of a workbook are merged, and what stands in the cells that a merged one covers?
// Method: the ranges are read out of the workbook's own parts (ECMA-376: `mergeCell`), since the spreadsheet reader gives the first cell
// only; they are filled down, not to the right, as a value that is merged over columns is a title.

import { strFromU8, unzipSync } from 'fflate';
import { cellText, type SheetCell, type SheetRows } from './headers.ts';

/** One range that is merged, 0 = first row or column, both ends within. */
export interface MergedRange {
  readonly column: number;
  readonly lastColumn: number;
  readonly row: number;
  readonly lastRow: number;
}

/** The number of a column by its letters, 0 = `A`. */
export function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}

/** The text of each of a workbook's sheets in its own words, in the order of the sheets; empty where the bytes are no such workbook. */
export function sheetTexts(bytes: Uint8Array): readonly string[] {
  let parts: Readonly<Record<string, Uint8Array>>;
  try {
    parts = unzipSync(bytes, {
      filter: ({ name }) =>
        /^xl\/(?:workbook\.xml|_rels\/workbook\.xml\.rels|worksheets\/[^/]+\.xml)$/.test(name),
    });
  } catch {
    // No zip that can be read: the spreadsheet reader says so.
    return [];
  }
  const text = (name: string) => (parts[name] === undefined ? '' : strFromU8(parts[name]));
  const targetById = new Map(
    [...text('xl/_rels/workbook.xml.rels').matchAll(/<Relationship\s[^>]*>/g)].map(([tag]) => [
      xmlAttribute(tag, 'Id'),
      xmlAttribute(tag, 'Target').replace(/^\/?(?:xl\/)?/, 'xl/'),
    ]),
  );
  return [...text('xl/workbook.xml').matchAll(/<sheet\s[^>]*>/g)].map(([tag]) =>
    text(targetById.get(xmlAttribute(tag, 'r:id')) ?? ''),
  );
}

/** An attribute of a tag, as it is written; empty where it has none of that name. */
export function xmlAttribute(tag: string, name: string): string {
  return new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
}

/** Merged ranges by sheet, out of `sheetTexts`. */
export function mergedRanges(sheets: readonly string[]): readonly (readonly MergedRange[])[] {
  return sheets.map((sheet) =>
    [...sheet.matchAll(/<mergeCell\s+ref="([A-Z]+)(\d+):([A-Z]+)(\d+)"/g)].map(
      ([, from = '', row = '', to = '', lastRow = '']) => ({
        column: columnNumber(from),
        lastColumn: columnNumber(to),
        row: Number(row) - 1,
        lastRow: Number(lastRow) - 1,
      }),
    ),
  );
}

/** The rows with each merged cell's text in all rows that it covers. */
export function fillMerged(rows: SheetRows, ranges: readonly MergedRange[]): SheetRows {
  const tall = ranges.filter(
    ({ row, lastRow, column, lastColumn }) => lastRow > row && column === lastColumn,
  );
  if (tall.length === 0) return rows;
  const filled: SheetCell[][] = rows.map((row) => [...row]);
  for (const { row, lastRow, column } of tall) {
    const cell = filled[row]?.[column];
    for (let at = row + 1; at <= lastRow && at < filled.length; at++) {
      const under = filled[at];
      if (under !== undefined && cellText(under[column]) === '') {
        while (under.length < column) under.push(null);
        under[column] = cell;
      }
    }
  }
  return filled;
}
