// Which setup a machine last asked for, page by page; the newest offer counts once all of its pages are here.

import type { EntryOf } from './kinds.ts';
import type { FloorState } from './state.ts';

/** Applies a page of an offer. */
export function foldOffered(state: FloorState, { payload, hlc }: EntryOf<'setup.offered'>): void {
  const { station, line, report, page, pages, recipe, revision, wants } = payload;
  if (state.offers.get(station)?.report === report) return;
  const before = page === 0 ? { report, pages, rows: [], next: 0 } : state.offerPages.get(station);
  if (before?.report !== report || before.next !== page || before.pages !== pages) return;
  const all = [...before.rows, ...wants];
  if (page + 1 < pages) {
    state.offerPages.set(station, { ...before, rows: all, next: page + 1 });
    return;
  }
  state.offerPages.delete(station);
  state.offers.set(station, { line, report, atMs: hlc.ms, recipe, revision, rows: all });
}
