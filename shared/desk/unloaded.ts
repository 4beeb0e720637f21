// What the log says of a reel that comes off its slot, whoever takes it off.

import { ownIdOf } from '../floor/reel-id.ts';
import type { FloorState, SlotState } from '../floor/state.ts';

/** The facts of the unload of a slot: where, in which run, after how many panels, and which reel, by its own id where it has one. */
export function unloadedFacts(floor: FloorState, { line, slot, feeder, tapes }: SlotState) {
  const run = floor.current.get(line) ?? null;
  const tape = tapes.at(-1);
  return {
    line,
    run,
    slot,
    feeder,
    reel: ownIdOf(tape?.reel),
    part: tape?.part ?? null,
    lot: tape?.lot ?? null,
    panels: run === null ? 0 : (floor.runs.get(run)?.done ?? 0),
  };
}
