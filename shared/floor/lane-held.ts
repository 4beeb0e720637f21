// What keeps a further lane of a conveyor from being taken away? What it builds, and what would be left without a lane to answer for it.

import { compareSlots } from './address.ts';
import { lanesTaking, standingAt } from './lanes.ts';
import type { FloorState } from './state.ts';
import { stencilJars } from './stencil.ts';
import { lanesWanting, wantedOn } from './wanted.ts';

/**
 * Why a lane must stay for now. `reels`: slots that carry something for it alone. `open`: a changeover, a checklist of the line alone, a sweep, a hold, a
 * handover that nobody took, paste on its stencil, its counting station, a ready feeder or a cart of it.
 */
export type LaneHeld =
  | { readonly why: 'runs' | 'open' }
  | { readonly why: 'reels'; readonly slots: readonly string[] };

/** What keeps a lane; null where nothing does. */
export function laneHeld(state: FloorState, line: string): LaneHeld | null {
  if (state.current.has(line)) return { why: 'runs' };
  const setup = state.chosen.get(line) ?? '';
  const others = lanesTaking(state, line);
  const slots = standingAt(state, line)
    .map(({ slot }) => slot)
    .filter(
      (slot) => wantedOn(state, setup, slot) !== null && lanesWanting(state, line, slot, others).length === 0,
    );
  if (slots.length > 0) return { why: 'reels', slots: slots.sort(compareSlots) };
  const isOpen =
    state.counters.has(line) ||
    state.changing.has(line) ||
    // A list of a changeover that is over is told no more after a day, and one of a slot stands only after a splice there.
    [...state.checklists.values()].some(
      (list) =>
        list.line === line && list.changeover === null && list.slot === null && list.closedMs === null,
    ) ||
    state.sweeps.get(line)?.endedMs === null ||
    state.handovers.get(line)?.at(-1)?.taken === null ||
    stencilJars(state, line).length > 0 ||
    [...state.holds.values()].some(({ facts }) => facts.line === line) ||
    [...state.ready.values()].some((ready) => ready.line === line) ||
    [...state.carts.values()].some((places) => [...places.values()].some((place) => place.line === line));
  return isOpen ? { why: 'open' } : null;
}
