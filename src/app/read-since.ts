// The log's newest entries, back to a moment: for questions about the last hours or days.

import { type FloorEntry, readFloorEntry } from '../../shared/floor/kinds.ts';
import type { Store } from './store/store.ts';

/** The log's entries from a moment on. */
export async function readSince(store: Store, sinceMs: number): Promise<readonly FloorEntry[]> {
  const found: FloorEntry[] = [];
  let before: Parameters<Store['newest']>[1];
  for (;;) {
    const page = await store.newest(500, before);
    for (const entry of page) {
      const checked = entry.hlc.ms >= sinceMs ? readFloorEntry(entry) : null;
      if (checked) found.push(checked);
    }
    const last = page.at(-1);
    if (!last || page.length < 500 || last.hlc.ms < sinceMs) return found;
    before = last;
  }
}
