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

/** The tally of a run at a moment, at least and at most: only its latest counts are kept with theirs. */
export function tallyAt(
  run: Pick<Run, 'counts'>,
  atMs: number,
): { readonly low: number; readonly high: number } {
  const before = run.counts.filter(([, ms]) => ms <= atMs).at(-1)?.[3];
  if (before !== undefined) return { low: before, high: before };
  const [first] = run.counts;
  return { low: 0, high: first ? first[3] - first[2] : 0 };
}

/** How far a run was counted on since a moment; from its start where its kept counts do not reach back so far. */
export function countedSince(run: Pick<Run, 'counts' | 'done' | 'voids'>, sinceMs: number): number {
  return tallyOf(run) - tallyAt(run, sinceMs).low;
}

/**
 * How many panels, at most, were counted since a moment and not taken back; where the run's kept counts do not reach back so far, all that are done
 * now, or that were ever counted beyond `doneThen`, the panels done then as they were written down (null = nobody wrote it: all), if that is less.
 */
export function doneSince(
  run: Pick<Run, 'counts' | 'done' | 'voids'>,
  sinceMs: number,
  doneThen: number | null,
): number {
  const { low, high } = tallyAt(run, sinceMs);
  // What was taken back since may have been counted before the moment or after it: `done` alone would tell too few.
  if (low < high) return Math.max(0, Math.min(run.done, tallyOf(run) - (doneThen ?? 0)));
  let off = 0;
  let end = low;
  for (const [before, panels] of [...run.voids].sort(([a], [b]) => a - b)) {
    const last = before + panels;
    off += Math.max(0, last - Math.max(before, end));
    end = Math.max(end, last);
  }
  return Math.min(run.done, tallyOf(run) - low - off);
}

/** Where a panel's code stands in the maps. */
export function codeKey(run: string, code: string): string {
  return `${run}#${code}`;
}
