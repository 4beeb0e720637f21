// How long would a reel last if it went onto its slot now? For what must be known at the scan: does its floor life last as long?
// Method: the line's own rules and its newest run of the setup; the expected value only, since a lead decides on what is near.

import { slotEstimate } from '../setup/estimate.ts';
import { perPanelOf } from '../setup/left.ts';
import { type FloorState, type Run, slotKey } from '../setup/state.ts';
import { lineCalendar } from './line-calendar.ts';
import { workingMoment } from './working-time.ts';

/** A reel on its way to a slot. */
export interface ReelComing {
  readonly act: 'load' | 'splice' | 'sweep';
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  /** Parts on it, null where nobody knows. */
  readonly quantity: number | null;
}

/** The run in hand where it builds the setup, else the newest run that did. */
function paceOf(state: FloorState, line: string, setup: string): { run: Run; isOpen: boolean } | null {
  const current = state.runs.get(state.current.get(line) ?? '');
  if (current?.setup === setup) return { run: current, isOpen: true };
  const before = [...state.runs.values()].filter((run) => run.setup === setup && run.line === line).at(-1);
  return before ? { run: before, isOpen: false } : null;
}

/**
 * Seconds from `nowMs` until the reel is expected to be empty or the run in hand to end, breaks and shifts counted in; null where the
 * count, the usage or the pace of the line is not known. A spliced reel begins when what is on the slot ends.
 */
export function reelLastsSeconds(state: FloorState, coming: ReelComing, nowMs: number): number | null {
  const { line, setup, slot, quantity, act } = coming;
  const perPanel = perPanelOf(state, setup, slot);
  const pace = paceOf(state, line, setup);
  if (quantity === null || perPanel <= 0 || pace === null) return null;
  const there = state.slots.get(slotKey(line, slot));
  const before = act === 'splice' && there ? (slotEstimate(state, there).parts ?? 0) : 0;
  const loss = state.rules.get(line)?.loss ?? 0;
  const panels = ((before + quantity) * (1 - loss)) / perPanel;
  const left = pace.isOpen ? Math.max(0, pace.run.panelsWanted - pace.run.done) : Number.POSITIVE_INFINITY;
  const workSeconds = Math.min(panels, left) * pace.run.panelSeconds;
  return (workingMoment(lineCalendar(state, line, nowMs), nowMs, workSeconds) - nowMs) / 1000;
}
