// Reels and slots: what is on the line, what waits for a lead, and what contradicts. An accepted verdict, or a held one that
// a lead cleared, puts a reel on a slot; a refused one changes nothing but stays in the log.

import { entryId } from '../log/entry.ts';
import type { FloorEntry, PayloadOf } from './kinds.ts';
import { slotLeft, usedPlacements, wantedOn } from './left.ts';
import { type FloorState, type Reel, type SlotState, slotKey, type Tape } from './state.ts';

type Verified = PayloadOf<'reel.verified'>;

/** When and by which entry something was done. */
interface Mark {
  readonly entry: string;
  readonly atMs: number;
}

/** Applies one entry to the material; other kinds change nothing. */
export function foldMaterial(state: FloorState, entry: FloorEntry): void {
  const mark: Mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  switch (entry.kind) {
    case 'reel.verified':
      if (entry.payload.verdict === 'accepted') place(state, entry.payload, mark);
      else if (entry.payload.verdict === 'held') {
        state.holds.set(mark.entry, {
          ...mark,
          facts: entry.payload,
          who: entry.who,
          reasons: entry.payload.reasons,
        });
      }
      return;
    case 'hold.cleared': {
      const hold = state.holds.get(entry.payload.of);
      if (!hold) return;
      state.holds.delete(entry.payload.of);
      const block = blockOn(state, hold.facts);
      if (block !== null) {
        addConflict(state, {
          kind: 'cleared-though-blocked',
          line: hold.facts.line,
          slots: hold.facts.slot === null ? [] : [hold.facts.slot],
          reel: hold.facts.reel,
          entries: [block, mark.entry],
          atMs: mark.atMs,
        });
      }
      place(state, hold.facts, mark);
      return;
    }
    case 'hold.declined':
      state.holds.delete(entry.payload.of);
      return;
    case 'reel.unloaded':
      unload(state, entry.payload, mark);
      return;
    case 'reel.counted':
      recount(state, entry.payload, mark);
      return;
    case 'entry.corrected':
      takeBack(state, entry.payload.of);
      return;
    case 'conflict.settled':
      settle(state, entry.payload, mark);
      return;
    default:
      return;
  }
}

/** The block that a reel falls under, null where none does. */
export function blockOn(
  state: FloorState,
  reel: { readonly reel: string | null; readonly lot: string | null; readonly part: string | null },
): string | null {
  for (const block of state.blocks.values()) {
    const named = block.reel !== null || block.lot !== null || block.part !== null;
    const fits =
      (block.reel === null || block.reel === reel.reel) &&
      (block.lot === null || block.lot === reel.lot) &&
      (block.part === null || block.part === reel.part);
    if (named && fits) return block.block;
  }
  return null;
}

function place(state: FloorState, facts: Verified, mark: Mark): void {
  if (facts.slot === null) return;
  if (facts.act === 'sweep') {
    seeInSweep(state, facts.line, facts.slot);
    return;
  }
  const key = slotKey(facts.line, facts.slot);
  const there = state.slots.get(key);
  const run = state.current.get(facts.line) ?? null;
  const done = run === null ? 0 : (state.runs.get(run)?.done ?? 0);
  const forPart = wantedOn(state, facts.setup, facts.slot)?.part ?? null;
  const tape: Tape = { ...tapeOf(facts, mark, done), forPart };
  const placed =
    facts.act === 'splice' && there
      ? joinTape(state, there, tape, mark)
      : {
          line: facts.line,
          slot: facts.slot,
          feeder: facts.feeder,
          tapes: [tape],
          usedBefore: 0,
          sinceRun: run,
          sinceDone: done,
          ...mark,
          before: there ? { ...there, before: null } : null,
        };
  if (facts.act === 'load' && there) {
    addConflict(state, {
      kind: 'slot-loaded-twice',
      line: facts.line,
      slots: [facts.slot],
      reel: null,
      entries: [there.entry, mark.entry],
      choices: [
        { ...there, before: null },
        { ...placed, before: null },
      ],
      atMs: mark.atMs,
    });
  }
  state.slots.set(key, placed);
  seeInSweep(state, facts.line, facts.slot);
  putReel(state, tape, facts.line, facts.slot, mark);
}

function tapeOf(facts: Verified, mark: Mark, done: number): Omit<Tape, 'forPart'> {
  return {
    reel: facts.reel ?? `~${mark.entry}`,
    part: facts.part ?? '',
    supplierPart: facts.supplierPart,
    lot: facts.lot,
    dateCode: facts.dateCode,
    count: facts.quantity,
    sd: 0,
    basis: facts.basis ?? 'label',
    entry: mark.entry,
    atMs: mark.atMs,
    fromPanels: done,
  };
}

/** Joins a tape behind the running one; tapes that the count says are gone are dropped from the slot. */
function joinTape(state: FloorState, there: SlotState, tape: Tape, mark: Mark): SlotState {
  const loss = state.rules.get(there.line)?.loss ?? 0;
  let used = usedPlacements(state, there);
  const tapes = [...there.tapes];
  while (tapes.length > 1) {
    const count = tapes[0]?.count ?? null;
    if (count === null || count * (1 - loss) > used) break;
    used -= count * (1 - loss);
    tapes.shift();
  }
  const run = state.current.get(there.line) ?? null;
  return {
    ...there,
    tapes: [...tapes, tape],
    usedBefore: used,
    sinceRun: run,
    sinceDone: run === null ? 0 : (state.runs.get(run)?.done ?? 0),
    ...mark,
    before: { ...there, before: null },
  };
}

function putReel(state: FloorState, tape: Tape, line: string, slot: string, mark: Mark): void {
  const there = state.reels.get(tape.reel);
  if (there?.at && (there.at.line !== line || there.at.slot !== slot)) {
    const other = state.slots.get(slotKey(there.at.line, there.at.slot));
    if (other?.tapes.some((candidate) => candidate.reel === tape.reel)) {
      addConflict(state, {
        kind: 'reel-on-two-slots',
        line,
        slots: [there.at.slot, slot],
        reel: tape.reel,
        entries: [other.entry, mark.entry],
        atMs: mark.atMs,
      });
    }
  }
  const { reel, part, supplierPart, lot, dateCode, count, sd, basis } = tape;
  state.reels.set(reel, { reel, part, supplierPart, lot, dateCode, count, sd, basis, at: { line, slot } });
}

function unload(state: FloorState, facts: PayloadOf<'reel.unloaded'>, mark: Mark): void {
  const key = slotKey(facts.line, facts.slot);
  const there = state.slots.get(key);
  if (!there) return;
  const left = slotLeft(state, there, state.rules.get(facts.line)?.loss ?? 0);
  state.slots.delete(key);
  state.takenOff.set(key, { entry: mark.entry, was: { ...there, before: null } });
  for (const tape of there.tapes) {
    const reel = state.reels.get(tape.reel);
    if (!reel) continue;
    const last = tape === there.tapes.at(-1);
    const counted = last ? (facts.quantity ?? left.parts) : 0;
    state.reels.set(tape.reel, {
      ...reel,
      count: counted === null ? null : Math.round(counted),
      sd: facts.quantity === null ? left.sd : 0,
      basis: facts.quantity === null ? 'counted-down' : (facts.basis ?? 'typed'),
      at: null,
    });
  }
  dropConflicts(state, facts.line, facts.slot);
}

function recount(state: FloorState, facts: PayloadOf<'reel.counted'>, mark: Mark): void {
  const { line, slot, reel, quantity, sd, basis } = facts;
  const there = line === null || slot === null ? undefined : state.slots.get(slotKey(line, slot));
  if (there && line !== null && slot !== null) {
    const run = state.current.get(line) ?? null;
    const { runningIndex } = slotLeft(state, there, state.rules.get(line)?.loss ?? 0);
    const at = reel === null ? runningIndex : there.tapes.findIndex((tape) => tape.reel === reel);
    const kept = there.tapes.slice(Math.max(0, at));
    const [first, ...rest] = kept;
    if (!first) return;
    const done = run === null ? 0 : (state.runs.get(run)?.done ?? 0);
    state.slots.set(slotKey(line, slot), {
      ...there,
      tapes: [{ ...first, count: quantity, sd, basis }, ...rest],
      usedBefore: 0,
      sinceRun: run,
      sinceDone: done,
      ...mark,
      before: { ...there, before: null },
    });
  }
  const id = reel ?? there?.tapes[0]?.reel;
  const known = id === undefined ? undefined : state.reels.get(id);
  if (known) state.reels.set(known.reel, { ...known, count: quantity, sd, basis });
}

/** A correction undoes what the named entry did to a slot, as long as nothing newer stands on it. */
function takeBack(state: FloorState, of: string): void {
  state.holds.delete(of);
  for (const [key, slot] of state.slots) {
    if (slot.entry !== of) continue;
    if (slot.before) state.slots.set(key, slot.before);
    else state.slots.delete(key);
    for (const tape of slot.tapes) {
      const still = slot.before?.tapes.some((other) => other.reel === tape.reel) ?? false;
      const reel = state.reels.get(tape.reel);
      if (!still && reel) state.reels.set(tape.reel, { ...reel, count: tape.count, sd: tape.sd, at: null });
    }
    dropConflicts(state, slot.line, slot.slot);
    return;
  }
  for (const [key, taken] of state.takenOff) {
    if (taken.entry !== of || state.slots.has(key)) continue;
    state.slots.set(key, taken.was);
    state.takenOff.delete(key);
    for (const tape of taken.was.tapes) {
      const reel = state.reels.get(tape.reel);
      if (reel) {
        state.reels.set(tape.reel, {
          ...reel,
          count: tape.count,
          sd: tape.sd,
          basis: tape.basis,
          at: taken.was,
        });
      }
    }
    return;
  }
}

function seeInSweep(state: FloorState, line: string, slot: string): void {
  const sweep = state.sweeps.get(line);
  if (!sweep || sweep.endedMs !== null || sweep.seen.includes(slot)) return;
  state.sweeps.set(line, { ...sweep, seen: [...sweep.seen, slot] });
}

interface NewConflict {
  readonly kind: 'slot-loaded-twice' | 'reel-on-two-slots' | 'cleared-though-blocked';
  readonly line: string;
  readonly slots: readonly string[];
  readonly reel: string | null;
  readonly entries: readonly string[];
  readonly choices?: readonly SlotState[];
  readonly atMs: number;
}

function addConflict(state: FloorState, found: NewConflict): void {
  const conflict = `${found.kind}:${found.entries.join('+')}`;
  state.conflicts.set(conflict, { ...found, conflict, choices: found.choices ?? [] });
}

function dropConflicts(state: FloorState, line: string, slot: string): void {
  for (const [key, conflict] of state.conflicts) {
    if (conflict.line === line && conflict.slots.includes(slot)) state.conflicts.delete(key);
  }
}

/** A lead's word: the conflict is gone, and what was kept is what stands. */
function settle(state: FloorState, facts: PayloadOf<'conflict.settled'>, mark: Mark): void {
  const conflict = state.conflicts.get(facts.conflict);
  if (!conflict) return;
  state.conflicts.delete(facts.conflict);
  const kept = conflict.choices.find((choice) => choice.entry === facts.keep);
  if (conflict.kind === 'slot-loaded-twice' && kept) {
    for (const choice of conflict.choices) if (choice !== kept) freeReels(state, choice);
    state.slots.set(slotKey(kept.line, kept.slot), { ...kept, ...mark, before: null });
    for (const tape of kept.tapes) {
      const reel = state.reels.get(tape.reel);
      if (reel) state.reels.set(tape.reel, { ...reel, at: { line: kept.line, slot: kept.slot } });
    }
  }
  if (conflict.kind === 'reel-on-two-slots' && facts.keep !== null) {
    for (const slot of conflict.slots) {
      const there = state.slots.get(slotKey(conflict.line, slot));
      if (!there) continue;
      if (there.entry === facts.keep) {
        const reel = conflict.reel === null ? undefined : state.reels.get(conflict.reel);
        if (reel) state.reels.set(reel.reel, { ...reel, at: { line: conflict.line, slot } });
      } else state.slots.delete(slotKey(conflict.line, slot));
    }
  }
}

function freeReels(state: FloorState, slot: SlotState): void {
  for (const tape of slot.tapes) {
    const reel: Reel | undefined = state.reels.get(tape.reel);
    if (reel?.at?.line === slot.line && reel.at.slot === slot.slot)
      state.reels.set(tape.reel, { ...reel, at: null });
  }
}
