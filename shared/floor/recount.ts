// A count told by a person or a counter: what stands on the slot, or lies off the line, is what was counted.

import { backInUse, reelOf } from './gone-reels.ts';
import type { PayloadOf } from './kinds.ts';
import { isMixed } from './packs.ts';
import { elsewhere, isAt, type Mark } from './reel-places.ts';
import {
  countMark,
  endLedger,
  labelShareOf,
  placedSinceLedger,
  settleTurns,
  slotEstimate,
  startLedger,
} from './remaining.ts';
import { type FloorState, type SlotState, slotKey, type Tape } from './state.ts';

/** Takes a count in: of the reel named, else of the one that feeds. Tapes in front of it on its slot are used up. */
export function recount(state: FloorState, facts: PayloadOf<'reel.counted'>, mark: Mark): void {
  const { line, slot, reel, quantity, sd, basis } = facts;
  const standing = line === null || slot === null ? undefined : state.slots.get(slotKey(line, slot));
  if (standing && line !== null && slot !== null) {
    const { runningIndex } = slotEstimate(state, standing);
    const at = reel === null ? runningIndex : standing.tapes.findIndex((tape) => tape.reel === reel);
    const [first, ...rest] = at < 0 ? [] : standing.tapes.slice(at);
    // A reel that is not on the slot was counted elsewhere: the slot stays as it is.
    if (!first) {
      recountReel(state, reel, facts);
      return;
    }
    settleTurns(state, line, slot);
    const there = state.slots.get(slotKey(line, slot)) ?? standing;
    if (isMixed(there)) {
      recountLoose(state, there, { facts, mark });
      return;
    }
    for (const gone of there.tapes.slice(0, at)) emptyReel(state, gone, there);
    const tapes = [{ ...first, count: quantity, sd, basis }, ...rest];
    endLedger(state, there, {
      ...mark,
      placed: placedSinceLedger(state, there),
      told: 'count',
      endParts: quantity + rest.reduce((sum, tape) => sum + (tape.count ?? 0), 0),
      endSd: sd,
    });
    state.slots.set(slotKey(line, slot), {
      ...there,
      tapes,
      ledger: startLedger(tapes, mark.entry, labelShareOf(state, line)),
      usedBefore: 0,
      ...countMark(state, line),
      ...mark,
      before: { ...there, before: null },
    });
  }
  const now = line === null || slot === null ? undefined : state.slots.get(slotKey(line, slot));
  recountReel(state, reel ?? now?.tapes[0]?.reel ?? null, facts);
}

/** What lies loose over each other is counted in one: any of it may be left, so the figure stands on what was poured in last. */
function recountLoose(
  state: FloorState,
  there: SlotState,
  { facts, mark }: { readonly facts: PayloadOf<'reel.counted'>; readonly mark: Mark },
): void {
  const { quantity, sd, basis } = facts;
  const last = there.tapes.length - 1;
  const tapes = there.tapes.map(
    (tape, at): Tape =>
      at === last
        ? { ...tape, count: quantity, sd, basis }
        : { ...tape, count: 0, sd: 0, basis: 'counted-down' },
  );
  const placed = placedSinceLedger(state, there);
  endLedger(state, there, { ...mark, placed, told: 'count', endParts: quantity, endSd: sd });
  state.slots.set(slotKey(there.line, there.slot), {
    ...there,
    tapes,
    ledger: startLedger(tapes, mark.entry, labelShareOf(state, there.line)),
    usedBefore: 0,
    ...countMark(state, there.line),
    ...mark,
    before: { ...there, before: null },
  });
  recountReel(state, tapes[last]?.reel ?? null, facts);
}

function recountReel(
  state: FloorState,
  id: string | null,
  { quantity, sd, basis }: Pick<PayloadOf<'reel.counted'>, 'quantity' | 'sd' | 'basis'>,
): void {
  const known = id === null ? undefined : reelOf(state, id);
  if (!known) return;
  if (quantity > 0) backInUse(state, known.reel);
  state.reels.set(known.reel, { ...known, count: quantity, sd, basis });
}

/** A tape that the count says is used up: its reel is off the slot and empty. */
export function emptyReel(state: FloorState, tape: Tape, slot: SlotState): void {
  const reel = state.reels.get(tape.reel);
  if (reel && isAt(reel.at, slot))
    state.reels.set(reel.reel, {
      ...reel,
      count: 0,
      sd: tape.sd,
      basis: 'counted-down',
      at: elsewhere(state, tape.reel, slot),
    });
}
