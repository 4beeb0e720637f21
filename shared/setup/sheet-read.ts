// What does a setup sheet want on each slot, and what is wrong with it?
// Method: find the header, read row by row with small cell parsers, then check across rows and against the placement file. Every row is
// either a slot, ignored with a reason, or a problem: nothing is left out in silence. Nothing here takes a sheet in; the caller
// does so once no problem is an error.

import {
  isBlankMark,
  isNotFittedMark,
  isNotTape,
  parseCount,
  parseDesignators,
  parseFlag,
  parseLengthMm,
  parseList,
  parseMsl,
  parseSide,
  parseTapePair,
} from './sheet-cells.ts';
import { checkSheetSlots, type SheetCheckOptions } from './sheet-checks.ts';
import { manyColumnFields, type SheetField, sheetFieldNames, sheetHeaderWords } from './sheet-fields.ts';
import {
  type ColumnGuess,
  type ColumnMap,
  cellText,
  guessColumns,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
  scoreHeaderRow,
} from './sheet-headers.ts';
import type { PlacementReading } from './sheet-placements.ts';
import {
  listSheetProblems,
  type SheetProblem,
  type SheetProblemCode,
  sheetProblem,
} from './sheet-problems.ts';
import { type IgnoredReason, type IgnoredRow, joinSlotAddress, type SheetSlot } from './sheet-slot.ts';
import { isTapeWidth, listedPitchesMm, tapeWidthsMm } from './sheet-tapes.ts';
import { joinUsage, type PlacementScope } from './sheet-usage.ts';

/** What a sheet says: columns, slots, problems, and the rows left out. */
export interface SheetReading {
  /** The header's row, 1 = first. */
  readonly headerRow: number;
  /** Every column of the header and what it is taken for; to be shown, corrected and remembered by header. */
  readonly columns: readonly SheetColumn<SheetField>[];
  /** The slots in the order of the sheet; of a slot given twice only the first. */
  readonly slots: readonly SheetSlot[];
  /** In order of rows; the sheet is not to be taken in while one is an error. */
  readonly problems: readonly SheetProblem[];
  /** How many rows were left out on purpose (blank rows do not count). */
  readonly ignored: number;
  readonly ignoredRows: readonly IgnoredRow[];
  /** Which placements the usage was compared with; null without a placement file. */
  readonly placementScope: PlacementScope | null;
}

/** How a sheet is to be read. */
export interface SheetOptions extends SheetCheckOptions {
  /** A person's choice of columns, which comes before the guess. */
  readonly columns?: ColumnMap<SheetField>;
  /** The placement file that supplies or confirms placements per panel. */
  readonly placements?: PlacementReading;
  /** Which side of the placement file counts; found from the sheet where it is not given. */
  readonly side?: PlacementScope;
  /** Boards in one panel, where the placement file describes one board; default 1. */
  readonly boardsPerPanel?: number;
  /** Problems found while the rows were made (`textToRows`), to be listed with the others. */
  readonly textProblems?: readonly SheetProblem[];
  /** The most problems to list; default 1000. */
  readonly mostProblems?: number;
}

/** Everything one row needs: where the columns are, and where problems go. */
interface RowReader {
  readonly row: number;
  readonly cell: (field: SheetField) => SheetCell;
  readonly text: (field: SheetField) => string;
  readonly list: (field: SheetField) => readonly string[];
  readonly has: (field: SheetField) => boolean;
  readonly report: (
    code: SheetProblemCode,
    field: SheetField | null,
    facts?: Readonly<Record<string, string | number>>,
  ) => void;
}

function readUsage(reader: RowReader, designators: readonly string[], supplied: boolean): number | null {
  const found = reader.text('perPanel');
  if (found === '' || isBlankMark(found)) {
    if (supplied) return null;
    if (designators.length > 0) {
      reader.report('usageFromDesignators', 'designators', { count: designators.length });
      return designators.length;
    }
    if (reader.has('perPanel')) reader.report('usageMissing', 'perPanel');
    return null;
  }
  const count = parseCount(reader.cell('perPanel'));
  if (count === null || count < 0) {
    reader.report('usageUnreadable', 'perPanel', { found });
    return null;
  }
  if (count === 0) reader.report('usageZero', 'perPanel');
  else if (designators.length > 0 && designators.length !== count) {
    reader.report('designatorsDisagree', 'designators', { found: designators.length, wanted: count });
  }
  return count;
}

function readWidth(reader: RowReader): number | null {
  const found = reader.text('tapeWidth');
  if (found === '' || isBlankMark(found)) {
    if (reader.has('tapeWidth')) reader.report('widthMissing', 'tapeWidth');
    return null;
  }
  if (isNotTape(found)) {
    reader.report('notTape', 'tapeWidth', { found });
    return null;
  }
  const pair = reader.has('pitch') ? null : parseTapePair(reader.cell('tapeWidth'));
  const width = pair?.widthMm ?? parseLengthMm(reader.cell('tapeWidth'));
  if (width === null) reader.report('widthUnreadable', 'tapeWidth', { found });
  else if (isTapeWidth(width)) return width;
  else reader.report('widthUnknown', 'tapeWidth', { found: width, wanted: tapeWidthsMm.join(', ') });
  return null;
}

function readPitch(reader: RowReader, widthMm: number | null): number | null {
  const found = reader.text('pitch');
  const field = reader.has('pitch') ? 'pitch' : 'tapeWidth';
  const pitch = reader.has('pitch')
    ? parseLengthMm(reader.cell('pitch'))
    : (parseTapePair(reader.cell('tapeWidth'))?.pitchMm ?? null);
  if (reader.has('pitch') && (found === '' || isBlankMark(found))) {
    if (!isNotTape(reader.text('tapeWidth'))) reader.report('pitchMissing', 'pitch');
    return null;
  }
  if (pitch === null || pitch <= 0) {
    if (reader.has('pitch')) reader.report('pitchUnreadable', 'pitch', { found });
    return null;
  }
  if (widthMm !== null) {
    const wanted = listedPitchesMm(widthMm);
    if (!wanted.includes(pitch)) {
      reader.report('pitchUnusual', field, { found: pitch, width: widthMm, wanted: wanted.join(', ') });
    }
  }
  return pitch;
}

/** Reads an optional cell: null where it is empty, and where it is not understood, which is reported under `code`. */
function readOptional<T>(
  reader: RowReader,
  field: SheetField,
  options: { readonly parse: (text: string, cell: SheetCell) => T | null; readonly code: SheetProblemCode },
): T | null {
  const found = reader.text(field);
  if (found === '' || isBlankMark(found)) return null;
  const value = options.parse(found, reader.cell(field));
  if (value === null) reader.report(options.code, field, { found, taken: 'no' });
  return value;
}

function positiveLength(_: string, cell: SheetCell): number | null {
  const length = parseLengthMm(cell);
  return length !== null && length > 0 ? length : null;
}

function positionCount(_: string, cell: SheetCell): number | null {
  const count = parseCount(cell);
  return count !== null && count >= 1 && count <= 60 ? count : null;
}

function readAlternates(reader: RowReader, part: string): readonly string[] {
  const listed = reader.list('alternates');
  if (listed.includes(part)) reader.report('alternateIsPart', 'alternates', { part });
  return listed.filter((entry) => entry !== part);
}

function textOrNull(text: string): string | null {
  return text === '' || isBlankMark(text) ? null : text;
}

function readSlot(
  reader: RowReader,
  where: ReturnType<typeof joinSlotAddress>,
  supplied: boolean,
): SheetSlot {
  const part = reader.text('part');
  const designators = parseDesignators(reader.text('designators'));
  const perPanel = readUsage(reader, designators, supplied);
  const tapeWidth = readWidth(reader);
  return {
    row: reader.row,
    slot: where.slot,
    address: where.address,
    part,
    perPanel,
    tapeWidth,
    pitch: readPitch(reader, tapeWidth),
    alternates: readAlternates(reader, part),
    supplierParts: reader.list('supplierParts'),
    description: textOrNull(reader.text('description')),
    package: textOrNull(reader.text('package')),
    bodyThicknessMm: readOptional(reader, 'bodyThickness', {
      parse: positiveLength,
      code: 'thicknessUnreadable',
    }),
    msl: readOptional(reader, 'msl', { parse: parseMsl, code: 'mslUnknown' }),
    polarity: textOrNull(reader.text('polarity')),
    critical:
      readOptional(reader, 'critical', { parse: (_, cell) => parseFlag(cell), code: 'flagUnreadable' }) ??
      false,
    positions: readOptional(reader, 'positions', { parse: positionCount, code: 'positionsUnreadable' }),
    side: readOptional(reader, 'side', { parse: parseSide, code: 'sideUnknown' }),
    designators,
    note: textOrNull(reader.text('note')),
  };
}

/** Whether a row says of itself that it is not fitted: by a flag either way round, or by a mark in part, usage or note. */
function isNotFitted(reader: RowReader): boolean {
  const fitted = reader.text('fitted');
  if (fitted !== '' && (parseFlag(reader.cell('fitted')) === false || isNotFittedMark(fitted))) return true;
  const notFitted = reader.text('notFitted');
  if (notFitted !== '' && (parseFlag(reader.cell('notFitted')) === true || isNotFittedMark(notFitted)))
    return true;
  return (['part', 'perPanel', 'description', 'note'] as const).some((field) =>
    isNotFittedMark(reader.text(field)),
  );
}

const totalWords = /^(?:sub)?(?:total|totals|sum|summe|gesamt|gesamtsumme|suma|somme|totaux)\b/i;

/** Why a row is to be left out, or null for a row to be read. */
function reasonToIgnore(row: readonly SheetCell[], reader: RowReader): IgnoredReason | null {
  const texts = row.map(cellText).filter((text) => text !== '');
  if (/^(?:#|\/\/|\*\*)/.test(texts[0] ?? '')) return 'comment';
  if (totalWords.test(texts[0] ?? '') && (reader.text('part') === '' || reader.text('slot') === ''))
    return 'total';
  if (scoreHeaderRow(row, sheetHeaderWords) >= Math.max(2, texts.length * 0.6)) return 'headerAgain';
  return isNotFitted(reader) ? 'notFitted' : null;
}

const addressFields: readonly SheetField[] = ['slot', 'machine', 'bank', 'number', 'side'];

/** Whether nothing but the address is filled in: an unused slot of a complete slot list. */
function isEmptySlot(reader: RowReader, columns: readonly SheetColumn<SheetField>[]): boolean {
  return columns.every(
    ({ field }) =>
      field === null ||
      addressFields.includes(field) ||
      reader.text(field) === '' ||
      isBlankMark(reader.text(field)),
  );
}

/** Problems of the header: what is missing, unused, doubled, or named by the map and not there. */
function checkColumns(guess: ColumnGuess<SheetField>, supplied: boolean): SheetProblem[] {
  const row = guess.headerRow;
  const headers = guess.columns.map((column) => column.header).filter((header) => header !== '');
  const found = headers.length === 0 ? '(nothing)' : headers.slice(0, 30).join(', ');
  const fields = new Set(guess.columns.map((column) => column.field));
  const problems: SheetProblem[] = guess.notFound.map(({ field, header }) =>
    sheetProblem('columnNotFound', { row }, { wanted: header, field: sheetFieldNames[field], found }),
  );
  const missing = (field: SheetField) =>
    sheetProblem('columnMissing', { row }, { wanted: sheetFieldNames[field], found });
  if (!fields.has('slot') && !fields.has('number')) problems.push(missing('slot'));
  if (!fields.has('part')) problems.push(missing('part'));
  for (const field of ['perPanel', 'tapeWidth', 'pitch'] as const) {
    const given = fields.has(field) || (field === 'perPanel' && (supplied || fields.has('designators')));
    if (!given)
      problems.push(sheetProblem('columnAbsent', { row }, { wanted: sheetFieldNames[field], found }));
  }
  for (const { index, header, field } of guess.columns) {
    const rival = guess.rivals.find((entry) => entry.index === index);
    if (header === '' || field !== null) continue;
    if (rival) {
      const used = guess.columns.find((column) => column.field === rival.field)?.header ?? '';
      const facts = { found: header, field: sheetFieldNames[rival.field], used };
      problems.push(sheetProblem('columnTwice', { row, column: header }, facts));
    } else problems.push(sheetProblem('columnUnknown', { row, column: header }, { found: header }));
  }
  return problems;
}

function makeReader(
  row: readonly SheetCell[],
  rowNumber: number,
  context: {
    readonly indexesByField: ReadonlyMap<SheetField, readonly number[]>;
    readonly headerOf: (field: SheetField) => string | null;
    readonly problems: SheetProblem[];
  },
): RowReader {
  const cell = (field: SheetField) => row[context.indexesByField.get(field)?.[0] ?? -1];
  return {
    row: rowNumber,
    cell,
    text: (field) => cellText(cell(field)),
    list: (field) => [
      ...new Set(
        (context.indexesByField.get(field) ?? []).flatMap((index) =>
          parseList(String(row[index] ?? ''), { careful: field === 'supplierParts' }),
        ),
      ),
    ],
    has: (field) => context.indexesByField.has(field),
    report: (code, field, facts) => {
      const column = field === null ? null : context.headerOf(field);
      context.problems.push(sheetProblem(code, { row: rowNumber, column }, facts));
    },
  };
}

/** Reads the rows under the header into slots, problems and ignored rows. */
function readRows(rows: SheetRows, guess: ColumnGuess<SheetField>, supplied: boolean) {
  const indexesByField = new Map<SheetField, number[]>();
  for (const { index, field } of guess.columns) {
    if (field === null) continue;
    const indexes = indexesByField.get(field);
    if (indexes === undefined) indexesByField.set(field, [index]);
    else if (manyColumnFields.includes(field)) indexes.push(index);
  }
  const headerOf = (field: SheetField) => guess.columns[indexesByField.get(field)?.[0] ?? -1]?.header ?? null;
  const problems: SheetProblem[] = [];
  const slots: SheetSlot[] = [];
  const ignoredRows: IgnoredRow[] = [];
  const canRead = indexesByField.has('part') && (indexesByField.has('slot') || indexesByField.has('number'));
  const slotField: SheetField = indexesByField.has('slot') ? 'slot' : 'number';
  const above = { machine: '', bank: '' };
  let filled = 0;
  for (let index = guess.headerRow; canRead && index < rows.length; index++) {
    const row = rows[index] ?? [];
    if (row.every((cell) => cellText(cell) === '')) continue;
    filled++;
    const reader = makeReader(row, index + 1, { indexesByField, headerOf, problems });
    const reason = reasonToIgnore(row, reader);
    // Merged cells leave machine and bank blank below their first row.
    above.machine = reader.text('machine') || above.machine;
    above.bank = reader.text('bank') || above.bank;
    if (reason !== null) {
      ignoredRows.push({ row: index + 1, reason });
      continue;
    }
    checkRowLength(row, reader, guess.columns.length);
    const slot = readOneRow(reader, { slotField, ...above, columns: guess.columns, supplied });
    if (slot === 'emptySlot') ignoredRows.push({ row: index + 1, reason: slot });
    else if (slot !== null) slots.push(slot);
  }
  if (canRead && filled === 0) problems.push(sheetProblem('noRows', { row: guess.headerRow }));
  return { slots, problems, ignoredRows, headerOf };
}

function checkRowLength(row: readonly SheetCell[], reader: RowReader, wanted: number): void {
  let found = row.length;
  while (found > wanted && cellText(row[found - 1]) === '') found--;
  if (found > wanted) reader.report('rowTooLong', null, { found, wanted });
}

function readOneRow(
  reader: RowReader,
  context: {
    readonly slotField: SheetField;
    readonly machine: string;
    readonly bank: string;
    readonly columns: readonly SheetColumn<SheetField>[];
    readonly supplied: boolean;
  },
): SheetSlot | 'emptySlot' | null {
  const slotText = reader.text(context.slotField);
  const part = reader.text('part');
  const partBlank = part === '' || isBlankMark(part);
  if (partBlank && isEmptySlot(reader, context.columns)) return 'emptySlot';
  if (slotText === '') {
    reader.report('slotMissing', context.slotField, { part: partBlank ? '(empty)' : part });
    return null;
  }
  const where = joinSlotAddress(slotText, context.machine, context.bank);
  if (partBlank) {
    reader.report('partMissing', 'part', { slot: where.slot });
    return null;
  }
  if (where.address === null) {
    const code = context.slotField === 'number' ? 'slotNumberUnreadable' : 'slotUnclear';
    reader.report(code, context.slotField, { found: slotText });
  }
  return readSlot(reader, where, context.supplied);
}

/**
 * Reads a setup sheet from its rows (`textToRows`, or a spreadsheet reader outside shared/). Finds the header in the first 60 rows, guesses the
 * columns or takes `columns`, and lists every problem by row and column; placements per panel that the sheet lacks come from
 * `placements`. Never throws and never refuses: the caller asks `hasSheetErrors`. Linear in the rows.
 */
export function readSheet(rows: SheetRows, options: SheetOptions = {}): SheetReading {
  const supplied = options.placements !== undefined;
  const guess = guessColumns(rows, sheetHeaderWords, options.columns);
  const read = readRows(rows, guess, supplied);
  const checked = checkSheetSlots(read.slots, read.headerOf, options);
  const usage = options.placements
    ? joinUsage(checked.slots, options.placements, { ...options, column: read.headerOf('perPanel') })
    : { slots: checked.slots, problems: [], scope: null };
  const problems = [
    ...(options.textProblems ?? []),
    ...checkColumns(guess, supplied),
    ...read.problems,
    ...checked.problems,
    ...usage.problems,
  ];
  return {
    headerRow: guess.headerRow,
    columns: guess.columns,
    slots: usage.slots,
    problems: listSheetProblems(problems, options.mostProblems),
    ignored: read.ignoredRows.length,
    ignoredRows: read.ignoredRows,
    placementScope: usage.scope,
  };
}
