// What stays where, from which job to which, and where is there room for one more?
// Method: one row of cells per job, a cell a position; a stay takes its positions in every job from its first to its last, those between
// two uses included, since a feeder that is taken out in between is put in again.

import type { AssignModel, FeederKind } from './problem.ts';

/** One feeder on one place over some of its jobs, in one go. */
export interface Stay {
  /** Index of its feeder in the model. */
  readonly feeder: number;
  /** The jobs that it serves, ascending; 0 = it stands there loaded. */
  readonly uses: readonly number[];
  /** Position in the row. */
  readonly start: number;
}

/** A part of a feeder's uses that is still without a place. */
export interface Claim {
  readonly feeder: number;
  readonly uses: readonly number[];
}

/** The line through all jobs. */
export interface Chart {
  readonly model: AssignModel;
  /** Stay number + 1 by job and position, 0 = free; job 0 is not kept, as what is loaded does not overlap. */
  readonly cells: Int32Array;
  /** By number; null where one was taken away again. */
  readonly stays: (Stay | null)[];
}

/** An empty chart. */
export function emptyChart(model: AssignModel): Chart {
  return { model, cells: new Int32Array((model.jobs + 1) * model.length), stays: [] };
}

/** First and last job whose cells a stay takes. */
function spanOf(uses: readonly number[]): readonly [number, number] {
  return [Math.max(1, uses[0] ?? 1), uses.at(-1) ?? 0];
}

function fill(chart: Chart, stay: Stay, mark: number): void {
  const { length, feeders } = chart.model;
  const [first, last] = spanOf(stay.uses);
  const width = feeders[stay.feeder]!.width; // a stay names a feeder of its model
  for (let job = first; job <= last; job++) {
    const from = job * length + stay.start;
    chart.cells.fill(mark, from, from + width);
  }
}

/** Puts a stay on the chart; its cells are free. */
export function addStay(chart: Chart, stay: Stay): void {
  chart.stays.push(stay);
  fill(chart, stay, chart.stays.length);
}

/** Takes a stay off the chart again. */
export function removeStay(chart: Chart, number: number): Stay {
  const stay = chart.stays[number]!; // the cells name stays that are there
  fill(chart, stay, 0);
  chart.stays[number] = null;
  return stay;
}

/** Whether positions of a job are free for a feeder of this width. */
export function isFree(chart: Chart, job: number, start: number, width: number): boolean {
  const { length, blocked } = chart.model;
  if (start < 0 || start + width > length) return false;
  for (let at = start; at < start + width; at++) {
    if (blocked[at] === 1 || chart.cells[job * length + at] !== 0) return false;
  }
  return true;
}

/** Feeders put in: stays that do not begin loaded. */
export function changesOf(stays: readonly (Stay | null)[]): number {
  let changes = 0;
  for (const stay of stays) if (stay !== null && stay.uses[0] !== 0) changes++;
  return changes;
}

/** All uses of a feeder, what is loaded first. */
export function usesOf(feeder: FeederKind): readonly number[] {
  return feeder.loadedAt.length > 0 ? [0, ...feeder.uses] : feeder.uses;
}

/** A run of uses at one place. */
export interface UseRun {
  readonly start: number;
  /** Index of its first and last use in the claim. */
  readonly from: number;
  readonly to: number;
}

/**
 * The longest run of a claim's uses that fits on one place, the tightest place among equals: the most neighbours taken beside it. Null where not one
 * use fits anywhere. A run that begins loaded stands where it is loaded.
 */
export function bestRun(chart: Chart, claim: Claim): UseRun | null {
  const { model } = chart;
  const feeder = model.feeders[claim.feeder]!; // a claim names a feeder of its model
  const isLoaded = claim.uses[0] === 0;
  let best: UseRun | null = null;
  let bestScore = Number.NEGATIVE_INFINITY;
  for (let start = 0; start + feeder.width <= model.length; start++) {
    const skips = isLoaded && !feeder.loadedAt.includes(start);
    for (const run of runsAt(chart, claim, start, skips)) {
      const kept = run.to - run.from;
      const score = kept * 1000 + (skips || !isLoaded ? 0 : 500) + tightness(chart, claim, run);
      if (score <= bestScore) continue;
      bestScore = score;
      best = run;
    }
  }
  return best;
}

/** Maximal runs of uses that fit at a place. `skips`: the loaded use is not one of them. */
function runsAt(chart: Chart, claim: Claim, start: number, skips: boolean): readonly UseRun[] {
  const { uses } = claim;
  const { width } = chart.model.feeders[claim.feeder]!; // a claim names a feeder of its model
  const runs: UseRun[] = [];
  let from = -1;
  for (let at = skips ? 1 : 0; at < uses.length; at++) {
    const use = uses[at]!; // at is below the length
    let fits = use === 0 || isFree(chart, use, start, width);
    if (fits && from >= 0) {
      for (let job = uses[at - 1]! + 1; fits && job < use; job++) fits = isFree(chart, job, start, width);
      if (!fits) {
        runs.push({ start, from, to: at - 1 });
        from = isFree(chart, use, start, width) ? at : -1;
        continue;
      }
    }
    if (fits && from < 0) from = at;
    if (!fits && from >= 0) {
      runs.push({ start, from, to: at - 1 });
      from = -1;
    }
  }
  if (from >= 0) runs.push({ start, from, to: uses.length - 1 });
  // A run of the loaded use alone places nothing.
  return runs.filter((run) => !(run.to === run.from && uses[run.from] === 0));
}

/** How many cells beside a run are taken or at a bank's end, as a share of those there are, times 100. */
function tightness(chart: Chart, claim: Claim, run: UseRun): number {
  const { length, blocked } = chart.model;
  const { width } = chart.model.feeders[claim.feeder]!; // a claim names a feeder of its model
  const [first, last] = spanOf(claim.uses.slice(run.from, run.to + 1));
  let taken = 0;
  for (let job = first; job <= last; job++) {
    for (const beside of [run.start - 1, run.start + width]) {
      if (beside < 0 || beside >= length || blocked[beside] === 1 || chart.cells[job * length + beside] !== 0)
        taken++;
    }
  }
  return (taken * 100) / Math.max(1, 2 * (last - first + 1)) - run.start / (length + 1);
}
