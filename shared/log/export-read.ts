/// <reference path="../kit/papaparse.d.ts" />
// Reads an export back, whatever its form, and says cell by cell what does not agree with the sealed record of its row.
// Method: the column `entry` is the truth; the readable cells are computed from it again. A line or row that is no record is
// told with its place, and the rest goes on.

import Papa from 'papaparse/papaparse.min.js';
import * as z from 'zod/mini';
import type { Omitted } from './chain.ts';
import type { Entry } from './entry.ts';
import { entrySchema } from './entry-schema.ts';
import { type ExportItem, isOmitted } from './export.ts';
import { exportColumns, guardFormula, itemToCells, itemToWorkbookRow, workbookText } from './export-rows.ts';
import { isProofRecord } from './proof-record.ts';
import { sealedHash } from './seal.ts';

/** Why a place of an export is not as it should be. */
export const exportFaultCodes = [
  'not-json',
  'not-a-record',
  'no-entry-column',
  'cell-differs',
  'signature-differs',
] as const;
/** One of these reasons. */
export type ExportFaultCode = (typeof exportFaultCodes)[number];

/** What is wrong and where. `row`: line of JSON or row of a table, from 1, the header being row 1. */
export interface ExportFault {
  readonly row: number;
  /** A column of a table, or the path within a record. */
  readonly column: string;
  readonly code: ExportFaultCode;
  readonly wanted: string;
  readonly found: string;
  /** The entry that the row speaks of, as far as it says. */
  readonly entry: { readonly tablet: string; readonly epoch: string; readonly seq: number } | null;
}

/** An export read back. */
export interface ExportReading {
  readonly entries: readonly Entry[];
  readonly omitted: readonly Omitted[];
  /** What the plant's server said of the log when it wrote the file; absent where it said nothing. */
  readonly proofs?: readonly Entry[];
  readonly faults: readonly ExportFault[];
}

/** Faults of a file that are told in full. */
const WORDED_MOST = 1_000;

/** Half a surrogate pair, as it is or escaped: there may be text without a hash. */
const HALF_CHARACTER = /\p{Surrogate}|\\u[dD][89a-fA-F]/u;

const omittedSchema = z.strictObject({
  omitted: z
    .strictObject({
      tablet: z.string().check(z.minLength(1)),
      epoch: z.string().check(z.minLength(1)),
      fromSeq: z.int().check(z.minimum(1)),
      toSeq: z.int().check(z.minimum(1)),
      hash: z.string().check(z.regex(/^[0-9a-f]{64}$/, 'expected 64 lower-case hex digits')),
    })
    .check(z.refine(({ fromSeq, toSeq }) => fromSeq <= toSeq, 'expected fromSeq not after toSeq')),
});

interface Basket {
  readonly entries: Entry[];
  readonly omitted: Omitted[];
  proofs?: Entry[];
  readonly faults: ExportFault[];
}

/** Takes the name that an entry gives a person into the names known so far. */
export type TakeName = (names: Map<string, string>, entry: Entry) => void;

/** Reads text: one JSON record a line where it begins with a brace, else CSV with any separator. */
export function parseExport(text: string, takeName?: TakeName): ExportReading {
  const body = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (/^\s*(\{|$)/.test(body)) return parseLines(body);
  const first = body.slice(0, /[\r\n]/.exec(body)?.index ?? body.length);
  const delimiter = /^"?at"?([^"a-z])/.exec(first)?.[1] ?? ',';
  // A quoted cell may hold either line end; with an explicit one the parser leaves the other alone.
  const { data } = Papa.parse(body.replace(/\r\n/g, '\n'), { delimiter, newline: '\n' });
  return parseExportRows(data, { isGuarded: true, ...(takeName ? { takeName } : {}) });
}

function parseLines(body: string): ExportReading {
  const lines = createLineReader();
  lines.take(body);
  return lines.end();
}

/** Reads JSON lines piece by piece, as one text may be longer than any string. */
export interface LineReader {
  /** The next piece, cut anywhere. */
  readonly take: (piece: string) => void;
  /** What was read; nothing may be taken after. */
  readonly end: () => ExportReading;
}

/** Makes the reader. */
export function createLineReader(): LineReader {
  const basket: Basket = { entries: [], omitted: [], faults: [] };
  let [row, rest] = [0, ''];
  const read = (line: string) => {
    row += 1;
    if (line.trim() !== '') readRecord(line, { row, column: '' }, basket);
  };
  return {
    take: (piece) => {
      const lines = piece.split('\n');
      lines[0] = rest + lines[0];
      rest = lines.pop() ?? '';
      for (const line of lines) read(line);
    },
    end: () => {
      read(rest);
      return basket;
    },
  };
}

/**
 * Reads the rows of a table, header first. `isGuarded`: texts that begin like a formula stand behind an apostrophe, as in CSV.
 * Columns may stand in any order; those not known here are not looked at. `takeName`: then names are checked too, where no entry was left
 * out that might have given another.
 */
export function parseExportRows(
  rows: readonly (readonly string[])[],
  options: { readonly isGuarded?: boolean; readonly takeName?: TakeName } = {},
): ExportReading {
  const basket: Basket = { entries: [], omitted: [], faults: [] };
  const header = (rows[0] ?? []).map((name) => name.trim());
  const entryAt = header.indexOf('entry');
  if (entryAt < 0) {
    const place = { row: 1, column: 'entry', code: 'no-entry-column' as const, entry: null };
    return { ...basket, faults: [{ ...place, wanted: 'entry', found: header.join(', ').slice(0, 200) }] };
  }
  const names = new Map<string, string>();
  const namesAltered: ExportFault[] = [];
  const moreAt = header.flatMap((name, at) => (/^entry \d+$/.test(name) ? [at] : []));
  for (const [index, row] of rows.entries()) {
    if (index === 0 || row.every((cell) => cell === '')) continue;
    const text = [entryAt, ...moreAt].map((at) => row[at] ?? '').join('');
    const item = readRecord(text, { row: index + 1, column: 'entry' }, basket);
    if (item === null) continue;
    // Its chain's check says so; cells of what cannot be written down cannot be compared.
    if (HALF_CHARACTER.test(text) && !isOmitted(item) && sealedHash(item) === null) continue;
    if (!isOmitted(item)) options.takeName?.(names, item);
    const cells = itemToCells(item, names);
    for (const column of exportColumns) {
      const at = header.indexOf(column);
      // What was known of a right hangs on the whole log, and on the plant's key.
      if (column === 'entry' || column === 'right' || at < 0) continue;
      const found = row[at] ?? '';
      const wanted = options.isGuarded ? guardFormula(cells[column]) : cells[column];
      if (found === wanted) continue;
      const inWorkbook = column === 'at' && !options.isGuarded ? momentCell(item) : null;
      if (found === inWorkbook) continue;
      const place = { row: index + 1, column, code: 'cell-differs' as const };
      const fault = { ...place, wanted: inWorkbook ?? wanted, found, entry: nameIn(item) };
      if (column === 'whoName') namesAltered.push(fault);
      else basket.faults.push(fault);
    }
  }
  if (options.takeName && basket.omitted.length === 0) basket.faults.push(...namesAltered);
  return basket;
}

/** The moment of an entry as a workbook's cell shows it; null for a stretch left out, which has none. */
function momentCell(item: ExportItem): string | null {
  const cell = itemToWorkbookRow(item, 1)[exportColumns.indexOf('at')];
  return isOmitted(item) || cell === undefined ? null : workbookText(cell);
}

function readRecord(
  text: string,
  place: { readonly row: number; readonly column: string },
  basket: Basket,
): ExportItem | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const found = text.trim().slice(0, 80);
    basket.faults.push({ ...place, code: 'not-json', wanted: 'one JSON record', found, entry: null });
    return null;
  }
  // A file of something else: what each line lacks is worded for the first ones only, which costs more than all the rest.
  if (basket.faults.length >= WORDED_MOST && isFarFromRecord(value)) {
    const found = text.trim().slice(0, 80);
    basket.faults.push({ ...place, code: 'not-a-record', wanted: 'an entry', found, entry: null });
    return null;
  }
  const isStretch = value !== null && typeof value === 'object' && Object.hasOwn(value, 'omitted');
  const checked = isStretch ? z.safeParse(omittedSchema, value) : z.safeParse(entrySchema, value);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    const sig = (value as { sig?: unknown } | null)?.sig;
    // A signature that was altered out of its form is told as what it is, and the entry keeps its place in the chain.
    if (
      !isStretch &&
      checked.error.issues.length === 1 &&
      issue?.path[0] === 'sig' &&
      typeof sig === 'string'
    ) {
      basket.faults.push({
        row: place.row,
        column: 'sig',
        code: 'signature-differs',
        wanted: 'signature by the tablet',
        found: sig.slice(0, 160),
        entry: nameIn(value),
      });
      basket.entries.push(value as Entry);
      return value as ExportItem; // an entry but for its signature
    }
    const unknown = issue?.code === 'unrecognized_keys' ? issue.keys : [];
    basket.faults.push({
      row: place.row,
      column: [...(issue?.path ?? []), ...unknown].map(String).join('.') || place.column,
      code: 'not-a-record',
      wanted: unknown.length > 0 ? 'no key of this name' : (issue?.message ?? 'an entry'),
      found: text.trim().slice(0, 80),
      entry: nameIn(value),
    });
    return null;
  }
  // The parsed value itself, not the checker's copy: the hash is over what stands in the file.
  if (isStretch) basket.omitted.push((value as { omitted: Omitted }).omitted);
  else if (isProofRecord(value as Entry)) basket.proofs = [...(basket.proofs ?? []), value as Entry];
  else basket.entries.push(value as Entry);
  return value as ExportItem; // just checked
}

/** True for what is no entry and no stretch left out, at a glance. */
function isFarFromRecord(value: unknown): boolean {
  if (value === null || typeof value !== 'object') return true;
  return !Object.hasOwn(value, 'hash') && !Object.hasOwn(value, 'omitted');
}

/** Which entry a value speaks of, as far as it says; null where it says too little. */
function nameIn(value: unknown): ExportFault['entry'] {
  if (value === null || typeof value !== 'object') return null;
  const inner = (value as { omitted?: unknown }).omitted;
  const { tablet, epoch, seq, fromSeq } = (inner ?? value) as Record<string, unknown>; // checked on the next line
  const number = typeof seq === 'number' ? seq : fromSeq;
  if (typeof tablet !== 'string' || typeof epoch !== 'string' || typeof number !== 'number') return null;
  return { tablet, epoch, seq: number };
}
