// How fast does a run go? Its own counts over the line's working time, less the stops that people entered and those that a machine told.

import type { Run } from '../floor/state.ts';
import type { LineTold } from '../floor/told-states.ts';
import { type PanelTime, panelTimeEstimate } from '../forecast/panel-time.ts';
import { type WorkingTime, workingTime } from '../forecast/working-time.ts';

/** The moments of a run's counts as the panel time wants them; its start counts as the first. */
function countEvents(run: Run): { atMs: number; panels: number }[] {
  const all = run.counts.filter(([, , add]) => add > 0).map(([, atMs, add]) => ({ atMs, panels: add }));
  const seen = all.reduce((sum, event) => sum + event.panels, 0);
  return seen >= run.done ? [{ atMs: run.startedMs, panels: 0 }, ...all] : all;
}

/** The newest count that added panels; the run's start where there was none. */
export function lastCountMs(run: Run): number {
  return run.counts.reduce((last, [, atMs, add]) => (add > 0 ? Math.max(last, atMs) : last), run.startedMs);
}

/**
 * Working time of the line without the run's own stops, and without those that a machine told: what the pace is measured in. `told`: of
 * `lineTold`, null where no machine speaks for the line.
 */
export function measuringTime(
  calendar: WorkingTime,
  run: Run,
  { nowMs, told }: { readonly nowMs: number; readonly told: Pick<LineTold, 'stops'> | null },
): WorkingTime {
  const entered = run.stops.map(([fromMs, toMs]) => ({ fromMs, toMs }));
  const stops = [...entered, ...(told?.stops ?? [])].map(({ fromMs, toMs }) => ({
    fromMs,
    toMs: toMs ?? nowMs,
  }));
  const planned = calendar.fromMs.map((fromMs, index) => ({ fromMs, toMs: calendar.toMs[index] ?? fromMs }));
  return workingTime([...planned, ...stops.filter((stop) => stop.toMs > stop.fromMs)]);
}

/** Seconds a panel as the run's own counts show them. `measuring`: from `measuringTime`. */
export function runPace(run: Run, measuring: WorkingTime): PanelTime {
  return panelTimeEstimate(countEvents(run), measuring, run.panelSeconds);
}
