// What a record that may come back to a slot changes at the slots used in turn with it: while it was thought to be off, they were set down as having given
// its share. Method: whatever is set down, each record that may come back keeps how much more or less each of the others would have given with it
// there; where it comes back, that is put right. Refused: to set others down again from the log, which a fold does not have. Private to the door `remaining.ts`.

import { withWhatMayComeBack } from '../come-back.ts';
import type { FloorState, SlotState } from '../state.ts';
import { slotKey } from '../state.ts';
import type { Instead } from '../state-ledger.ts';
import { turnsWith } from '../turns.ts';
import { settleUse, usedPlacements } from './placed.ts';

/** Placements below which two figures are the same. */
const SAME = 1e-9;

/** The slot with what it has used so far as a plain figure; of one that does not stand, with what that would change at the others. `asItWas`: the floor before. */
export function setDown(asItWas: FloorState, slot: SlotState): SlotState {
  const { line, slot: address } = slot;
  const group = turnsWith(asItWas, line, address);
  const isStanding = asItWas.slots.get(slotKey(line, address)) === slot;
  if (isStanding || group.size === 0) return settleUse(asItWas, slot);
  const { instead: before, ...alone } = slot;
  const world = { ...asItWas, slots: new Map(asItWas.slots) };
  putRight(world, slot);
  world.slots.set(slotKey(line, address), alone);
  const instead = [...group].flatMap((other): readonly Instead[] => {
    const now = asItWas.slots.get(slotKey(line, other));
    const then = world.slots.get(slotKey(line, other));
    if (other === address || !now || !then) return [];
    const { chain, dropped, joint } = now.ledger;
    const total = dropped + usedPlacements(asItWas, now);
    const by = then.ledger.dropped + usedPlacements(world, then) - total;
    const known = before?.find((each) => each.slot === other && each.chain === chain);
    const jointBy = known === undefined || joint === null ? 0 : byAtJoint(known, joint.placed);
    return Math.abs(by) < SAME && jointBy === 0 ? [] : [{ slot: other, chain, total, by, jointBy }];
  });
  const settled = settleUse(world, alone);
  return instead.length === 0 ? settled : { ...settled, instead };
}

/**
 * Sets down what a slot and those that are used in turn with it have used, all at once, and what whatever may come back to them would have: called
 * before its tapes change, since what each took until now depends on what the others had until now. Whoever holds the slot reads it anew.
 */
export function settleTurns(state: FloorState, line: string, slot: string): void {
  const group = turnsWith(state, line, slot);
  if (group.size === 0) return;
  // What one slot took depends on the others, so all are looked at as they were.
  const asItWas = { ...state, slots: new Map(state.slots) };
  withWhatMayComeBack(state, line, (each) => (group.has(each.slot) ? setDown(asItWas, each) : each));
}

/** A record that comes back to its slot: the others are put right. It says itself no more what it would change. */
export function comeBack(state: Pick<FloorState, 'slots'>, slot: SlotState): SlotState {
  putRight(state, slot);
  const { instead: _, ...back } = slot;
  return back;
}

/** Only what was counted anew, or put on a slot, since then is right as it is. */
function putRight(state: Pick<FloorState, 'slots'>, { line, instead = [] }: SlotState): void {
  for (const each of instead) {
    const key = slotKey(line, each.slot);
    const there = state.slots.get(key);
    if (there?.ledger.chain !== each.chain) continue;
    const { joint, dropped } = there.ledger;
    const used = there.usedBefore + each.by;
    const ledger = {
      ...there.ledger,
      // Tapes that were thought to be used up stay gone; what they had still left counts all the same.
      dropped: dropped + Math.min(0, used),
      joint: joint && { ...joint, placed: joint.placed + byAtJoint(each, joint.placed) },
    };
    state.slots.set(key, { ...there, usedBefore: Math.max(0, used), ledger });
  }
}

/** What was known to change when the last splice was made: all of it where that came after it was set down. */
function byAtJoint({ total, by, jointBy }: Instead, placed: number): number {
  return placed >= total - SAME ? by : jointBy;
}
