// How far has a run been counted, and which panel is which in that order? The tally goes up with each count and never down, so that a
// panel keeps its place where a count before it is taken back. Refused: `done` as a panel's name, since a count taken back would give
// one number to two panels.

import type { Run } from './state.ts';

/** What a run keeps of its counting beside the number done. */
export interface Tallied {
  /** Counts of more than one panel at once: [tally before it, panels]. When each of them passed is known only to lie within. */
  readonly batches: readonly (readonly [tally: number, panels: number])[];
  /** Counts that were taken back: [tally before it, panels]. The tally keeps their numbers, no panel has them. */
  readonly voids: readonly (readonly [tally: number, panels: number])[];
}

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
