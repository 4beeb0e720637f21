// A wall screen reads the plant's log and writes nothing: known with the first reading of the log, so that no part of the page or of the store
// itself can write before that is known.

/** True where sync's memory, written by this tablet's log alone, says that the tablet was let in as a wall screen; undefined before any sync. */
export function isScreenIn(memory: unknown): boolean {
  const { enrolled } = (memory ?? {}) as { readonly enrolled?: { readonly screen?: boolean } | null };
  return enrolled?.screen === true;
}
