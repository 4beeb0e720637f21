// What is wrong with the header of a setup sheet or a list: columns missing, unused, doubled, or named by hand and not there?

import { type SheetField, sheetFieldNames } from './fields.ts';
import { type ColumnGuess, reduceHeader, type SheetColumn } from './headers.ts';
import type { ProblemSink } from './problems.ts';

const mostHeadersShown = 30;
const mostHeaderCharacters = 40;

/** The headers found, for a message: the first ones, shortened. */
export function sayHeaders(headers: readonly string[]): string {
  const shown = headers.filter((header) => header !== '').slice(0, mostHeadersShown);
  return shown.map((header) => header.slice(0, mostHeaderCharacters)).join(', ') || '(nothing)';
}

const boardWords = /\b(?:boards?|pcb|platine|leiterplatte|placa|tarjeta|carte|circuit)\b/;

/** Reports problems of the header: what is missing, unused, doubled, or named by the map and not there. */
export function checkColumns(
  guess: ColumnGuess<SheetField>,
  options: { readonly supplied: boolean; readonly sink: ProblemSink },
): void {
  const { sink } = options;
  const row = guess.headerRow;
  const headers = sayHeaders(guess.columns.map((column) => column.header));
  const fields = new Set(guess.columns.map((column) => column.field));
  for (const { field, header } of guess.notFound) {
    sink.add('columnNotFound', { row }, { wanted: header, field: sheetFieldNames[field], headers });
  }
  const report = (code: 'columnMissing' | 'columnAbsent', field: SheetField) =>
    sink.add(code, { row }, { wanted: sheetFieldNames[field], headers });
  if (!fields.has('slot') && !fields.has('number')) report('columnMissing', 'slot');
  if (!fields.has('part')) report('columnMissing', 'part');
  for (const field of ['perPanel', 'tapeWidth', 'pitch'] as const) {
    const given = field === 'perPanel' && (options.supplied || fields.has('designators'));
    if (!given && !fields.has(field)) report('columnAbsent', field);
  }
  for (const column of guess.columns) {
    const { header, field } = column;
    if (field === 'perPanel' && boardWords.test(reduceHeader(header))) {
      sink.add('usagePerBoard', { row, column: header }, { found: header });
    }
    reportUnused(column, { guess, names: sheetFieldNames, sink });
  }
}

/** Reports a column under a header that is not used: it names no field, or one that another column was taken for. */
export function reportUnused<F extends string>(
  { index, header, field }: SheetColumn<F>,
  of: {
    readonly guess: ColumnGuess<F>;
    readonly names: Readonly<Record<F, string>>;
    readonly sink: ProblemSink;
  },
): void {
  if (header === '' || field !== null) return;
  const { guess, names, sink } = of;
  const place = { row: guess.headerRow, column: header };
  const rival = guess.rivals.find((each) => each.index === index)?.field;
  if (rival === undefined) sink.add('columnUnknown', place, { found: header });
  else {
    const used = guess.columns.find((column) => column.field === rival)?.header ?? '';
    sink.add('columnTwice', place, { found: header, field: names[rival], used });
  }
}
