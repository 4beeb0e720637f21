// Places in a run's order of counting, and the numbers that people know panels by: a count taken back leaves a place that no panel has.
// What was in doubt when it was told may have become more so since: panels entered many at once, and counts taken back.

import type { Run } from '../floor/state.ts';
import type { PanelBound } from './stretches.ts';

/** Panels by their numbers within the run, or by their places in its order. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

type Counted = Pick<Run, 'done' | 'voids' | 'batches' | 'phase'>;

/** A span; null where there is none. */
export function span(first: number, last: number): Span | null {
  return first <= last ? { first, last } : null;
}

/** An upper bound by what is known of the counting since: it lies later by panels that had passed uncounted, and by counts that were none. */
export function latest(run: Pick<Run, 'voids' | 'batches'>, value: number, at: number | null): number {
  if (at === null || value === Number.POSITIVE_INFINITY) return value;
  let bound = value;
  for (const [tally, panels] of run.batches) if (tally === at) bound += panels - 1;
  for (const [tally, panels] of [...run.voids].sort((a, b) => a[0] - b[0]))
    if (tally < bound) bound += panels;
  return bound;
}

/**
 * A lower bound where panels are counted before they reach the machine: counts that were none had been taken for panels on their way to it.
 * `low`: panels that had passed the machine beyond those counted, at least.
 */
export function earliest(run: Pick<Run, 'voids'>, value: number, low: number): number {
  return low < 0 ? run.voids.reduce((bound, [, panels]) => bound - panels, value) : value;
}

/** The last place that a bound allows. */
export function latestTo(run: Pick<Run, 'voids' | 'batches'>, to: PanelBound): number {
  return latest(run, to.possible, to.at);
}

/** How many places up to and with this one no panel has. */
function voidsUpTo(run: Pick<Run, 'voids'>, place: number): number {
  return run.voids.reduce((sum, [tally, panels]) => sum + Math.min(panels, Math.max(0, place - tally)), 0);
}

/** True where the count of this place was taken back. */
export function isVoid(run: Pick<Run, 'voids'>, place: number): boolean {
  return run.voids.some(([tally, panels]) => place > tally && place <= tally + panels);
}

/** The number of the panel at a place. */
export function numberAt(run: Pick<Run, 'voids'>, place: number): number {
  return place - voidsUpTo(run, place);
}

/** The place of the panel with a number; null where none has it. */
export function panelPlace(run: Counted, number: number): number | null {
  if (!Number.isInteger(number) || number < 1 || number > run.done) return null;
  let place = number;
  for (let before = 0; before !== place; ) {
    before = place;
    place = number + voidsUpTo(run, place);
  }
  return place;
}

/** Places as numbers; null where no panel has any of them. */
export function toNumbers(run: Pick<Run, 'voids'>, places: Span | null): Span | null {
  return places === null ? null : span(numberAt(run, places.first - 1) + 1, numberAt(run, places.last));
}
