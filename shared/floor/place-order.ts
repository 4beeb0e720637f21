// In which order does a person walk along the store's places?

import { compareNatural, comparePieces, namePieces } from './address.ts';

/** Walking order of the store: places by name, numbers within them by value (`R2` before `R10`); what has no place (empty) comes last. */
export function comparePlaces(a: string, b: string): number {
  return a === '' || b === '' ? Number(a === '') - Number(b === '') : compareNatural(a, b);
}

/** A new list in walking order of the store, as of `comparePlaces`; each name is cut once, so that thousands of places cost little. */
export function sortByPlace<T>(items: readonly T[], placeOf: (item: T) => string): T[] {
  return items
    .map((item) => ({ item, place: placeOf(item), pieces: namePieces(placeOf(item)) }))
    .sort((a, b) =>
      a.place === '' || b.place === ''
        ? Number(a.place === '') - Number(b.place === '')
        : comparePieces(a.pieces, b.pieces),
    )
    .map(({ item }) => item);
}
