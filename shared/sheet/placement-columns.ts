// Which column of a placement file holds what: by its header, or by what stands in it where the file has none?
// Method: designators by their look, sides by their words, angles and coordinates among the numbers, packages by their names; the text column
// that is left is the value. Method refused: a fixed order, since every program writes another.

import { type ColumnLook, lookAtColumns } from './column-look.ts';
import { guessByLook, type LookedGuess } from './columns-by-look.ts';
import { fewestFieldsKnown, uncomment } from './comment.ts';
import { type PlacementField, placementHeaderWords } from './fields.ts';
import {
  type ColumnMap,
  cellText,
  findHeaderRow,
  listed,
  matchHeader,
  type SheetRows,
  sameHeader,
  scoreHeaderRow,
} from './headers.ts';
import { columnLetters } from './source.ts';

/** A guess, and whether the file has no header that is understood. */
export interface PlacementGuess extends LookedGuess<PlacementField> {
  readonly isHeaderless: boolean;
}

const headerSearchRows = 60;

/** Fields by column out of the looks alone; null where no column holds designators or nothing says where they are or what. */
export function fieldsByLook(looks: readonly ColumnLook[]): ReadonlyMap<number, PlacementField> | null {
  const fields = new Map<number, PlacementField>();
  const best = looks
    .filter((look) => look.single >= 0.7 && look.numbers < 0.3)
    .sort((a, b) => b.single * (1 + b.distinct) - a.single * (1 + a.distinct))[0];
  if (best === undefined) return null;
  fields.set(best.index, 'designator');
  nameOthers(looks, fields);
  return fields.size < 3 ? null : fields;
}

/** Names the columns that have no field yet: side, mirror, mounting, coordinates, angle, package, value. */
function nameOthers(looks: readonly ColumnLook[], fields: Map<number, PlacementField>): void {
  const open = (look: ColumnLook) => look.entries.length > 0 && !fields.has(look.index);
  const has = (field: PlacementField) => [...fields.values()].includes(field);
  const side = has('side') ? undefined : looks.find((look) => open(look) && look.sides >= 0.8);
  if (side !== undefined) fields.set(side.index, 'side');
  const mirror = looks.find(
    (look) => open(look) && look.entries.every((text) => /^m(?:irror(?:ed)?)?$/i.test(text)),
  );
  if (mirror !== undefined && !has('side')) fields.set(mirror.index, 'mirrored');
  const mount = looks.find((look) => open(look) && look.mounts >= 0.8);
  if (mount !== undefined) fields.set(mount.index, 'mount');
  const numbers = looks.filter(
    (look) => open(look) && look.numbers >= 0.9 && !(look.isSequence && look.integers > 0.9),
  );
  // Coordinates stand side by side, the angle behind them; where a column's numbers are the only ones that are all angles, it is that one.
  const angles = numbers.filter((look) => look.angles >= 0.9);
  const angle = numbers.length < 3 ? undefined : angles.length === 1 ? angles[0] : numbers[2];
  const [x, y] = numbers.filter((look) => look !== angle);
  if (!has('x') && x !== undefined && y !== undefined) {
    fields.set(x.index, 'x').set(y.index, 'y');
    if (angle !== undefined) fields.set(angle.index, 'rotation');
  }
  nameTexts(
    looks.filter((look) => open(look) && look.numbers < 0.9),
    fields,
  );
}

/** Among the text columns left, the one with the most package names is the package, the first other one the value. */
function nameTexts(texts: readonly ColumnLook[], fields: Map<number, PlacementField>): void {
  const packages = texts.filter((look) => look.packages > 0.4).sort((a, b) => b.packages - a.packages)[0];
  const has = (field: PlacementField) => [...fields.values()].includes(field);
  if (!has('package') && packages !== undefined && (texts.length > 1 || packages.packages > 0.8))
    fields.set(packages.index, 'package');
  const value = texts.find((look) => !fields.has(look.index));
  if (!has('value') && value !== undefined) fields.set(value.index, 'value');
}

/** The best score of any row as a placement file's header. */
export function placementHeaderScore(rows: SheetRows): number {
  let best = 0;
  for (const row of rows.slice(0, headerSearchRows)) {
    if (row.length > 1) best = Math.max(best, scoreHeaderRow(uncomment(row), placementHeaderWords));
  }
  return best;
}

/** The row of headers in words that are not known, above the first row with a designator; 0 = none (rows count from 1). */
function unknownHeaderRow(rows: SheetRows, looks: readonly ColumnLook[], place: number): number {
  const first = rows.findIndex(
    (row) => looks[place]?.entries[0] !== undefined && cellText(row[place]) !== '',
  );
  const row = rows[first] ?? [];
  const isData = row.some((cell) => /^[+-]?\d+[.,]?\d*/.test(cellText(cell)));
  return first >= 0 && !isData ? first + 1 : 0;
}

/** Where no header names a part or a value, columns whose headers are not known are named by their looks. */
function nameUnknown(guess: LookedGuess<PlacementField>, map: ColumnMap<PlacementField>): PlacementGuess {
  const known = new Set(guess.columns.map(({ field }) => field));
  const isNamed = (['part', 'value', 'device'] as const).some(
    (field) => known.has(field) || map[field] !== undefined,
  );
  if (isNamed || !known.has('designator')) return { ...guess, isHeaderless: false };
  const isUnknown = (index: number) =>
    matchHeader(guess.columns[index]?.header ?? '', placementHeaderWords).fields.length === 0;
  const fields = new Map<number, PlacementField>();
  for (const { index, field } of guess.columns) if (field !== null) fields.set(index, field);
  const before = new Set(fields.keys());
  nameOthers(
    guess.looks.filter(({ index }) => isUnknown(index)),
    fields,
  );
  const added = [...fields]
    .filter(([index]) => !before.has(index))
    .map(([index, field]) => ({ index, field }));
  return {
    ...guess,
    columns: guess.columns.map((column) => ({ ...column, field: fields.get(column.index) ?? null })),
    byLook: [...guess.byLook, ...added],
    isHeaderless: false,
  };
}

/** Finds header and columns of a placement file's rows; a person's choice comes first. */
export function guessPlacementColumns(rows: SheetRows, map: ColumnMap<PlacementField> = {}): PlacementGuess {
  const mapped = Object.keys(map) as PlacementField[]; // keys of a map by field
  const chosen = mapped.flatMap((field) => listed(map, field));
  const headerIndex = findHeaderRow(rows, placementHeaderWords, chosen);
  const header = rows[headerIndex] ?? [];
  const isMapped = chosen.some((wanted) => header.some((cell) => sameHeader(cellText(cell), wanted)));
  const score = scoreHeaderRow(header, placementHeaderWords);
  const guessed = () =>
    nameUnknown(guessByLook(rows, placementHeaderWords, { map, place: 'designator', headerIndex }), map);
  if (isMapped || score >= fewestFieldsKnown) return guessed();
  const looks = lookAtColumns(rows, 0);
  const fields = fieldsByLook(looks);
  if (fields === null) return guessed();
  const place = [...fields].find(([, field]) => field === 'designator')?.[0] ?? 0;
  const headerRow = unknownHeaderRow(rows, looks, place);
  const names = looks.map(
    ({ index }) => cellText(rows[headerRow - 1]?.[index]) || `(${columnLetters(index)})`,
  );
  const byChoice = new Map<number, PlacementField>();
  for (const field of mapped) {
    for (const wanted of listed(map, field)) {
      const index = names.findIndex((name) => sameHeader(name, wanted));
      if (index >= 0) byChoice.set(index, field);
    }
  }
  const fieldOf = (index: number) => {
    const field = byChoice.get(index) ?? fields.get(index) ?? null;
    return field !== null && !byChoice.has(index) && map[field] !== undefined ? null : field;
  };
  return {
    headerRow,
    columns: names.map((name, index) => ({ index, header: name, field: fieldOf(index) })),
    rivals: [],
    notFound: [],
    looks,
    byLook: [...fields].map(([index, field]) => ({ index, field })),
    isHeaderless: true,
  };
}
