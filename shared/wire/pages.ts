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
  /** The entries as one JSON array, in pieces. */
  readonly texts: readonly string[];
}

/** Entries of one piece: engines put long texts together from parts, and copy them whole before anything is done with them. */
const PIECE_ENTRIES = 50;

/** The longest run from the start of `entries` that fits a page, with its JSON. Cost: each entry is written once where all fit. */
export function takePage(entries: readonly Entry[], bounds: PageBounds = {}): Page {
  const { entries: most = pageEntries, bytes: mostBytes = pageBytes } = bounds;
  // Mostly all of it fits: some at a time, which is cheaper than one writing for each.
  const whole = entries.length <= most ? inPieces(entries, mostBytes) : null;
  if (whole) return { entries, texts: whole };
  const texts: string[] = [];
  let bytes = 1; // the array's brackets are two, its commas one less than its entries
  for (const entry of entries) {
    const text = JSON.stringify(entry);
    bytes += text.length + 1;
    if (texts.length > 0 && (texts.length >= most || bytes > mostBytes)) break;
    texts.push(text);
  }
  return { entries: entries.slice(0, texts.length), texts: ['[', texts.join(','), ']'] };
}

/** All entries as one JSON array, in pieces; null where they are longer than that together. */
function inPieces(entries: readonly Entry[], mostBytes: number): readonly string[] | null {
  const texts = ['['];
  let bytes = 1;
  for (let at = 0; at < entries.length; at += PIECE_ENTRIES) {
    // Without its brackets.
    const text = JSON.stringify(entries.slice(at, at + PIECE_ENTRIES)).slice(1, -1);
    bytes += text.length + 1;
    if (bytes > mostBytes) return null;
    if (at > 0) texts.push(',');
    texts.push(text);
  }
  texts.push(']');
  return texts;
}
