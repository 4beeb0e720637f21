// Runs and panels: what is being built and how far it is. Counts of several tablets add up; a count taken back is subtracted; a panel's
// own code counts once a run, whoever scans it how often. What an entry counts says counters.ts.

import { entryId } from '../log/entry.ts';
import { compareText } from '../log/order.ts';
import { withWhatMayComeBack } from './come-back.ts';
import { type CountingEntry, countOf } from './counters.ts';
import { defineLane } from './fold-lanes.ts';
import type { EntryOf } from './kinds.ts';
import { feedersOf } from './lanes.ts';
import { noSkips, setDown, usageOf } from './remaining.ts';
import type { FloorState, Run, SlotState } from './state.ts';
import { codeKey, tallyOf } from './tally.ts';
import { turnGroup } from './turns.ts';
import { perPanelOf } from './wanted.ts';

/** Counts kept for the panel time and for taking one back. */
const COUNTS_KEPT = 192;
/** Stops kept for the panel time. */
const STOPS_KEPT = 64;
/** Ended runs of a line that keep their counts, and how long any run keeps them, ms: a plant's age must not show in what a tablet holds. */
const RUNS_WITH_COUNTS = 24;
const COUNTS_KEPT_MS = 7 * 24 * 3_600_000;

/** Kinds that this fold handles. */
type RunEntry = EntryOf<
  'run.started' | 'run.stopped' | 'run.resumed' | 'run.ended' | 'entry.corrected' | CountingEntry['kind']
>;

/** Applies one entry to the runs. */
export function foldRun(state: FloorState, entry: RunEntry): void {
  switch (entry.kind) {
    case 'run.started':
      startRun(state, entry);
      return;
    case 'run.stopped':
      stopRun(state, entry);
      return;
    case 'run.resumed':
      resumeRun(state, entry);
      return;
    case 'run.ended':
      endRun(state, entry);
      return;
    case 'panels.counted':
    case 'panels.corrected':
    case 'station.counted':
    case 'station.doubled':
      count(state, entry);
      return;
    case 'entry.corrected':
      takeBackCount(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

function startRun(state: FloorState, entry: EntryOf<'run.started'>): void {
  const { run, line, setup, product, panelsWanted, panelSeconds, panelSd, panelPrefix } = entry.payload;
  if (state.runs.has(run)) return;
  defineLane(state, line);
  forgetCodes(state, line);
  endCurrent(state, line, entry.hlc.ms);
  forgetCounts(state, line, entry.hlc.ms);
  const started: Run = {
    run,
    line,
    setup,
    product,
    panelsWanted,
    panelSeconds,
    panelSd,
    panelPrefix,
    done: 0,
    skips: noSkips,
    said: [],
    scrapped: 0,
    scraps: [],
    phase: 'running',
    startedMs: entry.hlc.ms,
    sinceMs: entry.hlc.ms,
    stopReason: null,
    counts: [],
    batches: [],
    voids: [],
    stops: [],
    serials: 0,
    lastSerial: null,
  };
  state.runs.set(run, started);
  state.current.set(line, run);
  state.chosen.set(line, setup);
  withWhatMayComeBack(state, line, (slot) => beginOn(slot, { run, isLane: feedersOf(line) !== line }));
}

/** A slot from the start of a run on: the run of its own line has its place in it, that of another lane stands beside it. */
function beginOn(slot: SlotState, of: { readonly run: string; readonly isLane: boolean }): SlotState {
  const { run, isLane } = of;
  if (!isLane) return { ...slot, sinceRun: run, sinceDone: 0, sinceSkips: noSkips };
  return { ...slot, sinceLanes: [...(slot.sinceLanes ?? []), { run, done: 0, skips: noSkips }] };
}

/** A slot without a run's mark. */
function without(slot: SlotState, run: string): SlotState {
  const sinceLanes = slot.sinceLanes?.filter((mark) => mark.run !== run) ?? [];
  const own = slot.sinceRun === run ? { sinceRun: null, sinceDone: 0, sinceSkips: noSkips } : {};
  return { ...slot, ...own, sinceLanes };
}

/** True where a slot's use is computed from a run's count. */
function isCountedBy({ sinceRun, sinceLanes }: SlotState, run: string): boolean {
  return sinceRun === run || (sinceLanes?.some((mark) => mark.run === run) ?? false);
}

function stopRun(state: FloorState, entry: EntryOf<'run.stopped'>): void {
  const run = state.runs.get(entry.payload.run);
  if (run?.phase !== 'running') return;
  const stop = beganStop(run, entry.payload.stoodFrom, entry.hlc.ms);
  state.runs.set(run.run, {
    ...run,
    phase: 'stopped',
    sinceMs: stop[0],
    stopReason: entry.payload.reason,
    stops: [...run.stops, stop].slice(-STOPS_KEPT),
  });
}

function resumeRun(state: FloorState, entry: EntryOf<'run.resumed'>): void {
  const run = state.runs.get(entry.payload.run);
  if (run?.phase !== 'stopped') return;
  state.runs.set(run.run, {
    ...run,
    phase: 'running',
    sinceMs: entry.hlc.ms,
    stopReason: null,
    stops: closeStops(run, entry.hlc.ms),
  });
}

function endRun(state: FloorState, entry: EntryOf<'run.ended'>): void {
  if (state.current.get(entry.payload.line) !== entry.payload.run) return;
  const run = state.runs.get(entry.payload.run);
  if (run?.phase === 'running' && entry.payload.stoodFrom !== undefined) {
    const stop = beganStop(run, entry.payload.stoodFrom, entry.hlc.ms);
    state.runs.set(run.run, { ...run, stops: [...run.stops, stop].slice(-STOPS_KEPT) });
  }
  endCurrent(state, entry.payload.line, entry.hlc.ms);
}

/** Ends the line's run: what the slots have used so far becomes a plain figure. */
function endCurrent(state: FloorState, line: string, atMs: number): void {
  const id = state.current.get(line);
  const run = id === undefined ? undefined : state.runs.get(id);
  if (!run) return;
  // What one slot took may depend on another, so all are looked at as they were.
  const before = { ...state, slots: new Map(state.slots) };
  withWhatMayComeBack(state, line, (slot) =>
    isCountedBy(slot, run.run) ? without(setDown(before, slot), run.run) : slot,
  );
  state.runs.set(run.run, { ...run, phase: 'ended', sinceMs: atMs, stops: closeStops(run, atMs) });
  state.current.delete(line);
}

/** A stop entered at `atMs`. It cannot have begun before the last panel, the stop before it or the start; a moment that nobody can read is none. */
function beganStop(run: Run, stoodFrom: string | undefined, atMs: number): Run['stops'][number] {
  const saidMs = stoodFrom === undefined ? Number.NaN : Date.parse(stoodFrom);
  if (Number.isNaN(saidMs)) return [atMs, null];
  const lastMs = run.counts.reduce(
    (last, [, ms, add]) => (add > 0 ? Math.max(last, ms) : last),
    run.startedMs,
  );
  const leastMs = Math.max(lastMs, run.stops.at(-1)?.[1] ?? run.startedMs);
  return [Math.min(atMs, Math.max(leastMs, saidMs)), null, true];
}

function closeStops(run: Run, atMs: number): Run['stops'] {
  return run.stops.map((stop): Run['stops'][number] => {
    if (stop[1] !== null) return stop;
    return stop[2] ? [stop[0], atMs, true] : [stop[0], atMs];
  });
}

function count(state: FloorState, entry: CountingEntry): void {
  const counted = countOf(state, entry);
  if (!counted) return;
  const { run, add, serial, place } = counted;
  const before = tallyOf(run);
  const takenOff = Math.min(run.done, Math.max(0, -add));
  const tally = before + Math.max(0, add);
  const id = entryId(entry);
  if (serial !== null)
    state.codes.set(codeKey(run.run, serial), { run: run.run, entry: id, add, tally: place ?? tally });
  if (run.phase === 'ended') useAfterEnd(state, run, add);
  state.runs.set(run.run, {
    ...run,
    done: run.done + Math.max(-takenOff, add),
    counts:
      place === undefined
        ? [...settled(state, run, entry), [id, entry.hlc.ms, add, tally] as const].slice(-COUNTS_KEPT)
        : run.counts,
    batches: add > 1 ? [...run.batches, [before, add]] : run.batches,
    voids: takenOff > 0 ? [...run.voids, [before - takenOff, takenOff]] : run.voids,
    serials: run.serials + (serial === null ? 0 : 1),
    lastSerial: serial ?? run.lastSerial,
  });
}

/** Hand counts whose place a station's total takes can no longer be taken back one by one. */
function settled(state: FloorState, run: Run, entry: CountingEntry): Run['counts'] {
  const standIn = state.counters.get(run.line)?.standIn ?? [];
  if (entry.kind !== 'station.counted' || standIn.length === 0) return run.counts;
  const gone = new Set(standIn.map((each) => each.entry));
  return run.counts.map((each) => (gone.has(each[0]) ? (['', each[1], each[2], each[3]] as const) : each));
}

/** Codes are kept of a line's present run and of the one before it: a late scan of an older run's panel is no second one. */
function forgetCodes(state: FloorState, line: string): void {
  const kept = state.current.get(line);
  for (const [key, { run }] of state.codes)
    if (run !== kept && state.runs.get(run)?.line === line) state.codes.delete(key);
}

/**
 * Runs that ended long ago keep of their counts the newest, and the newest that added: until when they were built is asked of them still.
 * A count of theirs cannot be taken back any more, and which of their panels were built after a moment is told as wide as it may be.
 * Both a number and an age: a clock that ran ahead takes nothing from the newest, nor does a day of many short runs.
 * Which are the newest say their starts, not their places in the state: the server's index comes back from its store in the order of names.
 */
function forgetCounts(state: FloorState, line: string, nowMs: number): void {
  const ended = [...state.runs.values()]
    .filter((run) => run.line === line && run.phase === 'ended')
    .sort((a, b) => a.startedMs - b.startedMs || compareText(a.run, b.run));
  for (const run of ended.slice(0, -RUNS_WITH_COUNTS)) {
    // One that has no more than what is kept stays the record that it was: whoever writes down what changed need not write it again.
    if (run.counts.length < 3 || nowMs - run.sinceMs < COUNTS_KEPT_MS) continue;
    const newest = run.counts.at(-1);
    const added = run.counts.filter(([, , add]) => add > 0).at(-1);
    const counts = run.counts.filter((each) => each === newest || each === added);
    state.runs.set(run.run, { ...run, counts, said: [] });
  }
}

/** Panels counted after their run's end took parts too; once another run goes on, from what has stood there since before it alone. */
function useAfterEnd(state: FloorState, run: Run, panels: number): void {
  const setup = state.setups.get(run.setup);
  withWhatMayComeBack(state, run.line, (slot) => {
    // Of slots used in turn nobody knows which fed.
    const isOfNext = slot.atMs > run.sinceMs && state.current.has(run.line);
    if (isOfNext || !setup || turnGroup(setup, slot.slot).length > 0) return slot;
    const usage = usageOf(state, run.setup, perPanelOf(state, run.setup, slot.slot));
    const used = slot.usedBefore + usage.perPanel * panels;
    return { ...slot, usedBefore: Math.max(0, used) };
  });
}

function takeBackCount(state: FloorState, of: string): void {
  for (const [key, coded] of state.codes) if (coded.entry === of) state.codes.delete(key);
  for (const run of state.runs.values()) {
    const counted = run.counts.find(([entry]) => entry === of);
    if (!counted) continue;
    const [, , add, tally] = counted;
    const panels = Math.min(run.done, Math.max(0, add));
    const isVoidOf = ([before, off]: Run['voids'][number]) => before + off === tally && off === -add;
    if (run.phase === 'ended') useAfterEnd(state, run, -add);
    state.runs.set(run.run, {
      ...run,
      done: add < 0 ? run.done - add : run.done - panels,
      counts: run.counts.filter(([entry]) => entry !== of),
      voids:
        add < 0
          ? run.voids.filter((each) => !isVoidOf(each))
          : panels > 0
            ? [...run.voids, [tally - panels, panels]]
            : run.voids,
    });
    return;
  }
}
