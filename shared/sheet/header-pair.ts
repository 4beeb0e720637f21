// Is a header written over two rows ("Position" above "X" and "Y")?
// Method: two rows beside each other are read as one where together they name clearly more fields than any row alone; the upper row's words
// reach to the right, as merged cells do. Method refused: always joining, which takes a title for a header's first half.

import type { HeaderWords } from './fields.ts';
import { cellText, matchHeader, type SheetCell, type SheetRows, scoreHeaderRow } from './headers.ts';

const headerSearchRows = 60;
const clearlyMore = 0.8;

/** Whether the lower text alone names what both name together, and more clearly: "Pins" under "Package". */
function isClearAlone<F extends string>(below: string, both: string, words: HeaderWords<F>): boolean {
  const [alone, joined] = [matchHeader(below, words), matchHeader(both, words)];
  return alone.strength > joined.strength && joined.fields.some((field) => alone.fields.includes(field));
}

/** One row out of two: each column's upper and lower text; an upper text reaches over the empty cells to its right. */
function joinRows<F extends string>(
  upper: readonly SheetCell[],
  lower: readonly SheetCell[],
  words: HeaderWords<F>,
): readonly string[] {
  let above = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, at) => {
    const own = cellText(upper[at]);
    const below = cellText(lower[at]);
    if (own !== '') above = own;
    if (below === '') return own;
    const both = `${above} ${below}`;
    const isBelowEnough = above === '' || /\d/.test(below) || isClearAlone(below, both, words);
    return isBelowEnough ? below : both;
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
    const score = scoreHeaderRow(joinRows(row, next, words), words);
    if (score > bestScore) {
      bestScore = score;
      best = at;
    }
  }
  if (bestScore < single + clearlyMore) return rows;
  const joined = joinRows(rows[best] ?? [], rows[best + 1] ?? [], words);
  return rows.map((row, index) => (index === best ? [] : index === best + 1 ? joined : row));
}
