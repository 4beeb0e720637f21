// What a machine last said that it has loaded, page by page; the newest report counts once all of its pages are here.

import { placeKey } from './address.ts';
import type { EntryOf } from './kinds.ts';
import { standingAt } from './lanes.ts';
import type { FloorState, SlotState } from './state.ts';
import type { Believed, BelievedPlace } from './station-state.ts';

/** Applies a page of a machine's report. */
export function foldBelieved(state: FloorState, { payload, hlc }: EntryOf<'machine.loaded'>): void {
  const { station, line, report, page, pages, whole, places } = payload;
  const there = state.believed.get(station);
  if (places === null) {
    if (there?.report !== report) return;
    state.believed.set(station, { ...there, atMs: hlc.ms, seen: seenNow(state, line, there.places) });
    return;
  }
  const before = page === 0 ? { report, pages, places: [], next: 0 } : state.believedPages.get(station);
  if (before?.report !== report || before.next !== page || before.pages !== pages) return;
  const all = [...before.places, ...places];
  if (page + 1 < pages) {
    state.believedPages.set(station, { ...before, places: all, next: page + 1 });
    return;
  }
  state.believedPages.delete(station);
  const seen = seenNow(state, line, all);
  state.believed.set(station, { line, report, atMs: hlc.ms, whole, places: all, seen });
}

/** What stands on a slot by the scans, as one text. */
export const reelsOn = (slot: SlotState | undefined): string =>
  JSON.stringify(slot?.tapes.map(({ reel }) => reel) ?? []);

/** What the scans say now of each slot that the machine names, and of each that is loaded. */
function seenNow(state: FloorState, line: string, places: readonly BelievedPlace[]): Believed['seen'] {
  const seen = new Map<string, string>();
  for (const { slot } of places) seen.set(placeKey(slot), reelsOn(undefined));
  for (const slot of standingAt(state, line)) seen.set(placeKey(slot.slot), reelsOn(slot));
  return [...seen];
}
