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

/** Makes a counter for a model with feeders of any widths. */
export function areaCounter(model: OrderModel): AreaCounter {
  const n = model.jobCount;
  const { starts, parts, widthOf, freeBeside } = model;
  const widest = widthOf.reduce((most, width) => Math.max(most, width), 1);
  const isFine = n * widest * (widest + 1) < MOST_BUCKETS;
  const buckets = isFine ? n * widest * (widest + 1) + widest + 1 : MOST_BUCKETS;
  const head = new Int32Array(buckets).fill(-1);
  const next = new Int32Array(parts.length);
  const pipePart = new Uint16Array(parts.length);
  const pipeFrom = new Uint16Array(parts.length);
  const pipeTo = new Uint16Array(parts.length);
  const isKept = new Uint8Array(parts.length);
  const lastUse = new Int32Array(model.partCount);
  const free = new Int32Array(n);
  const price = new Float64Array(n);
  const priceUpTo = new Float64Array(n + 1);
  const held = new Float64Array(n + 1);
  /** Feeders put in by the sequence counted last if no pipe were kept. */
  let withoutPipes = 0;
  let counted: Uint16Array = new Uint16Array(n);
  let pipes = 0;
  let work = 0;

  function fits(from: number, to: number, width: number): boolean {
    for (let place = to - 1; place > from; place--) if (free[place]! < width) return false;
    return true;
  }
  function spend(from: number, to: number, width: number): void {
    for (let place = from + 1; place < to; place++) free[place]! -= width;
  }

  function count(sequence: Uint16Array, inAt: Int32Array): number {
    lastUse.fill(-1);
    counted = sequence;
    pipes = 0;
    let topBucket = -1;
    for (let place = 0; place < n; place++) {
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
        pipePart[pipes] = part;
        pipeFrom[pipes] = from;
        pipeTo[pipes] = place;
        next[pipes] = head[bucket]!;
        head[bucket] = pipes++;
        if (bucket > topBucket) topBucket = bucket;
      }
      inAt[place] = fresh;
    }
    let total = 0;
    withoutPipes = 0;
    for (let place = model.hasLoad ? 1 : 0; place < n; place++) withoutPipes += inAt[place]!;
    for (let bucket = 0; bucket <= topBucket; bucket++) {
      for (let pipe = head[bucket]!; pipe >= 0; pipe = next[pipe]!) {
        const width = widthOf[pipePart[pipe]!]!;
        const keeps = fits(pipeFrom[pipe]!, pipeTo[pipe]!, width);
        isKept[pipe] = keeps ? 1 : 0;
        if (!keeps) continue;
        spend(pipeFrom[pipe]!, pipeTo[pipe]!, width);
        inAt[pipeTo[pipe]!]! -= 1;
      }
      head[bucket] = -1;
    }
    if (model.hasLoad) inAt[0] = 0;
    for (let place = 0; place < n; place++) total += inAt[place]!;
    work += n + (parts.length >> 3);
    return total;
  }

  /** Most pipes that the prices allow; leaves in `held` what the chosen pipes hold at each place. */
  function pricedMost(sequence: Uint16Array): number {
    let most = 0;
    for (let place = 0; place < n; place++) {
      priceUpTo[place + 1] = priceUpTo[place]! + price[place]!;
      most += price[place]! * freeBeside[sequence[place]!]!;
    }
    held.fill(0);
    for (let pipe = 0; pipe < pipes; pipe++) {
      const width = widthOf[pipePart[pipe]!]!;
      const from = pipeFrom[pipe]! + 1;
      const to = pipeTo[pipe]!;
      const gain = 1 - width * (priceUpTo[to]! - priceUpTo[from]!);
      if (gain <= 0) continue;
      most += gain;
      held[from]! += width;
      held[to]! -= width;
    }
    return most;
  }

  function least(enough: number): number {
    price.fill(0);
    let lowest = 0;
    for (let step = 0; step < MOST_PRICE_STEPS; step++) {
      const most = pricedMost(counted);
      lowest = Math.max(lowest, withoutPipes - Math.floor(most + 1e-7));
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
      const length = (most - (withoutPipes - enough + 0.9)) / square;
      for (let place = 0; place < n; place++)
        price[place] = Math.max(0, price[place]! - length * free[place]!);
    }
    work += (MOST_PRICE_STEPS * (n + pipes)) >> 5;
    return lowest;
  }

  /** Tries to add refused pipes, smallest area first; returns those added. */
  function fill(candidates: readonly number[]): number[] {
    const added: number[] = [];
    for (const pipe of candidates) {
      const width = widthOf[pipePart[pipe]!]!;
      if (isKept[pipe] === 1 || !fits(pipeFrom[pipe]!, pipeTo[pipe]!, width)) continue;
      spend(pipeFrom[pipe]!, pipeTo[pipe]!, width);
      isKept[pipe] = 1;
      added.push(pipe);
    }
    return added;
  }

  function drop(pipe: number): void {
    spend(pipeFrom[pipe]!, pipeTo[pipe]!, -widthOf[pipePart[pipe]!]!);
    isKept[pipe] = 0;
  }

  /** Exchanges one kept pipe for two or more refused ones, as long as one exchange helps. */
  function exchange(): void {
    const area = (pipe: number) => (pipeTo[pipe]! - pipeFrom[pipe]! - 1) * widthOf[pipePart[pipe]!]!;
    const byArea = Array.from({ length: pipes }, (_, pipe) => pipe).sort(
      (x, y) => area(x) - area(y) || x - y,
    );
    let helped = true;
    for (let round = 0; helped && round < 20; round++) {
      helped = false;
      for (let i = byArea.length - 1; i >= 0; i--) {
        const pipe = byArea[i]!;
        if (isKept[pipe] !== 1) continue;
        drop(pipe);
        isKept[pipe] = 2;
        const added = fill(byArea.filter((other) => isKept[other] === 0));
        isKept[pipe] = 0;
        if (added.length >= 2) {
          helped = true;
          continue;
        }
        for (const other of added) drop(other);
        fill([pipe]);
      }
    }
    fill(byArea);
  }

  function refine(sequence: Uint16Array): KeptPipes {
    const inAt = new Int32Array(n);
    count(sequence, inAt);
    const before = isKept.slice(0, pipes);
    exchange();
    const keptFrom = new Set<number>();
    let changes = 0;
    for (let pipe = 0; pipe < pipes; pipe++) {
      inAt[pipeTo[pipe]!]! -= isKept[pipe]! - before[pipe]!;
      if (isKept[pipe] === 1) keptFrom.add(pipePart[pipe]! * n + pipeFrom[pipe]!);
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

  return { count, refine, least, work: () => work };
}
