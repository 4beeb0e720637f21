// Which numbers of a workbook are shown as per cent? A spreadsheet keeps 1 % as 0.01, and the reader of spreadsheets gives that number only.
// Method: formats and cells are read out of the workbook's own parts (ECMA-376: `cellXfs`, `numFmt`, and `s` of a cell); a cell shown as per cent
// becomes the text that people see. Refused: to tell it by the size of the numbers, since 0.8 may be 80 % or 0.8 %.

import { strFromU8, unzipSync } from 'fflate';
import { twelveFigures } from '../kit/figures.ts';
import type { SheetCell, SheetRows } from './headers.ts';
import { columnNumber, xmlAttribute } from './merged.ts';

/** `0%` and `0.00%` among the formats that no workbook spells out (ECMA-376, 18.8.30). */
const BUILT_IN: readonly string[] = ['9', '10'];

/** Numbers of the workbook's cell styles that show a number as per cent; none where the bytes are no workbook. */
export function percentStyles(bytes: Uint8Array): ReadonlySet<string> {
  let styles: string;
  try {
    const { 'xl/styles.xml': part } = unzipSync(bytes, { filter: ({ name }) => name === 'xl/styles.xml' });
    styles = part === undefined ? '' : strFromU8(part);
  } catch {
    // No zip that can be read: the spreadsheet reader says so.
    return new Set();
  }
  const formats = new Set(BUILT_IN);
  // What stands in quotes or behind a backslash is shown as it is and scales nothing.
  for (const [tag] of styles.matchAll(/<numFmt\s[^>]*>/g))
    if (/%/.test(xmlAttribute(tag, 'formatCode').replace(/&quot;.*?&quot;|\\./g, '')))
      formats.add(xmlAttribute(tag, 'numFmtId'));
  const cells = /<cellXfs[\s>][\s\S]*?<\/cellXfs>/.exec(styles)?.[0] ?? '';
  const found = new Set<string>();
  for (const [at, [tag]] of [...cells.matchAll(/<xf\s[^>]*>/g)].entries())
    if (formats.has(xmlAttribute(tag, 'numFmtId'))) found.add(String(at));
  return found;
}

/** The rows with each number that `sheet` shows as per cent as the text that people see: 0.01 is `1 %`. */
export function showPercents(rows: SheetRows, sheet: string, styles: ReadonlySet<string>): SheetRows {
  if (styles.size === 0) return rows;
  const shown: SheetCell[][] = rows.map((row) => [...row]);
  for (const [tag] of sheet.matchAll(/<c\s[^>]*>/g)) {
    if (!styles.has(xmlAttribute(tag, 's'))) continue;
    const [, letters = '', number = ''] = /^([A-Z]+)(\d+)$/.exec(xmlAttribute(tag, 'r')) ?? [];
    const row = shown[Number(number) - 1];
    const cell = row?.[columnNumber(letters)];
    if (row !== undefined && typeof cell === 'number')
      row[columnNumber(letters)] = `${twelveFigures(cell * 100)} %`;
  }
  return shown;
}
