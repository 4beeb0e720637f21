// How is a list of one thing a row read, whatever its columns are called: parts, counted reels?
// Method: the header and its columns are guessed by the words of the list as for setup sheets, a person's choice first; each row below is handed
// on by its fields. What a row says is its reader's question. Refused: a reader of its own for each list, with columns asked in another way.

import { reportUnused, sayHeaders } from './columns.ts';
import { isCommentLine } from './comment.ts';
import type { HeaderWords } from './fields.ts';
import {
  type ColumnMap,
  cellText,
  guessColumns,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
} from './headers.ts';
import { type ProblemSink, problemSink, type SheetProblem } from './problems.ts';

/** What a list can say: the words of its columns, what they are called in a message, and the columns that it cannot be read without. */
export interface TableKindOf<F extends string> {
  readonly words: HeaderWords<F>;
  readonly names: Readonly<Record<F, string>>;
  readonly needed: readonly F[];
}

/** How a list is to be read. */
export interface TableOptions<F extends string> {
  /** A person's choice of columns, which comes before the guess. */
  readonly columns?: ColumnMap<F>;
  readonly textProblems?: readonly SheetProblem[];
  readonly mostProblems?: number;
}

/** One row below the header, by its fields. */
export interface TableLine<F extends string> {
  /** As a spreadsheet numbers it. */
  readonly row: number;
  /** The first column of the field; empty where it has none or says nothing. */
  readonly cell: (field: F) => SheetCell;
  readonly text: (field: F) => string;
  /** Every column of the field that says something. */
  readonly texts: (field: F) => readonly string[];
  /** The header of the field's first column; null where it has none. */
  readonly header: (field: F) => string | null;
}

/** A list as it was laid out. */
export interface Table<F extends string> {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<F>[];
  /** None where a needed column is missing. */
  readonly lines: readonly TableLine<F>[];
  readonly sink: ProblemSink;
}

/** Lays a list out. Problems of header and length of rows are in the sink already. Never throws. Linear in the rows. */
export function layOut<F extends string>(
  rows: SheetRows,
  kind: TableKindOf<F>,
  options: TableOptions<F> = {},
): Table<F> {
  const guess = guessColumns(rows, kind.words, options.columns);
  const sink = problemSink(options.mostProblems ?? 1000);
  sink.addAll(options.textProblems ?? []);
  const indexes = new Map<F, number[]>();
  for (const { index, field } of guess.columns)
    if (field !== null) indexes.set(field, [...(indexes.get(field) ?? []), index]);
  const row = guess.headerRow;
  const headers = sayHeaders(guess.columns.map(({ header }) => header));
  for (const { field, header } of guess.notFound)
    sink.add('columnNotFound', { row }, { wanted: header, field: kind.names[field], headers });
  const missing = kind.needed.filter((field) => !indexes.has(field));
  for (const field of missing) sink.add('columnMissing', { row }, { wanted: kind.names[field], headers });
  for (const column of guess.columns) reportUnused(column, { guess, names: kind.names, sink });
  const lines = missing.length > 0 ? [] : linesOf(rows, { row, columns: guess.columns, indexes, sink });
  if (missing.length === 0 && lines.length === 0) sink.add('noRows', { row });
  return { headerRow: row, columns: guess.columns, lines, sink };
}

interface Laid<F extends string> {
  readonly row: number;
  readonly columns: readonly SheetColumn<F>[];
  readonly indexes: ReadonlyMap<F, readonly number[]>;
  readonly sink: ProblemSink;
}

function linesOf<F extends string>(rows: SheetRows, laid: Laid<F>): readonly TableLine<F>[] {
  const { columns, indexes, sink } = laid;
  const header = (field: F) => columns[indexes.get(field)?.[0] ?? -1]?.header ?? null;
  const lines: TableLine<F>[] = [];
  for (let at = laid.row; at < rows.length; at++) {
    const cells = rows[at] ?? [];
    const first = cells.map(cellText).find((text) => text !== '') ?? '';
    if (first === '' || isCommentLine(first) || isHeaderAgain(cells, columns)) continue;
    let found = cells.length;
    while (found > columns.length && cellText(cells[found - 1]) === '') found--;
    if (found > columns.length) sink.add('rowTooLong', { row: at + 1 }, { found, wanted: columns.length });
    const cell = (field: F) => cells[indexes.get(field)?.[0] ?? -1];
    const texts = (field: F) =>
      (indexes.get(field) ?? []).map((index) => listText(cells[index])).filter((text) => text !== '');
    lines.push({ row: at + 1, cell, text: (field) => cellText(cell(field)), texts, header });
  }
  return lines;
}

/** A cell's text; line breaks in it separate entries of a list. */
function listText(cell: SheetCell): string {
  return cellText(typeof cell === 'string' ? cell.replace(/\s*[\r\n]+\s*/g, '; ') : cell);
}

/** Lists of several printed pages repeat their header. */
function isHeaderAgain(cells: readonly SheetCell[], columns: readonly SheetColumn<string>[]): boolean {
  const named = columns.filter(({ header }) => header !== '');
  return named.length >= 2 && named.every(({ index, header }) => cellText(cells[index]) === header);
}
