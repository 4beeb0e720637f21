// The steps by which the search for an order of jobs changes a sequence.
// Method: a block of up to four jobs moves next to a job that has much in common with its first or last one, perhaps turned
// round; or a stretch is turned round so that two such jobs meet. Some steps are drawn blindly, so that every order can be
// reached. What a step does to the parts shared by neighbours, and by jobs up to three places apart, is read off a table, without
// counting.
// Refused: exchanging two jobs; a block of one moved twice does the same.

import type { Chance } from '../kit/chance.ts';
import type { OrderModel } from './problem.ts';

const GUIDED = 0.8;
const BLOCKS = 0.6;
const TURNS = 0.4;
const LONGEST_BLOCK = 4;

/** Parts that two searched jobs share, as a square table. */
export function sharedTable(model: OrderModel): Int16Array {
  const n = model.jobCount;
  const sets = Array.from(
    { length: n },
    (_, job) => new Set(model.parts.subarray(model.starts[job]!, model.starts[job + 1]!)),
  );
  const table = new Int16Array(n * n);
  for (let x = 0; x < n; x++) {
    for (let y = x + 1; y < n; y++) {
      let common = 0;
      for (const part of sets[x]!) if (sets[y]!.has(part)) common++;
      table[x * n + y] = common;
      table[y * n + x] = common;
    }
  }
  return table;
}

/** Most alike first: for each job the jobs that share most with it. */
export function neighbourLists(model: OrderModel, shared: Int16Array, most: number): Uint16Array[] {
  const n = model.jobCount;
  return Array.from({ length: n }, (_, job) => {
    const others = Array.from({ length: n }, (_, other) => other).filter(
      (other) => other !== job && model.boundTo[other] === -1,
    );
    others.sort((x, y) => shared[job * n + y]! - shared[job * n + x]! || x - y);
    return Uint16Array.from(others.slice(0, most));
  });
}

/** One step over the movable places 0 … m - 1: a block moved (perhaps turned round), or a stretch turned round. */
export interface Step {
  kind: 'block' | 'turn';
  /** First and last movable place that change. */
  from: number;
  to: number;
  /** Block: where it starts now, its length, where it starts after, whether it is turned round. */
  at: number;
  length: number;
  target: number;
  isTurned: boolean;
}

/** The sequence that the search stands at, with what its steps look up. `current` is replaced from step to step. */
export interface SearchRow {
  readonly n: number;
  /** Movable places, and the first of them; `isStraight`: they lie side by side. */
  readonly m: number;
  readonly first: number;
  readonly isStraight: boolean;
  readonly shared: Int16Array;
  readonly near: readonly Uint16Array[];
  /** Place of each job in `current`. */
  readonly placeOf: Uint16Array;
  current: Uint16Array;
  /** The step drawn last, written over by the next: one object spares the loop a million of them a second. */
  readonly step: Step;
}

/** The row for a search that stands at `current`. */
export function searchRow(model: OrderModel, current: Uint16Array): SearchRow {
  const n = model.jobCount;
  const places = movablePlaces(model);
  const first = places[0] ?? 0;
  const shared = sharedTable(model);
  const placeOf = new Uint16Array(n);
  for (let place = 0; place < n; place++) placeOf[current[place]!] = place;
  return {
    n,
    m: places.length,
    first,
    isStraight: places.every((place, at) => place === first + at),
    shared,
    near: neighbourLists(model, shared, Math.max(6, Math.min(14, n >> 1))),
    placeOf,
    current,
    step: { kind: 'block', from: 0, to: 0, at: 0, length: 1, target: 0, isTurned: false },
  };
}

/** Places that no job is bound to, ascending. */
export function movablePlaces(model: OrderModel): number[] {
  const bound = new Set(model.boundTo);
  return Array.from({ length: model.jobCount }, (_, place) => place).filter((place) => !bound.has(place));
}

/** Draws a step into `row.step`; null where the draw leads nowhere. */
export function drawStep(chance: Chance, row: SearchRow): Step | null {
  const { m, first, isStraight, current, near, placeOf, step } = row;
  const isGuided = isStraight && chance() < GUIDED;
  if (chance() < TURNS) {
    let x = Math.floor(chance() * m);
    let y: number;
    if (isGuided) {
      const list = near[current[first + x]!]!;
      y = placeOf[list[Math.floor(chance() * list.length)]!]! - first;
      if (y > x) x++;
      else x--;
    } else y = Math.floor(chance() * m);
    if (x === y || x < 0 || x >= m) return null;
    step.kind = 'turn';
    step.from = Math.min(x, y);
    step.to = Math.max(x, y);
    return step;
  }
  let length = 1;
  if (chance() < BLOCKS) length = 2 + Math.floor(chance() * (LONGEST_BLOCK - 1));
  if (length > m - 1) length = 1;
  const at = Math.floor(chance() * (m - length + 1));
  let target: number;
  if (isGuided) {
    const isAfter = chance() < 0.5;
    const list = near[current[first + (isAfter ? at : at + length - 1)]!]!;
    const host = placeOf[list[Math.floor(chance() * list.length)]!]! - first;
    if (host >= at && host < at + length) return null;
    const left = host > at ? host - length : host;
    target = isAfter ? left + 1 : left;
  } else target = Math.floor(chance() * (m - length + 1));
  if (target === at) return null;
  step.kind = 'block';
  step.at = at;
  step.length = length;
  step.target = target;
  step.isTurned = length > 1 && chance() < 0.5;
  step.from = Math.min(at, target);
  step.to = Math.max(at, target) + length - 1;
  return step;
}

/** Parts shared by neighbours: gained (or lost, negative) by a step. */
export function sharedChange(row: SearchRow, step: Step): number {
  const { shared, n, current, first } = row;
  const pair = (x: number, y: number) => (x < 0 || y >= n ? 0 : shared[current[x]! * n + current[y]!]!);
  const from = first + step.from;
  const to = first + step.to;
  if (step.kind === 'turn') {
    return (
      pair(from - 1, to) +
      (to + 1 >= n || from < 0 ? 0 : pair(from, to + 1)) -
      pair(from - 1, from) -
      pair(to, to + 1)
    );
  }
  const at = first + step.at;
  const end = at + step.length - 1;
  const head = step.isTurned ? end : at;
  const tail = step.isTurned ? at : end;
  const lost = pair(from - 1, from) + pair(to, to + 1);
  if (step.target < step.at) {
    return pair(from - 1, head) + pair(tail, from) + pair(at - 1, to + 1) - lost - pair(at - 1, at);
  }
  return pair(from - 1, end + 1) + pair(to, head) + pair(tail, to + 1) - lost - pair(end, end + 1);
}

/** A sequence and the one that a step makes of it; they agree before the step. */
export interface StepRows {
  readonly current: Uint16Array;
  readonly trial: Uint16Array;
}

/** Writes what the step makes of `current` into `trial`; `first` is the first movable place. */
export function applyStraight(step: Step, first: number, { current, trial }: StepRows): void {
  const from = first + step.from;
  const to = first + step.to;
  if (step.kind === 'turn') {
    for (let x = from, y = to; x <= to; x++, y--) trial[x] = current[y]!;
    return;
  }
  const at = first + step.at;
  const target = first + step.target;
  const length = step.length;
  if (target < at) for (let x = target; x < at; x++) trial[x + length] = current[x]!;
  else for (let x = at + length; x < target + length; x++) trial[x - length] = current[x]!;
  for (let x = 0; x < length; x++) trial[target + x] = current[step.isTurned ? at + length - 1 - x : at + x]!;
}

/** The same where bound jobs stand between the movable places: the step is done on the row of movable jobs. */
export function applyBound(step: Step, places: readonly number[], { current, trial }: StepRows): void {
  const row = Uint16Array.from(places, (place) => current[place]!);
  const after = row.slice();
  applyStraight(step, 0, { current: row, trial: after });
  places.forEach((place, at) => {
    trial[place] = after[at]!;
  });
}

/**
 * Feeders that two jobs save for each part they share, one, two and three places apart: a straight line through counted steps of the
 * published 40-job instances.
 */
const SAVED_BY_DISTANCE = [0.9, 0.5, 0.3] as const;

/** Feeders saved by parts that jobs share across the seam before place `start`, those after it taken up to place `end` only. */
function savedAcross(row: SearchRow, sequence: Uint16Array, start: number, end: number): number {
  const { shared, n } = row;
  const [next, second, third] = SAVED_BY_DISTANCE;
  if (start < 1 || start >= n) return 0;
  const left = sequence[start - 1]!;
  const right = sequence[start]! * n;
  let saved = next * shared[right + left]!;
  if (start > 1) saved += second * shared[right + sequence[start - 2]!]!;
  if (start > 2) saved += third * shared[right + sequence[start - 3]!]!;
  if (start >= end) return saved;
  const after = sequence[start + 1]! * n;
  saved += second * shared[after + left]!;
  if (start > 1) saved += third * shared[after + sequence[start - 2]!]!;
  if (start + 1 < end) saved += third * shared[sequence[start + 2]! * n + left]!;
  return saved;
}

/** About so many feeders more by a step that has made `trial` of `current`, told from the jobs near its seams. */
export function nearLoss(row: SearchRow, step: Step, trial: Uint16Array): number {
  const { current, first, n } = row;
  const from = first + step.from;
  const to = first + step.to;
  const saved = savedAcross(row, current, to + 1, n - 1) - savedAcross(row, trial, to + 1, n - 1);
  if (step.kind === 'turn')
    return saved + savedAcross(row, current, from, to) - savedAcross(row, trial, from, to);
  const { length, target, at } = step;
  const before = first + (target < at ? at : at + length);
  const after = first + (target < at ? target + length : target);
  return (
    saved +
    savedAcross(row, current, from, before - 1) +
    savedAcross(row, current, before, to) -
    savedAcross(row, trial, from, after - 1) -
    savedAcross(row, trial, after, to)
  );
}
