// A changeover that one tablet cancelled and another released, as neither had heard of the other: what counts, and what does a lead say of it?
// Method: both facts stay on the changeover, the release counts in either order, and one contradiction names both entries. Setup and run of the line
// are those of their own entries, which neither a release nor a cancelling touches. Refused: the later of the two, as clocks decide that.

import { addConflict } from './conflicts.ts';
import type { PayloadOf } from './kinds.ts';
import type { Mark } from './reel-places.ts';
import type { Changeover, Conflict, FloorState } from './state.ts';

/** Keeps that a changeover is cancelled and released, where it is; `mark`: the second of the two. */
export function tellDropped(state: FloorState, name: string, { entry, atMs }: Mark): void {
  const changeover = state.changeovers.get(name);
  if (!changeover?.dropped || changeover.released === null) return;
  const { line, dropped, released } = changeover;
  const first = entry === released ? dropped.entry : released;
  const at = { line, slots: [], lines: [line], reel: null, atMs };
  addConflict(state, { ...at, kind: 'released-though-dropped', entries: [first, entry] });
}

/** The changeover that a contradiction is about; null where it is about none. */
export function changeInConflict(
  state: Pick<FloorState, 'changeovers'>,
  { kind, entries }: Pick<Conflict, 'kind' | 'entries'>,
): Changeover | null {
  if (kind !== 'released-though-dropped') return null;
  const isNamed = (entry: string | undefined) => entry !== undefined && entries.includes(entry);
  const all = [...state.changeovers.values()];
  return (
    all.find(({ released, dropped }) => isNamed(released ?? undefined) || isNamed(dropped?.entry)) ?? null
  );
}

/** A lead's word which of the two counts, before the contradiction goes; without one, or where it is about something else, all stays as it is. */
export function settleDropped(
  state: FloorState,
  { conflict: name, keep }: Pick<PayloadOf<'conflict.settled'>, 'conflict' | 'keep'>,
): void {
  const conflict = state.conflicts.get(name);
  const changeover = conflict ? changeInConflict(state, conflict) : null;
  if (!changeover || keep === null) return;
  const change = (fields: Partial<Changeover>) =>
    state.changeovers.set(changeover.changeover, { ...changeover, ...fields });
  if (keep === changeover.released) change({ dropped: null });
  if (keep === changeover.dropped?.entry) change({ released: null, releasedMs: null, releasedBy: null });
}
