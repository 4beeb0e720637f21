// When two part numbers count as the same, by rules that a site has switched on, and where they differ if not.
// Method: exact first, then each rule alone, then all together, so that the answer names the least that was needed.
// Refused: one normal form for all, which cannot say which rule decided.

/** The rules that a site may switch on. All off = only the very same characters count. */
export interface PartComparison {
  readonly ignoreCase: boolean;
  readonly ignoreSpaces: boolean;
  /** Hyphen-minus and the dashes of Unicode. */
  readonly ignoreDashes: boolean;
  /** Endings that name only the packing, e.g. `-TR`, `/R7`; at most one is taken off each number. */
  readonly packingSuffixes: readonly string[];
}

/** What made two part numbers count as the same; `combined` = more than one rule was needed. */
export const comparisonKinds = ['exact', 'case', 'spaces', 'dashes', 'packing-suffix', 'combined'] as const;

/** One way in which two part numbers can count as the same. */
export type ComparedBy = (typeof comparisonKinds)[number];

const NOTHING: PartComparison = {
  ignoreCase: false,
  ignoreSpaces: false,
  ignoreDashes: false,
  packingSuffixes: [],
};

function normalise(text: string, rules: PartComparison): string {
  let out = text;
  if (rules.ignoreSpaces) out = out.replace(/\s/gu, '');
  if (rules.ignoreDashes) out = out.replace(/[-\u2010-\u2015\u2212]/gu, '');
  return rules.ignoreCase ? out.toUpperCase() : out;
}

/** Takes the longest packing suffix off; a number that is nothing but the suffix stays whole. */
function withoutPacking(text: string, rules: PartComparison): string {
  let cut = 0;
  for (const suffix of rules.packingSuffixes) {
    const ending = normalise(suffix, rules);
    if (ending.length > cut && ending.length < text.length && text.endsWith(ending)) cut = ending.length;
  }
  return cut === 0 ? text : text.slice(0, text.length - cut);
}

function sameUnder(left: string, right: string, rules: PartComparison): boolean {
  const a = withoutPacking(normalise(left, rules), rules);
  return a !== '' && a === withoutPacking(normalise(right, rules), rules);
}

/**
 * Compares two part numbers under a site's rules. Returns which rule made them equal, or null where they are not:
 * `exact` needs none, `combined` more than one. An empty number equals nothing.
 */
export function comparePartNumbers(
  wanted: string,
  found: string,
  comparison: PartComparison,
): ComparedBy | null {
  if (wanted === '' || found === '') return null;
  if (wanted === found) return 'exact';
  const { ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes } = comparison;
  if (ignoreCase && sameUnder(wanted, found, { ...NOTHING, ignoreCase })) return 'case';
  if (ignoreSpaces && sameUnder(wanted, found, { ...NOTHING, ignoreSpaces })) return 'spaces';
  if (ignoreDashes && sameUnder(wanted, found, { ...NOTHING, ignoreDashes })) return 'dashes';
  if (packingSuffixes.length > 0 && sameUnder(wanted, found, { ...NOTHING, packingSuffixes })) {
    return 'packing-suffix';
  }
  return sameUnder(wanted, found, comparison) ? 'combined' : null;
}

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
