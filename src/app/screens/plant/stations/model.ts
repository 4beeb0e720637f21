// How stations are listed and what their numbers mean to people.

import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { Station } from '../../../../../shared/floor/station-state.ts';
import { compareText } from '../../../../../shared/log/order.ts';

/** Stations of this line first, then by name. */
export function ofLineFirst(floor: FloorState, line: string | null): readonly Station[] {
  return [...floor.stations.values()].sort(
    (a, b) => Number(b.line === line) - Number(a.line === line) || compareText(a.station, b.station),
  );
}

/** True for a machine that speaks a standard: it tells each board, and the total is the link's own. */
export function isMachine({ means }: Station): boolean {
  return means === 'hermes' || means === 'ipc2591';
}
