// How long would a reel last if it went onto its slot now? For what must be known at the scan: does its floor life last as long?
// Method: the line's own rules and its newest run of the setup; before the setup's first run the panels and the pace of the line's plan, else
// the pace of the line's newest run. The expected value only, since a lead decides on what is near.

import { panelsToGo } from '../floor/building.ts';
import { slotEstimate, usageOf } from '../floor/remaining.ts';
import { type FloorState, type Run, slotKey } from '../floor/state.ts';
import { joins, type VerifyAct } from '../floor/vocabulary.ts';
import { perPanelOf } from '../floor/wanted.ts';
import { lineCalendar } from './line-calendar.ts';
import { workingMoment } from './working-time.ts';

/** A reel on its way to a slot. */
export interface ReelComing {
  readonly act: VerifyAct;
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  /** Parts on it, null where nobody knows. */
  readonly quantity: number | null;
}

/** The newest run of a setup on a line, the one in hand included; null where there was none. */
export function newestRunOf(state: FloorState, line: string, setup: string | undefined): Run | null {
  let newest: Run | null = null;
  for (const run of state.runs.values()) if (run.line === line && run.setup === setup) newest = run;
  return newest;
}

/** Panels still to build, `Infinity` where nobody said how many, and seconds a panel. */
interface Pace {
  readonly panelsLeft: number;
  readonly panelSeconds: number;
}

/**
 * The pace at which a setup is or will be built: its newest run; before its first one the job that the line's plan has for it, else the seconds a
 * panel of the line's newest run, as nobody said how many panels it will be. Null where the line has never built anything.
 */
function paceOf(state: FloorState, line: string, setup: string): Pace | null {
  const run = newestRunOf(state, line, setup);
  if (run !== null) {
    const panelsLeft = run.phase === 'ended' ? Number.POSITIVE_INFINITY : panelsToGo(run);
    return { panelsLeft, panelSeconds: run.panelSeconds };
  }
  const job = state.plans.get(line)?.jobs.find((each) => each.setup === setup);
  if (job) return { panelsLeft: job.panels, panelSeconds: job.panelSeconds };
  const last = [...state.runs.values()].filter((each) => each.line === line).at(-1);
  return last ? { panelsLeft: Number.POSITIVE_INFINITY, panelSeconds: last.panelSeconds } : null;
}

/**
 * Seconds from `nowMs` until the reel is expected to be empty or the run in hand to end, breaks and shifts counted in; null where the
 * count, the usage or the pace of the line is not known. A spliced reel begins when what is on the slot ends.
 */
export function reelLastsSeconds(state: FloorState, coming: ReelComing, nowMs: number): number | null {
  const { line, setup, slot, quantity, act } = coming;
  const { perPanel } = usageOf(state, setup, perPanelOf(state, setup, slot));
  const pace = paceOf(state, line, setup);
  if (quantity === null || perPanel <= 0 || pace === null) return null;
  const there = state.slots.get(slotKey(line, slot));
  const before = joins(act) && there ? (slotEstimate(state, there).parts ?? 0) : 0;
  const loss = state.rules.get(line)?.loss ?? 0;
  const panels = ((before + quantity) * (1 - loss)) / perPanel;
  const workSeconds = Math.min(panels, pace.panelsLeft) * pace.panelSeconds;
  return (workingMoment(lineCalendar(state, line, nowMs), nowMs, workSeconds) - nowMs) / 1000;
}
