// Which lot was where, from which panel to which: the log folded into stretches of panels per tape.
// Method: fold entry by entry (floor/fold.ts) and compare each slot that it touches (floor/registry.ts) before and after; a new tape opens a stretch, a
// tape that is gone ends it, a run's start begins all of its line's stretches anew. What changes on a slot changes for panels that its
// machine has not done yet: so many as lie in the line are in doubt (floor/in-line.ts), and around a joint those that the count cannot
// decide (doubt.ts). In doubt both lots are possible (IPC-1782: where the exact board cannot be resolved, both are recorded).
// Refused: searching the raw log at each question, which would repeat the fold's rules and grow with the plant's life.

import { newestRun } from '../floor/building.ts';
import { countOf } from '../floor/counters.ts';
import { idSince } from '../floor/fold-print.ts';
import { type FloorEntry, readFloorEntry } from '../floor/kinds.ts';
import { linesFeeding, standingAt } from '../floor/lanes.ts';
import type { Material } from '../floor/made-of.ts';
import { ownIdOf } from '../floor/reel-id.ts';
import { touchesOf } from '../floor/registry.ts';
import { emptyState, type FloorState, type Run, type SlotState, slotKey, type Tape } from '../floor/state.ts';
import { countedSince, tallyOf } from '../floor/tally.ts';
import { perPanelOf } from '../floor/wanted.ts';
import type { Entry } from '../log/entry.ts';
import { type Bounds, endOfSplice, latestEnd, mostByCount } from './doubt.ts';
import { boundJoints, guesses } from './joints.ts';
import { lanesOf, openToLane } from './lane-told.ts';
import { endsAt, lagAt, openKey, reachOf, runBefore } from './line.ts';
import { pourOver } from './loose.ts';
import { bornWith, takeMaterial } from './material.ts';
import { latest, latestTo } from './order.ts';
import { boundSeen } from './seen-joint.ts';
import { type SerialPanel, takeSerial } from './serials.ts';
import { applyWhole } from './whole-reels.ts';

/** A bound on panels, by the order of counting (floor/tally.ts): the tape surely served all inside `sure`, perhaps those inside `possible`; Infinity: no bound. */
export interface PanelBound {
  readonly sure: number;
  readonly possible: number;
  /** How far the run was counted when the bound was told; null where it does not rest on that. */
  readonly at: number | null;
}

/** What a bound rests on that nobody has entered or measured. */
export type Guess = 'in-line' | 'label' | 'boards';

/** One tape on one slot during one run. Panels are counted from 1 within the run. */
export interface Stretch {
  readonly line: string;
  readonly run: string;
  readonly product: string;
  readonly setup: string;
  readonly slot: string;
  readonly feeder: string | null;
  /** The reel's own id; null where its label had none. */
  readonly reel: string | null;
  /** What the log calls a package without an id; absent where it has one. */
  readonly unnamed?: string;
  /** What its package was made of while it was there; absent where of itself alone. */
  made?: Material;
  readonly part: string;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  /** First panel: `possible` <= `sure`. */
  from: PanelBound;
  /** Last panel; null while nothing ends it. */
  to: PanelBound | null;
  /** True while the tape is on the slot. */
  there: boolean;
  /** Where the tape before it ended, by the splice alone, told when the run was counted to `at`; null where it was not joined to one. */
  joined: (Bounds & { readonly at: number | null }) | null;
  /** Panels that had passed the machine beyond those counted, at least and at most. */
  readonly reach: Bounds;
  /** Panels by which it may have come before it was written: it was held till a lead cleared it. */
  early: number;
  guessed: readonly Guess[];
  readonly held?: number; // parts when it was put on; absent where nobody counted them
  mixed?: true; // lots poured over each other: which of them a panel got nobody can tell
  /** The entry that put the tape on the slot, who wrote it and when. */
  readonly entry: string;
  readonly who: string | null;
  readonly at: string;
}

/** The log as stretches; grows with `traceEntry`. */
export interface TraceIndex {
  readonly state: FloorState;
  readonly stretches: Stretch[];
  /** Code -> every time that such a panel was counted, in the order of counting. */
  readonly serials: Map<string, readonly SerialPanel[]>;
  /** run -> place in the order of counting -> code. */
  readonly serialByPanel: Map<string, Map<number, string>>;
  /** `openKey` -> stretches of the line's newest run that may still reach into panels to come, by the tape's entry. */
  readonly open: Map<string, Map<string, Stretch>>;
}

/** An index before any entry. */
export function emptyTrace(): TraceIndex {
  const maps = { serials: new Map(), serialByPanel: new Map(), open: new Map() };
  return { state: emptyState(), stretches: [], ...maps };
}

/** Builds the index of a log in folding order. */
export function traceLog(entries: readonly Entry[]): TraceIndex {
  const index = emptyTrace();
  for (const entry of entries) traceEntry(index, entry);
  return index;
}

/** Takes the next entry, in folding order, into the index. */
export function traceEntry(index: TraceIndex, entry: Entry): void {
  const { state } = index;
  const known = readFloorEntry(entry);
  if (!known) return;
  const { slots: touched, reels } = touchesOf(state, known);
  const before = new Map(touched.map((key) => [key, state.slots.get(key) ?? null]));
  const ended = known.kind === 'run.started' ? newestRun(state, known.payload.line) : null;
  const heldMs = known.kind === 'hold.cleared' ? (state.holds.get(known.payload.of)?.atMs ?? null) : null;
  const coded = known.kind === 'panels.counted' || known.kind === 'station.counted' ? known : null;
  const counted = (coded && countOf(state, coded))?.run;
  const told = known.kind === 'line.defined' || known.kind === 'run.started' ? known.payload.line : null;
  const lanes = told === null ? 0 : lanesOf(state, told);
  applyWhole(state, known, reels);
  if (told !== null && lanesOf(state, told) > Math.max(1, lanes)) openToLane(index, told);
  if (known.kind === 'reel.split') takeMaterial(index, known.payload.into);
  else if (known.kind === 'reel.merged') takeMaterial(index, idSince(state, known.payload.reel));
  if (coded) takeSerial(index, coded, counted);
  else if (known.kind === 'run.started') beginRun(index, known, ended);
  else for (const key of touched) compare(index, { key, was: before.get(key) ?? null, entry: known, heldMs });
}

interface Change {
  readonly key: string;
  readonly was: SlotState | null;
  readonly entry: FloorEntry;
  /** When the reel was held that a lead has cleared now. */
  readonly heldMs: number | null;
}

/** Opens and ends stretches after one slot changed, in the run of every lane that feeds from it. */
function compare(index: TraceIndex, change: Change): void {
  const now = index.state.slots.get(change.key) ?? null;
  if (now === change.was) return;
  for (const line of linesFeeding(index.state, now?.line ?? change.was?.line ?? ''))
    compareOn(index, line, change);
}

function compareOn(index: TraceIndex, line: string, change: Change): void {
  const { state } = index;
  const { was } = change;
  const now = state.slots.get(change.key) ?? null;
  const slot = now?.slot ?? was?.slot ?? '';
  const run = newestRun(state, line);
  if (!run) return;
  const key = openKey(line, change.key);
  const open = index.open.get(key) ?? new Map<string, Stretch>();
  const { reach, isGuess } = reachOf(state, line, slot);
  const tally = tallyOf(run);
  // A held reel may have been put on when it was held.
  const early = change.heldMs === null ? 0 : countedSince(run, change.heldMs);
  const passed = { low: tally - early + reach.low, high: tally + reach.high };
  endGone(index, { ...change, open, now, run, passed, isGuess });
  // A reel on a slot from which the setup places nothing is on no panel.
  if (now && perPanelOf(state, run.setup, slot) > 0)
    stand(index, { ...change, open, now, run, passed, reach });
  if (now) pourOver({ slot: now, open, passed, tally });
  if (now && was && change.entry.kind === 'tape.changed')
    boundSeen(state, { run, open, was, now, passed, grey: change.entry.payload.grey, isGuess });
  for (const [tape, stretch] of open) {
    if (!stretch.there && stretch.to && latestTo(run, stretch.to) < passed.low) open.delete(tape);
  }
  if (open.size > 0) index.open.set(key, open);
  else index.open.delete(key);
}

/** Ends the stretches of tapes that are gone from the slot. */
function endGone(
  index: TraceIndex,
  at: Change & {
    readonly open: Map<string, Stretch>;
    readonly now: SlotState | null;
    readonly run: Run;
    readonly passed: Bounds;
    readonly isGuess: boolean;
  },
): void {
  const { open, now, run, entry, passed } = at;
  const there = new Set(now?.tapes.map((tape) => tape.entry) ?? []);
  const isSame = now?.tapes.some((tape) => open.get(tape.entry)?.there) ?? false;
  for (const [tape, stretch] of open) {
    if (there.has(tape) || !stretch.there) continue;
    stretch.there = false;
    if (entry.kind === 'tape.changed') continue; // bounded below, with the tape that follows it
    if (entry.kind === 'entry.corrected' && entry.payload.of === tape) {
      // Whoever wrote that it was put on says that it was not.
      open.delete(tape);
      index.stretches.splice(index.stretches.indexOf(stretch), 1);
      continue;
    }
    // A splice drops tapes that the count alone says are used up: where they ended is computed already.
    const isComputed = isSame && (entry.kind !== 'reel.counted' || entry.payload.reel === null);
    if (isComputed) continue;
    const to = stretch.to;
    stretch.to = {
      sure: Math.min(to?.sure ?? Number.POSITIVE_INFINITY, passed.low),
      possible: Math.min(to ? latestTo(run, to) : Number.POSITIVE_INFINITY, passed.high),
      at: tallyOf(run),
    };
    if (at.isGuess) stretch.guessed = guesses(stretch.guessed, 'in-line');
    // Which of two reels stands there now says nothing sure of the time before.
    if (entry.kind === 'conflict.settled') stretch.from = { ...stretch.from, sure: Number.POSITIVE_INFINITY };
  }
}

/** Opens stretches of tapes that are new on the slot, and computes anew where its tapes end. */
function stand(
  index: TraceIndex,
  at: Change & {
    readonly open: Map<string, Stretch>;
    readonly now: SlotState;
    readonly run: Run;
    readonly passed: Bounds;
    readonly reach: Bounds;
  },
): void {
  const { state } = index;
  const { open, now, was, run, passed, entry, reach } = at;
  const tally = tallyOf(run);
  const isBack = entry.kind === 'entry.corrected' || entry.kind === 'conflict.settled';
  now.tapes.forEach((tape, place) => {
    const known = open.get(tape.entry);
    if (known) {
      // What was cut or joined into it while it was told to be off is in it too.
      if (!known.there) Object.assign(known, bornWith(state, tape));
      known.there = true;
      return;
    }
    // Panels of another lane's run say nothing of this one.
    const isApart = tape.atMs < run.startedMs || linesFeeding(state, run.line).length > 1;
    const since = isApart ? 0 : Math.min(tape.fromPanels, tally) + reach.low;
    const low = isBack ? Math.min(since, passed.low) : passed.low;
    const from = { possible: low + 1, sure: passed.high + 1, at: tally };
    const stretch = openStretch(index, { tape, slot: now, run, from, entry });
    stretch.early = at.heldMs === null ? 0 : countedSince(run, at.heldMs);
    if (place > 0) {
      const ends = endsAt(state, now, run);
      const isNewest = place === now.tapes.length - 1;
      const spliced = endOfSplice(state, now, ends);
      const high = isBack
        ? latestEnd(state, now, { ...ends, isNewest, lag: lagAt(state, run.line, tape.atMs) })
        : spliced.high;
      // What the tape before has left is lost from the sum where the new one's count is not known.
      const most =
        tape.count === null && !isBack && was ? mostByCount(state, was, endsAt(state, was, run)) : high;
      stretch.joined = {
        low: isBack ? low : passed.low + spliced.low - reach.low,
        high: tally + Math.min(high, most),
        at: tally,
      };
    }
    open.set(tape.entry, stretch);
    reachBack(index, { stretch, run, low: Math.min(from.possible - 1, stretch.joined?.low ?? passed.low) });
  });
  boundJoints(state, { slot: now, run, open, tally });
}

/**
 * A tape that came on while panels counted in the run before, which went on into this one, had not reached the machine: those may carry
 * it too. `low`: the last place that surely had passed, below none in that case.
 */
function reachBack(
  index: TraceIndex,
  at: { readonly stretch: Stretch; readonly run: Run; readonly low: number },
): void {
  let { low, run: later } = at;
  while (low < 0) {
    const run = runBefore(index.state, later);
    if (!run || run.setup !== later.setup) return;
    const tally = tallyOf(run);
    index.stretches.push({
      ...at.stretch,
      run: run.run,
      product: run.product,
      from: { possible: Math.max(1, tally + low + 1), sure: Number.POSITIVE_INFINITY, at: null },
      to: { sure: 0, possible: Number.POSITIVE_INFINITY, at: null },
    });
    low += tally;
    later = run;
  }
}

function openStretch(
  index: TraceIndex,
  at: { tape: Tape; slot: SlotState; run: Run; from: PanelBound; entry: FloorEntry },
): Stretch {
  const { tape, slot, run } = at;
  const { reach, isGuess } = reachOf(index.state, run.line, slot.slot);
  const stretch: Stretch = {
    line: run.line,
    run: run.run,
    product: run.product,
    setup: run.setup,
    slot: slot.slot,
    feeder: slot.feeder,
    reel: ownIdOf(tape.reel),
    ...bornWith(index.state, tape),
    ...(tape.count === null ? {} : { held: tape.count }),
    part: tape.part,
    supplierPart: tape.supplierPart,
    lot: tape.lot ?? index.state.reels.get(tape.reel)?.lot ?? null,
    dateCode: tape.dateCode,
    from: at.from,
    to: null,
    there: true,
    joined: null,
    early: 0,
    reach,
    guessed: isGuess && at.from.at !== null ? ['in-line'] : [],
    entry: tape.entry,
    who: at.entry.who,
    at: at.entry.at,
  };
  index.stretches.push(stretch);
  return stretch;
}

/**
 * A run's start begins all stretches of its line anew. Where the run before was of the same setup the line may not have been emptied
 * between: what came on or off its slots last then concerns the first panels too.
 */
function beginRun(index: TraceIndex, entry: FloorEntry & { kind: 'run.started' }, ended: Run | null): void {
  const { state } = index;
  const { line } = entry.payload;
  const run = state.runs.get(state.current.get(line) ?? '');
  if (run?.run !== entry.payload.run || run.startedMs !== entry.hlc.ms) return; // a second start under one name
  const goesOn = ended !== null && ended.setup === run.setup;
  const last = ended === null ? 0 : tallyOf(ended);
  const before = new Map<string, Map<string, Stretch>>();
  for (const [key, open] of [...index.open]) {
    const [any] = open.values();
    if (any?.line !== line) continue;
    before.set(key, open);
    index.open.delete(key);
    // Panels counted before they reached the machine may get what comes on in this run.
    for (const stretch of open.values())
      if (goesOn && stretch.there && stretch.to === null && stretch.reach.low < 0)
        stretch.to = { sure: last + stretch.reach.low, possible: Number.POSITIVE_INFINITY, at: null };
  }
  for (const slot of standingAt(state, line)) {
    const key = openKey(line, slotKey(line, slot.slot));
    if (perPanelOf(state, run.setup, slot.slot) <= 0) continue;
    const open = new Map<string, Stretch>();
    slot.tapes.forEach((tape, place) => {
      const stood = before.get(key)?.get(tape.entry);
      const earlier = goesOn ? stood : undefined;
      const early = earlier && ended ? latest(ended, earlier.from.sure, earlier.from.at) - last : 1;
      const sure = Math.max(1, early);
      const from = { possible: 1, sure, at: sure > 1 ? 0 : null };
      const stretch = openStretch(index, { tape, slot, run, from, entry });
      stretch.early = stood?.early ?? 0;
      if (earlier) stretch.guessed = sure > 1 ? earlier.guessed : [];
      if (place > 0) {
        const isNewest = place === slot.tapes.length - 1;
        const high = latestEnd(state, slot, {
          ...endsAt(state, slot, run),
          isNewest,
          lag: lagAt(state, line, tape.atMs),
        });
        stretch.joined = { low: 0, high: Math.max(0, high), at: 0 };
      }
      open.set(tape.entry, stretch);
    });
    boundJoints(state, { slot, run, open, tally: 0 });
    pourOver({ slot, open, passed: { low: 0, high: 0 }, tally: 0 });
    index.open.set(key, open);
  }
  if (goesOn) for (const [key, open] of before) reachInto(index, { key, open, run, ended });
}

/** Tapes that came off a slot so late that the first panels of a run that goes on may carry them. */
function reachInto(
  index: TraceIndex,
  at: { key: string; open: ReadonlyMap<string, Stretch>; run: Run; ended: Run },
): void {
  for (const [tape, stretch] of at.open) {
    const possible = stretch.to ? latestTo(at.ended, stretch.to) - tallyOf(at.ended) : 0;
    if (stretch.there || possible < 1) continue;
    const { run, setup, product } = at.run;
    const copy: Stretch = {
      ...stretch,
      run,
      setup,
      product,
      from: { possible: 1, sure: Number.POSITIVE_INFINITY, at: null },
      to: { sure: 0, possible, at: 0 },
    };
    index.stretches.push(copy);
    index.open.set(at.key, new Map([...(index.open.get(at.key) ?? []), [tape, copy]]));
  }
}
