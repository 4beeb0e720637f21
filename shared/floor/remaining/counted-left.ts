// What a slot has left by plain counting: one figure at no cost, for what is asked at every splice of a long log. Private to the door `remaining.ts`.
// Refused there: `slotEstimate`, whose law of losses is computed anew for every reel that ended, and made folding a log take twice as long.

import type { FloorState, SlotState } from '../state.ts';
import { placedSinceLedger } from './placed.ts';

/**
 * Parts left on a slot: from the last count, or from the last splice where feeder lengths and pitch are known, less what was placed since at the
 * loss that the line assumes. Never below 0; null where a count is unknown. Nothing is taken off for what a splice costs.
 */
export function countedLeft(state: FloorState, slot: SlotState): number | null {
  const kept = 1 - (state.rules.get(slot.line)?.loss ?? 0);
  const { parts, joint } = slot.ledger;
  const placed = placedSinceLedger(state, slot).count;
  if (joint === null) return parts === null ? null : Math.max(0, parts - placed / kept);
  if (joint.tail === null) return null;
  // Wherever the old tape's end lay then, it was between hub and intake.
  const counted = parts === null ? null : parts - joint.tail - joint.placed / kept;
  const old =
    counted === null ? (joint.low + joint.high) / 2 : Math.min(joint.high, Math.max(joint.low, counted));
  return Math.max(0, old + joint.tail - (placed - joint.placed) / kept);
}
