// How a backlog is cut into pages: by count and by bytes, never splitting an entry, never returning an empty page.

import type { Entry } from '../log/entry.ts';
import { pageBytes, pageEntries } from './limits.ts';

/** Bounds of a page; the defaults are the wire's. */
export interface PageBounds {
  /** Most entries. */
  readonly entries?: number;
  /** Most UTF-16 units of JSON; at least one entry is taken whatever its size. */
  readonly bytes?: number;
}

/** The longest run from the start of `entries` that fits a page. Cost: linear in what is returned. */
export function takePage(entries: readonly Entry[], bounds: PageBounds = {}): readonly Entry[] {
  const { entries: most = pageEntries, bytes: mostBytes = pageBytes } = bounds;
  // Mostly all of it fits: one writing of the whole is cheaper than one for each.
  if (entries.length <= most && JSON.stringify(entries).length <= mostBytes) return entries;
  let bytes = 0;
  let count = 0;
  for (const entry of entries) {
    bytes += JSON.stringify(entry).length + 1;
    if (count > 0 && (count >= most || bytes > mostBytes)) break;
    count += 1;
  }
  return entries.slice(0, count);
}
