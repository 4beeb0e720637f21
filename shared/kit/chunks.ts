// A list cut into pieces, where an entry, a page or a call takes only so many.

/** Pieces of at most `most` (>= 1) in order; none for an empty list. */
export function chunksOf<T>(list: readonly T[], most: number): T[][] {
  return Array.from({ length: Math.ceil(list.length / most) }, (_, at) =>
    list.slice(at * most, (at + 1) * most),
  );
}
