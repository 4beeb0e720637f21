// Who vouches for an entry? A tablet signs the end of its chain, a head, and not each entry: an entry's hash covers the hash of the one
// before it, so that a signature of one speaks for all before it. A head is the signature of the entry that it stands at, whose hash covers
// tablet, life, number and moment: it needs no form of its own, and whoever reads a signed entry reads it.
// Refused: a head beside the entries, in a form that no earlier reader, export or store knows.

import type { Entry } from './entry.ts';

/** How a sealed entry's text ends as long as it has no signature of its own. */
export const unsignedEnd = '"sig":null}';

/** What is needed of an entry to follow its chain. */
export type Link = Pick<Entry, 'tablet' | 'epoch' | 'seq' | 'prev' | 'hash' | 'sig'>;

/** True where `next` is sealed onto `entry`. That the hash of `next` is that of its text is for the caller to know. */
export function goesOn(entry: Link, next: Link): boolean {
  return (
    next.prev === entry.hash &&
    next.seq === entry.seq + 1 &&
    next.tablet === entry.tablet &&
    next.epoch === entry.epoch
  );
}

/** How many entries from the start of a list its last signed one closes; 0 where none is signed. */
export function closedBy<E>(entries: readonly E[], isSigned: (entry: E) => boolean): number {
  let count = entries.length;
  while (count > 0 && !isSigned(entries[count - 1] as E)) count -= 1; // within the list
  return count;
}

/**
 * Finds for entries of one chain, ascending, whose signature vouches for each, its own first; null where none does. `holds`: whether the signature of an entry that has one is its tablet's;
 * `isWhole`: whether an entry's text is what its hash says. One whose own signature does not hold is vouched for by none. Cost: one step an entry.
 */
export function vouchersOf<E extends Link>(
  chain: readonly E[],
  { holds, isWhole }: { readonly holds: (entry: E) => boolean; readonly isWhole: (entry: E) => boolean },
): readonly (E | null)[] {
  const vouchers: (E | null)[] = chain.map(() => null);
  let speaker: E | null = null;
  for (let at = chain.length - 1; at >= 0; at -= 1) {
    const entry = chain[at] as E; // within the list
    const next = chain[at + 1];
    if (speaker !== null && !(next && goesOn(entry, next) && isWhole(next))) speaker = null;
    if (entry.sig === null) vouchers[at] = speaker;
    else if (holds(entry)) {
      speaker = entry;
      vouchers[at] = entry;
    }
  }
  return vouchers;
}
