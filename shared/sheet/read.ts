// What does a setup sheet want on each slot, and what is wrong with it?
// Method: find the header, read row by row with small cell parsers, then check across rows and against the placement file. Every row is
// either a slot, ignored with a reason, or a problem: nothing is left out in silence. Nothing here takes a sheet in; the caller
// does so once no problem is an error.

import { isBlankMark } from './cells.ts';
import { checkSheetSlots, type SheetCheckOptions } from './checks.ts';
import { checkColumns } from './columns.ts';
import { areDesignators } from './designators.ts';
import { manyColumnFields, type SheetField, sheetHeaderWords } from './fields.ts';
import {
  type ColumnGuess,
  type ColumnMap,
  cellText,
  guessColumns,
  type SheetCell,
  type SheetColumn,
  type SheetRows,
} from './headers.ts';
import type { PlacementReading } from './placements.ts';
import { type ProblemSink, problemSink, type SheetProblem } from './problems.ts';
import { isNotFitted, makeReader, type RowReader, readSlot } from './row.ts';
import type { PlacementScope } from './scope.ts';
import { resolveSharing } from './sharing.ts';
import { type IgnoredReason, type IgnoredRow, joinSlotAddress, type SheetSlot } from './slot.ts';
import { joinUsage } from './usage.ts';

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
  /** Makers' numbers by part (in capitals) out of a bill of materials, for slots that name none. */
  readonly makers?: ReadonlyMap<string, readonly string[]>;
  /** Which side of the placement file counts; found from the sheet where it is not given. */
  readonly side?: PlacementScope;
  /** The machine and the bank of slots that name none, where a sheet leaves them out for the whole line. */
  readonly machine?: string;
  readonly bank?: string;
  /** Boards in one panel, where the placement file describes one board; default 1. */
  readonly boardsPerPanel?: number;
  /** Problems found while the rows were made (`textToRows`), to be listed with the others. */
  readonly textProblems?: readonly SheetProblem[];
  /** The most problems to list; default 1000. */
  readonly mostProblems?: number;
}

const totalWords = /^(?:sub)?(?:total|totals|sum|summe|gesamt|gesamtsumme|suma|somme|totaux)\b/i;

/** Why a row is to be left out, or null for a row to be read. */
function reasonToIgnore(
  row: readonly SheetCell[],
  reader: RowReader,
  columns: readonly SheetColumn<SheetField>[],
): IgnoredReason | null {
  const first = cellText(row.find((cell) => cellText(cell) !== ''));
  if (/^(?:#|\/\/|\*\*)/.test(first)) return 'comment';
  const partOrSlotEmpty = reader.text('part') === '' || reader.text('slot') === '';
  if (partOrSlotEmpty && totalWords.test(first)) return 'total';
  const part = columns.find((column) => column.field === 'part');
  if (part !== undefined && reader.text('part') === part.header) {
    const repeated = columns.filter(({ index, header }) => header !== '' && cellText(row[index]) === header);
    if (repeated.length >= Math.max(2, columns.length * 0.6)) return 'headerAgain';
  }
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

/** Reads the rows under the header into slots, problems and ignored rows. */
function readRows(
  rows: SheetRows,
  guess: ColumnGuess<SheetField>,
  options: {
    readonly supplied: boolean;
    readonly sink: ProblemSink;
    readonly machine: string;
    readonly bank: string;
  },
) {
  const { supplied, sink } = options;
  const indexesByField = new Map<SheetField, number[]>();
  for (const { index, field } of guess.columns) {
    if (field === null) continue;
    const indexes = indexesByField.get(field);
    if (indexes === undefined) indexesByField.set(field, [index]);
    else if (manyColumnFields.includes(field)) indexes.push(index);
  }
  const headerOf = (field: SheetField) => guess.columns[indexesByField.get(field)?.[0] ?? -1]?.header ?? null;
  const slots: SheetSlot[] = [];
  const ignoredRows: IgnoredRow[] = [];
  const canRead = indexesByField.has('part') && (indexesByField.has('slot') || indexesByField.has('number'));
  const slotField: SheetField = indexesByField.has('slot') ? 'slot' : 'number';
  const above = { machine: options.machine, bank: options.bank };
  let filled = 0;
  for (let index = guess.headerRow; canRead && index < rows.length; index++) {
    const row = rows[index] ?? [];
    if (row.every((cell) => cellText(cell) === '')) continue;
    filled++;
    const reader = makeReader(row, index + 1, { indexesByField, headerOf, sink });
    const reason = reasonToIgnore(row, reader, guess.columns);
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
  if (canRead && filled === 0) sink.add('noRows', { row: guess.headerRow });
  return { slots, ignoredRows, headerOf };
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
  if (slotText === '' || isBlankMark(slotText)) {
    reader.report('slotMissing', context.slotField, { part: partBlank ? '(empty)' : part });
    return null;
  }
  const where = joinSlotAddress(slotText, context);
  if (partBlank) {
    reader.report('partMissing', 'part', { slot: where.slot });
    return null;
  }
  if (where.address.position === null) {
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
  const sink = problemSink(options.mostProblems ?? 1000);
  const guess = guessColumns(rows, sheetHeaderWords, options.columns);
  sink.addAll(options.textProblems ?? []);
  checkColumns(guess, { supplied, sink });
  const read = readRows(rows, guess, {
    supplied,
    sink,
    machine: options.machine ?? '',
    bank: options.bank ?? '',
  });
  const approved = read.slots.map((slot) => {
    const makers = slot.supplierParts.length > 0 ? undefined : options.makers?.get(slot.part.toUpperCase());
    return makers === undefined ? slot : { ...slot, supplierParts: makers };
  });
  const shared = resolveSharing(approved, { column: read.headerOf('perPanel'), sink });
  const checked = checkSheetSlots(shared, { headerOf: read.headerOf, sink }, options);
  const parts = guess.columns.find(({ field }) => field === 'part')?.header;
  if (areDesignators(read.slots.map(({ part }) => part)))
    sink.add('partsAreDesignators', { row: guess.headerRow, column: parts ?? null }, { found: parts ?? '' });
  const usage = options.placements
    ? joinUsage(checked, options.placements, {
        ...options,
        column: read.headerOf('perPanel'),
        placeColumn: read.headerOf('designators'),
        sink,
      })
    : { slots: checked, scope: null };
  return {
    headerRow: guess.headerRow,
    columns: guess.columns,
    slots: usage.slots,
    problems: sink.list(),
    ignored: read.ignoredRows.length,
    ignoredRows: read.ignoredRows,
    placementScope: usage.scope,
  };
}
