// What contradicts: two reels on one slot, one reel on two, a block that was overlooked, a changeover both cancelled and released. Kept until a lead settles it or one of the
// two is taken back. Method: entries name a conflict, so that every tablet finds the same one; nothing is decided by the clock.

import { cameWithoutId } from './fold-print.ts';
import type { PayloadOf } from './kinds.ts';
import { freeReels, holdReels, type Mark } from './reel-places.ts';
import { comeBack, labelShareOf, neverStood, startLedger } from './remaining.ts';
import { type Conflict, type FloorState, type SlotState, slotKey, type Tape } from './state.ts';

type NewConflict = Omit<Conflict, 'conflict' | 'choices'> & { readonly choices?: readonly SlotState[] };

/** Keeps two entries that cannot both be true; the same two give the same conflict on every tablet. */
export function addConflict(state: FloorState, found: NewConflict): void {
  const conflict = `${found.kind}:${found.entries.join('+')}`;
  state.conflicts.set(conflict, { ...found, conflict, choices: found.choices ?? [] });
}

/** Taking off `was` is taken back, but another reel was loaded there since: which of them is on the slot? */
export function addLoadedSince(state: FloorState, was: SlotState, there: SlotState): void {
  const { line, slot, atMs } = there;
  const at = { line, slots: [slot], lines: [line], reel: null, atMs };
  const choices = [was, { ...there, before: null }];
  addConflict(state, { ...at, kind: 'slot-loaded-twice', entries: [was.entry, there.entry], choices });
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
      if (isTold(state, { reel: tape.reel, slots, lines })) continue;
      addConflict(state, { kind: 'reel-on-two-slots', line, slots, lines, reel: tape.reel, entries, atMs });
    }
  }
}

/** Tells of a reel on two slots, once for both. */
export function tellTwice(state: FloorState, conflict: Conflict): void {
  if (!isTold(state, conflict)) state.conflicts.set(conflict.conflict, conflict);
}

/**
 * What stood on a slot when another reel was loaded there is taken back: what it had stood on, or been joined to, contradicts the load
 * instead. `told`: the conflicts that named it.
 */
export function stepBack(state: FloorState, told: readonly Conflict[], of: string): void {
  for (const conflict of told) {
    const [first, second] = conflict.choices;
    if (conflict.kind !== 'slot-loaded-twice' || first?.entry !== of || !second) continue;
    const under = first.before;
    if (!under || state.corrected.has(under.entry)) continue;
    addConflict(state, { ...conflict, entries: [under.entry, second.entry], choices: [under, second] });
  }
}

/** True where it is told already that a reel stands on these two slots. */
function isTold(
  state: FloorState,
  { reel, slots, lines }: Pick<Conflict, 'reel' | 'slots' | 'lines'>,
): boolean {
  const places = (of: Pick<Conflict, 'slots' | 'lines'>) =>
    of.slots.map((slot, at) => slotKey(of.lines[at] ?? '', slot)).sort();
  const [one, other] = places({ slots, lines });
  return [...state.conflicts.values()].some((conflict) => {
    if (conflict.kind !== 'reel-on-two-slots' || conflict.reel !== reel) return false;
    const there = places(conflict);
    return there[0] === one && there[1] === other;
  });
}

/** True where a reel still stands on both slots of a conflict. */
export function isStillTwice(state: FloorState, { kind, slots, lines, reel }: Conflict): boolean {
  const holds = (slot: string, at: number) =>
    state.slots.get(slotKey(lines[at] ?? '', slot))?.tapes.some((tape) => tape.reel === reel) ?? false;
  return kind === 'reel-on-two-slots' && slots.every(holds);
}

/** Forgets what contradicted on a slot that is empty now, by the entry `by`. */
export function dropConflicts(state: FloorState, at: Pick<SlotState, 'line' | 'slot'>, by: string): void {
  const isOf = ({ slots, lines }: Conflict) =>
    slots.some((slot, index) => slot === at.slot && lines[index] === at.line);
  mend(state, isOf, by);
}

/** Forgets of a reel on two slots where it stands on one of them no more, by the entry `by`. */
export function dropOnce(state: FloorState, by: string): void {
  mend(state, (conflict) => conflict.kind === 'reel-on-two-slots' && !isStillTwice(state, conflict), by);
}

/** So many entries are kept with what they mended. */
const MENDED_KEPT = 200;

/** Forgets conflicts; taking back the entry that made them go brings them back. */
function mend(state: FloorState, isGone: (conflict: Conflict) => boolean, by: string): void {
  const gone = [...state.conflicts.values()].filter(isGone);
  if (gone.length === 0) return;
  for (const { conflict } of gone) state.conflicts.delete(conflict);
  state.mended.set(by, [...(state.mended.get(by) ?? []), ...gone]);
  const [oldest] = state.mended.keys();
  if (state.mended.size > MENDED_KEPT && oldest !== undefined) state.mended.delete(oldest);
}

/** Tells again what an entry had mended that is taken back now, as far as it still contradicts. */
export function unmend(state: FloorState, of: string): void {
  for (const conflict of state.mended.get(of) ?? []) {
    const isTwice = conflict.kind === 'reel-on-two-slots';
    const stands = isTwice
      ? isStillTwice(state, conflict) && !isTold(state, conflict)
      : conflict.entries.every((entry) => !state.corrected.has(entry)) && stillStands(state, conflict);
    if (stands) state.conflicts.set(conflict.conflict, conflict);
  }
  state.mended.delete(of);
}

/** True where what the conflict's newest word left is what stands on its slot, so that the question is open again. */
function stillStands(state: FloorState, { choices, slots, lines }: Conflict): boolean {
  const there = state.slots.get(slotKey(lines[0] ?? '', slots[0] ?? ''));
  if (choices.length === 0) return true;
  return choices.some(({ tapes }) =>
    tapes.some(({ entry }) => there?.tapes.some((tape) => tape.entry === entry)),
  );
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

/** Forgets a splice that met an empty slot: somebody has loaded it since, by the entry `by`. */
export function dropEmptied(state: FloorState, at: Pick<SlotState, 'line' | 'slot'>, by: string): void {
  const isOf = ({ kind, slots, lines }: Conflict) =>
    kind === 'spliced-though-unloaded' && slots[0] === at.slot && lines[0] === at.line;
  mend(state, isOf, by);
}

/** True where an unload names a tape behind which another was joined by then: who took it off did not know of the splice. */
export function isOlderTape(
  state: FloorState,
  there: Pick<SlotState, 'tapes'>,
  unloaded: { readonly reel: string | null; readonly part: string | null; readonly lot: string | null },
): boolean {
  const isNamed = (tape: Tape) =>
    unloaded.reel === null
      ? cameWithoutId(state, tape.reel) && tape.part === unloaded.part && tape.lot === unloaded.lot
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
  dropOnce(state, mark.entry);
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
  const settled = { ...comeBack(state, kept), ...mark, tapes, ledger, before: null };
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
    const settled = { ...comeBack(state, spliced), ...mark, before: null };
    state.slots.set(key, settled);
    holdReels(state, settled);
    addTwice(state, settled);
  } else if (now?.tapes.some((tape) => spliced.tapes.some(({ entry }) => entry === tape.entry))) {
    freeReels(state, now);
    state.takenOff.set(key, { entry: mark.entry, was: { ...neverStood(state, now), before: null } });
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
    if (tapes.length === 0) neverStood(state, there);
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
  state.reels.set(reel.reel, { ...reel, at: { line, slot } });
}
