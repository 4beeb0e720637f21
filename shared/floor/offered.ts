// Which setup does a machine ask for? Its newest offer that has come whole, and the same as a sheet, so that it is taken in like any other.
// Method: a text with the columns of a sheet goes the way of every sheet: its problems, its placement file, its changes, an engineer's yes.
// Refused: a setup out of a machine's message, since no placements a panel are in it and nobody has looked at it.

import type { EntryOf } from './kinds.ts';
import type { FloorState } from './state.ts';
import type { SetupOffer } from './station-state.ts';

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

const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** An offer as the text of a setup sheet: a header and a row a slot, cells parted by tabs. */
export function sheetOfOffer({ rows }: Pick<SetupOffer, 'rows'>): string {
  const lines = rows.map(({ slot, part, alternates, suppliers }) => [
    slot,
    part,
    alternates.join(', '),
    suppliers.join(', '),
  ]);
  return [['Slot', 'Part number', 'Alternates', 'Supplier parts'], ...lines]
    .map((line) => line.map(cell).join('\t'))
    .join('\n');
}
