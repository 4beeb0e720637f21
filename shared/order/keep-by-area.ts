// For a given order of jobs: which feeders to keep between their uses, when feeders take different room?
// The question is a knapsack over time (NP-hard: Matzliach and Tzur 2000; Crama and others 2007). Method: every stretch
// between two uses of a part is a pipe with an area, places between × positions; pipes are taken by increasing area,
// narrower first, where they fit; then one kept pipe is exchanged for two refused ones as long as that helps.
// Refused: keep needed soonest with the widths looked at only when something must go; some 2 % more feeders on
// line-like jobs against 0.1-0.3 % by area.

import type { OrderModel } from './problem.ts';

/** Which pipes are kept in one sequence. */
export interface KeptPipes {
  /** Feeders put in. */
  readonly changes: number;
  /** Feeders put in at each place (0 for a load before). */
  readonly inAt: Int32Array;
  /** `part * jobCount + place` of the use at whose end a kept pipe begins. */
  readonly keptFrom: ReadonlySet<number>;
}

/** Counts for one model; its arrays are reused from call to call. */
export interface AreaCounter {
  /** Feeders put in by `sequence` under the area rule; `inAt` is overwritten with the feeders per place. */
  readonly count: (sequence: Uint16Array, inAt: Int32Array) => number;
  /** The same after exchanges, with what is kept. */
  readonly refine: (sequence: Uint16Array) => KeptPipes;
  /**
   * After `count(sequence, inAt)`: no way of keeping needs fewer feeders in this sequence. Stops as soon as `enough` is
   * reached. Method: Lagrangian relaxation of the room at each place (a price per unit and place), prices by subgradient
   * steps after Polyak 1969.
   */
  readonly least: (enough: number) => number;
  /** Places evaluated since the start: the measure of work done. */
  readonly work: () => number;
}

const MOST_PRICE_STEPS = 60;

const MOST_BUCKETS = 8192;

/** The pipes of the sequence counted last, and the arrays to count with. */
interface Pipes {
  readonly model: OrderModel;
  readonly widest: number;
  /** Each area and width has a bucket of its own. */
  readonly isFine: boolean;
  /** First pipe of each bucket, -1 for none; then by `next`. */
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly part: Uint16Array;
  readonly from: Uint16Array;
  readonly to: Uint16Array;
  /** 1 for kept, 2 for set aside while others are tried in its place, else 0. */
  readonly isKept: Uint8Array;
  readonly lastUse: Int32Array;
  readonly free: Int32Array;
  readonly price: Float64Array;
  readonly priceUpTo: Float64Array;
  readonly held: Float64Array;
  /** Feeders put in by the sequence counted last if no pipe were kept. */
  withoutPipes: number;
  counted: Uint16Array;
  size: number;
  work: number;
}

/** Makes a counter for a model with feeders of any widths. */
export function areaCounter(model: OrderModel): AreaCounter {
  const pipes = emptyPipes(model);
  return {
    count: (sequence, inAt) => count(pipes, sequence, inAt),
    refine: (sequence) => refine(pipes, sequence),
    least: (enough) => least(pipes, enough),
    work: () => pipes.work,
  };
}

function emptyPipes(model: OrderModel): Pipes {
  const { jobCount: n, parts, widthOf } = model;
  const widest = widthOf.reduce((most, width) => Math.max(most, width), 1);
  const isFine = n * widest * (widest + 1) < MOST_BUCKETS;
  return {
    model,
    widest,
    isFine,
    head: new Int32Array(isFine ? n * widest * (widest + 1) + widest + 1 : MOST_BUCKETS).fill(-1),
    next: new Int32Array(parts.length),
    part: new Uint16Array(parts.length),
    from: new Uint16Array(parts.length),
    to: new Uint16Array(parts.length),
    isKept: new Uint8Array(parts.length),
    lastUse: new Int32Array(model.partCount),
    free: new Int32Array(n),
    price: new Float64Array(n),
    priceUpTo: new Float64Array(n + 1),
    held: new Float64Array(n + 1),
    withoutPipes: 0,
    counted: new Uint16Array(n),
    size: 0,
    work: 0,
  };
}

function fits(free: Int32Array, from: number, to: number, width: number): boolean {
  for (let place = to - 1; place > from; place--) if (free[place]! < width) return false;
  return true;
}

function spend(free: Int32Array, from: number, to: number, width: number): void {
  for (let place = from + 1; place < to; place++) free[place]! -= width;
}

function count(pipes: Pipes, sequence: Uint16Array, inAt: Int32Array): number {
  const { model } = pipes;
  const n = model.jobCount;
  const topBucket = layPipes(pipes, sequence, inAt);
  pipes.withoutPipes = 0;
  for (let place = model.hasLoad ? 1 : 0; place < n; place++) pipes.withoutPipes += inAt[place]!;
  keepPipes(pipes, topBucket, inAt);
  if (model.hasLoad) inAt[0] = 0;
  let total = 0;
  for (let place = 0; place < n; place++) total += inAt[place]!;
  pipes.work += n + (model.parts.length >> 3);
  return total;
}

/** Puts every stretch between two uses into the bucket of its area; returns the last bucket that holds one. */
function layPipes(pipes: Pipes, sequence: Uint16Array, inAt: Int32Array): number {
  const { widest, isFine, head, next, part: partOf, from: fromOf, to: toOf, lastUse, free } = pipes;
  const { starts, parts, widthOf, freeBeside, jobCount } = pipes.model;
  lastUse.fill(-1);
  pipes.counted = sequence;
  let size = 0;
  let topBucket = -1;
  for (let place = 0; place < jobCount; place++) {
    const job = sequence[place]!;
    free[place] = freeBeside[job]!;
    const end = starts[job + 1]!;
    let fresh = end - starts[job]!;
    for (let i = starts[job]!; i < end; i++) {
      const part = parts[i]!;
      const from = lastUse[part]!;
      lastUse[part] = place;
      if (from < 0) continue;
      if (from === place - 1) {
        fresh--;
        continue;
      }
      const width = widthOf[part]!;
      const area = (place - from - 1) * width;
      const bucket = isFine ? area * (widest + 1) + width : Math.min(area, MOST_BUCKETS - 1);
      partOf[size] = part;
      fromOf[size] = from;
      toOf[size] = place;
      next[size] = head[bucket]!;
      head[bucket] = size++;
      if (bucket > topBucket) topBucket = bucket;
    }
    inAt[place] = fresh;
  }
  pipes.size = size;
  return topBucket;
}

/** Keeps what fits, smallest area first, and empties the buckets. */
function keepPipes(pipes: Pipes, topBucket: number, inAt: Int32Array): void {
  const { head, next, part, from, to, isKept, free } = pipes;
  const { widthOf } = pipes.model;
  for (let bucket = 0; bucket <= topBucket; bucket++) {
    for (let pipe = head[bucket]!; pipe >= 0; pipe = next[pipe]!) {
      const width = widthOf[part[pipe]!]!;
      const keeps = fits(free, from[pipe]!, to[pipe]!, width);
      isKept[pipe] = keeps ? 1 : 0;
      if (!keeps) continue;
      spend(free, from[pipe]!, to[pipe]!, width);
      inAt[to[pipe]!]! -= 1;
    }
    head[bucket] = -1;
  }
}

/** Most pipes that the prices allow; leaves in `held` what the chosen pipes hold at each place. */
function pricedMost(pipes: Pipes, sequence: Uint16Array): number {
  const { price, priceUpTo, held } = pipes;
  const { widthOf, freeBeside, jobCount } = pipes.model;
  let most = 0;
  for (let place = 0; place < jobCount; place++) {
    priceUpTo[place + 1] = priceUpTo[place]! + price[place]!;
    most += price[place]! * freeBeside[sequence[place]!]!;
  }
  held.fill(0);
  for (let pipe = 0; pipe < pipes.size; pipe++) {
    const width = widthOf[pipes.part[pipe]!]!;
    const from = pipes.from[pipe]! + 1;
    const to = pipes.to[pipe]!;
    const gain = 1 - width * (priceUpTo[to]! - priceUpTo[from]!);
    if (gain <= 0) continue;
    most += gain;
    held[from]! += width;
    held[to]! -= width;
  }
  return most;
}

function least(pipes: Pipes, enough: number): number {
  const { price, held, free, counted } = pipes;
  const { freeBeside, jobCount: n } = pipes.model;
  price.fill(0);
  let lowest = 0;
  for (let step = 0; step < MOST_PRICE_STEPS; step++) {
    const most = pricedMost(pipes, counted);
    lowest = Math.max(lowest, pipes.withoutPipes - Math.floor(most + 1e-7));
    if (lowest >= enough) break;
    let sum = 0;
    let square = 0;
    for (let place = 0; place < n; place++) {
      sum += held[place]!;
      const spare = freeBeside[counted[place]!]! - sum;
      free[place] = spare;
      if (spare < 0 || price[place]! > 0) square += spare * spare;
    }
    if (square === 0) break;
    const length = (most - (pipes.withoutPipes - enough + 0.9)) / square;
    for (let place = 0; place < n; place++) price[place] = Math.max(0, price[place]! - length * free[place]!);
  }
  pipes.work += (MOST_PRICE_STEPS * (n + pipes.size)) >> 5;
  return lowest;
}

/** Tries to add refused pipes, smallest area first; returns those added. */
function fill(pipes: Pipes, candidates: readonly number[]): number[] {
  const added: number[] = [];
  for (const pipe of candidates) {
    const width = pipes.model.widthOf[pipes.part[pipe]!]!;
    if (pipes.isKept[pipe] === 1 || !fits(pipes.free, pipes.from[pipe]!, pipes.to[pipe]!, width)) continue;
    spend(pipes.free, pipes.from[pipe]!, pipes.to[pipe]!, width);
    pipes.isKept[pipe] = 1;
    added.push(pipe);
  }
  return added;
}

function drop(pipes: Pipes, pipe: number): void {
  spend(pipes.free, pipes.from[pipe]!, pipes.to[pipe]!, -pipes.model.widthOf[pipes.part[pipe]!]!);
  pipes.isKept[pipe] = 0;
}

/** Exchanges one kept pipe for two or more refused ones, as long as one exchange helps. */
function exchange(pipes: Pipes): void {
  const { isKept, from, to, part } = pipes;
  const area = (pipe: number) => (to[pipe]! - from[pipe]! - 1) * pipes.model.widthOf[part[pipe]!]!;
  const byArea = Array.from({ length: pipes.size }, (_, pipe) => pipe).sort(
    (x, y) => area(x) - area(y) || x - y,
  );
  let helped = true;
  for (let round = 0; helped && round < 20; round++) {
    helped = false;
    for (let i = byArea.length - 1; i >= 0; i--) {
      const pipe = byArea[i]!;
      if (isKept[pipe] !== 1) continue;
      drop(pipes, pipe);
      isKept[pipe] = 2;
      const added = fill(
        pipes,
        byArea.filter((other) => isKept[other] === 0),
      );
      isKept[pipe] = 0;
      if (added.length >= 2) {
        helped = true;
        continue;
      }
      for (const other of added) drop(pipes, other);
      fill(pipes, [pipe]);
    }
  }
  fill(pipes, byArea);
}

function refine(pipes: Pipes, sequence: Uint16Array): KeptPipes {
  const { isKept, part, from, to } = pipes;
  const { starts, parts, jobCount: n } = pipes.model;
  const inAt = new Int32Array(n);
  count(pipes, sequence, inAt);
  const before = isKept.slice(0, pipes.size);
  exchange(pipes);
  const keptFrom = new Set<number>();
  let changes = 0;
  for (let pipe = 0; pipe < pipes.size; pipe++) {
    inAt[to[pipe]!]! -= isKept[pipe]! - before[pipe]!;
    if (isKept[pipe] === 1) keptFrom.add(part[pipe]! * n + from[pipe]!);
  }
  for (let place = 0; place < n; place++) {
    changes += inAt[place]!;
    if (place + 1 >= n) continue;
    const after = new Set(parts.subarray(starts[sequence[place + 1]!]!, starts[sequence[place + 1]! + 1]!));
    for (let i = starts[sequence[place]!]!; i < starts[sequence[place]! + 1]!; i++) {
      if (after.has(parts[i]!)) keptFrom.add(parts[i]! * n + place);
    }
  }
  return { changes, inAt, keptFrom };
}
