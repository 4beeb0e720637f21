// A list that is made anew with every entry, and is the old one while it holds the same things: so that what is computed from it is computed once.
// Method: things of the floor are replaced where they change, never changed. Refused: a count of changes, which grows with every scan of a shift.

import { useRef } from 'preact/hooks';

/** The list before, where both hold the same things in the same order; else the new one. Cost: their length. */
export function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  return before.length === now.length && now.every((each, at) => each === before[at]) ? before : now;
}

/** A list that keeps its identity from drawing to drawing while it holds the same things. */
export function useSameList<T>(now: readonly T[]): readonly T[] {
  const kept = useRef(now);
  kept.current = sameList(kept.current, now);
  return kept.current;
}
