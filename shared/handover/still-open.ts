// Is a thing that was open at a handover open still? By what the log says now; of a silent station by the clock too.

import { blockedTapes } from '../floor/blocks.ts';
import { isHeld } from '../floor/fold-contain.ts';
import { holdHanded } from '../floor/held-at-handover.ts';
import type { HandedItem } from '../floor/kinds-handover.ts';
import { slotEstimate } from '../floor/remaining.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import { silentSince } from '../floor/told-states.ts';

/** True while it is open. `nowMs`: ms since 1970. A splice is done, and a floor life of no more concern, once another tape feeds the slot. */
export function isOpenStill(
  floor: FloorState,
  item: HandedItem,
  { line, nowMs }: { readonly line: string; readonly nowMs: number },
): boolean {
  const { what, of, slot } = item;
  const there = slot === null ? undefined : floor.slots.get(slotKey(line, slot));
  switch (what) {
    case 'hold':
      return holdHanded(floor, line, item) !== null;
    case 'blocked':
      return blockedTapes(floor, line).some((each) => each.block.block === of && each.slot === slot);
    case 'panels-held': {
      const containment = floor.contained.get(of);
      return containment !== undefined && isHeld(containment);
    }
    case 'conflict':
      return floor.conflicts.has(of);
    case 'station-silent': {
      const station = floor.stations.get(of);
      return station !== undefined && silentSince(station, nowMs) !== null;
    }
    case 'changeover':
      return floor.changing.get(line) === of;
    case 'checklist':
      return floor.checklists.get(of)?.closedMs === null;
    case 'splice':
      return there?.tapes.at(-1)?.entry === of;
    case 'floor-life':
      return there?.tapes.some(({ entry }) => entry === of) ?? false;
    case 'count-unknown':
      return there !== undefined && slotEstimate(floor, there).parts === null;
    default:
      return what satisfies never;
  }
}
