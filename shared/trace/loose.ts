// Which panels may carry lots that were poured over each other? Method: no order is told among them, since what was put in first may come last.
// Refused: first in, first out, which no bulk feeder promises.

import { isMixed } from '../floor/packs.ts';
import type { SlotState } from '../floor/state.ts';
import type { Bounds } from './doubt.ts';
import type { Stretch } from './stretches.ts';

/**
 * Lots that lie loose over each other: from the first panel that the newer may have reached on, each of them is possible and none sure, until
 * the feeder is emptied out. What was put on alone is sure up to there.
 */
export function pourOver(at: {
  readonly slot: SlotState;
  readonly open: ReadonlyMap<string, Stretch>;
  readonly passed: Bounds;
  readonly tally: number;
}): void {
  const { slot, open, passed, tally } = at;
  if (!isMixed(slot)) return;
  // All came onto the slot at once: what was in the feeder before is as possible as what was poured on it.
  const isAtOnce = slot.ledger.chain === slot.entry && slot.tapes.at(-1)?.entry === slot.entry;
  slot.tapes.forEach((tape, place) => {
    const stretch = open.get(tape.entry);
    if (!stretch) return;
    const { to } = stretch;
    stretch.mixed = true;
    stretch.joined = null;
    if (to === null && (place > 0 || isAtOnce))
      stretch.from = { ...stretch.from, sure: Number.POSITIVE_INFINITY };
    // What was off the line in between, with what lay loose in it, is back.
    const sure = Math.min(to?.sure ?? Number.POSITIVE_INFINITY, Math.max(0, passed.low));
    stretch.to = { sure, possible: Number.POSITIVE_INFINITY, at: tally };
  });
}
