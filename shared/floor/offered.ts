// Which setup does a machine ask for? Its newest offer that has come whole, and the same as a sheet, so that it is taken in like any other.
// Method: a text with the columns of a sheet goes the way of every sheet: its problems, its placement file, its changes, an engineer's yes.
// Refused: a setup out of a machine's message, since no placements a panel are in it and nobody has looked at it.

import type { SetupOffer } from './station-state.ts';

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
