// Which slot does a machine speak of? It has names of its own for places; reels and feeders carry one label for all.
// Method: the reel that stands there, else the feeder, else the place's own name. Refused: the name first; a machine's published
// examples give one feeder under two of them.

import { sharesSlots, standingAt } from './lanes.ts';
import { type FloorState, type SlotState, slotKey } from './state.ts';

/** What a machine tells of a place: any of it may be missing. */
export interface Told {
  readonly line: string;
  readonly slot: string | null;
  readonly feeder: string | null;
  /** Reels that it has there, the likeliest first. */
  readonly active?: string | null;
  readonly depleted?: string | null;
  readonly reel?: string | null;
}

/** The loaded slot that a machine speaks of; null where nothing of it is known on its line. */
export function tapeSlot(state: FloorState, told: Told): SlotState | null {
  for (const reel of [told.active, told.depleted, told.reel]) {
    const at = state.reels.get(reel ?? '')?.at;
    const there =
      at && sharesSlots(at.line, told.line) ? state.slots.get(slotKey(at.line, at.slot)) : undefined;
    if (there) return there;
  }
  const fed =
    told.feeder === null
      ? undefined
      : standingAt(state, told.line).find(({ feeder }) => feeder === told.feeder);
  if (fed) return fed;
  return told.slot === null ? null : (state.slots.get(slotKey(told.line, told.slot)) ?? null);
}
