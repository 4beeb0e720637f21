// What is wrong with the header of a setup sheet: columns missing, unused, doubled, or named by hand and not there?

import { type SheetField, sheetFieldNames } from './fields.ts';
import { type ColumnGuess, reduceHeader } from './headers.ts';
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
  const rivalByIndex = new Map(guess.rivals.map(({ index, field }) => [index, field]));
  for (const { index, header, field } of guess.columns) {
    const rival = rivalByIndex.get(index);
    const place = { row, column: header };
    if (field === 'perPanel' && boardWords.test(reduceHeader(header))) {
      sink.add('usagePerBoard', place, { found: header });
    }
    if (header === '' || field !== null) continue;
    if (rival !== undefined) {
      const used = guess.columns.find((column) => column.field === rival)?.header ?? '';
      sink.add('columnTwice', place, { found: header, field: sheetFieldNames[rival], used });
    } else sink.add('columnUnknown', place, { found: header });
  }
}
