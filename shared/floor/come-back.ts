// What may stand on a slot again? What was there before its newest entry, what was taken off it, and what contradicted: a correction or a lead's word brings
// each of them back. Whatever is set down of slots is set down of these too, so that what comes back knows what was built meanwhile.

import { feedersOf } from './lanes.ts';
import type { Conflict, FloorState, SlotState } from './state.ts';

/**
 * Changes the slots that a line feeds from, and with them what may come back to them, whether something stands there or not. What `change` gives
 * back as it was stays the record that it was. Cost: one walk over all slots and all that may come back in the plant.
 */
export function withWhatMayComeBack(
  state: Pick<FloorState, 'slots' | 'takenOff' | 'conflicts' | 'mended'>,
  of: string,
  change: (slot: SlotState) => SlotState,
): void {
  const line = feedersOf(of);
  const changed = (slot: SlotState): SlotState => {
    const now = change(slot);
    const before = slot.before && changed(slot.before);
    return before === now.before ? now : { ...now, before };
  };
  for (const [key, slot] of state.slots) if (slot.line === line) state.slots.set(key, changed(slot));
  for (const [key, off] of state.takenOff) {
    const was = off.was.line === line ? changed(off.was) : off.was;
    if (was !== off.was) state.takenOff.set(key, { ...off, was });
  }
  const inConflict = (conflict: Conflict): Conflict => {
    const choices = conflict.line === line ? sameOr(conflict.choices, changed) : conflict.choices;
    return choices === conflict.choices ? conflict : { ...conflict, choices };
  };
  for (const [key, conflict] of state.conflicts) state.conflicts.set(key, inConflict(conflict));
  for (const [key, mended] of state.mended) state.mended.set(key, sameOr(mended, inConflict));
}

/** A list with each of it changed; the list itself where none is. */
function sameOr<T>(list: readonly T[], change: (each: T) => T): readonly T[] {
  const changed = list.map(change);
  return changed.some((each, at) => each !== list[at]) ? changed : list;
}
