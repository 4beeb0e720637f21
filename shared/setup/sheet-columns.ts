// What is wrong with the header of a setup sheet: columns missing, unused, doubled, or named by hand and not there?

import { type SheetField, sheetFieldNames } from './sheet-fields.ts';
import type { ColumnGuess } from './sheet-headers.ts';
import { type SheetProblem, sheetProblem } from './sheet-problems.ts';

/** Problems of the header: what is missing, unused, doubled, or named by the map and not there. */
export function checkColumns(guess: ColumnGuess<SheetField>, supplied: boolean): SheetProblem[] {
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
