// A changeover that one tablet cancelled and another released, as neither had heard of the other: what counts, and what does a lead say of it?
// Method: both facts stay on the changeover, the release counts in either order, and one contradiction names both entries. Setup and run of the line
// are those of their own entries, which neither a release nor a cancelling touches. Refused: the later of the two, as clocks decide that; and a name made
// of the two entries, as an earlier one that arrives late would give it another, and a lead's word would be about nothing.

import type { PayloadOf } from './kinds.ts';
import type { Mark } from './reel-places.ts';
import type { Changeover, Conflict, FloorState } from './state.ts';

const kind = 'released-though-dropped';

/** Keeps that a changeover is cancelled and released, where it is; `mark`: the second of the two. */
export function tellDropped(state: FloorState, name: string, { entry, atMs }: Mark): void {
  const changeover = state.changeovers.get(name);
  if (!changeover?.dropped || changeover.released === null) return;
  const { line, dropped, released } = changeover;
  const first = entry === released ? dropped.entry : released;
  const at = { line, slots: [], lines: [line], reel: null, atMs };
  const conflict = `${kind}:${name}`;
  state.conflicts.set(conflict, { ...at, conflict, kind, entries: [first, entry], choices: [] });
}

/** The changeover that a contradiction is about; null where it is about none. */
export function changeInConflict(
  state: Pick<FloorState, 'changeovers'>,
  told: Pick<Conflict, 'kind' | 'conflict'>,
): Changeover | null {
  if (told.kind !== kind) return null;
  return state.changeovers.get(told.conflict.slice(kind.length + 1)) ?? null;
}

/**
 * A lead's word which of the two counts, before the contradiction goes; without one, or where it is about something else, all stays as it is. It names
 * the entry that the lead saw: another may have come before that one since, and what was said was whether it is released.
 */
export function settleDropped(
  state: FloorState,
  { conflict: name, keep }: Pick<PayloadOf<'conflict.settled'>, 'conflict' | 'keep'>,
): void {
  const conflict = state.conflicts.get(name);
  const changeover = conflict ? changeInConflict(state, conflict) : null;
  if (!changeover || keep === null) return;
  const change = (fields: Partial<Changeover>) =>
    state.changeovers.set(changeover.changeover, { ...changeover, ...fields });
  const { released, releasedAgain = [] } = changeover;
  if (keep === released || releasedAgain.includes(keep)) change({ dropped: null });
  else change({ released: null, releasedMs: null, releasedBy: null });
}
