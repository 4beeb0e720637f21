// What people call a station: the name that a lead gave it, else its own.

import type { FloorState } from '../../shared/floor/state.ts';
import { visible } from './ui/visible.ts';

/** A station's name for people. */
export function stationName({ stations }: Pick<FloorState, 'stations'>, station: string): string {
  return visible(stations.get(station)?.name ?? station);
}
