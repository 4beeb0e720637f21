// Which lines of a file are no entries: comments, rules, totals, ends? And how is a header read that is written as a comment?

import type { HeaderWords } from './fields.ts';
import { cellText, type SheetCell, type SheetRows, scoreHeaderRow } from './headers.ts';

/** Fields that a row must name to be a header for sure. */
export const fewestFieldsKnown = 1.8;

const commentMark = /^\s*(?:#|\/\/|\*(?!\w+\*$)|!|;|--(?=\s*\w)|==|__|%)/;
const totalWords =
  /^(?:(?:sub|grand)[ -]?)?(?:total|totals|sum|summe|gesamt|gesamtsumme|gesamtanzahl|zwischensumme|suma|somme|totaux|totale)\b/i;
const endWords =
  /^(?:end(?: of (?:file|list|report|data))?\b|eof\b|\(?\d+ (?:rows?|records?|components?|placements?|parts?|items?)\b|page \d+|(?:component|part|placement)s? (?:count|total)\b)/i;

/** Whether a line begins with the mark of a comment, or is a rule. */
export function isCommentLine(text: string): boolean {
  return commentMark.test(text) || /^[\s=\-_*+.~|]{3,}$/.test(text);
}

/** Whether a text begins as a total or as the end of a list does. */
export function isTotalText(text: string): boolean {
  return totalWords.test(text) || endWords.test(text);
}

const headMark =
  /^(\s*)((?:#+|\/\/+|\*+|!+|;+|%+)?\s*(?:(?:fields|columns|spalten|columnas|colonnes)\s*:)?)/i;

/** A header's line without the mark of a comment or the word "Fields:", each replaced by blanks, so that columns stay where they are. */
export function uncommentText(line: string): string {
  return line.replace(headMark, (_, before: string, mark: string) => before + ' '.repeat(mark.length));
}

/** A header line written as a comment ("# Designator, Part"), as cells. */
export function uncomment(row: readonly SheetCell[]): readonly SheetCell[] {
  const [first, ...rest] = row;
  if (typeof first !== 'string') return row;
  const plain = uncommentText(first).trim();
  return plain === first.trim() ? row : [plain, ...rest];
}

/** The first filled cell's text. */
export function firstText(row: readonly SheetCell[]): string {
  for (const cell of row) {
    const text = cellText(cell);
    if (text !== '') return text;
  }
  return '';
}

const headerSearchRows = 60;

/** The rows with the header's comment mark taken off, where the best header is written as a comment; other comments stay comments. */
export function uncommentHeader<F extends string>(rows: SheetRows, words: HeaderWords<F>): SheetRows {
  let best = 0;
  let bestScore = 0;
  for (let at = 0; at < Math.min(rows.length, headerSearchRows); at++) {
    const row = rows[at] ?? [];
    const score = row.length < 2 ? 0 : scoreHeaderRow(uncomment(row), words);
    if (score <= bestScore) continue;
    best = at;
    bestScore = score;
  }
  if (bestScore < fewestFieldsKnown) return rows;
  const plain = uncomment(rows[best] ?? []);
  return plain === rows[best] ? rows : rows.map((row, at) => (at === best ? plain : row));
}
