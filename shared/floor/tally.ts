// How far has a run been counted, and which panel is which in that order? The tally goes up with each count and never down, so that a
// panel keeps its place where a count before it is taken back. Refused: `done` as a panel's name, since a count taken back would give
// one number to two panels.

import type { Run } from './state.ts';

/** The count of a panel by its own code. */
export interface CountedCode {
  readonly run: string;
  readonly entry: string;
  readonly add: number;
  /** The run's tally after it: the panel's place in the order of counting. */
  readonly tally: number;
}

/** How far a run's counting has come: it goes up with each count and never down, so that a panel keeps its place where counts are taken back. */
export function tallyOf(run: Pick<Run, 'done' | 'voids'>): number {
  return run.voids.reduce((sum, [, panels]) => sum + panels, run.done);
}

/** Where a panel's code stands in the maps. */
export function codeKey(run: string, code: string): string {
  return `${run}#${code}`;
}
