// Where reels are, kept in step with what is on the slots. A reel is on the slot that named it last.

import { backInUse } from './gone-reels.ts';
import type { PayloadOf } from './kinds.ts';
import type { FloorState, Reel, SlotState } from './state.ts';

/** When and by which entry something was done. */
export interface Mark {
  readonly entry: string;
  readonly atMs: number;
}

/** True where a place is this slot. */
export function isAt(
  at: { readonly line: string; readonly slot: string } | null,
  slot: Pick<SlotState, 'line' | 'slot'>,
): boolean {
  return at !== null && at.line === slot.line && at.slot === slot.slot;
}

/** A reel that nobody has verified yet, off the line, by what its label says. */
export function reelByLabel(facts: Omit<PayloadOf<'reel.put'>, 'place' | 'via'>): Reel {
  const { reel, part, supplierPart, lot, dateCode, quantity } = facts;
  return { reel, part, supplierPart, lot, dateCode, count: quantity, sd: 0, basis: 'label', at: null };
}

/** Another slot that holds a reel too, since two people have it in two places; null where none does. */
export function elsewhere(
  state: FloorState,
  reel: string,
  slot: Pick<SlotState, 'line' | 'slot'>,
): Reel['at'] {
  for (const each of state.slots.values())
    if (!isAt(each, slot) && each.tapes.some(({ reel: id }) => id === reel))
      return { line: each.line, slot: each.slot };
  return null;
}

/** The reels of a slot are no longer there; a reel that another slot holds too is on that one. */
export function freeReels(state: FloorState, slot: SlotState): void {
  for (const tape of slot.tapes) {
    const reel = state.reels.get(tape.reel);
    if (!reel || !isAt(reel.at, slot)) continue;
    state.reels.set(tape.reel, {
      ...reel,
      count: tape.count,
      sd: tape.sd,
      at: elsewhere(state, tape.reel, slot),
    });
  }
}

/** The reels of a slot are there, with what they had when they were joined. */
export function holdReels(state: FloorState, { line, slot, tapes }: SlotState): void {
  for (const { reel: id, count, sd, basis } of tapes) {
    const reel = state.reels.get(id);
    if (!reel) continue;
    backInUse(state, id);
    state.reels.set(id, { ...reel, count, sd, basis, at: { line, slot } });
  }
}
