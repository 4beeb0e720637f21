// What does a placement (centroid) file place: how many of each part, on which side?
// Method: separated text as in a setup sheet, or columns aligned with blanks (placement-rows.ts); columns by header and look
// (placement-columns.ts). Fiducials, test points, holes and parts not fitted are listed as left out, never counted.

import type { Side } from '../floor/vocabulary.ts';
import { parseSide } from './cells.ts';
import { parseMeasure } from './column-look.ts';
import { sayHeaders } from './columns.ts';
import { demoteGeneric } from './columns-by-look.ts';
import { firstText, isCommentLine, isTotalText, uncommentHeader } from './comment.ts';
import { looksLikeDesignator } from './designators.ts';
import { type PlacementField, placementHeaderWords } from './fields.ts';
import { joinHeaderRows } from './header-pair.ts';
import {
  type ColumnMap,
  cellText,
  matchHeader,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
} from './headers.ts';
import { blankMeansNo } from './not-placed.ts';
import { checkPackages, dropDoubled } from './placement-checks.ts';
import { guessPlacementColumns, type PlacementGuess } from './placement-columns.ts';
import { type LeftOutReason, type PlacementRowReader, readPlacementRow, unitOf } from './placement-row.ts';
import { type PlacementText, placementRows } from './placement-rows.ts';
import { type ProblemSink, problemSink, type SheetProblem } from './problems.ts';

/** One placement of the file. Coordinates in mm where the file says its unit, else in its own; rotation in degrees; null where not stated. */
export interface Placement {
  readonly row: number;
  readonly designator: string;
  /** The part number, or the value where the file has none; '' only where a bill of materials is to name it. */
  readonly part: string;
  /** Whether `part` is a value (or a library's name) rather than a part number. */
  readonly isNamedByValue: boolean;
  /** '' = not stated. */
  readonly value: string;
  readonly package: string;
  readonly side: Side;
  readonly x: number | null;
  readonly y: number | null;
  readonly rotation: number | null;
}

/** A row that is not placed, and why. */
export interface LeftOut {
  readonly placement: Placement;
  readonly reason: LeftOutReason;
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
  /** 0 = the file has no header. */
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<PlacementField>[];
  /** Totals in the order in which the file first names each part. */
  readonly parts: readonly PlacementTotal[];
  readonly placements: readonly Placement[];
  /** Fiducials, test points, holes, not fitted, put through holes, without a part, doubled. */
  readonly leftOut: readonly LeftOut[];
  /** Boards that the file itself holds side by side: every designator stands so many times. */
  readonly boards: number;
  /** Header of the designators' column, for problems that a join finds. */
  readonly designatorHeader: string | null;
  readonly problems: readonly SheetProblem[];
  /** How many rows were left out on purpose. Comments, totals and blank rows do not count. */
  readonly ignored: number;
}

/** How a placement file is to be read. */
export interface PlacementOptions {
  /** A person's choice of columns, which comes before the guess. */
  readonly columns?: ColumnMap<PlacementField>;
  readonly textProblems?: readonly SheetProblem[];
  readonly mostProblems?: number;
  /** Whether a bill of materials names the parts, so that the file need not. */
  readonly hasBill?: boolean;
  /** The file's name, which says the side where nothing in the file does. */
  readonly fileName?: string;
}

/** Totals per part, in the order of their first placement. */
export function totalsOf(placements: readonly Placement[]): readonly PlacementTotal[] {
  const totalByPart = new Map<string, { part: string; top: number; bottom: number; firstRow: number }>();
  for (const { part, side, row } of placements) {
    const total = totalByPart.get(part) ?? { part, top: 0, bottom: 0, firstRow: row };
    total[side]++;
    totalByPart.set(part, total);
  }
  return [...totalByPart.values()];
}

function checkPlacementColumns(guess: PlacementGuess, hasBill: boolean, sink: ProblemSink): void {
  const row = guess.isHeaderless ? null : guess.headerRow;
  const fields = new Set(guess.columns.map((column) => column.field));
  const headers = sayHeaders(guess.columns.map((column) => column.header));
  for (const { field, header } of guess.notFound) {
    sink.add('columnNotFound', { row }, { wanted: header, field, headers });
  }
  if (guess.isHeaderless) {
    const said = guess.columns.flatMap(({ header, field }) => (field === null ? [] : [`${header} ${field}`]));
    sink.add('headerGuessed', { row }, { wanted: said.join(', ') });
  } else {
    for (const { index, field } of guess.byLook) {
      const column = guess.columns[index]?.header ?? '';
      sink.add('columnByLook', { row, column }, { found: column, field });
    }
  }
  if (!hasBill && !fields.has('part') && !fields.has('value') && !fields.has('device')) {
    const named = guess.columns.find(({ header, field }) => {
      const { fields: meant } = matchHeader(header, placementHeaderWords);
      return meant.includes('part') && (field === null || field === 'designator') && !meant.includes('x');
    });
    if (named !== undefined && guess.looks[named.index]?.single === 1)
      sink.add('partsAreDesignators', { row, column: named.header }, { found: named.header });
    else sink.add('columnMissing', { row }, { wanted: 'part', headers });
  }
  if (!fields.has('designator')) {
    if (hasBill) sink.add('columnMissing', { row }, { wanted: 'designator', headers });
    else sink.add('columnAbsent', { row }, { wanted: 'designator', headers });
  }
}

const bottomName =
  /(?:^|[^a-z])(?:bottom|bot|back|b_?cu|unten|unterseite|rueckseite|inferior|abajo|dessous)(?:[^a-z]|$)|\.mnb$/i;
const topName = /(?:^|[^a-z])(?:top|front|f_?cu|oben|oberseite|superior|arriba|dessus)(?:[^a-z]|$)|\.mnt$/i;

/** The side of rows that name none: as a line above the header says, or the file's name; else top, with a warning. */
function sideOfFile(
  guess: PlacementGuess,
  rows: SheetRows,
  lines: readonly string[],
  options: PlacementOptions,
  sink: ProblemSink,
): Side {
  const fields = new Set(guess.columns.map((column) => column.field));
  if (fields.has('side') || fields.has('mirrored')) return 'top';
  for (const line of lines) {
    const stated = /^\W*(?:board |panel |pcb )?(?:side|layer|seite|lado|cara|face)\s*[:=]\s*(.+?)\s*$/i.exec(
      line,
    )?.[1];
    const side = stated === undefined ? null : parseSide(stated);
    if (side !== null) return side;
  }
  const rotation = guess.columns.find(({ field }) => field === 'rotation');
  const angles = rotation === undefined ? [] : (guess.looks[rotation.index]?.entries ?? []);
  if (angles.length > 0 && angles.every((text) => /^m?r\d/i.test(text))) return 'top';
  if (rows.slice(guess.headerRow).some((row) => sectionSide(row) !== null)) return 'top';
  const place = { row: guess.isHeaderless ? null : guess.headerRow };
  const name = (options.fileName ?? '').replace(/^.*[/\\]/, '');
  const [isBottom, isTop] = [bottomName.test(name), topName.test(name)];
  if (isBottom !== isTop) {
    const side = isBottom ? 'bottom' : 'top';
    sink.add('placementSideFromName', place, { found: name, side });
    return side;
  }
  sink.add('placementSideMissing', place);
  return 'top';
}

/** mm in one unit of the coordinates: as the headers of x and y say, or a line above them. */
function unitOfFile(guess: PlacementGuess, lines: readonly string[]): number | null {
  const x = guess.columns.find(({ field }) => field === 'x' || field === 'place');
  const stated =
    x === undefined ? null : unitOf(x.header.replace(/^[^([{]*$/, (all) => all.replace(/^\w+[\s_-]?/, '')));
  if (stated !== null) return stated;
  for (const line of lines) {
    const said =
      /u?units?(?:\s+used)?\s*(?:are|is|[:=])\s*(.+)$/i.exec(line)?.[1] ??
      /\bx\s*,\s*y\s+in\s+(\w+)/i.exec(line)?.[1];
    const unit = said === undefined ? null : unitOf(said);
    if (unit !== null) return unit;
  }
  return null;
}

interface Frame {
  readonly guess: PlacementGuess;
  readonly indexByField: ReadonlyMap<PlacementField, number>;
  readonly side: Side;
  readonly unitMm: number | null;
  readonly blankIsNo: boolean;
}

const plainEntry = /^[A-Za-z]{1,4}\d{1,4}$/;

/** Whether a row is an entry: not a comment, a total, the header again, a row of units, or blank where an entry has its names. */
function isEntry(row: readonly SheetCell[], frame: Frame, text: (field: PlacementField) => string): boolean {
  const designator = text('designator');
  // Nearly every row of a list is one of these: a look costs less than all the questions.
  if (plainEntry.test(designator)) return true;
  const first = firstText(row);
  if (sectionSide(row) !== null) return false;
  if (first === '' || (isCommentLine(first) && !looksLikeDesignator(designator))) return false;
  if (isTotalText(first) && !looksLikeDesignator(designator)) return false;
  const { columns } = frame.guess;
  const repeated = columns.filter(
    ({ index, header }) => header !== '' && cellText(row[index]) === header,
  ).length;
  if (repeated >= 2 && repeated >= columns.length * 0.6) return false;
  if (designator === '' && text('part') === '' && text('value') === '') return false;
  const isPlaced =
    !frame.indexByField.has('x') || parseMeasure(text('x')) !== null || parseMeasure(text('y')) !== null;
  // A line of words under the table, or a second table's title, is no placement.
  return isPlaced || looksLikeDesignator(designator);
}

/** The side that a heading between the rows names ("BOTTOM SIDE", "Side: top"); null for any other row. */
function sectionSide(row: readonly SheetCell[]): Side | null {
  const filled = row.map(cellText).filter((text) => text !== '');
  const [only = ''] = filled;
  const bare = only
    .replace(/^\W*(?:(?:board |panel |pcb )?(?:side|layer|seite|lado|cara|face)\s*[:=]\s*)?/i, '')
    .replace(/\W+$/, '');
  return filled.length === 1 && bare.length > 1 ? parseSide(bare) : null;
}

function readRows(rows: SheetRows, frame: Frame, options: PlacementOptions, sink: ProblemSink) {
  const placements: Placement[] = [];
  const leftOut: LeftOut[] = [];
  const { guess, indexByField } = frame;
  let { side } = frame;
  const header = (field: PlacementField) => guess.columns[indexByField.get(field) ?? -1]?.header ?? null;
  for (let index = guess.headerRow; index < rows.length; index++) {
    const row = rows[index] ?? [];
    if (row.length === 0) continue;
    const text = (field: PlacementField) => cellText(row[indexByField.get(field) ?? -1]);
    if (!isEntry(row, frame, text)) {
      side = sectionSide(row) ?? side;
      continue;
    }
    checkRowLength(row, index + 1, guess, sink);
    const reader: PlacementRowReader = {
      row: index + 1,
      text,
      header,
      blankIsNo: frame.blankIsNo,
      side,
      unitMm: frame.unitMm,
    };
    const { placement, reason } = readPlacementRow(reader, sink, options.hasBill !== true);
    if (reason === null) placements.push(placement);
    else leftOut.push({ placement, reason });
  }
  return { placements, leftOut };
}

function checkRowLength(
  row: readonly SheetCell[],
  number: number,
  guess: PlacementGuess,
  sink: ProblemSink,
): void {
  if (guess.isHeaderless || row.length <= guess.columns.length) return;
  let found = row.length;
  while (found > guess.columns.length && cellText(row[found - 1]) === '') found--;
  if (found > guess.columns.length)
    sink.add('rowTooLong', { row: number }, { found, wanted: guess.columns.length });
}

/** Rows to read, and the lines about the header row that may say a side or a unit. */
function sourceOf(input: string | PlacementText | SheetRows) {
  if (Array.isArray(input)) {
    const given: SheetRows = input;
    return {
      rows: joinHeaderRows(uncommentHeader(given, placementHeaderWords), placementHeaderWords),
      problems: [],
      linesAbove: (headerRow: number) =>
        given.slice(0, Math.max(0, headerRow - 1)).map((row) => row.map(cellText).join(' ')),
    };
  }
  const { text, rows, problems } =
    typeof input === 'string' ? placementRows(input) : (input as PlacementText); // no rows
  return {
    rows,
    problems,
    linesAbove: (headerRow: number) =>
      text
        .slice(0, 8000)
        .split(/\r\n?|\n/)
        .slice(0, Math.max(30, headerRow + 5)),
  };
}

/**
 * Reads a placement file from its text, as it is or split (`placementRows`), or from rows of a spreadsheet. Totals per part and side, every placement, problems by row and
 * column. A file that does not say the side counts as top, with a warning. Never throws. Linear in the rows.
 */
export function readPlacements(
  input: string | PlacementText | SheetRows,
  options: PlacementOptions = {},
): PlacementReading {
  const source = sourceOf(input);
  const isChosen = options.columns?.part !== undefined;
  const guessed = guessPlacementColumns(source.rows, options.columns);
  const { guess, header: generic } = demoteGeneric(source.rows, guessed, isChosen);
  const indexByField = new Map<PlacementField, number>();
  for (const { index, field } of guess.columns)
    if (field !== null && !indexByField.has(field)) indexByField.set(field, index);
  const sink = problemSink(options.mostProblems ?? 1000);
  sink.addAll([...(options.textProblems ?? []), ...source.problems]);
  if (generic !== null)
    sink.add('genericParts', { row: guess.headerRow, column: generic }, { found: generic });
  checkPlacementColumns(guess, options.hasBill === true, sink);
  const canRead = ['part', 'value', 'device', ...(options.hasBill ? ['designator'] : [])].some(
    (field) => indexByField.has(field as PlacementField), // names of fields
  );
  const lines = source.linesAbove(guess.headerRow);
  const fitted = indexByField.get('fitted');
  const frame: Frame = {
    guess,
    indexByField,
    side: sideOfFile(guess, source.rows, lines, options, sink),
    unitMm: unitOfFile(guess, lines),
    blankIsNo: fitted !== undefined && blankMeansNo(columnOf(source.rows, guess, fitted)),
  };
  const read = canRead ? readRows(source.rows, frame, options, sink) : { placements: [], leftOut: [] };
  const headerOf = (field: PlacementField) => guess.columns[indexByField.get(field) ?? -1]?.header ?? null;
  const single = dropDoubled(read.placements, headerOf('designator'), sink);
  const packages = headerOf('package');
  const named =
    options.hasBill === true ? single.placements : checkPackages(single.placements, packages, sink);
  const leftOut = [
    ...read.leftOut,
    ...single.doubled.map((placement) => ({ placement, reason: 'doubled' as const })),
  ];
  if (canRead && named.length + leftOut.length === 0) sink.add('noRows', { row: guess.headerRow });
  return {
    headerRow: guess.headerRow,
    columns: guess.columns,
    parts: totalsOf(named),
    placements: named,
    leftOut,
    boards: single.boards,
    designatorHeader: headerOf('designator'),
    problems: sink.list(),
    ignored: leftOut.length,
  };
}

/** The cells of a column in rows that name a designator. */
function columnOf(rows: SheetRows, guess: PlacementGuess, index: number): readonly string[] {
  const place = guess.columns.find(({ field }) => field === 'designator')?.index ?? index;
  return rows
    .slice(guess.headerRow)
    .filter((row) => cellText(row[place]) !== '')
    .map((row) => cellText(row[index]));
}
