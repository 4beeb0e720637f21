// For a given order of jobs: how many feeders must be put in, when all feeders take the same room?
// Method: keep needed soonest (Tang and Denardo 1988, Operations Research 36, 767), counted as pipes: a part kept from
// its last use at place p to its next at k holds one free unit at every place strictly between. Pipes are taken by
// increasing end, shortest first. The free units are held as counts by the place since which they have been free, so
// that "does the pipe fit" is "is a unit free since p + 1 or before"; the youngest such unit is spent.
// The state before each place is kept, so that a changed order is evaluated from its first changed place on, and only
// until it has come back to the base: the same units free, all of them since after the last changed place.
// Refused: playing the magazine part by part; the same count, several times slower.

import type { OrderModel } from './problem.ts';

/** Counts for one model; holds the state of one base sequence. */
export interface UnitCounter {
  /**
   * Takes `sequence` as the base; from the base before it differs only at places `from` … `to` (left out: to the end; the
   * first call: 0 to the end). Returns feeders put in.
   */
  readonly rebase: (sequence: Uint16Array, from: number, to?: number) => number;
  /**
   * Feeders put in by `sequence`, which differs from the base only at places `from` … `to`. Gives up early, with a
   * number above `limit`, when by a place after `to` it is more than `slack` worse than `limit` allows.
   */
  readonly count: (sequence: Uint16Array, from: number, to: number, limit: number, slack: number) => number;
  /** Writes the feeders put in at each place of the base; 0 for a load before. */
  readonly writeIn: (sequence: Uint16Array, inAt: Int32Array) => void;
  /** Places evaluated since the start: the measure of work done. */
  readonly work: () => number;
}

function bitCount(word: number): number {
  let x = word - ((word >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  return Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Bits set in two words together; cheaper than one after the other. */
function bitCountOfTwo(low: number, high: number): number {
  let x = low - ((low >>> 1) & 0x55555555);
  let y = high - ((high >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  y = (y & 0x33333333) + ((y >>> 2) & 0x33333333);
  x += y;
  x = (x & 0x0f0f0f0f) + ((x >>> 4) & 0x0f0f0f0f);
  return Math.imul(x, 0x01010101) >>> 24;
}

function writeIn(model: OrderModel, keptBefore: Int32Array, sequence: Uint16Array, inAt: Int32Array): void {
  for (let place = 0; place < model.jobCount; place++) {
    const job = sequence[place]!;
    const size = model.starts[job + 1]! - model.starts[job]!;
    inAt[place] = model.hasLoad && place === 0 ? 0 : size - (keptBefore[place + 1]! - keptBefore[place]!);
  }
}

/** Parts that more than one searched job needs, renumbered: only these can ever be kept. */
function sharedParts(model: OrderModel): Int32Array {
  const uses = new Int32Array(model.partCount);
  for (const part of model.parts) uses[part] = (uses[part] ?? 0) + 1;
  let next = 0;
  return uses.map((count) => (count > 1 ? next++ : -1));
}

/** Makes a counter for a model whose feeders all take one unit (`model.isUnit`). */
export function unitCounter(model: OrderModel): UnitCounter {
  if (!model.isUnit) throw new TypeError('Cannot count by units as the feeders must all take the same room');
  const shared = sharedParts(model);
  const words = Math.max(1, Math.ceil((Math.max(-1, ...shared) + 1) / 32));
  const bits = Array.from({ length: words }, () => new Int32Array(model.jobCount));
  for (let job = 0; job < model.jobCount; job++) {
    for (let i = model.starts[job]!; i < model.starts[job + 1]!; i++) {
      const number = shared[model.parts[i]!]!;
      if (number >= 0) bits[number >>> 5]![job]! |= 1 << (number & 31);
    }
  }
  return words <= 2
    ? narrowCounter(model, bits[0]!, bits[1] ?? new Int32Array(model.jobCount))
    : wideCounter(model, bits);
}

// The two counters below are the same arithmetic; the first holds the parts of a place in two variables instead of an
// array, which is worth a factor of two where it fits (up to 64 shared parts).
// Indices stay inside arrays made for them; `!` spares the hot loops a test that cannot fail.

/** Work of looking one place back for parts, against that of a place. */
const LOOK_WORK = 0.1;

function narrowCounter(model: OrderModel, bitsLow: Int32Array, bitsHigh: Int32Array): UnitCounter {
  const n = model.jobCount;
  const stride = n + 2;
  // Parts at each place of the base; while a changed sequence is counted its places stand here, and go back after.
  const low = new Int32Array(n);
  const high = new Int32Array(n);
  const since = new Int32Array(stride);
  const sinceBefore = new Int32Array((n + 1) * stride);
  const oldestBefore = new Int32Array(n + 1);
  const freeBefore = new Int32Array(n + 1);
  const keptBefore = new Int32Array(n + 1);
  // Parts used before each place of the base: nothing else is worth looking back for.
  const seenLowBefore = new Int32Array(n + 1);
  const seenHighBefore = new Int32Array(n + 1);
  // Parts that a job could keep at the very most, and their sum before each place of the base.
  const most = bitsLow.map((word, job) => bitCountOfTwo(word, bitsHigh[job]!));
  const mostBefore = new Int32Array(n + 1);
  // The base itself, and the units free beside each of its jobs.
  const held = new Uint16Array(n);
  const beside = new Int32Array(n);
  const total = model.partTotal;
  const freeBeside = Int32Array.from(model.freeBeside);
  // Places, looks back: in an array, since a plain variable that is no small whole number is a new object with every sum.
  const done = new Float64Array(2);

  /** Whether all goes on from place k as in the base: no unit free there has been so since `to` or before. */
  function isBack(k: number, to: number, free: number, oldest: number): boolean {
    if (free === 0) return true;
    if (oldest <= to + 1 || oldest !== oldestBefore[k]!) return false;
    for (let i = oldest, at = k * stride + oldest; i < k; i++, at++) {
      if (since[i] !== sinceBefore[at]) return false;
    }
    return true;
  }

  function run(sequence: Uint16Array, from: number, to: number, mayLose: number, save: boolean): number {
    let free = freeBefore[from]!;
    let kept = keptBefore[from]!;
    let oldest = oldestBefore[from]!;
    let looks = 0;
    let seenLow = seenLowBefore[from]!;
    let seenHigh = seenHighBefore[from]!;
    // What the changed places ahead could keep at the very most, and what must be kept after them for the step to stand a chance.
    let still = mostBefore[to + 1]! - mostBefore[from]!;
    let need = keptBefore[to + 1]! - mayLose;
    for (let i = oldest, at = from * stride + oldest; i < from; i++, at++) since[i] = sinceBefore[at]!;
    for (let k = from; k < n; k++) {
      if (k > to + 1 && free === freeBefore[k]! && isBack(k, to, free, oldest)) {
        done[0]! += k - from;
        done[1]! += looks;
        const gained = kept - keptBefore[k]!;
        if (save && gained !== 0) for (let i = k; i <= n; i++) keptBefore[i]! += gained;
        return save ? keptBefore[n]! : keptBefore[n]! + gained;
      }
      if (save) {
        for (let i = oldest, at = k * stride + oldest; i < k; i++, at++) sinceBefore[at] = since[i]!;
        freeBefore[k] = free;
        seenLowBefore[k] = seenLow;
        seenHighBefore[k] = seenHigh;
        keptBefore[k] = kept;
        oldestBefore[k] = oldest;
      }
      let restLow = low[k]!;
      let restHigh = high[k]!;
      let room: number;
      if (k <= to) {
        const job = sequence[k]!;
        restLow = bitsLow[job]!;
        restHigh = bitsHigh[job]!;
        low[k] = restLow;
        high[k] = restHigh;
        room = freeBeside[job]!;
        still -= most[job]!;
        if (save) {
          beside[k] = room;
          mostBefore[k + 1] = mostBefore[k]! + most[job]!;
        }
      } else room = beside[k]!;
      const hereLow = restLow;
      const hereHigh = restHigh;
      if (k > 0) {
        const foundLow = restLow & low[k - 1]!;
        const foundHigh = restHigh & high[k - 1]!;
        kept += bitCountOfTwo(foundLow, foundHigh);
        restLow = (restLow ^ foundLow) & seenLow;
        restHigh = (restHigh ^ foundHigh) & seenHigh;
        for (let p = k - 2; p >= 0 && free > 0 && p + 1 >= oldest && (restLow | restHigh) !== 0; p--) {
          looks++;
          const commonLow = restLow & low[p]!;
          const commonHigh = restHigh & high[p]!;
          if ((commonLow | commonHigh) === 0) continue;
          restLow ^= commonLow;
          restHigh ^= commonHigh;
          let want = bitCountOfTwo(commonLow, commonHigh);
          let q = p + 1;
          while (want > 0 && q >= oldest) {
            const there = since[q]!;
            if (there > want) {
              since[q] = there - want;
              kept += want;
              free -= want;
              want = 0;
            } else {
              if (there > 0) {
                since[q] = 0;
                kept += there;
                free -= there;
                want -= there;
              }
              q--;
            }
          }
          if (q <= oldest) while (oldest < k && since[oldest] === 0) oldest++;
        }
        if (k > to) need = keptBefore[k + 1]! - mayLose;
        if (!save && kept + still < need) {
          done[0]! += k - from + 1;
          done[1]! += looks;
          return -1;
        }
      }
      seenLow |= hereLow;
      seenHigh |= hereHigh;
      if (free < room) {
        if (free === 0) oldest = k;
        since[k] = room - free;
        free = room;
      } else {
        since[k] = 0;
        for (let q = k - 1; free > room; q--) {
          const there = since[q]!;
          const over = free - room;
          if (there > over) {
            since[q] = there - over;
            free = room;
          } else {
            free -= there;
            since[q] = 0;
          }
        }
        if (free === 0) oldest = k + 1;
      }
    }
    done[0]! += n - from;
    done[1]! += looks;
    if (save) keptBefore[n] = kept;
    return kept;
  }

  return {
    rebase: (sequence, from, to = n - 1) => {
      for (let place = from; place <= to; place++) held[place] = sequence[place]!;
      return total - run(sequence, from, to, 0, true);
    },
    count: (sequence, from, to, limit, slack) => {
      const kept = run(sequence, from, to, keptBefore[n]! - (total - limit) + slack, false);
      for (let place = from; place <= to; place++) {
        low[place] = bitsLow[held[place]!]!;
        high[place] = bitsHigh[held[place]!]!;
      }
      return kept < 0 ? limit + 1 : total - kept;
    },
    writeIn: (sequence, inAt) => writeIn(model, keptBefore, sequence, inAt),
    work: () => done[0]! + done[1]! * LOOK_WORK,
  };
}

function wideCounter(model: OrderModel, bits: readonly Int32Array[]): UnitCounter {
  const n = model.jobCount;
  const words = bits.length;
  const total = model.partTotal;
  const byJob = new Int32Array(n * words);
  for (let job = 0; job < n; job++) for (let w = 0; w < words; w++) byJob[job * words + w] = bits[w]![job]!;
  const stride = n + 2;
  const since = new Uint16Array(stride);
  const sinceBefore = new Uint16Array((n + 1) * stride);
  const freeBefore = new Int32Array(n + 1);
  const keptBefore = new Int32Array(n + 1);
  const rest = new Int32Array(words);
  let work = 0;

  /** Moves the parts of `rest` that job also has out of it and returns how many there were. */
  function takeCommon(job: number): number {
    let found = 0;
    const offset = job * words;
    for (let w = 0; w < words; w++) {
      const common = rest[w]! & byJob[offset + w]!;
      if (common !== 0) {
        found += bitCount(common);
        rest[w]! &= ~common;
      }
    }
    return found;
  }

  function run(
    sequence: Uint16Array,
    from: number,
    to: number,
    limit: number,
    slack: number,
    save: boolean,
  ): number {
    let free = freeBefore[from]!;
    let kept = keptBefore[from]!;
    since.fill(0);
    if (from === 0) {
      free = 0;
      kept = 0;
    }
    for (let i = 0; i < from; i++) since[i] = sinceBefore[from * stride + i]!;
    const mayLose = keptBefore[n]! - (total - limit) + slack;
    for (let k = from; k < n; k++) {
      if (save) {
        sinceBefore.set(since, k * stride);
        freeBefore[k] = free;
        keptBefore[k] = kept;
      }
      const job = sequence[k]!;
      if (k > 0) {
        let left = 0;
        for (let w = 0; w < words; w++) {
          rest[w] = byJob[job * words + w]!;
          left += bitCount(rest[w]!);
        }
        const direct = takeCommon(sequence[k - 1]!);
        kept += direct;
        left -= direct;
        for (let p = k - 2; p >= 0 && free > 0 && left > 0; p--) {
          let want = takeCommon(sequence[p]!);
          left -= want;
          for (let q = p + 1; want > 0 && q >= 0; q--) {
            const spent = Math.min(want, since[q]!);
            since[q]! -= spent;
            kept += spent;
            free -= spent;
            want -= spent;
          }
        }
        if (k >= to && !save && keptBefore[k + 1]! - kept > mayLose) {
          work += k - from + 1;
          return limit + 1;
        }
      }
      const beside = model.freeBeside[job]!;
      if (free < beside) {
        since[k] = beside - free;
        free = beside;
      }
      for (let q = k - 1; free > beside; q--) {
        const spent = Math.min(since[q]!, free - beside);
        since[q]! -= spent;
        free -= spent;
      }
    }
    work += n - from;
    if (save) keptBefore[n] = kept;
    return total - kept;
  }

  return {
    rebase: (sequence, from) => run(sequence, from, n, 0, 0, true),
    count: (sequence, from, to, limit, slack) => run(sequence, from, to, limit, slack, false),
    writeIn: (sequence, inAt) => writeIn(model, keptBefore, sequence, inAt),
    work: () => work,
  };
}
