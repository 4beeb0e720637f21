// What putting a reel away writes down: its place, and what the air there does to its floor life.

import { airAtPlace } from '../../../../shared/floor/fold-store.ts';
import type { DraftEntry, PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { formatMoment } from '../../../../shared/kit/moment.ts';

/** The entries of a reel that is put at a place; `nowMs`: the tablet's clock. */
export function putDrafts(
  floor: FloorState,
  payload: PayloadOf<'reel.put'>,
  nowMs: number,
): readonly DraftEntry[] {
  const { place, via, ...facts } = payload;
  const air = airAtPlace(floor, payload.reel, place);
  const put: DraftEntry = { kind: 'reel.put', payload };
  if (air === null) return [put];
  return [put, { kind: 'reel.aired', payload: { ...facts, ...air, from: formatMoment(nowMs), via } }];
}
