// What becomes of the ends of tapes when another lane is told while tapes are spliced? Until then nothing but this lane took from them, so that what
// has passed is known as it was; from then on the other may take all, and a tape may end with the next panel.

import { newestRun } from '../floor/building.ts';
import { linesFeeding, standingAt } from '../floor/lanes.ts';
import { type FloorState, type Run, type SlotState, slotKey } from '../floor/state.ts';
import { tallyOf } from '../floor/tally.ts';
import { boundJoints } from './joints.ts';
import { openKey, reachOf } from './line.ts';
import type { Stretch, TraceIndex } from './stretches.ts';

/** How many lines feed from a line's slots. */
export function lanesOf(state: Pick<FloorState, 'lines' | 'lanesGone'>, line: string): number {
  return linesFeeding(state, line).filter((each) => state.lines.has(each)).length;
}

/** Bounds the joints on a conveyor's slots anew, in each lane's newest run: call it when a lane has been told. Cost: linear in slots. */
export function openToLane({ state, open }: Pick<TraceIndex, 'state' | 'open'>, told: string): void {
  for (const line of linesFeeding(state, told)) {
    const run = newestRun(state, line);
    if (!run) continue;
    for (const slot of standingAt(state, line)) {
      const there = open.get(openKey(line, slotKey(line, slot.slot)));
      if (there && slot.tapes.length > 1) endAnytime(state, { slot, run, open: there });
    }
  }
}

function endAnytime(
  state: FloorState,
  at: { readonly slot: SlotState; readonly run: Run; readonly open: ReadonlyMap<string, Stretch> },
): void {
  const { slot, run, open } = at;
  const tally = tallyOf(run);
  const passed = tally + reachOf(state, run.line, slot.slot).reach.low;
  slot.tapes.forEach((tape, place) => {
    const own = open.get(tape.entry);
    if (!own || place === 0) return;
    const before = open.get(slot.tapes[place - 1]?.entry ?? '')?.to?.sure ?? 0;
    const joined = own.joined ?? { low: 0, high: Number.POSITIVE_INFINITY, at: tally };
    own.joined = { ...joined, low: Math.min(passed, Math.max(joined.low, before)) };
  });
  boundJoints(state, { slot, run, open, tally });
}
