// A wall screen reads the plant's log and writes nothing: known from the start, so that no part of the page can write before that is known.

import type { LogDatabase } from './database.ts';
import type { Store } from './store.ts';

/** True where this tablet was let in as a wall screen. Rejects where the database cannot be read. */
export async function isWallScreen({ meta }: Pick<LogDatabase, 'meta'>): Promise<boolean> {
  const memory = (await meta.get('sync'))?.value as
    | { readonly enrolled?: { readonly screen?: boolean } | null }
    | undefined; // sync's memory, written by the tablet's log alone
  return memory?.enrolled?.screen === true;
}

/** The store of a wall screen: it takes in what others wrote, and every write of its own is refused. */
export function readOnly(store: Store): Store {
  return {
    ...store,
    append: () => Promise.reject(new TypeError('Cannot write as a wall screen only reads')),
  };
}
