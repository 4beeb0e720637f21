// Is a header written over two rows ("Position" above "X" and "Y")?
// Method: two rows beside each other are read as one where together they name clearly more fields than any row alone; the upper row's words
// reach to the right, as merged cells do. Method refused: always joining, which takes a title for a header's first half.

import type { HeaderWords } from './fields.ts';
import {
  cellText,
  matchHeader,
  namesOthers,
  type SheetCell,
  type SheetRows,
  scoreHeaderRow,
} from './headers.ts';

const headerSearchRows = 60;
const clearlyMore = 0.8;

/** The texts of one column: what reaches it from above, both together, and the one that is clear without the other; else both again. */
interface PairedText {
  readonly above: string;
  readonly both: string;
  readonly alone: string;
}

/** Whether the lower text alone names what both name together, and more clearly: "Pins" under "Package". */
function isClearAlone<F extends string>(below: string, both: string, words: HeaderWords<F>): boolean {
  const [alone, joined] = [matchHeader(below, words), matchHeader(both, words)];
  return alone.strength > joined.strength && joined.fields.some((field) => alone.fields.includes(field));
}

/** The texts of two rows column by column; an upper text reaches over the empty cells to its right. */
function pairTexts<F extends string>(
  upper: readonly SheetCell[],
  lower: readonly SheetCell[],
  words: HeaderWords<F>,
): readonly PairedText[] {
  let above = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, at) => {
    const own = cellText(upper[at]);
    const below = cellText(lower[at]);
    if (own !== '') above = own;
    if (below === '') return { above, both: own, alone: own };
    if (above === '' || /\d/.test(below)) return { above, both: below, alone: below };
    const both = `${above} ${below}`;
    return { above, both, alone: isClearAlone(below, both, words) ? below : both };
  });
}

/**
 * One row out of two. The upper word goes where the lower one is clear alone; it stays where it says whose the column is ("Supplier"), and where
 * another column names the same more strongly than both words together: "Pin 1 location X" must not come before "Centroid X" as a mere "X".
 */
function joinTexts<F extends string>(pairs: readonly PairedText[], words: HeaderWords<F>): readonly string[] {
  const strongest = new Map<F, number>();
  for (const { both } of pairs) {
    const { fields, strength } = matchHeader(both, words);
    for (const field of fields) strongest.set(field, Math.max(strength, strongest.get(field) ?? 0));
  }
  return pairs.map(({ above, both, alone }) => {
    if (alone === both || namesOthers(above)) return both;
    const { strength } = matchHeader(both, words);
    const isTaken = matchHeader(alone, words).fields.some((field) => (strongest.get(field) ?? 0) > strength);
    return isTaken ? both : alone;
  });
}

/** The rows with a header of two rows put into the lower one; the same rows where there is none. Row numbers stay. */
export function joinHeaderRows<F extends string>(rows: SheetRows, words: HeaderWords<F>): SheetRows {
  let single = 0;
  let best = 0;
  let bestScore = 0;
  const last = Math.min(rows.length, headerSearchRows);
  for (let at = 0; at < last; at++) {
    const [row = [], next] = [rows[at], rows[at + 1]];
    single = Math.max(single, scoreHeaderRow(row, words));
    const isPair =
      row.length > 1 &&
      next !== undefined &&
      next.length > 1 &&
      next.every((cell) => !/^[+-]?\d/.test(cellText(cell)));
    if (!isPair) continue;
    const texts = pairTexts(row, next, words).map(({ alone }) => alone);
    const score = scoreHeaderRow(texts, words);
    if (score > bestScore) {
      bestScore = score;
      best = at;
    }
  }
  if (bestScore < single + clearlyMore) return rows;
  const joined = joinTexts(pairTexts(rows[best] ?? [], rows[best + 1] ?? [], words), words);
  return rows.map((row, index) => (index === best ? [] : index === best + 1 ? joined : row));
}
