// In which order does a person walk along the store's places?

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

/** A new list in walking order of the store, as of `comparePlaces`; each name is cut once, so that thousands of places cost little. */
export function sortByPlace<T>(items: readonly T[], placeOf: (item: T) => string): T[] {
  return items
    .map((item) => ({ item, ...cut(placeOf(item)) }))
    .sort(compareCut)
    .map(({ item }) => item);
}
