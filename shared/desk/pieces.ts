// A label whose part, quantity and lot are bar codes of their own, which a scanner sends one by one: what has come so far, and
// what is still to come. Method: the code with the part opens such a label (data identifiers of ANS MH10.8.2 in front); codes
// join it until it says quantity and lot too, or a person says that this is all. Refused: to open it with any code, since what
// trails from the label before would then slip its lot or its id to the next reel; and a wait of some seconds after each code,
// since a verdict would depend on how fast somebody scans.

import type { LabelReading } from '../labels/reading.ts';
import { splitSeparateCode } from '../labels/separate-codes.ts';

const partIds: ReadonlySet<string | null> = new Set(['P', '1P']);

/** True where every code has an identifier in front, and no site rule had a say. */
export function arePieces(
  codes: readonly string[],
  { rules, unidentified, ambiguous }: LabelReading,
): boolean {
  if (rules.length > 0 || unidentified.length > 0 || ambiguous.length > 0) return false;
  return codes.every((text) => splitSeparateCode(text).id !== null);
}

/**
 * The codes of the label so far with those that came now. A code that came before counts once; null where the new ones are of
 * another label: a part is named anew, an identifier would stand there twice, or a code has none.
 */
export function joinPieces(before: readonly string[], codes: readonly string[]): readonly string[] | null {
  const added = codes.filter((text) => !before.includes(text) || partIds.has(splitSeparateCode(text).id));
  const ids = new Set(before.map((text) => splitSeparateCode(text).id));
  const isOther = (id: string | null) => id === null || ids.has(id);
  if (ids.has(null)) return null;
  return added.some((text) => isOther(splitSeparateCode(text).id)) ? null : [...before, ...added];
}

/** True where codes that come now are of a label that has been judged already: identifiers that it had not named, and no new part. */
export function continuesLabel(judged: readonly string[], codes: readonly string[]): boolean {
  if (judged.length === 0 || codes.length === 0 || codes.some((text) => splitSeparateCode(text).id === null))
    return false;
  return joinPieces(judged, codes) !== null;
}
