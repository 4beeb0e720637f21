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
