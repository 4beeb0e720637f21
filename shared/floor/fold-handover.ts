// Which handovers does a line have? A handover counts when the lead going off signed it; it is taken by the first other lead who signs. The newest
// ones are kept. What they leave held stands in held-at-handover.ts, which no start reads.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import type { HandoverState } from './state-handover.ts';

/** Handovers of a line that are kept. */
const KEPT = 4;

/** Applies one entry. A signature of the lead who handed over, or under a handover taken already, changes nothing. */
export function foldHandover(state: HandoverState, entry: EntryOf<'shift.handed' | 'shift.taken'>): void {
  const { line } = entry.payload;
  const there = state.handovers.get(line) ?? [];
  const mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  if (entry.kind === 'shift.handed') {
    const { checked: _, passkey: __, ...facts } = entry.payload;
    state.handovers.set(line, [...there, { ...facts, ...mark, taken: null }].slice(-KEPT));
    return;
  }
  const { handover, by, came, more, known } = entry.payload;
  const next = there.map((each) =>
    each.handover === handover && each.taken === null && each.by !== by
      ? { ...each, taken: { by, came, more, known, ...mark } }
      : each,
  );
  state.handovers.set(line, next);
}
