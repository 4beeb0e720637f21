// Is a thing that was open at a handover open still? By what the log says now; of a silent station and a checklist by the clock too.

import { blockedTapes } from '../floor/blocks.ts';
import { isHeld } from '../floor/fold-contain.ts';
import { holdHanded } from '../floor/held-at-handover.ts';
import type { HandedItem } from '../floor/kinds-handover.ts';
import { standingAt } from '../floor/lanes.ts';
import { isListOpen } from '../floor/over-change.ts';
import { slotEstimate } from '../floor/remaining.ts';
import { type FloorState, type SlotState, slotKey, type Tape } from '../floor/state.ts';
import { silentSince } from '../floor/told-states.ts';

/** The tapes of each slot of a line: a feeder may have been moved to another since. */
function tapesOn(floor: FloorState, line: string): readonly SlotState['tapes'][] {
  return standingAt(floor, line).map(({ tapes }) => tapes);
}

/** One entry may have put several tapes on slots, as a cart does. */
const isTape =
  ({ of, reel }: HandedItem) =>
  (tape: Tape | undefined): boolean =>
    tape !== undefined && tape.entry === of && (reel === null || tape.reel === reel);

/** True while it is open. `nowMs`: ms since 1970. A splice is done once another tape is behind it, a floor life of no more concern once its tape is off. */
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
      return blockedTapes(floor, line).some(
        ({ block, tape }) => block.block === of && tape.reel === item.reel,
      );
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
    case 'checklist': {
      const list = floor.checklists.get(of);
      return list !== undefined && isListOpen(floor, list, nowMs);
    }
    case 'splice':
      return tapesOn(floor, line).some((tapes) => isTape(item)(tapes.at(-1)));
    case 'floor-life':
      return tapesOn(floor, line).some((tapes) => tapes.some(isTape(item)));
    case 'count-unknown':
      return there !== undefined && slotEstimate(floor, there).parts === null;
    default:
      return what satisfies never;
  }
}
