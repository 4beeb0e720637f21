/// <reference path="../kit/papaparse.d.ts" />
// From the bytes of a file, or from pasted text, to rows of cells.
// Method: encoding from the byte order mark, then from where zero bytes stand (UTF-16), then UTF-8, then Windows-1252 with a warning;
// the separator is the one under which a row reads most like a header; the rows come from papaparse.
// Method refused: the separator from counting characters alone, which a title line or a decimal comma upsets.

import Papa from 'papaparse/papaparse.min.js';
import { billHeaderWords } from './bill-fields.ts';
import { placementHeaderWords, sheetHeaderWords } from './fields.ts';
import { type SheetRows, scoreHeaderRow } from './headers.ts';
import { type SheetProblem, sheetProblem } from './problems.ts';

/** Encodings that a sheet may come in. */
export const sheetEncodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;

/** One of the encodings. */
export type SheetEncoding = (typeof sheetEncodings)[number];

/** Turns bytes into text, or gives null where the bytes are not of that encoding (a fatal TextDecoder). */
export type DecodeBytes = (bytes: Uint8Array, encoding: SheetEncoding) => string | null;

/** Text of a file, how it was encoded, and a warning where that was a guess. Text null: not a text file. */
export interface SheetText {
  readonly text: string | null;
  readonly encoding: SheetEncoding;
  readonly problems: readonly SheetProblem[];
}

/** Rows of a text, the separator they were split by, and what is broken in it. */
export interface TextRows {
  readonly rows: SheetRows;
  readonly separator: string;
  readonly problems: readonly SheetProblem[];
}

const sniffBytes = 4096;
const sampleChars = 32_768;
const mostRareSeparators = 8;
const mostBrokenRows = 1000;
const commonSeparators = [',', ';', '\t', '|'];

/** UTF-16 without a byte order mark: nearly every second byte of Western text is zero, on one side only. */
function sniffUtf16(bytes: Uint8Array): SheetEncoding | null {
  const end = Math.min(bytes.length, sniffBytes) & ~1;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < end; at += 2) {
    if (bytes[at] === 0) even++;
    if (bytes[at + 1] === 0) odd++;
  }
  const pairs = end / 2;
  if (pairs >= 2 && odd > pairs * 0.6 && even < pairs * 0.05) return 'utf-16le';
  if (pairs >= 2 && even > pairs * 0.6 && odd < pairs * 0.05) return 'utf-16be';
  return null;
}

/**
 * Decodes a file: byte order mark (UTF-8, UTF-16 of either order), UTF-16 without a mark, UTF-8, and at last Windows-1252, which is
 * said as a warning. `text` is null for bytes that hold zero characters in the middle of text, as pictures and archives do.
 */
export function bytesToText(bytes: Uint8Array, decode: DecodeBytes): SheetText {
  const read = (from: number, encoding: SheetEncoding) => decode(bytes.subarray(from), encoding);
  const marked: SheetEncoding | null =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : sniffUtf16(bytes);
  if (marked !== null) {
    const text = read(0, marked);
    return { text: text === null ? null : textOrNull(text), encoding: marked, problems: [] };
  }
  const utf8 = read(bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0, 'utf-8');
  if (utf8 !== null) return { text: textOrNull(utf8), encoding: 'utf-8', problems: [] };
  const western = read(0, 'windows-1252');
  const text = western === null ? null : textOrNull(western);
  return { text, encoding: 'windows-1252', problems: [sheetProblem('encodingGuessed', { row: null })] };
}

function textOrNull(text: string): string | null {
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  return plain.includes('\u0000') ? null : plain;
}

function splitRows(text: string, separator: string, preview?: number) {
  return Papa.parse(text, {
    delimiter: separator,
    newline: '\n',
    ...(preview === undefined ? {} : { preview }),
  });
}

/** Characters that could separate cells: the common ones, and of the others those that stand in the most lines. */
function candidateSeparators(sample: string): readonly string[] {
  const lines = sample.split('\n').filter((line) => line.trim() !== '');
  const linesByCharacter = new Map<string, number>();
  for (const line of lines) {
    for (const character of new Set(line.replace(/[\p{L}\p{N}\s"'.\-_/+()%#]/gu, ''))) {
      linesByCharacter.set(character, (linesByCharacter.get(character) ?? 0) + 1);
    }
  }
  const rare = [...linesByCharacter]
    .filter(([character]) => !commonSeparators.includes(character))
    .sort((a, b) => b[1] - a[1])
    .slice(0, mostRareSeparators)
    .map(([character]) => character);
  return [...commonSeparators, ...rare];
}

/** How even the rows are: the share of rows (of two cells or more) that have the most frequent number of cells. */
function evenness(rows: readonly (readonly string[])[]): number {
  const rowsByCells = new Map<number, number>();
  for (const row of rows) rowsByCells.set(row.length, (rowsByCells.get(row.length) ?? 0) + 1);
  let most = 0;
  for (const [cells, count] of rowsByCells) if (cells > 1) most = Math.max(most, count);
  return rows.length === 0 ? 0 : most / rows.length;
}

/**
 * The separator of a text: a first line `sep=;` says it; else the character under which some row reads most like a header of a setup
 * sheet or a placement file, then under which the rows are most even. A comma where nothing separates.
 */
export function guessSeparator(text: string): string {
  const stated = /^sep=(.)\r?\n/i.exec(text)?.[1];
  if (stated !== undefined) return stated;
  const cut = text.slice(0, sampleChars);
  const sample = text.length > sampleChars ? cut.slice(0, cut.lastIndexOf('\n') + 1) || cut : cut;
  let best = ',';
  let bestScore = 0;
  for (const separator of candidateSeparators(sample)) {
    const rows = splitRows(sample, separator, 60).data;
    let header = 0;
    for (const row of rows) {
      if (row.length < 2) continue;
      header = Math.max(
        header,
        scoreHeaderRow(row, sheetHeaderWords),
        scoreHeaderRow(row, placementHeaderWords),
        scoreHeaderRow(row, billHeaderWords),
      );
    }
    const score = header + evenness(rows);
    if (score > bestScore) {
      bestScore = score;
      best = separator;
    }
  }
  return best;
}

/**
 * Splits text into rows; index 0 is row 1 as a spreadsheet numbers it (a quoted cell with line breaks stays one row). `separator`
 * comes from `guessSeparator` where it is not given. Broken quotation marks are problems of the row where they begin. Linear in the text.
 */
export function textToRows(text: string, options: { readonly separator?: string } = {}): TextRows {
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const lines = plain.includes('\r') ? plain.replace(/\r\n?/g, '\n') : plain;
  const separator = options.separator ?? guessSeparator(lines);
  const { data, errors } = splitRows(lines, separator);
  if (/^sep=.$/i.test(data[0]?.join(separator) ?? '')) data[0] = [];
  const rows = new Set(
    errors.filter((error) => error.code.includes('Quotes')).map((error) => error.row ?? 0),
  );
  const problems = [...rows]
    .slice(0, mostBrokenRows)
    .map((row) => sheetProblem('quoteBroken', { row: row + 1 }, { row: row + 1 }));
  return { rows: data, separator, problems };
}
