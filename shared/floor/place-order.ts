// In which order does a person walk along the store's places?

import { chunksOf } from '../kit/chunks.ts';
import { comparePieces, type NamePiece, namePieces } from './address.ts';

interface CutPlace {
  readonly place: string;
  readonly pieces: readonly NamePiece[];
}

const cut = (place: string): CutPlace => ({ place, pieces: namePieces(place) });

function compareCut(a: CutPlace, b: CutPlace): number {
  return a.place === '' || b.place === ''
    ? Number(a.place === '') - Number(b.place === '')
    : comparePieces(a.pieces, b.pieces);
}

/** Walking order of the store: places by name, numbers within them by value (`R2` before `R10`); what has no place (empty) comes last. */
export function comparePlaces(a: string, b: string): number {
  return compareCut(cut(a), cut(b));
}

/** Names that a step puts in order. */
const AT_ONCE = 250;

/**
 * A new list in walking order of the store, as of `comparePlaces`, in steps small enough for a page that draws between them: pieces of the list
 * each for themselves, then two and two into one. Each name is cut once, so that thousands of places cost little.
 */
export function* sortByPlaceSteps<T>(
  items: readonly T[],
  placeOf: (item: T) => string,
): Generator<undefined, readonly T[]> {
  type Placed = CutPlace & { readonly item: T };
  let lists: (readonly Placed[])[] = [];
  for (const piece of chunksOf(items, AT_ONCE)) {
    lists.push(piece.map((item) => ({ item, ...cut(placeOf(item)) })).sort(compareCut));
    yield;
  }
  while (lists.length > 1) {
    const joined: (readonly Placed[])[] = [];
    for (const [one = [], other = []] of chunksOf(lists, 2)) {
      joined.push(joinSorted(one, other));
      yield;
    }
    lists = joined;
  }
  return (lists[0] ?? []).map(({ item }) => item);
}

/** Two lists in order as one; of equal places those of the first list come first. */
function joinSorted<T extends CutPlace>(one: readonly T[], other: readonly T[]): readonly T[] {
  const joined: T[] = [];
  let at = 0;
  for (const each of one) {
    for (let next = other[at]; next !== undefined && compareCut(next, each) < 0; next = other[at]) {
      joined.push(next);
      at += 1;
    }
    joined.push(each);
  }
  return [...joined, ...other.slice(at)];
}
