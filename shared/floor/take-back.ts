// What a correction takes back of the material: what an entry put on a slot, took off it or moved. One step deep, as people take back.

import {
  addLoadedSince,
  addTwice,
  dropOnce,
  isStillTwice,
  stepBack,
  tellTwice,
  unmend,
} from './conflicts.ts';
import { moveBack } from './fold-feeders.ts';
import { freeReels, holdReels } from './reel-places.ts';
import { comeBack, neverStood } from './remaining.ts';
import type { FloorState, SlotState } from './state.ts';

/** A correction undoes what the named entry did to a slot, as long as nothing newer stands on it; what still contradicts stays told. */
export function takeBack(state: FloorState, of: string, by: string): void {
  state.holds.delete(of);
  // A release or a cancelling is not undone by a correction, so what contradicts of them still does.
  const told = [...state.conflicts.values()].filter(
    ({ kind, entries }) => kind !== 'released-though-dropped' && entries.includes(of),
  );
  for (const { conflict } of told) state.conflicts.delete(conflict);
  const restored = moveBack(state, of) === 'no-move' ? undo(state, of) : null;
  if (restored) addTwice(state, restored);
  for (const conflict of told) if (isStillTwice(state, conflict)) tellTwice(state, conflict);
  stepBack(state, told, of);
  unmend(state, of);
  dropOnce(state, by);
}

/** Takes back what an entry did to a slot; what stands there again, null where nothing does or the entry is no slot's newest. */
function undo(state: FloorState, of: string): SlotState | null {
  for (const [key, slot] of state.slots) {
    if (slot.before?.entry === of) state.slots.set(key, { ...slot, before: null });
    if (slot.entry !== of) continue;
    freeReels(state, slot);
    if (slot.before) {
      const back = comeBack(state, slot.before);
      state.slots.set(key, back);
      holdReels(state, back);
      return back;
    }
    neverStood(state, slot);
    return null;
  }
  for (const [key, taken] of state.takenOff) {
    if (taken.entry !== of) continue;
    const { was } = taken;
    const there = state.slots.get(key);
    // What was put there by a word that was taken back since was never there; a move that could not be taken back any more was.
    if (state.corrected.has(was.entry) && !state.moves.has(was.entry)) return null;
    if (there) {
      addLoadedSince(state, was, there);
      return null;
    }
    const back = comeBack(state, was);
    state.slots.set(key, back);
    state.takenOff.delete(key);
    holdReels(state, back);
    return back;
  }
  return null;
}
