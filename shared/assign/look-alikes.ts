// Which parts does somebody who loads take for one another? Two numbers that differ in a place or two, and one value in two sizes.
// Method: the fewest characters to change, add, leave out or swap; a rule of our own. Refused: to compare what numbers mean, which each plant says in its own way.

import { charactersApart } from '../floor/look-alikes.ts';

/** A part by what people read on it. `value` and `package`: as the files write them, '' = not stated. */
export interface SeenPart {
  readonly part: string;
  readonly value?: string;
  readonly package?: string;
}

const plain = (text: string) => text.toUpperCase().replace(/[\s._/-]+/g, '');

/**
 * How easily one part is taken for the other: 2 where their numbers are one character apart or they are one value in two sizes, 1 where the numbers are two
 * apart, else 0; also 0 for one part and itself. Capitals, blanks and dashes count nothing.
 */
export function likeness(a: SeenPart, b: SeenPart): 0 | 1 | 2 {
  const [one, other] = [plain(a.part), plain(b.part)];
  if (one === other) return 0;
  const value = plain(a.value ?? '');
  const isOneValue = value !== '' && value === plain(b.value ?? '');
  if (isOneValue && plain(a.package ?? '') !== plain(b.package ?? '')) return 2;
  // Two short names always are a character or two apart: the figures that are left alike must be more than those that differ.
  const differ = charactersApart(one, other, 2);
  if (differ > 2 || Math.max(one.length, other.length) <= 2 * differ) return 0;
  return differ === 1 ? 2 : 1;
}

/**
 * Whether likeness says something here: fewer than half of all pairs are alike. Where most are, as with numbers given one after the other, a person tells them
 * apart by something else. True for fewer than three parts. Quadratic.
 */
export function likenessTells(parts: readonly SeenPart[]): boolean {
  let [pairs, alike] = [0, 0];
  for (const [index, one] of parts.entries())
    for (const other of parts.slice(index + 1)) {
      pairs += 1;
      if (likeness(one, other) > 0) alike += 1;
    }
  return parts.length < 3 || alike * 2 < pairs;
}
