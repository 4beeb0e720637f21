// Runs and panels: what is being built and how far it is. Counts of several tablets add up; a count taken back is subtracted.

import { entryId } from '../log/entry.ts';
import type { FloorEntry } from './kinds.ts';
import { usedPlacements } from './left.ts';
import type { FloorState, Run } from './state.ts';

/** Counts kept for the panel time and for taking one back. */
const COUNTS_KEPT = 64;
/** Stops kept for the panel time. */
const STOPS_KEPT = 64;

/** Applies one entry to the runs; other kinds change nothing. */
export function foldRun(state: FloorState, entry: FloorEntry): void {
  switch (entry.kind) {
    case 'run.started': {
      const { run, line, setup, product, panelsWanted, panelSeconds, panelSd, panelPrefix } = entry.payload;
      if (state.runs.has(run)) return;
      endCurrent(state, line, entry.hlc.ms);
      const started: Run = {
        ...{ run, line, setup, product, panelsWanted, panelSeconds, panelSd, panelPrefix },
        done: 0,
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
      for (const [key, slot] of state.slots) {
        if (slot.line === line) state.slots.set(key, { ...slot, sinceRun: run, sinceDone: 0 });
      }
      return;
    }
    case 'run.stopped': {
      const run = state.runs.get(entry.payload.run);
      if (run?.phase !== 'running') return;
      state.runs.set(run.run, {
        ...run,
        phase: 'stopped',
        sinceMs: entry.hlc.ms,
        stopReason: entry.payload.reason,
        stops: [...run.stops, [entry.hlc.ms, null] as const].slice(-STOPS_KEPT),
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
        stops: run.stops.map((stop) => (stop[1] === null ? ([stop[0], entry.hlc.ms] as const) : stop)),
      });
      return;
    }
    case 'run.ended':
      if (state.current.get(entry.payload.line) === entry.payload.run)
        endCurrent(state, entry.payload.line, entry.hlc.ms);
      return;
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
      return;
  }
}

/** Ends the line's run: what the slots have used so far becomes a plain figure. */
function endCurrent(state: FloorState, line: string, atMs: number): void {
  const id = state.current.get(line);
  const run = id === undefined ? undefined : state.runs.get(id);
  if (!run) return;
  for (const [key, slot] of state.slots) {
    if (slot.line !== line || slot.sinceRun !== run.run) continue;
    state.slots.set(key, { ...slot, usedBefore: usedPlacements(state, slot), sinceRun: null, sinceDone: 0 });
  }
  state.runs.set(run.run, { ...run, phase: 'ended', sinceMs: atMs });
  state.current.delete(line);
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
