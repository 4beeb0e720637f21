// Which rows of a bill does a variant build?
// Method: either a column for each variant with crosses or words in it, or one column with the names of the variants that take the part; an
// empty cell of the latter means all of them. Where nobody says which variant is built, a row in which they differ is an error.

import type { ColumnLook } from './column-look.ts';
import { isNotFittedMark, parseFitted } from './not-placed.ts';

/** A column that may belong to variants: its number and header. */
export interface VariantColumn {
  readonly index: number;
  readonly header: string;
  readonly look: ColumnLook;
}

/** What is known of a bill's variants. */
export interface Variants {
  readonly names: readonly string[];
  /** True/false = fitted or not in the variant built; `open` = the variants differ and none is chosen. */
  readonly isFitted: (cell: (index: number) => string) => boolean | 'open';
}

const flagWords = /^(?:x|✓|✔|•|●|y|yes|n|no|j|ja|nein|s|si|sí|o|oui|non|true|false|0|1|-|\+)$/i;
const isFlag = (text: string) => flagWords.test(text) || isNotFittedMark(text) || parseFitted(text) !== null;

/** Whether a column whose header is not known holds crosses or marks for a variant. */
export function looksLikeVariant(look: ColumnLook): boolean {
  const words = look.entries.filter((text) => !/^\d+$/.test(text));
  return look.entries.length > 0 && words.length === look.entries.length && look.entries.every(isFlag);
}

const bare = (name: string) =>
  name
    .toLowerCase()
    .replace(/\b(?:assembly|build|variants?|variante|fitted|bestueckt|bestückt|qty)\b/g, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, '');

/** Whether a person's name for a variant is this one. */
function isNamed(name: string, wanted: string): boolean {
  return bare(name) === bare(wanted);
}

const splitNames = (text: string) =>
  text
    .split(/[,;/|+&\s]+/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
const allWords = /^(?:all|any|base|default|common|every|\*|alle|todas?|todos|tous|toutes)$/i;

/** Makes sense of the variant columns; null where there are none, `not-found` where the wanted one is not among them. */
export function readVariants(
  columns: readonly VariantColumn[],
  wanted: string | undefined,
): Variants | 'not-found' | null {
  if (columns.length === 0) return null;
  const flags = columns.filter(({ look }) => look.entries.every(isFlag));
  if (flags.length === columns.length) {
    const names = flags.map(({ header }) => header);
    const chosen = wanted === undefined ? flags : flags.filter(({ header }) => isNamed(header, wanted));
    if (chosen.length === 0) return 'not-found';
    const blankIsNo = flags.some(({ look }) => look.entries.some((text) => parseFitted(text) === true));
    return {
      names,
      isFitted: (cell) => {
        const said = chosen.map(({ index }) =>
          cell(index) === '' ? !blankIsNo : (parseFitted(cell(index)) ?? true),
        );
        return said.every((one) => one === said[0]) ? said[0] === true : 'open';
      },
    };
  }
  return namedVariants(columns, wanted);
}

function namedVariants(
  columns: readonly VariantColumn[],
  wanted: string | undefined,
): Variants | 'not-found' | null {
  const entries = columns.flatMap(({ look }) => look.entries).filter((text) => !isNotFittedMark(text));
  const names = [...new Set(entries.flatMap(splitNames))].filter((name) => !allWords.test(name));
  if (wanted !== undefined && !names.some((name) => isNamed(name, wanted))) return 'not-found';
  return {
    names,
    isFitted: (cell) => {
      const said = columns.flatMap(({ index }) => splitNames(cell(index)));
      if (columns.some(({ index }) => isNotFittedMark(cell(index)))) return false;
      if (said.length === 0 || said.some((name) => allWords.test(name))) return true;
      if (wanted !== undefined) return said.some((name) => isNamed(name, wanted));
      return names.length < 2 || names.every((name) => said.includes(name)) ? true : 'open';
    },
  };
}
