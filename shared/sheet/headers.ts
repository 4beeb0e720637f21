// Which row is the header, and which column holds which field?
// Method: header texts are reduced (case, accents, units, punctuation) and matched against the words of sheet-fields.ts, whole phrase
// before part of a phrase; the header is the row, among the first 60, that names the most fields. A person's own choice comes first.
// Method refused: fixed column order, which breaks without a sound when an export gains a column.

import { type HeaderWords, manyColumnFields } from './fields.ts';

/** A cell as a CSV parser or a spreadsheet reader gives it; dates are handed in as text. */
export type SheetCell = string | number | boolean | null | undefined;

/** All rows of a sheet from its first line on: index 0 is row 1 as a spreadsheet numbers it. */
export type SheetRows = readonly (readonly SheetCell[])[];

/** One column of the sheet and what it is taken for; `field` null means not used. */
export interface SheetColumn<F extends string> {
  /** 0 = first column. */
  readonly index: number;
  /** The header as the sheet writes it, line breaks and outer spaces taken out, at most 200 characters. */
  readonly header: string;
  readonly field: F | null;
}

/** A person's choice by field: a header, several headers (where a field may have several), or null for none. */
export type ColumnMap<F extends string> = Readonly<Partial<Record<F, string | readonly string[] | null>>>;

/** The guess: the header's row (1 = first) and what each column is taken for. */
export interface ColumnGuess<F extends string> {
  readonly headerRow: number;
  readonly columns: readonly SheetColumn<F>[];
  /** Columns that also fitted a field already taken: their index and that field. */
  readonly rivals: readonly { readonly index: number; readonly field: F }[];
  /** Entries of the person's choice that name no header. */
  readonly notFound: readonly { readonly field: F; readonly header: string }[];
}

const headerSearchRows = 60;
const wholePhrase = 100;
// A header row of a file that is no sheet can hold the whole file in one cell.
const mostHeaderCharacters = 200;

// Headers that name no field and yet contain a field's word.
const unusedPhrases = [
  'tape type',
  'tape material',
  'part type',
  'feeder id',
  'feeder name',
  'feeder serial',
  'reel id',
  'line number',
  'row number',
  'line no',
  'row no',
  'row',
  'index',
  'zeile',
  'linea',
  'ligne',
  'fila',
  'manufacturer',
  'maker',
  'supplier',
  'hersteller',
  'lieferant',
  'fabricante',
  'proveedor',
  'fabricant',
  'fournisseur',
  'part revision',
  'reel quantity',
  'quantity per reel',
  'qty per reel',
  'nozzle',
  'gurtart',
  'gurttyp',
];
const unusedKeys = new Set(unusedPhrases.map((phrase) => phrase.replaceAll(' ', '')));

/** Text of a cell without outer spaces and line breaks; a number as JavaScript writes it; empty for nothing. */
export function cellText(cell: SheetCell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell !== 'string') return String(cell);
  return untidy.test(cell) ? tidyText(cell) : cell;
}

// Nearly every cell is tidy already: a look costs less than a replacement.
const untidy = /^\s|\s$|\s\s|[^\S ]|\u200b/;

function tidyText(text: string): string {
  return text.replace(/[\s\u00a0\u200b\ufeff]+/g, ' ').trim();
}

/**
 * Reduces a header to lower-case words without accents, units in brackets and punctuation: "Gurtbreite [mm]" -> "gurtbreite",
 * "PartNo." -> "part no", "Qty/Panel" -> "qty panel". "#" and "№" read as "no".
 */
export function reduceHeader(header: string): string {
  return header
    .replace(/[([{][^)\]}]*[)\]}]/g, ' ')
    .replace(/[#№]/g, ' no ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^a-z0-9]+/g, ' ')
    .replace(/\b(?:mm|millimet(?:er|re)s?)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Whether a text says that what stands under it is not the plant's own, or no field at all: "Supplier", "Approved maker", "Reel ID". */
export function namesOthers(text: string): boolean {
  const reduced = reduceHeader(text);
  return (
    unusedKeys.has(reduced.replaceAll(' ', '')) || reduced.split(' ').some((word) => unusedKeys.has(word))
  );
}

interface Matcher<F extends string> {
  readonly whole: ReadonlyMap<string, readonly F[]>;
  /** Phrases of several words and single words that stand in a longer header, by their first word. */
  readonly partialByWord: ReadonlyMap<string, readonly Phrase<F>[]>;
  /** Answers given before: the same rows are looked at under several separators and layouts. */
  readonly remembered: Map<string, HeaderMatch<F>>;
}

/** Fields that a header may stand for, and how strong the match is. */
interface HeaderMatch<F extends string> {
  readonly fields: readonly F[];
  readonly strength: number;
}

const mostRemembered = 4000;

interface Phrase<F extends string> {
  readonly words: readonly string[];
  readonly field: F;
}

const matchers = new WeakMap<object, Matcher<string>>();

function matcherFor<F extends string>(words: HeaderWords<F>): Matcher<F> {
  const known = matchers.get(words);
  if (known) return known as Matcher<F>; // stored below under the same words
  const whole = new Map<string, F[]>();
  const partialByWord = new Map<string, Phrase<F>[]>();
  // The keys of a table by field are its fields.
  for (const field of Object.keys(words) as F[]) {
    for (const phrase of [...words[field].split(',').map((text) => text.trim()), reduceHeader(field)]) {
      const key = phrase.replaceAll(' ', '');
      const fields = whole.get(key) ?? [];
      if (!fields.includes(field)) whole.set(key, [...fields, field]);
      const [first = '', ...rest] = phrase.split(' ');
      const phrases = partialByWord.get(first) ?? [];
      if (phrase.length >= 3) partialByWord.set(first, [...phrases, { words: [first, ...rest], field }]);
    }
  }
  const matcher: Matcher<F> = { whole, partialByWord, remembered: new Map() };
  matchers.set(words, matcher);
  return matcher;
}

/** Fields that a header may stand for, with the strength of the match (100 = the whole phrase); empty for none. */
export function matchHeader<F extends string>(header: string, words: HeaderWords<F>): HeaderMatch<F> {
  const matcher = matcherFor(words);
  const known = matcher.remembered.get(header);
  if (known !== undefined) return known;
  if (matcher.remembered.size >= mostRemembered) matcher.remembered.clear();
  const match = findMatch(header, matcher);
  matcher.remembered.set(header, match);
  return match;
}

function findMatch<F extends string>(header: string, matcher: Matcher<F>): HeaderMatch<F> {
  const reduced = reduceHeader(header);
  const none = { fields: [], strength: 0 };
  if (reduced === '') return none;
  const key = reduced.replaceAll(' ', '');
  const bare = reduced.replace(/ ?\d+$/, '').replaceAll(' ', '');
  for (const candidate of [key, bare]) {
    const fields = matcher.whole.get(candidate);
    if (fields) return { fields, strength: wholePhrase };
  }
  if (unusedKeys.has(key)) return none;
  const found = reduced.split(' ');
  let fields: F[] = [];
  let strength = 0;
  for (const phrase of found.flatMap((word) => matcher.partialByWord.get(word) ?? [])) {
    const surplus = found.length - phrase.words.length;
    if (surplus < 1 || surplus > 2 || !phrase.words.every((word) => found.includes(word))) continue;
    const reached = phrase.words.length * 10 - surplus;
    if (reached > strength) {
      strength = reached;
      fields = [phrase.field];
    } else if (reached === strength && !fields.includes(phrase.field)) fields.push(phrase.field);
  }
  return { fields, strength };
}

/** How many different fields a row of cells names, a whole phrase counting more than part of one. */
export function scoreHeaderRow<F extends string>(row: readonly SheetCell[], words: HeaderWords<F>): number {
  const strengthByField = new Map<F, number>();
  const matches: HeaderMatch<F>[] = [];
  for (const cell of row) {
    if (typeof cell === 'string' && cell.length <= 60) matches.push(matchHeader(cellText(cell), words));
  }
  // A cell that names one field only goes before one that may name several.
  matches.sort((one, other) => one.fields.length - other.fields.length);
  for (const { fields, strength } of matches) {
    const field = fields.find((name) => !strengthByField.has(name)) ?? fields[0];
    if (field !== undefined) strengthByField.set(field, Math.max(strength, strengthByField.get(field) ?? 0));
  }
  // Counted in tenths: sums of 0.4 differ in their last digit by the order of the columns.
  let tenths = 0;
  for (const strength of strengthByField.values()) tenths += strength >= wholePhrase ? 10 : 4;
  return tenths / 10;
}

/** The headers that a person chose for a field. */
export function listed<F extends string>(map: ColumnMap<F>, field: F): readonly string[] {
  const chosen = map[field];
  if (chosen === undefined || chosen === null) return [];
  return typeof chosen === 'string' ? [chosen] : chosen;
}

/** Whether two texts are the same header. */
export function sameHeader(a: string, b: string): boolean {
  const reduced = (text: string) => cellText(text).slice(0, mostHeaderCharacters).toLowerCase();
  return reduced(a) === reduced(b);
}

/** The index of the header's row: the first with the highest score; without any named field, the first row of most cells. */
export function findHeaderRow<F extends string>(
  rows: SheetRows,
  words: HeaderWords<F>,
  chosen: readonly string[],
): number {
  let best = 0;
  let bestScore = 0;
  let widest = 0;
  let mostCells = 0;
  for (let index = 0; index < Math.min(rows.length, headerSearchRows); index++) {
    const row = rows[index] ?? [];
    const texts = row.map(cellText);
    const cells = texts.filter((text) => text !== '').length;
    if (cells > mostCells) {
      mostCells = cells;
      widest = index;
    }
    const mapped = chosen.filter((header) => texts.some((text) => sameHeader(text, header))).length;
    const score = mapped * 10 + scoreHeaderRow(row, words);
    if (score > bestScore) {
      bestScore = score;
      best = index;
    }
  }
  // One field's word alone also stands in title lines ("Side: top"); then the row of most cells is the better guess.
  return bestScore >= 1.8 ? best : widest;
}

interface Claim<F extends string> {
  readonly index: number;
  readonly fields: readonly F[];
  readonly strength: number;
}

function claimsOf<F extends string>(
  headers: readonly string[],
  words: HeaderWords<F>,
  map: ColumnMap<F>,
): Claim<F>[] {
  const claims: Claim<F>[] = [];
  for (const [index, header] of headers.entries()) {
    const { fields, strength } = matchHeader(header, words);
    const open = fields.filter((field) => map[field] === undefined);
    // "Reference" is the part only where no better column is: in other sheets it names places on the board.
    const isVague = reduceHeader(header) === 'reference';
    if (open.length > 0) claims.push({ index, fields: open, strength: isVague ? strength - 1 : strength });
  }
  // A header that fits one field only comes before one that fits several; then from left to right.
  return claims.sort((a, b) => b.strength - a.strength || a.fields.length - b.fields.length);
}

/**
 * Finds the header row and says what each column holds. `words`: the vocabulary. `map`: a person's choice, which comes before the
 * guess; a field mapped to null stays without a column. Never fails: with no known header every column has `field` null.
 */
export function guessColumns<F extends string>(
  rows: SheetRows,
  words: HeaderWords<F>,
  map: ColumnMap<F> = {} as ColumnMap<F>, // an empty map is a map of any fields
): ColumnGuess<F> {
  const mappedFields = Object.keys(map) as F[]; // keys of a map by field
  const chosen = mappedFields.flatMap((field) => listed(map, field));
  const headerIndex = findHeaderRow(rows, words, chosen);
  const headers = (rows[headerIndex] ?? []).map((cell) => cellText(cell).slice(0, mostHeaderCharacters));
  const fieldByIndex = new Map<number, F>();
  const notFound: { field: F; header: string }[] = [];
  for (const field of mappedFields) {
    for (const header of listed(map, field)) {
      const index = headers.findIndex((text, at) => sameHeader(text, header) && !fieldByIndex.has(at));
      if (index === -1) notFound.push({ field, header });
      else fieldByIndex.set(index, field);
    }
  }
  const taken = new Set<F>();
  const rivals: { index: number; field: F }[] = [];
  for (const claim of claimsOf(headers, words, map)) {
    if (fieldByIndex.has(claim.index)) continue;
    const field = claim.fields.find((name) => !taken.has(name) || manyColumnFields.includes(name));
    if (field === undefined)
      rivals.push({ index: claim.index, field: claim.fields[0]! }); // a claim has a field
    else {
      taken.add(field);
      fieldByIndex.set(claim.index, field);
    }
  }
  return {
    headerRow: headerIndex + 1,
    columns: headers.map((header, index) => ({ index, header, field: fieldByIndex.get(index) ?? null })),
    rivals,
    notFound,
  };
}
