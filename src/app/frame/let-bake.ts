// The bake that a lead may let count for good, and what the log is told then.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { FloorState, Hold } from '../../../shared/floor/state.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { moistureOfSlot, type OpenBake, openBake, reelLife } from '../../../shared/moisture/reel-life.ts';
import type { Sure } from './confirmed.ts';

/** A bake that was too short, with its reel. */
export interface ReelBake {
  readonly reel: string;
  /** The line where it is decided, null off any line. */
  readonly line: string | null;
  readonly bake: OpenBake;
}

/** The bake for which a reel is held; null where it is held for other things, or has been let count meanwhile. */
export function heldBake(floor: FloorState, { facts, reasons }: Hold, nowMs: number): ReelBake | null {
  const { line, setup, slot, reel, part: taken } = facts;
  if (reel === null || !reasons.some(({ code }) => code === 'bake-short')) return null;
  const part = moistureOfSlot(floor, slot === null ? null : wantedOn(floor, setup, slot), taken);
  const bake = openBake(floor.exposures.get(reel), reelLife(floor, reel, { line, part, nowMs }), nowMs);
  return bake && { reel, line, bake };
}

/** What the log is told when a lead lets a bake count. */
export function bakeApproval(
  { reel, line, bake }: ReelBake,
  { person, checked }: Sure,
  reason: string,
): PayloadOf<'bake.approved'> {
  const { of, hours, celsius } = bake;
  return { reel, line, of, hours, celsius, reason, by: person.person, checked };
}
