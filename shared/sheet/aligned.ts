// How is a text cut into cells whose columns are aligned with blanks?
// Method: at every blank where each row has as many words as the header; else at the runs of blanks that header and rows have in common; a row
// that reaches over such a run is cut at its blanks where that gives the right number of cells, and is a problem otherwise.
// Method refused: where the header's words begin, since numbers often stand to the right under their header.

import { fewestFieldsKnown, isCommentLine, isTotalText, uncommentText } from './comment.ts';
import { type HeaderWords, placementHeaderWords } from './fields.ts';
import { type SheetRows, scoreHeaderRow } from './headers.ts';
import { type SheetProblem, sheetProblem } from './problems.ts';

/** Rows cut out of aligned text, and the rows that do not line up. */
export interface AlignedRows {
  readonly rows: SheetRows;
  readonly problems: readonly SheetProblem[];
}

// More say nothing new, and a file of another kind has only such rows.
const mostUnreadableRows = 1000;
const headerSearchRows = 100;
const headerSearchCharacters = 100_000;
// A row that reaches over its column hides a run of blanks; a few may.
const mayCross = 0.04;

interface Header {
  readonly index: number;
  readonly words: readonly string[];
  /** The header as it stands, comment mark blanked out. */
  readonly line: string;
}

const wordsOf = (line: string, pattern: RegExp) =>
  [...line.matchAll(pattern)].map((match) => match[0].replace(/^"(.*)"$/, '$1'));
const phrases = /"[^"]*"|\S+(?: \S+)*/g;
const singles = /"[^"]*"|\S+/g;

/** The words of a run of header words with single blanks between them; one that is a header as it stands ("Part number") stays whole. */
function wordsWithin<F extends string>(phrase: string, vocabulary: HeaderWords<F>): readonly string[] {
  return scoreHeaderRow([phrase], vocabulary) >= 1 ? [phrase] : wordsOf(phrase, singles);
}

function findHeader<F extends string>(lines: readonly string[], vocabulary: HeaderWords<F>): Header | null {
  let best: Header | null = null;
  let bestScore = 0;
  for (const [index, line] of lines.slice(0, headerSearchRows).entries()) {
    const plain = uncommentText(line);
    const whole = wordsOf(plain, phrases);
    for (const words of [whole, whole.flatMap((phrase) => wordsWithin(phrase, vocabulary))]) {
      const score = scoreHeaderRow(words, vocabulary);
      if (score <= bestScore || score < fewestFieldsKnown) continue;
      bestScore = score;
      best = { index, words, line: plain };
    }
  }
  return best;
}

/** The header's line with the blanks filled within words that are one header ("Part number"): no column ends there. */
function wholeWords<F extends string>({ words, line }: Header, vocabulary: HeaderWords<F>): string {
  const whole = words.filter((word) => word.includes(' ') && scoreHeaderRow([word], vocabulary) >= 1);
  return whole.reduce((text, word) => text.replace(word, word.replaceAll(' ', '_')), line);
}

/** Where columns begin and end: positions that (nearly) all lines leave blank stand between them. */
function commonColumns(
  lines: readonly string[],
  header: string | null,
): readonly (readonly [number, number])[] {
  const width = Math.max(0, ...lines.map((line) => line.length), header?.length ?? 0);
  const filled = new Uint32Array(width + 1);
  for (const line of lines) {
    for (let at = 0; at < line.length; at++) if (line[at] !== ' ') filled[at]!++;
  }
  const most = Math.floor(lines.length * mayCross);
  const columns: [number, number][] = [];
  let start = -1;
  for (let at = 0; at <= width; at++) {
    const isFilled = at < width && (filled[at]! > most || (header !== null && (header[at] ?? ' ') !== ' '));
    if (isFilled && start < 0) start = at;
    if (!isFilled && start >= 0) {
      columns.push([start, at]);
      start = -1;
    }
  }
  return columns;
}

/** The cells of a line between common columns; null where a word reaches over a boundary. */
function cutAt(line: string, columns: readonly (readonly [number, number])[]): readonly string[] | null {
  const cells: string[] = [];
  for (const [at, [start]] of columns.entries()) {
    const next = columns[at + 1]?.[0] ?? line.length;
    if (start > 0 && start < line.length && line[start - 1] !== ' ' && line[start] !== ' ') return null;
    cells.push(line.slice(at === 0 ? 0 : start, Math.max(start, next)).trim());
  }
  return cells;
}

const unquote = (text: string) => text.replace(/^"(.*)"$/, '$1');
const splitSingles = (line: string) => (line.match(singles) ?? []).map(unquote);
const splitWide = (line: string) =>
  line
    .trim()
    .split(/\s{2,}/)
    .map(unquote);
const expandTabs = (line: string) => (line.includes('\t') ? line.replace(/\t/g, '    ') : line);

/** Data lines by number: blank lines, comments, rules and totals are none. */
function dataLines(lines: readonly string[], from: number): readonly (readonly [number, string])[] {
  return lines.flatMap((line, index): (readonly [number, string])[] =>
    index < from || line.trim() === '' || isCommentLine(line) || isTotalText(line.trim())
      ? []
      : [[index, line]],
  );
}

/** How many fields the best header of an aligned text names, without cutting its rows. */
export function alignedHeaderScore<F extends string>(
  text: string,
  vocabulary: HeaderWords<F> | typeof placementHeaderWords = placementHeaderWords,
): number {
  const lines = text
    .slice(0, headerSearchCharacters)
    .split(/\r\n?|\n/)
    .map(expandTabs);
  const header = findHeader<string>(lines, vocabulary);
  return header === null ? 0 : scoreHeaderRow<string>(header.words, vocabulary);
}

/** The rows of a text with a header in the words given (a placement file's where none are), or null where none is found. */
export function alignedRows<F extends string>(
  text: string,
  vocabulary: HeaderWords<F> | typeof placementHeaderWords = placementHeaderWords,
): AlignedRows | null {
  const lines = text.replace(/\r\n?/g, '\n').split('\n').map(expandTabs);
  const header = findHeader<string>(lines, vocabulary);
  if (header === null) return null;
  const data = dataLines(lines, header.index + 1);
  const wanted = header.words.length;
  const rows: (readonly string[])[] = lines.map(() => []);
  rows[header.index] = header.words;
  for (const split of [splitSingles, splitWide]) {
    const cells = data.map(([, line]) => split(line));
    if (cells.length === 0 || cells.some((row) => row.length !== wanted)) continue;
    data.forEach(([index], at) => {
      rows[index] = cells[at]!; // one row of cells for each line
    });
    return { rows, problems: [] };
  }
  const columns = commonColumns(
    data.map(([, line]) => line),
    wholeWords<string>(header, vocabulary),
  );
  const names = cutAt(header.line, columns) ?? [];
  const isCut =
    scoreHeaderRow<string>(names, vocabulary) >= scoreHeaderRow<string>(header.words, vocabulary) - 0.5;
  if (isCut) rows[header.index] = names.map(unquote);
  return fillRows(rows, data, {
    columns: isCut ? columns : null,
    wanted: isCut ? columns.length : wanted,
    words: wanted,
  });
}

function fillRows(
  rows: (readonly string[])[],
  data: readonly (readonly [number, string])[],
  layout: {
    readonly columns: readonly (readonly [number, number])[] | null;
    readonly wanted: number;
    readonly words: number;
  },
): AlignedRows {
  const problems: SheetProblem[] = [];
  for (const [index, line] of data) {
    const cut = layout.columns === null ? null : cutAt(line, layout.columns);
    const cells =
      cut?.map(unquote) ??
      [splitWide(line), splitSingles(line)].find((split) => split.length === layout.wanted) ??
      null;
    if (cells !== null) rows[index] = cells;
    else if (problems.length < mostUnreadableRows) {
      const facts = { found: splitSingles(line).length, wanted: layout.words };
      problems.push(sheetProblem('rowUnreadable', { row: index + 1 }, facts));
    }
  }
  return { rows, problems };
}

/**
 * Words of lines of different length as cells: the names and numbers that all lines begin with, the last word, and between them what is left,
 * which may be nothing or several words (a value). Null where the lines do not begin alike.
 */
function raggedCells(words: readonly (readonly string[])[]): readonly (readonly string[])[] | null {
  const isNumber = (text: string | undefined) => text !== undefined && /^[+-]?\d+(?:[.,]\d+)?$/.test(text);
  const lead = (row: readonly string[]) => {
    let at = 1;
    while (at < 5 && isNumber(row[at])) at++;
    return at;
  };
  const counts = words.map(lead);
  const common = Math.min(...counts.filter((count) => count >= 3));
  if (!Number.isFinite(common) || counts.some((count) => count < common)) return null;
  return words.map((row) => [
    ...row.slice(0, common),
    row.slice(common, -1).join(' '),
    row.length > common ? (row.at(-1) ?? '') : '',
  ]);
}

/** The rows of a text without a header: at common blanks, or at every blank where all rows have the same number of words. */
export function alignedWithoutHeader(text: string): AlignedRows | null {
  const lines = text.replace(/\r\n?/g, '\n').split('\n').map(expandTabs);
  const data = dataLines(lines, 0).filter(
    ([, line]) => (line.match(/[+-]?\d+(?:[.,]\d+)?(?=\s|$)/g)?.length ?? 0) >= 2,
  );
  if (data.length === 0) return null;
  const rows: (readonly string[])[] = lines.map(() => []);
  const words = data.map(([, line]) => splitSingles(line));
  const wanted = words[0]?.length ?? 0;
  if (wanted >= 4 && words.every((row) => row.length === wanted)) {
    data.forEach(([index], at) => {
      rows[index] = words[at]!; // one row of words for each line
    });
    return { rows, problems: [] };
  }
  const columns = commonColumns(
    data.map(([, line]) => line),
    null,
  );
  const ragged = columns.length < 4 ? raggedCells(words) : null;
  if (ragged !== null) {
    data.forEach(([index], at) => {
      rows[index] = ragged[at]!; // one row of cells for each line
    });
    return { rows, problems: [] };
  }
  return fillRows(rows, data, { columns, wanted: columns.length, words: columns.length });
}
