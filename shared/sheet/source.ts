// What kind of file is this, which sheet of a workbook is the setup, and what do the lines above the header say?
// Method: first bytes for the kind; the sheet whose rows read most like a header; labels with a value beside or behind them for
// product, revision and side. Method refused: the file name's ending, which people change without changing the file.

import { unzipSync } from 'fflate';
import type { Side } from '../floor/vocabulary.ts';
import { billHeaderWords } from './bill-fields.ts';
import { parseSide } from './cells.ts';
import { type HeaderWords, placementHeaderWords, sheetHeaderWords } from './fields.ts';
import {
  cellText,
  matchHeader,
  reduceHeader,
  type SheetCell,
  type SheetRows,
  scoreHeaderRow,
} from './headers.ts';
import { partHeaderWords } from './part-fields.ts';
import { type SheetProblem, sheetProblem } from './problems.ts';
import { countHeaderWords } from './reel-counts.ts';

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

/** Files that hold no rows to be read, by what they are. */
export const foreignKinds = [
  'open-document',
  'binary-workbook',
  'word-document',
  'zip',
  'gzip',
  'tar',
  '7z',
  'rar',
  'bzip2',
  'xz',
  'pdf',
  'picture',
] as const;

/** One of them. */
export type ForeignKind = (typeof foreignKinds)[number];

const signatures: readonly (readonly [ForeignKind, readonly number[]])[] = [
  ['gzip', [0x1f, 0x8b]],
  ['7z', [0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c]],
  ['rar', [0x52, 0x61, 0x72, 0x21, 0x1a]],
  ['bzip2', [0x42, 0x5a, 0x68]],
  ['xz', [0xfd, 0x37, 0x7a, 0x58, 0x5a]],
  ['pdf', [0x25, 0x50, 0x44, 0x46]],
  ['picture', [0x89, 0x50, 0x4e, 0x47]],
  ['picture', [0xff, 0xd8, 0xff]],
  ['picture', [0x47, 0x49, 0x46, 0x38]],
];

/** Whether bytes hold an ASCII text. */
function holds(bytes: Uint8Array, text: string): boolean {
  const first = text.charCodeAt(0);
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    let same = 1;
    while (same < text.length && bytes[at + same] === text.charCodeAt(same)) same++;
    if (same === text.length) return true;
  }
  return false;
}

/** What a file is that is neither text nor a workbook that can be read; null where it may be one of those. */
export function foreignKind(bytes: Uint8Array): ForeignKind | null {
  for (const [kind, start] of signatures) if (start.every((byte, at) => bytes[at] === byte)) return kind;
  if (holds(bytes.subarray(257, 262), 'ustar')) return 'tar';
  const isZip =
    bytes.length > 30 && bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
  if (!isZip) return null;
  if (holds(bytes.subarray(0, 200), 'vnd.oasis.opendocument')) return 'open-document';
  if (holds(bytes, 'xl/workbook.bin')) return 'binary-workbook';
  if (holds(bytes, 'xl/')) return null;
  return holds(bytes, 'word/document.xml') ? 'word-document' : 'zip';
}

/** Deflate packs a run of one byte at most so many times smaller (RFC 1951: 258 bytes in two bits). */
const PACKED_MOST = 1032;
/** Bytes that the list says of a part at least (PKWARE APPNOTE 4.3.12). */
const LISTED_LEAST = 46;
/** The record at the end: its mark, its bytes without a comment, and a comment's at most. */
const [END_MARK, END_BYTES, COMMENT_MOST] = [0x06054b50, 22, 0xffff];

/** True where the record at a zip's end (APPNOTE 4.3.16) counts more parts than its bytes can list: looking for them would take as long. */
function listsTooMany(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const last = bytes.length - END_BYTES;
  for (let at = last; at >= 0 && last - at <= COMMENT_MOST; at -= 1)
    if (view.getUint32(at, true) === END_MARK)
      return view.getUint16(at + 8, true) * LISTED_LEAST > bytes.length;
  return false;
}

/** What the list at a zip's end says of its parts, without unpacking any: bytes of all, and whether it says more than the bytes can hold. */
function partsSaid(bytes: Uint8Array): { readonly sum: number; readonly isOverstated: boolean } {
  if (listsTooMany(bytes)) return { sum: 0, isOverstated: true };
  let sum = 0;
  let isOverstated = false;
  const look = ({ size, originalSize }: { readonly size: number; readonly originalSize: number }) => {
    sum += originalSize;
    isOverstated ||= size > bytes.length || originalSize > (size + 1) * PACKED_MOST;
    return false;
  };
  try {
    unzipSync(bytes, { filter: look });
  } catch {
    return { sum: 0, isOverstated: false }; // the spreadsheet reader says so
  }
  return { sum, isOverstated };
}

/** Bytes that a workbook says it unpacks to; 0 where the bytes are no zip that can be read. */
export function workbookBytes(bytes: Uint8Array): number {
  return partsSaid(bytes).sum;
}

/** True where the bytes cannot hold what their list says, parts or bytes of a part: whoever unpacks it makes room for all that it says. */
export function isOverstated(bytes: Uint8Array): boolean {
  return partsSaid(bytes).isOverstated;
}

/** A workbook's cell: a date becomes ISO text, a type not known here becomes its text. */
export function toSheetCell(cell: unknown): SheetCell {
  if (cell instanceof Date) return cell.toISOString();
  if (cell === null || cell === undefined) return null;
  return typeof cell === 'number' || typeof cell === 'boolean' ? cell : String(cell);
}

const headerSearchRows = 60;

/** What a table is looked for: a setup sheet, a placement file, a bill of materials, the plant's parts, or reels that were counted. */
export type TableKind = 'sheet' | 'placements' | 'bill' | 'parts' | 'counts';

const wordsOfTable: Readonly<Record<TableKind, readonly HeaderWords<string>[]>> = {
  sheet: [sheetHeaderWords, placementHeaderWords],
  placements: [placementHeaderWords],
  bill: [billHeaderWords],
  parts: [partHeaderWords],
  counts: [countHeaderWords],
};

const coordinates = 3;

/** Coordinates make a table a placement file and no bill, whose other columns may be the same. */
function placeBonus(row: readonly SheetCell[], table: TableKind): number {
  if (table === 'sheet') return 0;
  const fields = row.flatMap((cell) => matchHeader(cellText(cell).slice(0, 60), placementHeaderWords).fields);
  if (!fields.includes('x') || !fields.includes('y')) return 0;
  return table === 'placements' ? coordinates : -coordinates;
}

/** The best score of a row of the table's first ones, and that row. */
function bestHeader(rows: SheetRows, table: TableKind): { readonly score: number; readonly row: number } {
  let best = { score: 0, row: -1 };
  for (const [at, row] of rows.slice(0, headerSearchRows).entries()) {
    const score =
      Math.max(...wordsOfTable[table].map((words) => scoreHeaderRow(row, words))) + placeBonus(row, table);
    if (score > best.score) best = { score, row: at };
  }
  return best;
}

/** Index of the sheet whose rows read most like the header of what is looked for; 0 where none does. */
export function pickSheet(sheets: readonly SheetRows[], table: TableKind = 'sheet'): number {
  // Of one there is nothing to choose, and every text is one.
  if (sheets.length < 2) return 0;
  let best = 0;
  let bestScore = 0;
  for (const [index, rows] of sheets.entries()) {
    const { score } = bestHeader(rows, table);
    if (score <= bestScore) continue;
    bestScore = score;
    best = index;
  }
  return best;
}

/**
 * The rows of the sheet that reads most like what is looked for, with the rows of other sheets under the same header behind them (top and bottom
 * on a sheet each); each sheet that is added is told.
 */
export function joinPages(
  pages: readonly { readonly name: string; readonly rows: SheetRows }[],
  table: TableKind,
): { readonly rows: SheetRows; readonly problems: readonly SheetProblem[] } {
  const [only, ...others] = pages;
  if (only !== undefined && others.length === 0) return { rows: only.rows, problems: [] };
  const chosen = pickSheet(
    pages.map(({ rows }) => rows),
    table,
  );
  const first = pages[chosen]?.rows ?? [];
  const header = bestHeader(first, table);
  const textOf = (row: readonly SheetCell[] | undefined) => (row ?? []).map(cellText).join('\t').trimEnd();
  const rows = [...first];
  const problems: SheetProblem[] = [];
  for (const [at, page] of pages.entries()) {
    const own = bestHeader(page.rows, table);
    if (at === chosen || own.score < 2 || textOf(page.rows[own.row]) !== textOf(first[header.row])) continue;
    problems.push(
      sheetProblem('sheetAdded', { row: rows.length + 1 }, { found: page.name, first: rows.length + 1 }),
    );
    rows.push(...page.rows.slice(own.row + 1));
  }
  return { rows, problems };
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
  // Where counting goes on for a name that comes again: from the start each time it would grow with the square.
  const counts = new Map<string, number>();
  const named = header.map((cell, index) => {
    const text = cellText(cell);
    if (text === '' && !below.some((row) => cellText(row[index]) !== '')) return cell;
    const base = text === '' ? `(${columnLetters(index)})` : text;
    const key = base.toLowerCase();
    let name = base;
    let count = counts.get(key) ?? 2;
    for (; taken.has(name.toLowerCase()); count++) name = `${base} (${count})`;
    counts.set(key, count);
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
