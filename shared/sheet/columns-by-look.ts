// Which column holds which field, where a header's word may mean two things or the header lies?
// Method: every pair of column and field gets a score from the header's word and from what stands in the column; the best pairs are taken
// first. A person's own choice comes before. Method refused: the header alone, which takes designators for part numbers where a
// program heads its designators "Part".

import type { ColumnLook } from './column-look.ts';
import { lookAtColumns } from './column-look.ts';
import { designatorKey, parseDesignators } from './designators.ts';
import type { HeaderWords } from './fields.ts';
import {
  type ColumnGuess,
  type ColumnMap,
  cellText,
  findHeaderRow,
  listed,
  matchHeader,
  type SheetColumn,
  type SheetRows,
  sameHeader,
} from './headers.ts';

/** The columns with a part column that names only kinds taken for what it is; the others as they are. */
export function demoteGeneric<
  G extends { readonly headerRow: number; readonly columns: readonly SheetColumn<string>[] },
>(rows: SheetRows, guess: G, isChosen: boolean): { readonly guess: G; readonly header: string | null } {
  const part = guess.columns.find(({ field }) => field === 'part');
  const value = guess.columns.find(({ field }) => field === 'value');
  if (isChosen || part === undefined || value === undefined) return { guess, header: null };
  if (!isGenericPart(rows, guess.headerRow, { part: part.index, value: value.index }))
    return { guess, header: null };
  const hasDevice = guess.columns.some(({ field }) => field === 'device');
  const columns = guess.columns.map((column) =>
    column === part ? { ...column, field: hasDevice ? null : 'device' } : column,
  );
  return { guess: { ...guess, columns }, header: part.header };
}

/** A guess with the columns that were taken by what stands in them, against or without their header's word. */
export interface LookedGuess<F extends string> extends ColumnGuess<F> {
  readonly looks: readonly ColumnLook[];
  readonly byLook: readonly { readonly index: number; readonly field: F }[];
}

const mostHeaderCharacters = 200;
const wholePhrase = 100;
const against = -14;

/** How far what stands in a column speaks for a field (above 0) or against it. */
function lookScore(field: string, look: ColumnLook, place: ColumnLook | null): number {
  if (look.entries.length === 0) return field === 'designators' || field === 'designator' ? against : -1;
  const isDesignators = look.designators >= 0.7;
  switch (field) {
    case 'designator':
    case 'designators':
      return isDesignators ? 6 : look.designators < 0.3 ? against : 0;
    case 'part':
      if (look.isSequence && look.integers > 0.9 && look.entries.length > 2) return -9;
      return repeats(look, place) || (place === null && look.single >= 0.9 && look.entries.length > 2)
        ? against
        : 0;
    case 'item':
      return look.isSequence ? 4 : -5;
    case 'quantity':
      return look.numbers >= 0.7 ? 3 : -6;
    case 'x':
    case 'y':
      return look.numbers >= 0.6 ? 2 : -12;
    case 'place':
      return look.entries.filter((text) => placePair(text) !== null).length > look.entries.length / 2
        ? 6
        : against;
    case 'rotation':
      return look.numbers >= 0.6 || look.entries.some((text) => /^[a-z]{0,2}\d/i.test(text)) ? 1 : -12;
    case 'side':
      return look.sides >= 0.7 ? 4 : look.numbers >= 0.9 ? 0 : -4;
    case 'mount':
      return look.mounts >= 0.7 ? 6 : -12;
    case 'value':
    case 'device':
    case 'description':
      return repeats(look, place) || look.mounts >= 0.9 || (look.isSequence && look.integers > 0.9)
        ? against
        : 0;
    case 'package':
      return look.packages > 0.5 ? 2 : 0;
    default:
      return 0;
  }
}

/** Whether a column repeats the designators that stand in another one. */
function repeats(look: ColumnLook, place: ColumnLook | null): boolean {
  if (place === null || place.index === look.index || look.single < 0.8) return false;
  const known = new Set(place.entries.flatMap(parseDesignators).map(designatorKey));
  const same = look.entries.filter((text) => known.has(designatorKey(text))).length;
  return same >= look.entries.length * 0.7;
}

/** Two coordinates in one cell ("(1250 300)", "12.5; 8.25"); null where the cell is no such pair. */
export function placePair(text: string): readonly [string, string] | null {
  const match = /^[([]?\s*([+-]?[\d.]+)(?:\s*[;,]\s*|\s+)([+-]?[\d.]+)\s*[)\]]?$/.exec(text);
  return match?.[1] !== undefined && match[2] !== undefined ? [match[1], match[2]] : null;
}

/**
 * Whether a column headed as part holds names of kinds out of a library rather than part numbers: most of its entries stand beside several different
 * values ("RESISTOR" beside 10k and 4k7).
 */
export function isGenericPart(
  rows: SheetRows,
  from: number,
  columns: { readonly part: number; readonly value: number },
): boolean {
  const valuesByPart = new Map<string, Set<string>>();
  let filled = 0;
  for (const row of rows.slice(from, from + genericRows)) {
    const [part, value] = [
      cellText(row[columns.part]).toUpperCase(),
      cellText(row[columns.value]).toUpperCase(),
    ];
    if (part === '' || value === '') continue;
    filled++;
    valuesByPart.set(part, (valuesByPart.get(part) ?? new Set<string>()).add(value));
  }
  const several = [...valuesByPart.values()].filter((values) => values.size > 1).length;
  return filled >= 4 && several > valuesByPart.size / 2;
}

const genericRows = 2000;

interface Pair<F extends string> {
  readonly index: number;
  readonly field: F;
  readonly score: number;
  readonly rivals: number;
}

/** The column that holds designators best, by its own look; null where none does. */
function bestDesignators(looks: readonly ColumnLook[], taken: ReadonlySet<number>): ColumnLook | null {
  let best: ColumnLook | null = null;
  for (const look of looks) {
    if (taken.has(look.index) || look.designators < 0.8) continue;
    if (look.numbers > 0.5 || look.packages > 0.5) continue;
    const isBetter =
      best === null || look.designators * (1 + look.distinct) > best.designators * (1 + best.distinct);
    if (isBetter) best = look;
  }
  return best;
}

/**
 * Finds the header row and says what each column holds, by header words and by look. `place`: the field that holds designators; it is found by its look
 * where no header names it. Never fails.
 */
export function guessByLook<F extends string>(
  rows: SheetRows,
  words: HeaderWords<F>,
  options: {
    readonly map?: ColumnMap<F>;
    readonly place: F;
    readonly headerIndex?: number;
    readonly many?: readonly string[];
  },
): LookedGuess<F> {
  const map = options.map ?? ({} as ColumnMap<F>); // an empty map is a map of any fields
  const mapped = Object.keys(map) as F[]; // keys of a map by field
  const chosen = mapped.flatMap((field) => listed(map, field));
  const headerIndex = options.headerIndex ?? findHeaderRow(rows, words, chosen);
  const headerRow = rows[headerIndex] ?? [];
  const width = headerRow.length;
  const looks = lookAtColumns(rows, headerIndex + 1).slice(0, width);
  const headers = Array.from({ length: width }, (_, at) =>
    cellText(headerRow[at]).slice(0, mostHeaderCharacters),
  );
  const fieldByIndex = new Map<number, F>();
  const notFound: { field: F; header: string }[] = [];
  for (const field of mapped) {
    for (const header of listed(map, field)) {
      const index = headers.findIndex((text, at) => sameHeader(text, header) && !fieldByIndex.has(at));
      if (index === -1) notFound.push({ field, header });
      else fieldByIndex.set(index, field);
    }
  }
  const isOpen = (field: F) => map[field] === undefined;
  const byLook = claim(
    { headers, looks, words, isOpen, place: options.place, many: options.many ?? [] },
    fieldByIndex,
  );
  return {
    headerRow: headerIndex + 1,
    columns: headers.map((header, index) => ({ index, header, field: fieldByIndex.get(index) ?? null })),
    rivals: [],
    notFound,
    looks,
    byLook,
  };
}

/** Gives columns to fields, best pairs first; returns those taken by look alone. */
function claim<F extends string>(
  context: {
    readonly headers: readonly string[];
    readonly looks: readonly ColumnLook[];
    readonly words: HeaderWords<F>;
    readonly isOpen: (field: F) => boolean;
    readonly place: F;
    readonly many: readonly string[];
  },
  fieldByIndex: Map<number, F>,
): readonly { index: number; field: F }[] {
  const { headers, looks, words, isOpen, place } = context;
  const matches = headers.map((header) => matchHeader(header, words));
  const named = pairsOf(matches, looks, isOpen, null).filter((pair) => pair.field === place);
  const chosenPlace = [...fieldByIndex].find(([, field]) => field === place)?.[0];
  const bestNamed = chosenPlace ?? named.filter(({ score }) => score > 0)[0]?.index;
  const lookedPlace = isOpen(place) ? bestDesignators(looks, new Set(fieldByIndex.keys())) : null;
  const placeLook = (bestNamed === undefined ? lookedPlace : looks[bestNamed]) ?? null;
  const byLook: { index: number; field: F }[] = [];
  if (bestNamed === undefined && lookedPlace !== null) {
    fieldByIndex.set(lookedPlace.index, place);
    byLook.push({ index: lookedPlace.index, field: place });
  }
  const taken = new Set(fieldByIndex.values());
  for (const { index, field, score } of pairsOf(matches, looks, isOpen, placeLook)) {
    if (score <= 0 || fieldByIndex.has(index)) continue;
    if (taken.has(field) && !context.many.includes(field)) continue;
    // A second column of designators is one only where it is full of them.
    if (taken.has(field) && field === place && (looks[index]?.designators ?? 0) < 0.7) continue;
    taken.add(field);
    fieldByIndex.set(index, field);
  }
  return byLook;
}

function pairsOf<F extends string>(
  matches: readonly ReturnType<typeof matchHeader<F>>[],
  looks: readonly ColumnLook[],
  isOpen: (field: F) => boolean,
  place: ColumnLook | null,
): readonly Pair<F>[] {
  const pairs: Pair<F>[] = [];
  const isFilled = looks.some(({ entries }) => entries.length > 0);
  for (const [index, { fields, strength }] of matches.entries()) {
    const look = looks[index];
    const base = strength >= wholePhrase ? 10 : strength / 10;
    for (const [rank, field] of fields.entries()) {
      if (!isOpen(field)) continue;
      const shown = look === undefined || !isFilled ? 0 : lookScore(field, look, place);
      pairs.push({ index, field, score: base - rank / 2 + shown, rivals: fields.length });
    }
  }
  return pairs.sort((a, b) => b.score - a.score || a.rivals - b.rivals);
}
