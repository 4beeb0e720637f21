// What do the other lanes of the conveyor say to a reel? A slot feeds all lanes, so the reel must be right for each product that takes from it.

import { type FitReel, partFits } from '../floor/fits.ts';
import { isKeptFrom, slotKeptFor } from '../floor/slot-right.ts';
import { type FloorState, slotKey } from '../floor/state.ts';
import { lanesWanting } from '../floor/wanted.ts';
import { type Reason, reasonVerdicts } from './reasons.ts';

/**
 * Why another lane cannot take the reel from the slot: a part that is wrong there refuses it, what a lead must decide there holds it. Empty
 * where no other lane takes anything from the slot. A lane that a slot is kept from has no say. `known`: reasons given already, which are not given twice.
 */
export function laneReasons(
  state: FloorState,
  asked: { readonly line: string; readonly slot: string; readonly reel: FitReel },
  known: readonly Reason[],
): readonly Reason[] {
  const reasons: Reason[] = [];
  for (const want of lanesWanting(state, asked.line, asked.slot)) {
    if (isKeptFrom(state, want)) continue;
    const { line, wanted } = want;
    const lane = state.lines.get(line)?.name ?? line;
    for (const reason of partFits(state, want, asked.reel).reasons) {
      const found = asked.reel.part ?? asked.reel.supplierPart;
      if (reasonVerdicts[reason.code] === 'refused')
        reasons.push({ code: 'wrong-for-lane', lane, slot: asked.slot, wanted: wanted.part, found });
      else if (reasonVerdicts[reason.code] === 'held') reasons.push(reason);
    }
  }
  return reasons.filter(
    (reason, at) => ![...known, ...reasons.slice(0, at)].some(({ code }) => code === reason.code),
  );
}

/** What stands on the slot is wrong for the setup asked for and right for another lane, which keeps it; null where no lane does. */
export function keptReason(
  state: FloorState,
  { line, setup, slot }: { readonly line: string; readonly setup: string; readonly slot: string },
): Reason | null {
  const keeper = slotKeptFor(state, line, setup, slot);
  if (keeper === null) return null;
  const part = state.slots.get(slotKey(line, slot))?.tapes.at(-1)?.part ?? null;
  return { code: 'kept-for-lane', lane: state.lines.get(keeper)?.name ?? keeper, slot, part };
}
