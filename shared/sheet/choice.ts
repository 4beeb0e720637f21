// How is a person's choice of columns written down, and found again for the next sheet with the same header?
// Method: the whole header line names the choice; the choice says for every field which header holds it, or that none does, so that
// nothing is guessed anew beside it. Method refused: remembering single headers, as the same word means two things in two exports.

import { manyColumnFields } from './fields.ts';
import type { ColumnMap, SheetColumn } from './headers.ts';

/** A choice as it is kept: field -> header; several headers on lines of their own, '' = no column. */
export type KeptChoice = Readonly<Record<string, string>>;

/** Names a header line: the same headers in the same order have the same key, whatever their case. */
export function headerKey(columns: readonly Pick<SheetColumn<string>, 'header'>[]): string {
  return columns.map(({ header }) => header.toLowerCase()).join('\t');
}

/**
 * The columns with one of them taken for another field. A field that takes one column leaves the column that had it unused; `many`: fields that
 * take several, those of a sheet where nothing else is said.
 */
export function chooseColumn<C extends SheetColumn<string>>(
  columns: readonly C[],
  index: number,
  field: C['field'],
  many: readonly string[] = manyColumnFields,
): readonly C[] {
  return columns.map((column) => {
    if (column.index === index) return { ...column, field };
    const gives = field !== null && column.field === field && !many.includes(field);
    return gives ? { ...column, field: null } : column;
  });
}

/** The columns as a map that leaves nothing to guess: every field of `fields` has its headers, or null. */
export function columnsToMap<F extends string>(
  columns: readonly SheetColumn<F>[],
  fields: readonly F[],
): ColumnMap<F> {
  const map: Partial<Record<F, readonly string[] | null>> = {};
  for (const field of fields) {
    const headers = columns.filter((column) => column.field === field).map(({ header }) => header);
    map[field] = headers.length === 0 ? null : headers;
  }
  return map;
}

/** A map as it is kept. */
export function mapToKept<F extends string>(map: ColumnMap<F>): KeptChoice {
  const kept: Record<string, string> = {};
  for (const [field, chosen] of Object.entries<string | readonly string[] | null | undefined>(map)) {
    kept[field] = [chosen].flat().join('\n'); // nothing for null
  }
  return kept;
}

/** A kept choice as a map; fields that this version does not know are left out, fields that it does not name are guessed. */
export function keptToMap<F extends string>(kept: KeptChoice, fields: readonly F[]): ColumnMap<F> {
  const map: Partial<Record<F, readonly string[] | null>> = {};
  for (const field of fields) {
    const headers = kept[field];
    if (headers !== undefined) map[field] = headers === '' ? null : headers.split('\n');
  }
  return map;
}

/** The choices with one more, the newest last, and the oldest dropped beyond `most`. */
export function keepChoice(
  choices: Readonly<Record<string, KeptChoice>>,
  added: { readonly key: string; readonly kept: KeptChoice },
  most = 40,
): Readonly<Record<string, KeptChoice>> {
  const others = Object.entries(choices).filter(([key]) => key !== added.key);
  return Object.fromEntries([...others, [added.key, added.kept] as const].slice(-most));
}
