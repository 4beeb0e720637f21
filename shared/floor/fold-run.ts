// Runs and panels: what is being built and how far it is. Counts of several tablets add up; a count taken back is subtracted.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import { noSkips, settleUse } from './remaining.ts';
import type { FloorState, Run, SlotState } from './state.ts';

/** Counts kept for the panel time and for taking one back. */
const COUNTS_KEPT = 192;
/** Stops kept for the panel time. */
const STOPS_KEPT = 64;

/** Kinds that this fold handles. */
type RunEntry = EntryOf<
  'run.started' | 'run.stopped' | 'run.resumed' | 'run.ended' | 'panels.counted' | 'entry.corrected'
>;

/** Applies one entry to the runs. */
export function foldRun(state: FloorState, entry: RunEntry): void {
  switch (entry.kind) {
    case 'run.started': {
      const { run, line, setup, product, panelsWanted, panelSeconds, panelSd, panelPrefix } = entry.payload;
      if (state.runs.has(run)) return;
      endCurrent(state, line, entry.hlc.ms);
      const started: Run = {
        ...{ run, line, setup, product, panelsWanted, panelSeconds, panelSd, panelPrefix },
        done: 0,
        ...{ skips: noSkips, said: [], scrapped: 0, scraps: [] },
        phase: 'running',
        startedMs: entry.hlc.ms,
        sinceMs: entry.hlc.ms,
        stopReason: null,
        counts: [],
        stops: [],
        serials: 0,
        lastSerial: null,
      };
      state.runs.set(run, started);
      state.current.set(line, run);
      state.chosen.set(line, setup);
      changeSlots(state, line, (slot) => ({
        ...slot,
        ...{ sinceRun: run, sinceDone: 0, sinceSkips: noSkips },
      }));
      return;
    }
    case 'run.stopped': {
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
      return;
    }
    case 'run.resumed': {
      const run = state.runs.get(entry.payload.run);
      if (run?.phase !== 'stopped') return;
      state.runs.set(run.run, {
        ...run,
        phase: 'running',
        sinceMs: entry.hlc.ms,
        stopReason: null,
        stops: closeStops(run, entry.hlc.ms),
      });
      return;
    }
    case 'run.ended': {
      if (state.current.get(entry.payload.line) !== entry.payload.run) return;
      const run = state.runs.get(entry.payload.run);
      if (run?.phase === 'running' && entry.payload.stoodFrom !== undefined) {
        const stop = beganStop(run, entry.payload.stoodFrom, entry.hlc.ms);
        state.runs.set(run.run, { ...run, stops: [...run.stops, stop].slice(-STOPS_KEPT) });
      }
      endCurrent(state, entry.payload.line, entry.hlc.ms);
      return;
    }
    case 'panels.counted': {
      const run = state.runs.get(entry.payload.run);
      if (!run || run.phase === 'ended') return;
      const { add, serial } = entry.payload;
      state.runs.set(run.run, {
        ...run,
        done: Math.max(0, run.done + add),
        counts: [...run.counts, [entryId(entry), entry.hlc.ms, add] as const].slice(-COUNTS_KEPT),
        serials: run.serials + (serial === null ? 0 : 1),
        lastSerial: serial ?? run.lastSerial,
      });
      return;
    }
    case 'entry.corrected':
      takeBackCount(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

/** Ends the line's run: what the slots have used so far becomes a plain figure. */
function endCurrent(state: FloorState, line: string, atMs: number): void {
  const id = state.current.get(line);
  const run = id === undefined ? undefined : state.runs.get(id);
  if (!run) return;
  // What one slot took may depend on another, so all are looked at as they were.
  const before = { ...state, slots: new Map(state.slots) };
  changeSlots(state, line, (slot) =>
    slot.sinceRun === run.run
      ? { ...settleUse(before, slot), sinceRun: null, sinceDone: 0, sinceSkips: noSkips }
      : slot,
  );
  state.runs.set(run.run, { ...run, phase: 'ended', sinceMs: atMs, stops: closeStops(run, atMs) });
  state.current.delete(line);
}

/** Changes a line's slots, and with them what a correction or a lead's word may bring back later. */
function changeSlots(state: FloorState, line: string, change: (slot: SlotState) => SlotState): void {
  const changed = (slot: SlotState): SlotState => ({
    ...change(slot),
    before: slot.before && changed(slot.before),
  });
  for (const [key, slot] of state.slots) if (slot.line === line) state.slots.set(key, changed(slot));
  for (const [key, { entry, was }] of state.takenOff) {
    if (was.line === line) state.takenOff.set(key, { entry, was: changed(was) });
  }
  for (const [key, conflict] of state.conflicts) {
    if (conflict.line === line)
      state.conflicts.set(key, { ...conflict, choices: conflict.choices.map(changed) });
  }
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

function takeBackCount(state: FloorState, of: string): void {
  for (const run of state.runs.values()) {
    const counted = run.counts.find(([entry]) => entry === of);
    if (!counted || run.phase === 'ended') continue;
    state.runs.set(run.run, {
      ...run,
      done: Math.max(0, run.done - counted[2]),
      counts: run.counts.filter(([entry]) => entry !== of),
    });
    return;
  }
}
