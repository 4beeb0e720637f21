// Which lot was where, from which panel to which: the log folded into stretches of panels per tape.
// Method: fold entry by entry (floor/fold.ts) and compare each slot that it touches (floor/registry.ts) before and after; a new tape opens a stretch, a
// tape that is gone closes it, a run's start and end cut all of its line's stretches. Around a joint both lots are possible
// over the panels that the count cannot decide (IPC-1782: where the exact board cannot be resolved, both are recorded).
// Refused: searching the raw log at each question, which would repeat the fold's rules and grow with the plant's life.

import { applyFloorEntry } from '../floor/fold.ts';
import { readFloorEntry } from '../floor/kinds.ts';
import { isPrinted, labelShareOf, tapeSd, windowOf } from '../floor/ledger.ts';
import { perPanelOf, slotLeft, wantedOn } from '../floor/left.ts';
import { touchesOf } from '../floor/registry.ts';
import { emptyState, type FloorState, type SlotState, type Tape } from '../floor/state.ts';
import { turnGroup } from '../floor/turns.ts';
import type { Entry } from '../log/entry.ts';

/** A bound on panels: the tape surely gave parts to all panels inside `sure`, perhaps to those inside `possible`; Infinity where nothing bounds it. */
export interface PanelBound {
  readonly sure: number;
  readonly possible: number;
}

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
  readonly part: string;
  readonly supplierPart: string | null;
  readonly lot: string | null;
  readonly dateCode: string | null;
  /** First panel: `possible` <= `sure`. */
  from: PanelBound;
  /** Last panel: `sure` <= `possible`; null while the tape is still there and the run goes on. */
  to: PanelBound | null;
  /** The entry that put the tape on the slot, who wrote it and when. */
  readonly entry: string;
  readonly who: string | null;
  readonly at: string;
}

/** A panel that was scanned: its code and its number within the run. */
export interface SerialPanel {
  readonly run: string;
  readonly panel: number;
  readonly serial: string;
  readonly at: string;
}

/** The log as stretches; grows with `traceEntry`. */
export interface TraceIndex {
  readonly state: FloorState;
  readonly stretches: Stretch[];
  readonly serials: Map<string, SerialPanel>;
  /** run -> panel number -> code. */
  readonly serialByPanel: Map<string, Map<number, string>>;
  /** `slotKey` -> stretches that are still open, by the tape's entry. */
  readonly open: Map<string, Map<string, Stretch>>;
}

/** One-sided 5 % point of the normal law: the share of doubt that a bound leaves. */
const DOUBT = 1.645;

/** An index before any entry. */
export function emptyTrace(): TraceIndex {
  return {
    state: emptyState(),
    stretches: [],
    serials: new Map(),
    serialByPanel: new Map(),
    open: new Map(),
  };
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
  const touched = touchesOf(state, known).slots;
  const before = new Map(touched.map((key) => [key, snapshot(state, key)]));
  const runBefore = runsOf(state, entry);
  applyFloorEntry(state, known);
  if (entry.kind === 'panels.counted') takeSerial(index, entry);
  if (entry.kind === 'run.started' || entry.kind === 'run.ended') {
    cutRun(index, entry, runBefore);
    return;
  }
  for (const key of touched) compare(index, { key, was: before.get(key) ?? null, entry });
}

interface SlotBefore {
  readonly slot: SlotState;
  /** Parts left to the pick point and their deviation, null where a count is unknown. */
  readonly left: { readonly parts: number; readonly sd: number } | null;
}

function snapshot(state: FloorState, key: string): SlotBefore | null {
  const slot = state.slots.get(key);
  if (!slot) return null;
  const left = slotLeft(state, slot, state.rules.get(slot.line)?.loss ?? 0);
  return {
    slot,
    left: left.parts === null ? null : { parts: left.parts, sd: left.sd + labelDoubt(state, slot) },
  };
}

/** What printed counts may be off, added up: a bound of what was where errs on the wide side. */
function labelDoubt(state: FloorState, slot: SlotState): number {
  const share = labelShareOf(state, slot.line);
  return slot.tapes.filter(isPrinted).reduce((sum, tape) => sum + tapeSd(tape, share), 0);
}

function text(entry: Entry, name: string): string | null {
  const value = entry.payload[name];
  return typeof value === 'string' ? value : null;
}

function runsOf(state: FloorState, entry: Entry): string | null {
  return state.current.get(text(entry, 'line') ?? '') ?? null;
}

/** Opens and closes stretches after one slot changed. */
function compare(index: TraceIndex, change: { key: string; was: SlotBefore | null; entry: Entry }): void {
  const { state } = index;
  const { key, was, entry } = change;
  const now = state.slots.get(key) ?? null;
  const line = now?.line ?? was?.slot.line ?? '';
  const run = state.runs.get(state.current.get(line) ?? '');
  const done = run?.done ?? 0;
  const isUndone = entry.kind === 'entry.corrected' || entry.kind === 'conflict.settled';
  const there = new Set(now?.tapes.map((tape) => tape.entry) ?? []);
  const open = index.open.get(key) ?? new Map<string, Stretch>();
  const isJoin = was !== null && now !== null && was.slot.tapes.some((tape) => there.has(tape.entry));
  for (const [tape, stretch] of open) {
    if (there.has(tape)) continue;
    open.delete(tape);
    if (isUndone) index.stretches.splice(index.stretches.indexOf(stretch), 1);
    else stretch.to = earlierOf(stretch.to, { low: done, high: done });
  }
  // A reel on a slot from which the setup places nothing is on no panel.
  if (now && run && run.phase !== 'ended' && perPanelOf(state, run.setup, now.slot) > 0) {
    const newest = isJoin && !isUndone ? jointPanels(state, was, now, done) : null;
    const joints = jointsOf({
      state,
      slot: now,
      setup: run.setup,
      done,
      newest: hasJoined(open, now) ? null : newest,
    });
    const rests = mayRest(state, run.setup, now.slot);
    now.tapes.forEach((tape, at) => {
      const [came, goes] = [joints[at - 1], joints[at]];
      const known = open.get(tape.entry);
      const begins = came ?? { low: done, high: rests ? Number.POSITIVE_INFINITY : done };
      const from = { possible: begins.low + 1, sure: begins.high + 1 };
      const stretch = known ?? openStretch(index, { tape, slot: now, run: run.run, from, entry });
      // What has surely begun stays begun; what is still to come follows the newest reckoning.
      if (known && known.from.sure > done) {
        const possible = rests ? Math.min(known.from.possible, from.possible) : from.possible;
        known.from = { ...from, possible };
      }
      const after = open.get(now.tapes[at + 1]?.entry ?? '');
      const hasEnded = after !== undefined && after.from.sure <= done && stretch.to !== null;
      if (!hasEnded) stretch.to = goes ? { sure: goes.low, possible: goes.high } : null;
      open.set(tape.entry, stretch);
    });
  }
  if (open.size > 0) index.open.set(key, open);
  else index.open.delete(key);
}

/**
 * True where the slot is used in turn with others: when it feeds follows from counts alone, so no panel is surely its, and its tapes
 * may last longer than if it fed all the time.
 */
function mayRest(state: FloorState, setup: string, slot: string): boolean {
  const taken = state.setups.get(setup);
  return taken !== undefined && turnGroup(taken, slot).length > 0;
}

/** True where every tape on the slot has its stretch already: nothing was joined. */
function hasJoined(open: ReadonlyMap<string, Stretch>, slot: SlotState): boolean {
  return slot.tapes.every((tape) => open.has(tape.entry));
}

/** The earlier of a bound and a joint. */
function earlierOf(to: PanelBound | null, joint: Joint): PanelBound {
  if (to === null) return { sure: joint.low, possible: joint.high };
  return { sure: Math.min(to.sure, joint.low), possible: Math.min(to.possible, joint.high) };
}

/** Where one tape ends and the next begins: last panels that the first surely and perhaps serves. */
interface Joint {
  readonly low: number;
  readonly high: number;
}

/**
 * Where the joints of a slot's tapes lie, one for each tape but the last, as reckoned now; the newest joint by what its splice
 * showed. A tape's end bounds the ends of the tapes before it.
 */
function jointsOf(at: {
  readonly state: FloorState;
  readonly slot: SlotState;
  readonly setup: string;
  readonly done: number;
  readonly newest: Joint | null;
}): readonly Joint[] {
  const rests = mayRest(at.state, at.setup, at.slot.slot);
  const joints = startJoints(at.state, at.slot, at.setup).map(({ low, high }) => ({
    low: at.done + low,
    high: rests ? Number.POSITIVE_INFINITY : at.done + high,
  }));
  if (rests) return joints;
  if (at.newest && joints.length > 0) joints[joints.length - 1] = { ...at.newest };
  for (let i = joints.length - 2; i >= 0; i--) {
    const next = joints[i + 1] as Joint; // i + 1 is within bounds
    const own = joints[i] as Joint;
    joints[i] = { low: Math.min(own.low, next.low), high: Math.min(own.high, next.high) };
  }
  return joints;
}

/** Last panels that the old tape surely (`low`) and perhaps (`high`) served, counted within the run. */
function jointPanels(
  state: FloorState,
  was: SlotBefore,
  now: SlotState,
  done: number,
): { readonly low: number; readonly high: number } {
  const run = state.runs.get(state.current.get(now.line) ?? '');
  const wanted = run ? wantedOn(state, run.setup, now.slot) : null;
  const rules = state.rules.get(now.line);
  const perPanel = wanted?.perPanel ?? 0;
  if (perPanel <= 0) return { low: done, high: done };
  const kept = 1 - (rules?.loss ?? 0);
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  if (was.left) {
    least = Math.max(0, was.left.parts - DOUBT * was.left.sd);
    most = was.left.parts + DOUBT * was.left.sd;
  }
  const window = run ? windowOf(state, now, run.setup) : null;
  if (window) {
    // The old tape's end was off the hub and not yet in the feeder when it was joined: that bounds what was left.
    const { opens, closes } = window;
    const overlaps = least <= opens && most >= closes;
    least = overlaps ? Math.max(least, closes) : closes;
    most = overlaps ? Math.min(most, opens) : opens;
  }
  return toPanels({ least, most }, { done, kept, perPanel });
}

/** Parts as panels. Nothing known of the end leaves it open: the old tape may then serve any later panel. */
function toPanels(
  parts: { readonly least: number; readonly most: number },
  at: { readonly done: number; readonly kept: number; readonly perPanel: number },
): { readonly low: number; readonly high: number } {
  const { done, kept, perPanel } = at;
  return {
    low: done + Math.floor((parts.least * kept) / perPanel),
    high: done + Math.ceil((parts.most * kept) / perPanel),
  };
}

/** Where the joints of a slot's tapes will come in a run that starts now, one for each tape but the last. */
function startJoints(
  state: FloorState,
  slot: SlotState,
  setup: string,
): readonly { readonly low: number; readonly high: number }[] {
  const perPanel = wantedOn(state, setup, slot.slot)?.perPanel ?? 0;
  const loss = state.rules.get(slot.line)?.loss ?? 0;
  const left = slotLeft(state, slot, loss);
  const doubt = DOUBT * (left.sd + labelDoubt(state, slot));
  const most = windowOf(state, slot, setup)?.opens ?? Number.POSITIVE_INFINITY;
  let before: number | null = -left.used / (1 - loss);
  return slot.tapes.slice(0, -1).map((tape) => {
    before = before === null || tape.count === null ? null : before + tape.count;
    if (perPanel <= 0) return { low: 0, high: 0 };
    const parts =
      before === null
        ? { least: 0, most }
        : { least: Math.max(0, before - doubt), most: Math.max(0, before + doubt) };
    return toPanels(parts, { done: 0, kept: 1 - loss, perPanel });
  });
}

function openStretch(
  index: TraceIndex,
  at: { tape: Tape; slot: SlotState; run: string; from: PanelBound; entry: Entry },
): Stretch {
  const { tape, slot, run } = at;
  const running = index.state.runs.get(run);
  const stretch: Stretch = {
    ...{
      line: slot.line,
      run,
      product: running?.product ?? '',
      setup: running?.setup ?? '',
      slot: slot.slot,
      feeder: slot.feeder,
    },
    reel: tape.reel.startsWith('~') ? null : tape.reel,
    ...{ part: tape.part, supplierPart: tape.supplierPart, lot: tape.lot, dateCode: tape.dateCode },
    from: at.from,
    to: null,
    entry: tape.entry,
    who: at.entry.who,
    at: at.entry.at,
  };
  index.stretches.push(stretch);
  return stretch;
}

/** A run's start or end cuts the stretches of its line: panels are counted within a run. */
function cutRun(index: TraceIndex, entry: Entry, before: string | null): void {
  const { state } = index;
  const line = text(entry, 'line');
  const doneBefore = before === null ? 0 : (state.runs.get(before)?.done ?? 0);
  for (const [key, open] of [...index.open]) {
    const [any] = open.values();
    if (any?.line !== line) continue;
    for (const stretch of open.values()) {
      const to = stretch.to ?? { sure: doneBefore, possible: doneBefore };
      stretch.to = { sure: Math.min(to.sure, doneBefore), possible: Math.min(to.possible, doneBefore) };
    }
    index.open.delete(key);
  }
  const run = entry.kind === 'run.started' ? (state.current.get(line ?? '') ?? null) : null;
  if (run === null) return;
  for (const [key, slot] of state.slots) {
    if (slot.line !== line) continue;
    const open = new Map<string, Stretch>();
    const setup = state.runs.get(run)?.setup ?? '';
    if (perPanelOf(state, setup, slot.slot) <= 0) continue; // it is on no panel
    const joints = jointsOf({ state, slot, setup, done: 0, newest: null });
    const rests = mayRest(state, setup, slot.slot);
    slot.tapes.forEach((tape, at) => {
      const [came, goes] = [joints[at - 1], joints[at]];
      if (goes && goes.high <= 0) return; // used up before this run
      const from = {
        possible: (came?.low ?? 0) + 1,
        sure: (came?.high ?? (rests ? Number.POSITIVE_INFINITY : 0)) + 1,
      };
      const stretch = openStretch(index, { tape, slot, run, from, entry });
      if (goes) stretch.to = { sure: goes.low, possible: goes.high };
      open.set(tape.entry, stretch);
    });
    index.open.set(key, open);
  }
}

function takeSerial(index: TraceIndex, entry: Entry): void {
  const serial = text(entry, 'serial');
  const run = text(entry, 'run');
  if (serial === null || run === null) return;
  const panel = index.state.runs.get(run)?.done ?? 0;
  addSerial(index, { run, panel, serial, at: entry.at });
}

/** Puts a scanned panel under its code and under its number. */
export function addSerial(index: TraceIndex, scanned: SerialPanel): void {
  index.serials.set(scanned.serial, scanned);
  const byPanel = index.serialByPanel.get(scanned.run) ?? new Map<number, string>();
  byPanel.set(scanned.panel, scanned.serial);
  index.serialByPanel.set(scanned.run, byPanel);
}
