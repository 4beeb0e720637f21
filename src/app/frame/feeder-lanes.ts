// The reels that hang on one feeder beside the one in hand: they come off with it, and where it goes they go. Pure.

import { compareSlots, feederKey, isLaneBeside, isSameLane } from '../../../shared/floor/address.ts';
import { slotsWanting } from '../../../shared/floor/fits.ts';
import { standingAt } from '../../../shared/floor/lanes.ts';
import { ownIdOf } from '../../../shared/floor/reel-id.ts';
import type { FloorState, SlotState } from '../../../shared/floor/state.ts';

/** What stands on the other lanes of a feeder, in walking order. */
export function lanesBeside(floor: FloorState, { line, slot }: SlotState): readonly SlotState[] {
  return standingAt(floor, line)
    .filter((other) => isLaneBeside(other.slot, slot))
    .sort((a, b) => compareSlots(a.slot, b.slot));
}

/** A slot to which a feeder may go, and what goes where with it: the reel in hand first. */
export interface MoveTo {
  readonly to: string;
  readonly all: readonly { readonly loaded: SlotState; readonly to: string }[];
}

/**
 * Where a feeder may go with every reel on it: where the setup of the line in hand, which may be a lane of a conveyor, wants each on the same lane
 * of a feeder, and no other feeder stands.
 */
export function movesOf(floor: FloorState, loaded: SlotState, line: string): readonly MoveTo[] {
  const { slot } = loaded;
  const setup = floor.chosen.get(line) ?? '';
  const taken = new Set(standingAt(floor, line).map((other) => feederKey(other.slot)));
  const wanting = (of: SlotState) => slotsWanting(floor, setup, of.tapes.at(-1)?.part ?? '');
  const beside = lanesBeside(floor, loaded);
  return wanting(loaded).flatMap((to) => {
    if (taken.has(feederKey(to)) || !isSameLane(to, slot)) return [];
    const others = beside.flatMap((other) => {
      const lane = wanting(other).find((each) => isLaneBeside(each, to) && isSameLane(each, other.slot));
      return lane === undefined ? [] : [{ loaded: other, to: lane }];
    });
    return others.length === beside.length ? [{ to, all: [{ loaded, to }, ...others] }] : [];
  });
}

/** What is written of a move, reel by reel: on the line in hand, in what it builds. */
export function movedDrafts(floor: FloorState, line: string, all: MoveTo['all']) {
  const run = floor.current.get(line) ?? null;
  const panels = run === null ? 0 : (floor.runs.get(run)?.done ?? 0);
  return all.map(({ loaded: { slot, feeder, tapes }, to }) => {
    const last = tapes.at(-1);
    const what = { reel: ownIdOf(last?.reel), part: last?.part ?? null };
    const payload = { line, run, feeder, from: slot, to, ...what, panels, via: 'typed' as const };
    return { kind: 'feeder.moved' as const, payload };
  });
}
