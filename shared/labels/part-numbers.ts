// When two part numbers count as the same, by rules that a site has switched on.
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
export const comparisons = ['exact', 'case', 'spaces', 'dashes', 'packing-suffix', 'combined'] as const;

/** One way in which two part numbers can count as the same. */
export type ComparedBy = (typeof comparisons)[number];

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
  return text.slice(0, text.length - cut);
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

/**
 * Keys of a part number under a site's rules: two numbers that count as the same share one at least. For finding those that may be the same among
 * thousands; whether they are says `comparePartNumbers`. Empty for an empty number.
 */
export function comparisonKeys(text: string, comparison: PartComparison): readonly string[] {
  if (text === '') return [];
  const { packingSuffixes } = comparison;
  const all = withoutPacking(normalise(text, comparison), comparison);
  // A suffix that is only one with its dash: the rules together may cut elsewhere than that rule alone.
  const bare = withoutPacking(text, { ...NOTHING, packingSuffixes });
  return [...new Set([all, bare, text])];
}
