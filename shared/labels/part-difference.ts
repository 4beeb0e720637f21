// Where do two part numbers differ? For the eye of the person who holds both labels.

/** One stretch of a comparison: the same in both, or different. Either side may be empty where the other has more. */
export interface DifferencePiece {
  readonly same: boolean;
  readonly wanted: string;
  readonly found: string;
}

// Longer texts are not part numbers; the table below would grow with the product of the lengths.
const LONGEST_ALIGNED = 200;

/**
 * Lines two part numbers up so that a screen can make the differing characters stand out. Method: the alignment with
 * the fewest changed, missing and added characters (Wagner and Fischer, J. ACM 21, 1974). The pieces' `wanted` joined
 * give `wanted`, their `found` joined give `found`. Texts over 200 characters come back as one differing piece.
 */
export function differingCharacters(wanted: string, found: string): readonly DifferencePiece[] {
  if (wanted === found) return wanted === '' ? [] : [{ same: true, wanted, found }];
  const left = Array.from(wanted);
  const right = Array.from(found);
  if (left.length > LONGEST_ALIGNED || right.length > LONGEST_ALIGNED)
    return [{ same: false, wanted, found }];
  const costs = alignmentCosts(left, right);
  const width = right.length + 1;
  const cost = (row: number, column: number) => costs[row * width + column] ?? 0;
  const pieces: DifferencePiece[] = [];
  let row = 0;
  let column = 0;
  while (row < left.length || column < right.length) {
    const l = left[row];
    const r = right[column];
    const here = cost(row, column);
    if (l !== undefined && l === r && cost(row + 1, column + 1) === here) {
      push(pieces, true, l, r);
      row += 1;
      column += 1;
    } else if (l !== undefined && r !== undefined && cost(row + 1, column + 1) + 1 === here) {
      push(pieces, false, l, r);
      row += 1;
      column += 1;
    } else if (l !== undefined && cost(row + 1, column) + 1 === here) {
      push(pieces, false, l, '');
      row += 1;
    } else {
      push(pieces, false, '', r ?? '');
      column += 1;
    }
  }
  return pieces;
}

/** Changes needed from every pair of positions to the ends, row by row. */
function alignmentCosts(left: readonly string[], right: readonly string[]): Uint16Array {
  const width = right.length + 1;
  const costs = new Uint16Array((left.length + 1) * width);
  for (let row = left.length; row >= 0; row -= 1) {
    for (let column = right.length; column >= 0; column -= 1) {
      const at = row * width + column;
      if (row === left.length) costs[at] = right.length - column;
      else if (column === right.length) costs[at] = left.length - row;
      else {
        const changed = (costs[at + width + 1] ?? 0) + (left[row] === right[column] ? 0 : 1);
        costs[at] = Math.min(changed, 1 + (costs[at + width] ?? 0), 1 + (costs[at + 1] ?? 0));
      }
    }
  }
  return costs;
}

function push(pieces: DifferencePiece[], same: boolean, wanted: string, found: string): void {
  const last = pieces[pieces.length - 1];
  if (last === undefined || last.same !== same) pieces.push({ same, wanted, found });
  else pieces[pieces.length - 1] = { same, wanted: last.wanted + wanted, found: last.found + found };
}
