// A table of answers as a file for spreadsheets: texts in quotes, numbers plain.

import { guardFormula } from './export-rows.ts';

/** Rows under their columns as CSV (RFC 4180) with a byte order mark; texts that look like formulas are guarded. */
export function toCsv(
  columns: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
): string {
  const lines = [columns, ...rows].map((row) => row.map(toCell).join(','));
  return `\ufeff${lines.join('\r\n')}\r\n`;
}

/** A number stays a number: it has no quotes and no marks between its digits. */
function toCell(value: string | number | null): string {
  if (value === null) return '';
  return typeof value === 'number' ? String(value) : `"${guardFormula(value).replaceAll('"', '""')}"`;
}
