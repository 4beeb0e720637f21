// What does a line build now? The one answer for every screen that says so.

import type { FloorState, Run } from './state.ts';

/** The run that is not ended on a line, going or stopped; null where nothing is being built. A setup that is only chosen is not being built. */
export function buildingOn(state: FloorState, line: string | null): Run | null {
  return (line === null ? undefined : state.runs.get(state.current.get(line) ?? '')) ?? null;
}

/** Panels that a run still has to build: those wanted, less those built and not scrapped; never below none. */
export function panelsToGo(run: Pick<Run, 'panelsWanted' | 'done' | 'scrapped'>): number {
  return Math.max(0, run.panelsWanted - run.done + run.scrapped);
}

/** The run that is being built on a line, else the one that ended last; null where there was none. */
export function newestRun(state: Pick<FloorState, 'runs' | 'current'>, line: string): Run | null {
  const current = state.runs.get(state.current.get(line) ?? '');
  if (current) return current;
  let newest: Run | null = null;
  for (const run of state.runs.values())
    if (run.line === line && run.sinceMs >= (newest?.sinceMs ?? 0)) newest = run;
  return newest;
}
