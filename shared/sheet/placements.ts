// What does a placement (centroid) file place: how many of each part, on which side?
// Method: separated text as in a setup sheet, or columns aligned with spaces (split at wide gaps, else at every gap, else where the header's
// words begin); comment lines before and between are passed over. Fiducials and parts not fitted are counted as left out.

import type { Side } from '../floor/vocabulary.ts';
import { isBlankMark, isNotFittedMark, parseFlag, parseNumber, parseSide } from './cells.ts';
import { sayHeaders } from './columns.ts';
import { type PlacementField, placementHeaderWords } from './fields.ts';
import {
  type ColumnGuess,
  type ColumnMap,
  cellText,
  guessColumns,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
  scoreHeaderRow,
} from './headers.ts';
import { type ProblemSink, problemSink, type SheetProblem, sheetProblem } from './problems.ts';
import { textToRows } from './text.ts';

/** One placement of the file. Coordinates in the file's own unit, rotation in degrees; null where not stated. */
export interface Placement {
  readonly row: number;
  readonly designator: string;
  readonly part: string;
  readonly side: Side;
  readonly x: number | null;
  readonly y: number | null;
  readonly rotation: number | null;
}

/** Placements of one part, by side. */
export interface PlacementTotal {
  readonly part: string;
  readonly top: number;
  readonly bottom: number;
  /** The row of its first placement. */
  readonly firstRow: number;
}

/** What a placement file says. */
export interface PlacementReading {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<PlacementField>[];
  /** Totals in the order in which the file first names each part. */
  readonly parts: readonly PlacementTotal[];
  readonly placements: readonly Placement[];
  readonly problems: readonly SheetProblem[];
  /** Rows left out on purpose: fiducials, not fitted, without a part, doubled. Comments and blank rows do not count. */
  readonly ignored: number;
}

/** How a placement file is to be read. */
export interface PlacementOptions {
  /** A person's choice of columns, which comes before the guess. */
  readonly columns?: ColumnMap<PlacementField>;
  readonly textProblems?: readonly SheetProblem[];
  readonly mostProblems?: number;
}

// More say nothing new, and a file of another kind has only such rows.
const mostUnreadableRows = 1000;
const commentMark = /^\s*(?:#|\/\/|\*|!|;|--|==|=+$)/;
const fiducial = /^(?:fid|fd|fm|fidu|fiducial|passmarke|global ?fid|local ?fid)[ _-]?[a-z]?\d*$/i;

function splitAligned(line: string, starts: readonly number[]): readonly string[] | null {
  const wanted = starts.length;
  const wide = line.trim().split(/\t+|\s{2,}/);
  if (wide.length === wanted) return wide;
  const narrow = line.trim().match(/"[^"]*"|\S+/g) ?? [];
  if (narrow.length === wanted) return narrow.map((text) => text.replace(/^"(.*)"$/, '$1'));
  const aligned = starts.every(
    (start) => start === 0 || line.length <= start || /\s/.test(line[start - 1] ?? ' '),
  );
  if (!aligned) return null;
  return starts.map((start, at) => line.slice(start, starts[at + 1] ?? line.length).trim());
}

interface AlignedHeader {
  readonly index: number;
  readonly words: readonly string[];
  readonly starts: readonly number[];
}

/** The header of an aligned file: its words and where each begins; a comment mark before the first word is passed over. */
function findAlignedHeader(lines: readonly string[]): AlignedHeader | null {
  let best: AlignedHeader | null = null;
  let bestScore = 0;
  for (const [index, line] of lines.slice(0, 100).entries()) {
    const plain = line.replace(
      /^(\s*)(#+|\/\/|\*+|!|;)/,
      (_, before: string, mark: string) => before + ' '.repeat(mark.length),
    );
    for (const pattern of [/"[^"]*"|\S+(?: \S+)*/g, /"[^"]*"|\S+/g]) {
      const found = [...plain.matchAll(pattern)];
      const words = found.map((match) => match[0].replace(/^"(.*)"$/, '$1'));
      const score = scoreHeaderRow(words, placementHeaderWords);
      if (score <= bestScore || score < 2) continue;
      bestScore = score;
      best = { index, words, starts: found.map((match, at) => (at === 0 ? 0 : match.index)) };
    }
  }
  return best;
}

function alignedRows(text: string): { rows: SheetRows; problems: readonly SheetProblem[] } | null {
  const lines = text.replace(/\r\n?/g, '\n').split('\n');
  const header = findAlignedHeader(lines);
  if (header === null) return null;
  const problems: SheetProblem[] = [];
  const rows = lines.map((line, index) => {
    if (index === header.index) return header.words;
    if (index < header.index || line.trim() === '' || commentMark.test(line)) return [];
    const cells = splitAligned(line, header.starts);
    if (cells !== null) return cells;
    const facts = { found: line.trim().split(/\s+/).length, wanted: header.words.length };
    if (problems.length < mostUnreadableRows) {
      problems.push(sheetProblem('rowUnreadable', { row: index + 1 }, facts));
    }
    return [];
  });
  return { rows, problems };
}

function headerScore(rows: SheetRows): number {
  let best = 0;
  for (const row of rows.slice(0, 100)) {
    if (row.length > 1) best = Math.max(best, scoreHeaderRow(uncomment(row), placementHeaderWords));
  }
  return best;
}

/** A header line written as a comment ("# Designator, Part"). */
function uncomment(row: readonly SheetCell[]): readonly SheetCell[] {
  const [first, ...rest] = row;
  return typeof first === 'string' ? [first.replace(/^\s*(?:#+|\/\/|\*+|!)\s*/, ''), ...rest] : row;
}

/** Rows of a placement file's text, whichever way it is laid out. */
function placementRows(text: string): { rows: SheetRows; problems: readonly SheetProblem[] } {
  const separated = textToRows(text);
  const aligned = alignedRows(text);
  const separatedScore = headerScore(separated.rows);
  if (aligned === null || separatedScore >= headerScore(aligned.rows)) {
    return {
      rows: separated.rows.map((row, index) => (index < 100 ? uncomment(row) : row)),
      problems: separated.problems,
    };
  }
  return aligned;
}

interface Reader {
  readonly row: number;
  readonly text: (field: PlacementField) => string;
  readonly header: (field: PlacementField) => string | null;
}

function sideOf(reader: Reader, sink: ProblemSink): Side {
  const found = reader.text('side');
  const side = found === '' ? null : parseSide(found);
  if (side !== null) return side;
  const mirrored = reader.text('mirrored');
  if (found === '' && mirrored !== '') return parseFlag(mirrored) === true ? 'bottom' : 'top';
  if (reader.header('side') !== null) {
    sink.add('placementSideUnknown', { row: reader.row, column: reader.header('side') }, { found });
  }
  return 'top';
}

function isLeftOut(reader: Reader): boolean {
  const fitted = reader.text('fitted');
  const notFitted = reader.text('notFitted');
  if (parseFlag(fitted) === false || parseFlag(notFitted) === true) return true;
  const texts = [fitted, notFitted, reader.text('part'), reader.text('value')];
  if (texts.some((text) => isNotFittedMark(text))) return true;
  return [reader.text('designator'), reader.text('part'), reader.text('value')].some((text) =>
    fiducial.test(text),
  );
}

function numberOf(text: string): number | null {
  return parseNumber(text.replace(/\s*(?:mm|mils?|in|°|deg)$/i, ''), 'length');
}

function readPlacement(reader: Reader, sink: ProblemSink): Placement | null {
  if (isLeftOut(reader)) return null;
  const designator = reader.text('designator');
  const stated = reader.text('part');
  // A file without part numbers names its parts by value; so does one with a gap in the part column and a value beside it.
  const part = stated === '' || isBlankMark(stated) ? reader.text('value') : stated;
  if (part === '' || isBlankMark(part)) {
    const column = reader.header('part') ?? reader.header('value');
    sink.add('placementPartMissing', { row: reader.row, column }, { designator: designator || '(none)' });
    return null;
  }
  return {
    row: reader.row,
    designator,
    part,
    side: sideOf(reader, sink),
    x: numberOf(reader.text('x')),
    y: numberOf(reader.text('y')),
    rotation: numberOf(reader.text('rotation')),
  };
}

function totalsOf(placements: readonly Placement[]): readonly PlacementTotal[] {
  const totalByPart = new Map<string, { part: string; top: number; bottom: number; firstRow: number }>();
  for (const { part, side, row } of placements) {
    const total = totalByPart.get(part) ?? { part, top: 0, bottom: 0, firstRow: row };
    total[side]++;
    totalByPart.set(part, total);
  }
  return [...totalByPart.values()];
}

/** A designator may stand several times (one board beside the other), but not twice at the same place on one side. */
function isDoubled(placement: Placement, firstByPlace: Map<string, Placement>, sink: ProblemSink): boolean {
  const { designator, side, x, y } = placement;
  if (designator === '' || x === null || y === null) return false;
  const place = `${designator}\u0000${side}\u0000${x}\u0000${y}`;
  const first = firstByPlace.get(place);
  if (first === undefined) {
    firstByPlace.set(place, placement);
    return false;
  }
  sink.add('placementTwice', { row: placement.row }, { designator, first: first.row });
  return true;
}

function checkPlacementColumns(guess: ColumnGuess<PlacementField>, sink: ProblemSink): void {
  const row = guess.headerRow;
  const fields = new Set(guess.columns.map((column) => column.field));
  const headers = sayHeaders(guess.columns.map((column) => column.header));
  for (const { field, header } of guess.notFound) {
    sink.add('columnNotFound', { row }, { wanted: header, field, headers });
  }
  if (!fields.has('part') && !fields.has('value'))
    sink.add('columnMissing', { row }, { wanted: 'part', headers });
  if (!fields.has('designator')) sink.add('columnAbsent', { row }, { wanted: 'designator', headers });
  if (!fields.has('side') && !fields.has('mirrored')) sink.add('placementSideMissing', { row });
}

/**
 * Reads a placement file from its text, or from rows of a spreadsheet. Totals per part and side, every placement, problems by row and
 * column. A file without a side column counts as top, with a warning. Never throws. Linear in the rows.
 */
export function readPlacements(input: string | SheetRows, options: PlacementOptions = {}): PlacementReading {
  const source = typeof input === 'string' ? placementRows(input) : { rows: input, problems: [] };
  const guess = guessColumns(source.rows, placementHeaderWords, options.columns);
  const columnByField = new Map<PlacementField, SheetColumn<PlacementField>>();
  for (const column of guess.columns) if (column.field !== null) columnByField.set(column.field, column);
  const header = (field: PlacementField) => columnByField.get(field)?.header ?? null;
  const sink = problemSink(options.mostProblems ?? 1000);
  sink.addAll([...(options.textProblems ?? []), ...source.problems]);
  checkPlacementColumns(guess, sink);
  const canRead = columnByField.has('part') || columnByField.has('value');
  const placements: Placement[] = [];
  const firstByPlace = new Map<string, Placement>();
  let ignored = 0;
  for (let index = guess.headerRow; canRead && index < source.rows.length; index++) {
    const row = source.rows[index] ?? [];
    const first = cellText(row.find((cell) => cellText(cell) !== ''));
    if (first === '' || commentMark.test(first)) continue;
    const text = (field: PlacementField) => cellText(row[columnByField.get(field)?.index ?? -1]);
    const placement = readPlacement({ row: index + 1, text, header }, sink);
    if (placement === null || isDoubled(placement, firstByPlace, sink)) ignored++;
    else placements.push(placement);
  }
  if (canRead && placements.length + ignored === 0) sink.add('noRows', { row: guess.headerRow });
  return {
    headerRow: guess.headerRow,
    columns: guess.columns,
    parts: totalsOf(placements),
    placements,
    problems: sink.list(),
    ignored,
  };
}
