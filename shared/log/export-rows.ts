// An export as rows for people, and as lines for machines. Readable columns first; the last column holds the sealed record
// itself, so that the readable ones can be computed again and compared. The core knows rows; bytes are the caller's.

import { DAY_MS } from '../kit/moment.ts';
import type { Entry, Json } from './entry.ts';
import { type ExportItem, isOmitted, payloadFact } from './export.ts';
import { canonicalText } from './seal.ts';

/** Columns that an entry's envelope fills. */
export const envelopeColumns = ['at', 'tablet', 'epoch', 'seq', 'who', 'whoName', 'kind'] as const;

/** Columns that common facts of a payload fill. */
export const factColumns = [
  'line',
  'slot',
  'feeder',
  'reel',
  'part',
  'supplierPart',
  'lot',
  'quantity',
  'verdict',
  'reasons',
  'run',
  'panels',
  'serial',
  'reason',
  'of',
  'act',
  'via',
] as const;

/** All columns in their order. */
export const exportColumns = [
  ...envelopeColumns,
  ...factColumns,
  'right',
  'prev',
  'hash',
  'sig',
  'entry',
] as const;
/** One column. */
export type ExportColumn = (typeof exportColumns)[number];

/** What stands under `kind` in the row of a stretch left out. */
export const omittedKind = '(left out)';

/** A record as one line of JSON: the RFC 8785 text of the entry, or of the stretch left out. */
export function itemToJson(item: ExportItem): string {
  return canonicalText(isOmitted(item) ? { omitted: { ...item.omitted } } : item);
}

/** Names of people by their ids, as far as the log has told them. */
export type PeopleNames = ReadonlyMap<string, string>;

const noNames: PeopleNames = new Map();

/** What was known of the right that an entry took, by whoever wrote the file; empty where it took none that is asked for. */
export type RightOf = (entry: Entry) => string;

const noRight: RightOf = () => '';

/** A record as texts by column, without any guard for spreadsheets; the column `entry` is exact. `whoName` and `right` stand there for people to read. */
export function itemToCells(
  item: ExportItem,
  names: PeopleNames = noNames,
  rightOf: RightOf = noRight,
): Readonly<Record<ExportColumn, string>> {
  const cells = Object.fromEntries(exportColumns.map((column) => [column, ''])) as Record<
    ExportColumn,
    string
  >; // every column is set above
  cells.entry = itemToJson(item);
  if (isOmitted(item)) {
    const { tablet, epoch, fromSeq, toSeq, hash } = item.omitted;
    return { ...cells, tablet, epoch, seq: `${fromSeq}..${toSeq}`, kind: omittedKind, hash };
  }
  for (const column of factColumns) cells[column] = factText(payloadFact(item, column));
  const { at, tablet, epoch, seq, who, kind, prev, hash, sig } = item;
  return {
    ...cells,
    at,
    tablet,
    epoch,
    seq: String(seq),
    who: showControls(who ?? ''),
    kind,
    prev,
    hash,
    right: rightOf(item),
    whoName: showControls(names.get(who ?? '') ?? ''),
    sig: showControls(sig ?? ''),
  };
}

/** A fact as a person reads it: a list of coded reasons as its codes. */
function factText(value: Json): string {
  if (value === null) return '';
  if (typeof value === 'string') return showControls(value);
  if (Array.isArray(value)) return value.map(codeText).join(' ');
  return typeof value === 'object' ? canonicalText(value) : String(value);
}

function codeText(value: Json): string {
  const code = value !== null && typeof value === 'object' && 'code' in value ? value['code'] : value;
  return typeof code === 'string' ? showControls(code) : canonicalText(code ?? null);
}

/** Control characters as their pictures (U+2400 on): cells stay on one line and no cell holds what a workbook may not. */
function showControls(text: string): string {
  return text
    .replace(/[\0-\x1f]/g, (control) => String.fromCharCode(0x2400 + control.charCodeAt(0)))
    .replace(/\x7f/g, '\u2421')
    .replace(/[\ufffe\uffff]/g, '\ufffd');
}

/**
 * A cell that no spreadsheet takes for a formula: a text that begins like one gets an apostrophe in front. Source of the list:
 * OWASP, "CSV Injection" (equals, plus, minus, at, tab, carriage return, line feed, and their full-width forms).
 */
export function guardFormula(text: string): string {
  return /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(text) ? `'${text}` : text;
}

/** The header line of a CSV export, with its line end. */
export function csvHeader(): string {
  return `${exportColumns.join(',')}\r\n`;
}

/** A record as a line of CSV (RFC 4180), with its line end. */
export function itemToCsv(
  item: ExportItem,
  names: PeopleNames = noNames,
  rightOf: RightOf = noRight,
): string {
  const cells = itemToCells(item, names, rightOf);
  return `${exportColumns.map((column) => quoted(guardFormula(cells[column]))).join(',')}\r\n`;
}

function quoted(text: string): string {
  return /[",;\r\n']|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A workbook's cell holds at most 32 767 characters; a margin stays for what escaping adds. */
const CELL_MAX = 32_000;

/** A cell of a workbook: a text, a number, or a moment as the wall clock that a person read (ms since 1970 as if it were UTC). */
export type WorkbookCell = string | number | { readonly wallMs: number };

/**
 * A row of a workbook. Moments and counts are moments and numbers, so that a spreadsheet sorts and adds them; all else is text, so that it
 * makes no date of a lot. `entryCells`: how many columns the widest record needs (see `entryCellsOf`).
 */
export function itemToWorkbookRow(
  item: ExportItem,
  entryCells: number,
  names: PeopleNames = noNames,
  rightOf: RightOf = noRight,
): readonly WorkbookCell[] {
  const cells = itemToCells(item, names, rightOf);
  const readable = exportColumns.slice(0, -1).map((column): WorkbookCell => {
    if (!isOmitted(item)) {
      if (column === 'at') return { wallMs: wallMsOf(item.at) };
      if (column === 'seq') return item.seq;
      const fact = column === 'quantity' || column === 'panels' ? payloadFact(item, column) : null;
      if (typeof fact === 'number') return fact;
    }
    return escapeUnderscore(cells[column]);
  });
  const parts = workbookParts(cells.entry);
  return [...readable, ...Array.from({ length: entryCells }, (_, at) => parts[at] ?? '')];
}

/** The wall clock of a moment (ISO 8601 with offset) in its own offset, ms since 1970 as if it were UTC. */
function wallMsOf(at: string): number {
  return Date.parse(`${at.replace(/(Z|[+-]\d{2}:\d{2})$/, '')}Z`);
}

/** Day 25569 of a workbook's calendar is 1970-01-01 (ECMA-376 part 1, 18.17.4.1, the 1900 date base). */
const UNIX_DAY = 25_569;

/** How a workbook's cell shows a moment. */
export const momentFormat = 'yyyy-mm-dd hh:mm:ss';

/** Some readers cut a day's fraction down to milliseconds: this much more (ms) keeps them from losing one. */
const NUDGE_MS = 0.1;

/** A moment as a workbook counts it: days since its first day. */
export function workbookDays({ wallMs }: { readonly wallMs: number }): number {
  return UNIX_DAY + (wallMs + NUDGE_MS) / DAY_MS;
}

/** What a reader sees in a cell: a number in plain digits, a moment by ISO 8601 without offset. */
export function workbookText(cell: WorkbookCell): string {
  if (typeof cell === 'object') return new Date(cell.wallMs).toISOString().slice(0, -1);
  return String(cell);
}

/** The header row of a workbook: `entry`, `entry 2`, `entry 3` … where a record is too long for one cell. */
export function workbookHeader(entryCells: number): readonly string[] {
  const more = Array.from({ length: Math.max(0, entryCells - 1) }, (_, at) => `entry ${at + 2}`);
  return [...exportColumns, ...more];
}

/** How many cells a record's sealed text takes in a workbook. */
export function entryCellsOf(item: ExportItem): number {
  return workbookParts(itemToJson(item)).length;
}

/** Cuts JSON text into cells, never at a blank (readers trim), never within a character or an escape. */
function workbookParts(json: string): readonly string[] {
  const text = json
    .replace(/[\x7f-\x9f\ufffe\uffff]/g, (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '\\u005f');
  const parts: string[] = [];
  let from = 0;
  while (text.length - from > CELL_MAX) {
    let cut = from + CELL_MAX;
    while (cut > from + 1 && !isCut(text, cut)) cut -= 1;
    parts.push(text.slice(from, cut));
    from = cut;
  }
  return [...parts, text.slice(from)];
}

function isCut(text: string, at: number): boolean {
  const around = text.slice(at - 1, at + 1);
  return !/\s/u.test(around) && !/[\ud800-\udbff][\udc00-\udfff]/.test(around);
}

/** A workbook reads `_x0041_` as one letter: the underscore itself is written that way. */
function escapeUnderscore(text: string): string {
  return text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
}
