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

/** A page as it travels. */
export interface Page {
  readonly entries: readonly Entry[];
  /** The entries as one JSON array. */
  readonly text: string;
}

/** The longest run from the start of `entries` that fits a page, with its JSON. Cost: each entry is written once where all fit. */
export function takePage(entries: readonly Entry[], bounds: PageBounds = {}): Page {
  const { entries: most = pageEntries, bytes: mostBytes = pageBytes } = bounds;
  // Mostly all of it fits: one writing of the whole is cheaper than one for each.
  if (entries.length <= most) {
    const text = JSON.stringify(entries);
    if (text.length <= mostBytes) return { entries, text };
  }
  const texts: string[] = [];
  let bytes = 0;
  for (const entry of entries) {
    const text = JSON.stringify(entry);
    bytes += text.length + 1;
    if (texts.length > 0 && (texts.length >= most || bytes > mostBytes)) break;
    texts.push(text);
  }
  return { entries: entries.slice(0, texts.length), text: `[${texts.join(',')}]` };
}
