// What contradicts: two reels on one slot, one reel on two, a block that was overlooked. Kept until a lead settles it or one of the
// two is taken back. Method: entries name a conflict, so that every tablet finds the same one; nothing is decided by the clock.

import type { PayloadOf } from './kinds.ts';
import { elsewhere, freeReels, holdReels, type Mark } from './reel-places.ts';
import { labelShareOf, startLedger } from './remaining.ts';
import { type Conflict, type FloorState, type SlotState, slotKey, type Tape } from './state.ts';

type NewConflict = Omit<Conflict, 'conflict' | 'choices'> & { readonly choices?: readonly SlotState[] };

/** Keeps two entries that cannot both be true; the same two give the same conflict on every tablet. */
export function addConflict(state: FloorState, found: NewConflict): void {
  const conflict = `${found.kind}:${found.entries.join('+')}`;
  state.conflicts.set(conflict, { ...found, conflict, choices: found.choices ?? [] });
}

/** Keeps that the reels of a slot, or one of them, stand on other slots too; every two slots that hold one are told, whichever of them was last. */
export function addTwice(state: FloorState, there: SlotState, reel?: string): void {
  const { line, slot, entry, atMs } = there;
  for (const other of state.slots.values()) {
    if (other.line === line && other.slot === slot) continue;
    for (const tape of other.tapes) {
      if (!there.tapes.some((own) => own.reel === tape.reel) || (reel ?? tape.reel) !== tape.reel) continue;
      const [slots, lines] = [
        [other.slot, slot],
        [other.line, line],
      ];
      const entries = [other.entry, entry];
      addConflict(state, { kind: 'reel-on-two-slots', line, slots, lines, reel: tape.reel, entries, atMs });
    }
  }
}

/** True where a reel still stands on both slots of a conflict. */
export function isStillTwice(state: FloorState, { kind, slots, lines, reel }: Conflict): boolean {
  const holds = (slot: string, at: number) =>
    state.slots.get(slotKey(lines[at] ?? '', slot))?.tapes.some((tape) => tape.reel === reel) ?? false;
  return kind === 'reel-on-two-slots' && slots.every(holds);
}

/** Forgets what contradicted on a slot that is empty now. */
export function dropConflicts(state: FloorState, line: string, slot: string): void {
  for (const [key, conflict] of state.conflicts) {
    if (conflict.slots.some((other, at) => other === slot && conflict.lines[at] === line))
      state.conflicts.delete(key);
  }
}

/** Keeps a splice onto a slot that another tablet unloaded; `spliced` is what the splice left there. */
export function addUnloaded(
  state: FloorState,
  spliced: SlotState,
  told: { readonly entries: readonly string[]; readonly atMs: number },
): void {
  addConflict(state, {
    kind: 'spliced-though-unloaded',
    line: spliced.line,
    slots: [spliced.slot],
    lines: [spliced.line],
    reel: null,
    entries: told.entries,
    choices: [{ ...spliced, before: null }],
    atMs: told.atMs,
  });
}

/** Forgets a splice that met an empty slot: somebody has loaded it since. */
export function dropEmptied(state: FloorState, line: string, slot: string): void {
  for (const [key, { kind, slots, lines }] of state.conflicts) {
    if (kind === 'spliced-though-unloaded' && slots[0] === slot && lines[0] === line)
      state.conflicts.delete(key);
  }
}

/** True where an unload names a tape behind which another was joined by then: who took it off did not know of the splice. */
export function isOlderTape(
  there: Pick<SlotState, 'tapes'>,
  unloaded: { readonly reel: string | null; readonly part: string | null; readonly lot: string | null },
): boolean {
  const isNamed = (tape: Tape) =>
    unloaded.reel === null
      ? tape.reel.startsWith('~') && tape.part === unloaded.part && tape.lot === unloaded.lot
      : tape.reel === unloaded.reel;
  const last = there.tapes.at(-1);
  return last !== undefined && !isNamed(last) && there.tapes.some(isNamed);
}

/** A lead's word: the conflict is gone, and what was kept is what stands. Without a word what to keep, all stays as it is. */
export function settle(state: FloorState, facts: PayloadOf<'conflict.settled'>, mark: Mark): void {
  const conflict = state.conflicts.get(facts.conflict);
  if (!conflict) return;
  state.conflicts.delete(facts.conflict);
  if (facts.keep === null || !conflict.entries.includes(facts.keep)) return;
  if (conflict.kind === 'slot-loaded-twice') settleSlot(state, conflict, { keep: facts.keep, mark });
  if (conflict.kind === 'reel-on-two-slots') settleReel(state, conflict, { keep: facts.keep, mark });
  if (conflict.kind === 'spliced-though-unloaded') settleEmptied(state, conflict, { keep: facts.keep, mark });
}

/** Which of two reels is on the slot. Tapes joined since then were joined to whichever it is. */
function settleSlot(
  state: FloorState,
  conflict: Conflict,
  { keep, mark }: { readonly keep: string; readonly mark: Mark },
): void {
  const kept = conflict.choices.find((choice) => choice.entry === keep);
  const given = conflict.choices.find((choice) => choice.entry !== keep);
  const now = kept && state.slots.get(slotKey(kept.line, kept.slot));
  if (!kept || !given || !now) return;
  const isOf = (choice: SlotState) => (tape: Tape) => choice.tapes.some(({ entry }) => entry === tape.entry);
  if (now.tapes.some(isOf(kept))) return; // it stands already
  freeReels(state, now);
  const joined = now.tapes.filter((tape) => !isOf(given)(tape));
  const tapes = [...kept.tapes, ...joined];
  const ledger =
    joined.length === 0 ? kept.ledger : startLedger(tapes, mark.entry, labelShareOf(state, kept.line));
  const settled = { ...kept, ...mark, tapes, ledger, before: null };
  state.slots.set(slotKey(kept.line, kept.slot), settled);
  holdReels(state, settled);
  addTwice(state, settled);
}

/** Whether the spliced reel is on its slot, or the slot is empty as the unload says. */
function settleEmptied(
  state: FloorState,
  conflict: Conflict,
  { keep, mark }: { readonly keep: string; readonly mark: Mark },
): void {
  const [spliced] = conflict.choices;
  if (!spliced) return;
  const key = slotKey(spliced.line, spliced.slot);
  const now = state.slots.get(key);
  if (spliced.tapes.some((tape) => tape.entry === keep)) {
    if (now) return; // it stands already, or another reel was loaded since
    const settled = { ...spliced, ...mark, before: null };
    state.slots.set(key, settled);
    holdReels(state, settled);
    addTwice(state, settled);
  } else if (now?.tapes.some((tape) => spliced.tapes.some(({ entry }) => entry === tape.entry))) {
    freeReels(state, now);
    state.slots.delete(key);
    state.takenOff.set(key, { entry: mark.entry, was: { ...now, before: null } });
  }
}

/** On which of two slots a reel is: it comes off the other, with the tapes joined to it left there. */
function settleReel(
  state: FloorState,
  conflict: Conflict,
  { keep, mark }: { readonly keep: string; readonly mark: Mark },
): void {
  const keptAt = conflict.entries.indexOf(keep);
  for (const [at, slot] of conflict.slots.entries()) {
    const key = slotKey(conflict.lines[at] ?? conflict.line, slot);
    const there = state.slots.get(key);
    if (!there || at === keptAt) continue;
    const tapes = there.tapes.filter((tape) => tape.reel !== conflict.reel);
    if (tapes.length === there.tapes.length) continue;
    if (tapes.length === 0) state.slots.delete(key);
    else
      state.slots.set(key, {
        ...there,
        tapes,
        ledger: startLedger(tapes, mark.entry, labelShareOf(state, there.line)),
        ...mark,
        before: null,
      });
  }
  const slot = conflict.slots[keptAt];
  const line = conflict.lines[keptAt];
  const reel = conflict.reel === null ? undefined : state.reels.get(conflict.reel);
  if (!reel || slot === undefined || line === undefined) return;
  // Another reel may have been loaded there since.
  const kept = { line, slot };
  const isThere =
    state.slots.get(slotKey(line, slot))?.tapes.some((tape) => tape.reel === reel.reel) ?? false;
  state.reels.set(reel.reel, { ...reel, at: isThere ? kept : elsewhere(state, reel.reel, kept) });
}
