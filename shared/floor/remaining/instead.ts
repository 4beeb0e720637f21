// What a record that may come back to a slot changes at the slots used in turn with it: while it was thought to be off, they were set down as having given
// its share. So does one that never stood there in truth: the others were set down without what they gave in its place. Method: whatever is set down,
// each record that may come back keeps how much more or less each of the others would have given with it there, and each that stands how much without
// it; where it comes back, or was never there, that is put right. Refused: to set others down again from the log, which a fold does not have. Not exact
// in a few of a thousand histories where the way from hub to pick is entered: which tapes a splice finds used up hangs on what the slot gave until then.
// Private to the door `remaining.ts`.

import { withWhatMayComeBack } from '../come-back.ts';
import type { FloorState, SlotState } from '../state.ts';
import { slotKey } from '../state.ts';
import type { Instead } from '../state-ledger.ts';
import { turnsWith } from '../turns.ts';
import { settleUse, usedPlacements } from './placed.ts';

/** Placements below which two figures are the same. */
const SAME = 1e-9;

/**
 * The slot with what it has used so far as a plain figure, and with what the other case would change at the others: of one that stands, that nothing
 * stood there; of one that does not, that it did. `asItWas`: the floor before.
 */
export function setDown(asItWas: FloorState, slot: SlotState): SlotState {
  const { line, slot: address } = slot;
  const group = turnsWith(asItWas, line, address);
  if (group.size === 0) return settleUse(asItWas, slot);
  const key = slotKey(line, address);
  const isStanding = asItWas.slots.get(key) === slot;
  const { instead: there, without, ...alone } = slot;
  const before = (isStanding ? without : there) ?? [];
  const world = { ...asItWas, slots: new Map(asItWas.slots) };
  putRight(world, line, before);
  if (isStanding) world.slots.delete(key);
  else world.slots.set(key, alone);
  // A slot that the present setup uses otherwise was put right by none of this: what was known of it stands.
  const others = before.filter((each) => !group.has(each.slot));
  const inGroup = [...group].flatMap((other): readonly Instead[] => {
    const now = asItWas.slots.get(slotKey(line, other));
    const then = world.slots.get(slotKey(line, other));
    if (other === address || !now || !then) return [];
    const { chain, dropped, joint } = now.ledger;
    const total = dropped + usedPlacements(asItWas, now);
    const by = then.ledger.dropped + usedPlacements(world, then) - total;
    const known = before.find((each) => each.slot === other && each.chain === chain);
    const last = now.tapes.at(-1)?.entry ?? '';
    const jointBy = known === undefined || joint === null ? 0 : byAtJoint(known, now);
    return Math.abs(by) < SAME && jointBy === 0 ? [] : [{ slot: other, chain, last, total, by, jointBy }];
  });
  const instead = [...others, ...inGroup];
  const settled = settleUse(isStanding ? asItWas : world, alone);
  if (instead.length === 0) return settled;
  return isStanding ? { ...settled, without: instead } : { ...settled, instead };
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
  putRight(state, slot.line, slot.instead);
  const { instead: _, ...back } = slot;
  return back;
}

/** Empties a slot on which nothing stood in truth: the others are put right. Gives what stood there, as it would come back. */
export function neverStood(state: Pick<FloorState, 'slots'>, slot: SlotState): SlotState {
  const { without = [], ...gone } = slot;
  state.slots.delete(slotKey(slot.line, slot.slot));
  putRight(state, slot.line, without);
  if (without.length === 0) return gone;
  const instead = without.map(({ total, by, jointBy, ...each }) => ({
    ...each,
    total: total + by,
    by: -by,
    jointBy: -jointBy,
  }));
  return { ...gone, instead };
}

/** Only what was counted anew, or put on a slot, since then is right as it is. */
function putRight(state: Pick<FloorState, 'slots'>, line: string, instead: readonly Instead[] = []): void {
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
      joint: joint && { ...joint, placed: joint.placed + byAtJoint(each, there) },
    };
    state.slots.set(key, { ...there, usedBefore: Math.max(0, used), ledger });
  }
}

/** What was known to change when the last splice was made: all of it where that came after it was set down. */
function byAtJoint({ last, total, by, jointBy }: Instead, { tapes, ledger }: SlotState): number {
  const isLater = tapes.at(-1)?.entry !== last && (ledger.joint?.placed ?? 0) >= total - SAME;
  return isLater ? by : jointBy;
}
