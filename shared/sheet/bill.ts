// What does a bill of materials say: which part stands at which designators, which makers are approved, what is not fitted?
// Method: columns by header and look; one row a part with a list of designators, or one row a designator; a row that names only more
// designators or more makers goes on with the row above, as merged cells and wrapped lists do. Every row is a line, a part of one, left out for a
// reason, or a problem.

import { checkLines, checkQuantities, splitByMark } from './bill-checks.ts';
import { type BillField, billFieldNames, billHeaderWords, manyBillFields } from './bill-fields.ts';
import { type BillLine, type BillRowReader, readBillRow } from './bill-row.ts';
import { isBlankMark } from './cells.ts';
import { lookAt } from './column-look.ts';
import { sayHeaders } from './columns.ts';
import { demoteGeneric, guessByLook, type LookedGuess } from './columns-by-look.ts';
import { firstText, isCommentLine, isTotalText, uncommentHeader } from './comment.ts';
import { joinHeaderRows } from './header-pair.ts';
import {
  type ColumnMap,
  cellText,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
  scoreHeaderRow,
} from './headers.ts';
import { blankMeansNo, carriesNotFittedMark, parseFitted, parseNotFitted } from './not-placed.ts';
import { type ProblemSink, problemSink, type SheetProblem } from './problems.ts';
import { looksLikeVariant, readVariants, type VariantColumn, type Variants } from './variants.ts';

/** What a bill says. */
export interface BillReading {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<BillField>[];
  /** In the order of the bill. A designator stands in one line only. */
  readonly lines: readonly BillLine[];
  /** Names of the variants that the bill holds. */
  readonly variants: readonly string[];
  /** Headers of the packages' and the designators' column, for problems that the join finds. */
  readonly packageHeader: string | null;
  readonly designatorHeader: string | null;
  readonly problems: readonly SheetProblem[];
  /** Rows left out on purpose: totals, headings, assemblies, the header again. */
  readonly ignored: number;
}

/** How a bill is to be read. */
export interface BillOptions {
  /** A person's choice of columns, which comes before the guess. */
  readonly columns?: ColumnMap<BillField>;
  readonly textProblems?: readonly SheetProblem[];
  /** The variant that is built, by its name in the bill. */
  readonly variant?: string;
  readonly mostProblems?: number;
}

interface Frame {
  readonly guess: LookedGuess<BillField>;
  readonly indexesByField: ReadonlyMap<BillField, readonly number[]>;
  readonly header: (field: BillField) => string | null;
  readonly blankIsNo: boolean;
  readonly isFilledDown: boolean;
  readonly variants: Variants | null;
  readonly variantHeader: string | null;
}

const clearlyAnotherHeader = 2.9;

function checkBillColumns(guess: LookedGuess<BillField>, sink: ProblemSink): boolean {
  const row = guess.headerRow;
  const fields = new Set(guess.columns.map(({ field }) => field));
  const headers = sayHeaders(guess.columns.map(({ header }) => header));
  for (const { field, header } of guess.notFound) {
    sink.add('columnNotFound', { row }, { wanted: header, field: billFieldNames[field], headers });
  }
  for (const { index } of guess.byLook) {
    const column = guess.columns[index]?.header ?? '';
    sink.add('columnByLook', { row, column }, { found: column, field: billFieldNames.designators });
  }
  const names = (['part', 'supplierParts', 'orderNumbers', 'value', 'device', 'description'] as const).some(
    (field) => fields.has(field),
  );
  if (!names) sink.add('columnMissing', { row }, { wanted: billFieldNames.part, headers });
  if (!fields.has('designators'))
    sink.add('columnMissing', { row }, { wanted: billFieldNames.designators, headers });
  return names && fields.has('designators');
}

function frameOf(
  rows: SheetRows,
  guess: LookedGuess<BillField>,
  options: BillOptions,
  sink: ProblemSink,
): Frame {
  const indexesByField = new Map<BillField, number[]>();
  for (const { index, field } of guess.columns) {
    if (field !== null) indexesByField.set(field, [...(indexesByField.get(field) ?? []), index]);
  }
  const header = (field: BillField) => guess.columns[indexesByField.get(field)?.[0] ?? -1]?.header ?? null;
  const places = indexesByField.get('designators')?.[0] ?? -1;
  const fitted = indexesByField.get('fitted')?.[0];
  const cells =
    fitted === undefined ? [] : cellsBeside(rows, guess.headerRow, { place: places, index: fitted });
  const blankIsNo = fitted !== undefined && blankMeansNo(cells);
  if (blankIsNo) {
    const facts = { found: header('fitted') ?? '', count: cells.filter((cell) => cell === '').length };
    sink.add('blankNotFitted', { row: guess.headerRow, column: header('fitted') }, facts);
  }
  const columns = variantColumns(rows, guess);
  const variants = readVariants(columns, options.variant);
  const isKnown = variants !== 'not-found' && (variants !== null || options.variant === undefined);
  if (!isKnown) {
    const wanted = columns.map((column) => column.header).join(', ') || '(none)';
    sink.add('variantNotFound', { row: guess.headerRow }, { found: options.variant ?? '', wanted });
  }
  return {
    guess,
    indexesByField,
    header,
    blankIsNo,
    isFilledDown: isFilledDown(rows, guess),
    variants: variants === 'not-found' ? null : variants,
    variantHeader: columns[0]?.header ?? null,
  };
}

/** Columns of variants: those that say so, and those of an unknown header that hold nothing but crosses and marks. */
function variantColumns(rows: SheetRows, guess: LookedGuess<BillField>): readonly VariantColumn[] {
  return guess.columns.flatMap(({ index, header, field }) => {
    if (field !== 'variants' && (field !== null || header === '')) return [];
    const look = guess.looks[index] ?? lookAt(rows, guess.headerRow, index);
    const isOne = field === 'variants' ? look.entries.length > 0 : looksLikeVariant(look);
    return isOne ? [{ index, header, look }] : [];
  });
}

function cellsBeside(
  rows: SheetRows,
  from: number,
  at: { readonly place: number; readonly index: number },
): readonly string[] {
  return rows.slice(from).flatMap((row) => (cellText(row[at.place]) === '' ? [] : [cellText(row[at.index])]));
}

/** Why a row is no line of its own; null = it is one. */
function isLeftOut(row: readonly SheetCell[], frame: Frame, reader: BillRowReader): boolean {
  const first = firstText(row);
  const names = reader.text('designators');
  if (first === '' || isCommentLine(first)) return true;
  if (names === '' && row.some((cell) => isTotalText(cellText(cell)))) return true;
  if (names !== frame.header('designators')) return false;
  const { columns } = frame.guess;
  const repeated = columns.filter(
    ({ index, header }) => header !== '' && cellText(row[index]) === header,
  ).length;
  return repeated >= 2 && repeated >= columns.filter(({ header }) => header !== '').length * 0.6;
}

/**
 * Whether a row only goes on with the one above: more makers' numbers alone; or more designators alone, where the quantity above counts more than
 * it names, or where the bill leaves the part empty below its first row throughout.
 */
function goesOn(reader: BillRowReader, above: BillLine, frame: Frame): boolean {
  const isBare = (['part', 'value', 'quantity'] as const).every((field) => reader.text(field) === '');
  if (!isBare) return false;
  if (reader.text('designators') === '') return reader.texts('supplierParts').some((text) => text !== '');
  if (reader.text('item') !== '') return false;
  return frame.isFilledDown || (above.quantity !== null && above.quantity > above.designators.length);
}

/** Whether the bill has no quantities and leaves the part empty below its first row, as merged cells come out in text. */
function isFilledDown(rows: SheetRows, guess: LookedGuess<BillField>): boolean {
  const index = (field: BillField) => guess.columns.find((column) => column.field === field)?.index ?? -1;
  const places = index('designators');
  if (places < 0 || index('quantity') >= 0) return false;
  const names = (['part', 'value', 'supplierParts', 'description'] as const).map(index);
  const placed = rows.slice(guess.headerRow).filter((row) => cellText(row[places]) !== '');
  const bare = placed.filter((row) => names.every((at) => cellText(row[at]) === ''));
  return bare.length >= 2 && bare.length >= placed.length * 0.25;
}

function joinLines(above: BillLine, more: BillLine): BillLine {
  return {
    ...above,
    designators: [...above.designators, ...more.designators],
    supplierParts: [...new Set([...above.supplierParts, ...more.supplierParts])],
    namedBy: above.part === '' ? more.namedBy : above.namedBy,
    part: above.part || more.part,
  };
}

/** Whether a row without designators is an assembly with its parts below it: the next row stands a level deeper. */
function isAssembly(rows: SheetRows, at: number, frame: Frame): boolean {
  const index = frame.indexesByField.get('level')?.[0];
  if (index === undefined) return false;
  const depth = (row: readonly SheetCell[] | undefined) =>
    Number(/\d+/.exec(cellText(row?.[index]))?.[0] ?? -1);
  return depth(rows[at + 1]) > depth(rows[at]);
}

function readLines(rows: SheetRows, frame: Frame, sink: ProblemSink) {
  const lines: BillLine[] = [];
  let ignored = 0;
  let isUnderNotFitted = false;
  for (let at = frame.guess.headerRow; at < rows.length; at++) {
    const row = rows[at] ?? [];
    const filled = row.filter((cell) => cellText(cell) !== '').length;
    if (filled === 0) continue;
    const reader = readerOf(row, at + 1, frame, isUnderNotFitted);
    if (isLeftOut(row, frame, reader)) {
      ignored++;
      continue;
    }
    if (
      filled > 2 &&
      /^\D+$/.test(reader.text('designators')) &&
      scoreHeaderRow(row, billHeaderWords) >= clearlyAnotherHeader
    ) {
      sink.add('secondTable', { row: at + 1 }, { headers: sayHeaders(row.map(cellText)) });
      break;
    }
    checkLength(row, at + 1, frame, sink);
    const line = lineOf(row, reader, frame, sink);
    const above = lines.at(-1);
    if (above !== undefined && goesOn(reader, above, frame)) {
      lines[lines.length - 1] = joinLines(above, line);
      continue;
    }
    if (line.designators.length === 0) {
      ignored++;
      // A heading over the rows that follow.
      if (filled === 1) isUnderNotFitted = carriesNotFittedMark(firstText(row));
      else if (line.part !== '' && line.isFitted && !isAssembly(rows, at, frame))
        sink.add(
          'billRowWithoutDesignators',
          { row: at + 1, column: frame.header('designators') },
          { part: line.part },
        );
      continue;
    }
    lines.push(...splitByMark(line, reader, frame, sink));
  }
  return { lines, ignored };
}

function readerOf(
  row: readonly SheetCell[],
  number: number,
  frame: Frame,
  isUnderNotFitted: boolean,
): BillRowReader {
  const texts = (field: BillField) =>
    (frame.indexesByField.get(field) ?? []).map((index) => cellAt(row, index));
  return {
    row: number,
    text: (field) => cellAt(row, frame.indexesByField.get(field)?.[0] ?? -1),
    texts,
    header: frame.header,
    blankIsNo: frame.blankIsNo,
    isUnderNotFitted,
  };
}

/** A cell's text; line breaks in it separate entries of a list. */
function cellAt(row: readonly SheetCell[], index: number): string {
  const cell = row[index];
  return cellText(
    typeof cell === 'string' && /[\r\n]/.test(cell) ? cell.replace(/\s*[\r\n]+\s*/g, '; ') : cell,
  );
}

function checkLength(row: readonly SheetCell[], number: number, frame: Frame, sink: ProblemSink): void {
  const wanted = frame.guess.columns.length;
  let found = row.length;
  while (found > wanted && cellText(row[found - 1]) === '') found--;
  if (found > wanted) sink.add('rowTooLong', { row: number }, { found, wanted });
}

function lineOf(row: readonly SheetCell[], reader: BillRowReader, frame: Frame, sink: ProblemSink): BillLine {
  const line = readBillRow(reader);
  const quantity = reader.text('quantity');
  if (quantity !== '' && line.quantity === null && line.isFitted && line.designators.length > 0)
    sink.add(
      'quantityUnreadable',
      { row: reader.row, column: frame.header('quantity') },
      { found: quantity },
    );
  const flags = [
    { field: 'fitted', parse: parseFitted, taken: 'yes' },
    { field: 'notFitted', parse: parseNotFitted, taken: 'no' },
  ] as const;
  for (const { field, parse, taken } of flags) {
    const found = reader.text(field);
    if (found !== '' && !isBlankMark(found) && parse(found) === null && line.designators.length > 0)
      sink.add('flagUnreadable', { row: reader.row, column: frame.header(field) }, { found, taken });
  }
  const built = frame.variants?.isFitted((index) => cellAt(row, index)) ?? true;
  if (built === 'open' && line.designators.length > 0 && line.isFitted) {
    const wanted = frame.variants?.names.join(', ') ?? '';
    sink.add('variantOpen', { row: reader.row, column: frame.variantHeader }, { wanted });
  }
  return built === false ? { ...line, isFitted: false } : line;
}

/**
 * Reads a bill of materials from its rows (`textToRows`, or a spreadsheet reader outside shared/). Lines with their designators, problems by row and column. Never
 * throws. Linear in the rows.
 */
export function readBill(given: SheetRows, options: BillOptions = {}): BillReading {
  const rows = joinHeaderRows(uncommentHeader(given, billHeaderWords), billHeaderWords);
  const guessed = guessByLook(rows, billHeaderWords, {
    place: 'designators',
    map: options.columns ?? {},
    many: manyBillFields,
  });
  const { guess, header: generic } = demoteGeneric(rows, guessed, options.columns?.part !== undefined);
  const sink = problemSink(options.mostProblems ?? 1000);
  sink.addAll(options.textProblems ?? []);
  if (generic !== null)
    sink.add('genericParts', { row: guess.headerRow, column: generic }, { found: generic });
  const canRead = checkBillColumns(guess, sink);
  const frame = frameOf(rows, guess, options, sink);
  const read = canRead ? readLines(rows, frame, sink) : { lines: [], ignored: 0 };
  checkQuantities(read.lines, frame, sink);
  const lines = checkLines(read.lines, frame, sink);
  if (canRead && lines.length === 0) sink.add('noRows', { row: guess.headerRow });
  return {
    headerRow: guess.headerRow,
    columns: guess.columns,
    lines,
    variants: frame.variants?.names ?? [],
    packageHeader: frame.header('package'),
    designatorHeader: frame.header('designators'),
    problems: sink.list(),
    ignored: read.ignored,
  };
}
