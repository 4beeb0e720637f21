// Counts by hand as what is written down: where a station should count the line and nothing is heard of it, that is written first, so that
// every tablet adds them up alike.

import { countedBy } from '../../shared/floor/counters.ts';
import type { DraftEntry } from '../../shared/floor/kinds.ts';
import type { FloorState } from '../../shared/floor/state.ts';

type Silence = Extract<DraftEntry, { readonly kind: 'station.silent' }>;

/** The word of a silence that only this tablet's clock knows of yet; none where there is nothing to be said. */
export function silenceFirst(floor: FloorState, line: string, nowMs: number): readonly Silence[] {
  const counted = countedBy(floor, line, nowMs);
  if (counted.by !== 'silent' || counted.isTold) return [];
  const since = new Date(counted.sinceMs).toISOString();
  return [{ kind: 'station.silent', payload: { station: counted.name, line, since, told: 'tablet' } }];
}
