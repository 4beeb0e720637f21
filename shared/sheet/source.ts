// What kind of file is this, which sheet of a workbook is the setup, and what do the lines above the header say?
// Method: first bytes for the kind; the sheet whose rows read most like a header; labels with a value beside or behind them for
// product, revision and side. Method refused: the file name's ending, which people change without changing the file.

import type { Side } from '../floor/vocabulary.ts';
import { parseSide } from './cells.ts';
import { placementHeaderWords, sheetHeaderWords } from './fields.ts';
import { cellText, reduceHeader, type SheetCell, type SheetRows, scoreHeaderRow } from './headers.ts';

/** What a file is by its first bytes; `old-workbook` is the binary form from before 2007. */
export const sheetFileKinds = ['empty', 'workbook', 'old-workbook', 'text'] as const;

/** One of the kinds. */
export type SheetFileKind = (typeof sheetFileKinds)[number];

/** Tells a file's kind; everything that is no workbook may be text. */
export function sheetFileKind(bytes: Uint8Array): SheetFileKind {
  if (bytes.length === 0) return 'empty';
  const starts = (...start: readonly number[]) => start.every((byte, at) => bytes[at] === byte);
  if (starts(0x50, 0x4b, 0x03, 0x04)) return 'workbook';
  return starts(0xd0, 0xcf, 0x11, 0xe0) ? 'old-workbook' : 'text';
}

/** A workbook's cell: a date becomes ISO text, a type not known here becomes its text. */
export function toSheetCell(cell: unknown): SheetCell {
  if (cell instanceof Date) return cell.toISOString();
  if (cell === null || cell === undefined) return null;
  return typeof cell === 'number' || typeof cell === 'boolean' ? cell : String(cell);
}

const headerSearchRows = 60;

/** Index of the sheet whose rows read most like the header of a setup sheet or a placement file; 0 where none does. */
export function pickSheet(sheets: readonly SheetRows[]): number {
  let best = 0;
  let bestScore = 0;
  for (const [index, rows] of sheets.entries()) {
    for (const row of rows.slice(0, headerSearchRows)) {
      const score = Math.max(
        scoreHeaderRow(row, sheetHeaderWords),
        scoreHeaderRow(row, placementHeaderWords),
      );
      if (score <= bestScore) continue;
      bestScore = score;
      best = index;
    }
  }
  return best;
}

/** The letters by which a spreadsheet names a column: 0 -> A, 26 -> AA. */
export function columnLetters(index: number): string {
  const rest = Math.floor(index / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + (index % 26));
}

/**
 * The rows with every header of `headerRow` (1 = first) its own, so that a person's choice of columns is never in doubt: a repeated header
 * gets a number, a column without a header but with entries gets its letters. Other rows are handed on as they are.
 */
export function nameHeaders(rows: SheetRows, headerRow: number): SheetRows {
  const header = rows[headerRow - 1] ?? [];
  const below = rows.slice(headerRow, headerRow + headerSearchRows);
  const taken = new Set<string>();
  const named = header.map((cell, index) => {
    const text = cellText(cell);
    if (text === '' && !below.some((row) => cellText(row[index]) !== '')) return cell;
    const base = text === '' ? `(${columnLetters(index)})` : text;
    let name = base;
    for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${base} (${count})`;
    taken.add(name.toLowerCase());
    return name === text ? cell : name;
  });
  return rows.map((row, index) => (index === headerRow - 1 ? named : row));
}

/** What the lines above the header say; null = they do not. */
export interface SheetTitle {
  readonly product: string | null;
  readonly revision: string | null;
  readonly side: Side | null;
}

const labels: Readonly<Record<keyof SheetTitle, readonly string[]>> = {
  product: [
    'product',
    'assembly',
    'board',
    'job',
    'product name',
    'program',
    'program name',
    'model',
    'producto',
    'conjunto',
    'programa',
    'produkt',
    'baugruppe',
    'programm',
    'produit',
    'programme',
  ],
  revision: ['revision', 'rev', 'issue', 'version', 'index', 'stand', 'edicion', 'indice'],
  side: ['side', 'board side', 'panel side', 'lado', 'cara', 'seite', 'face', 'cote'],
};

/** Cells above the header in reading order: `Product: Heather board` in one cell or in two beside each other. */
function titleEntries(rows: SheetRows, headerRow: number): readonly (readonly [string, string])[] {
  const entries: [string, string][] = [];
  for (const row of rows.slice(0, Math.max(0, headerRow - 1))) {
    const texts = row.map(cellText).filter((text) => text !== '');
    for (const [at, text] of texts.entries()) {
      const inside = /^([^:=]{2,30})[:=]\s*(.+)$/.exec(text);
      if (inside?.[1] !== undefined && inside[2] !== undefined)
        entries.push([reduceHeader(inside[1]), inside[2]]);
      else if (texts[at + 1] !== undefined)
        entries.push([reduceHeader(text.replace(/[:=]\s*$/, '')), texts[at + 1] ?? '']);
    }
  }
  return entries;
}

/** Reads product, revision and side out of the lines above the header; a revision at the product's end counts where none is stated. */
export function readTitle(rows: SheetRows, headerRow: number): SheetTitle {
  const entries = titleEntries(rows, headerRow);
  const find = (what: keyof SheetTitle) =>
    entries.find(([label]) => labels[what].includes(label))?.[1] ?? null;
  const stated = find('product');
  const behind = stated === null ? null : /^(.*?)[\s,;-]+(?:rev(?:ision)?|issue)\.?\s*(\S+)$/i.exec(stated);
  const side = find('side');
  return {
    product: behind?.[1] ?? stated,
    revision: find('revision') ?? behind?.[2] ?? null,
    side: side === null ? null : parseSide(side),
  };
}
