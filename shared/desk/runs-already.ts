// Is the reel in hand the one that runs already? By its own id, else by what its label says; asked before it is taken for a new one. Pure.

import { cameWithoutId } from '../floor/fold-print.ts';
import { isSameLabel } from '../floor/holds.ts';
import { sharesSlots } from '../floor/lanes.ts';
import { slotPhase } from '../floor/progress.ts';
import { hasOwnId } from '../floor/reel-id.ts';
import { neededBy } from '../floor/slot-right.ts';
import { slotKey } from '../floor/state.ts';
import { joins, type VerifyAct } from '../floor/vocabulary.ts';
import { type Desk, type DeskView, deskAct, type ReelInHand } from './model.ts';

/**
 * The slot that a reel runs on and would be spliced on, null where there is none. Only by the reel's own id: a new reel without
 * one may carry the part and lot of the reel before it.
 */
export function runsOn(reel: ReelInHand, desk: Desk, view: DeskView): string | null {
  const at = reel.reel === null ? null : (view.floor.reels.get(reel.reel)?.at ?? null);
  if (desk.mode !== 'work' || at === null || !sharesSlots(at.line, view.line) || comesOut(at.slot, view))
    return null;
  return isMore(deskAct({ ...desk, slot: at.slot }, view)) && isOnSlot(reel, at.slot, view) ? at.slot : null;
}

/**
 * True where the label, without an id, reads like that of a tape that runs on the slot: same part, lot and date code, and no other
 * quantity than the tape's own label had.
 */
export function readsAsRunning(reel: ReelInHand, desk: Desk, view: DeskView): boolean {
  if (desk.slot === null || reel.reel !== null || reel.isSecond || !isMore(deskAct(desk, view))) return false;
  const loaded = view.floor.slots.get(slotKey(view.line, desk.slot))?.tapes ?? [];
  return loaded.some((tape) => {
    const isOther =
      tape.basis === 'label' &&
      tape.count !== null &&
      reel.labelQuantity !== null &&
      tape.count !== reel.labelQuantity;
    return !isOther && cameWithoutId(view.floor, tape.reel) && isSameLabel({ ...tape, reel: null }, reel);
  });
}

/** True for an act that brings more to a slot on which something stands. */
function isMore(act: VerifyAct): boolean {
  return joins(act) || act === 'exchange';
}

/** True where a changeover is open and the slot carries what the next product does not want there. */
export function comesOut(slot: string, view: DeskView): boolean {
  if (!view.floor.changing.has(view.line) || !view.floor.slots.has(slotKey(view.line, slot))) return false;
  const phase = slotPhase(view.floor, view.line, slot);
  return phase === 'other' || (phase === null && neededBy(view.floor, view.line, slot) === null);
}

/** True where the label is of a reel that the log has on the slot; without an id, part and lot decide. */
export function isOnSlot(reel: ReelInHand, slot: string, view: DeskView): boolean {
  const loaded = view.floor.slots.get(slotKey(view.line, slot))?.tapes ?? [];
  return loaded.some(
    (tape) =>
      (reel.reel !== null && tape.reel === reel.reel) ||
      ((!hasOwnId(tape.reel) || (reel.reel === null && view.floor.named.has(tape.reel))) &&
        (tape.part === reel.part ||
          (tape.supplierPart !== null && tape.supplierPart === reel.supplierPart)) &&
        (reel.lot === null || tape.lot === null || reel.lot === tape.lot)),
  );
}
