// What stands in a column, whatever its header says? Designators, numbers, sides, packages, angles.
// Method: shares over the filled cells of the first rows. A look confirms or overrules a header's word that means two things ("Part", "Name",
// "Position"), and takes the header's place where a file has none.

import { parseNumber, parseSide } from './cells.ts';
import { looksLikeDesignator, parseDesignators } from './designators.ts';
import { cellText, type SheetRows } from './headers.ts';

/** How a column looks: shares from 0 to 1 of the filled cells. */
export interface ColumnLook {
  readonly index: number;
  /** Filled cells, in order, at most `lookRows`. */
  readonly entries: readonly string[];
  /** Cells that hold one designator, or a list of them. */
  readonly designators: number;
  readonly single: number;
  readonly numbers: number;
  readonly integers: number;
  /** Whole numbers that count up by one: the number of the row. */
  readonly isSequence: boolean;
  readonly sides: number;
  readonly packages: number;
  readonly mounts: number;
  /** Numbers from -360 to 360 that are whole multiples of 15 degrees. */
  readonly angles: number;
  readonly distinct: number;
}

const lookRows = 300;
// Nearly every number of a list is written like this: a look costs less than a reading.
const plainNumber = /^[+-]?\d+(?:\.\d+)?$/;
const packageLook =
  /(?:^|[^0-9])(?:01005|0201|0402|0603|0805|1206|1210|1808|1812|2010|2220|2512|[0-9]{4}metric)(?:[^0-9]|$)|\b(?:SOT|SOD|SOIC|SOP|SO-?\d|TSSOP|SSOP|MSOP|QFN|QFP|[LT]QFP|DFN|BGA|DIP|SIP|TO-?\d|SMA|SMB|SMC|MELF|PLCC|LCC|SON|CSP|CONN|HDR)/i;
const mountWords =
  /^(?:smd|smt|tht|thd|thmt|th|pth|through[ -]?hole|surface[ -]?mount(?:ed)?|virtual|other|unspecified|fiducial)$/i;
const sideWords = /[a-z]/i;

/** A number with a unit of length or an angle's sign behind it; null where the text is none. */
export function parseMeasure(text: string): number | null {
  if (plainNumber.test(text)) return Number(text);
  const plain = text.replace(/\s*(?:mm|mils?|thou|inch(?:es)?|in|um|µm|"|°|deg(?:rees?)?)\.?$/i, '').trim();
  if (/^[+-]?\d+(?:\.\d+)?e[+-]?\d+$/i.test(plain)) return Number(plain);
  return parseNumber(plain, 'length');
}

/** Looks at one column below the header row (0 = the first row). */
export function lookAt(rows: SheetRows, from: number, index: number): ColumnLook {
  const entries: string[] = [];
  for (let at = from; at < rows.length && entries.length < lookRows; at++) {
    const row = rows[at];
    if (row === undefined || row.length < 2) continue;
    const text = cellText(row[index]);
    if (text !== '') entries.push(text);
  }
  const share = (is: (text: string) => boolean) =>
    entries.length === 0 ? 0 : entries.filter(is).length / entries.length;
  const values = entries.map(parseMeasure);
  const isWhole = (text: string) => /^\d+(?:[.,]0+)?$/.test(text);
  return {
    index,
    entries,
    designators: share((text) => areListed(text)),
    single: share(looksLikeDesignator),
    numbers: values.filter((value) => value !== null).length / Math.max(1, entries.length),
    integers: share(isWhole),
    isSequence:
      entries.length > 1 &&
      values.filter((value, at) => value !== null && (at === 0 || value === (values[at - 1] ?? 0) + 1))
        .length >=
        entries.length * 0.8,
    sides: share((text) => sideWords.test(text) && parseSide(text) !== null),
    packages: share((text) => packageLook.test(text)),
    mounts: share((text) => mountWords.test(text)),
    angles:
      values.filter((value) => value !== null && Math.abs(value) <= 360 && value % 15 === 0).length /
      Math.max(1, entries.length),
    distinct: new Set(entries).size / Math.max(1, entries.length),
  };
}

/** Whether a cell is a list of designators, by its first few. */
function areListed(text: string): boolean {
  if (text.length > 4000) return false;
  const listed = parseDesignators(text.slice(0, 400));
  const most = text.length > 400 ? listed.slice(0, -1) : listed;
  return most.length > 0 && most.every(looksLikeDesignator);
}

/** Looks of all columns below the header row. */
export function lookAtColumns(rows: SheetRows, from: number): readonly ColumnLook[] {
  let width = 0;
  for (const row of rows.slice(Math.max(0, from - 1), from + lookRows)) width = Math.max(width, row.length);
  return Array.from({ length: Math.min(width, 200) }, (_, index) => lookAt(rows, from, index));
}

/** Whether a mount column's word says that the part's legs go through the board. */
export function isThroughHole(text: string): boolean {
  return /^(?:tht|thd|thmt|th|pth|through[ -]?hole)$/i.test(text.trim());
}
