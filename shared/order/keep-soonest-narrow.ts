// Keep needed soonest for up to 64 parts that jobs share: the parts of a place are two words, which is worth a factor of two against
// the wide form. Indices stay inside arrays made for them; `!` spares the hot loops a test that cannot fail.

import { bitCountOfTwo } from './bits.ts';
import type { OrderModel } from './problem.ts';
import { type UnitCounter, writeIn } from './unit-counter.ts';

/** Work of looking one place back for parts, against that of a place. */
const LOOK_WORK = 0.1;

/** The base sequence and what stands before each of its places. */
interface Narrow {
  readonly n: number;
  readonly stride: number;
  readonly bitsLow: Int32Array;
  readonly bitsHigh: Int32Array;
  /** Parts at each place of the base; while a changed sequence is counted its places stand here, and go back after. */
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly since: Int32Array;
  readonly sinceBefore: Int32Array;
  readonly oldestBefore: Int32Array;
  readonly freeBefore: Int32Array;
  readonly keptBefore: Int32Array;
  /** Parts used before each place of the base: nothing else is worth looking back for. */
  readonly seenLowBefore: Int32Array;
  readonly seenHighBefore: Int32Array;
  /** Parts that a job could keep at the very most, and their sum before each place of the base. */
  readonly most: Int32Array;
  readonly mostBefore: Int32Array;
  /** The base itself, and the units free beside each of its jobs. */
  readonly held: Uint16Array;
  readonly beside: Int32Array;
  readonly freeBeside: Int32Array;
  /** Places, looks back: in an array, since a plain variable that is no small whole number is a new object with every sum. */
  readonly done: Float64Array;
}

/** Makes the counter; `bitsLow` and `bitsHigh`: the shared parts of each job. */
export function narrowCounter(model: OrderModel, bitsLow: Int32Array, bitsHigh: Int32Array): UnitCounter {
  const counter = newNarrow(model, bitsLow, bitsHigh);
  const { n, low, high, held, keptBefore, done } = counter;
  const total = model.partTotal;
  return {
    rebase: (sequence, from, to = n - 1) => {
      for (let place = from; place <= to; place++) held[place] = sequence[place]!;
      return total - run(counter, sequence, from, to, 0, true);
    },
    count: (sequence, from, to, limit, slack) => {
      const kept = run(counter, sequence, from, to, keptBefore[n]! - (total - limit) + slack, false);
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

function newNarrow(model: OrderModel, bitsLow: Int32Array, bitsHigh: Int32Array): Narrow {
  const n = model.jobCount;
  const stride = n + 2;
  return {
    n,
    stride,
    bitsLow,
    bitsHigh,
    low: new Int32Array(n),
    high: new Int32Array(n),
    since: new Int32Array(stride),
    sinceBefore: new Int32Array((n + 1) * stride),
    oldestBefore: new Int32Array(n + 1),
    freeBefore: new Int32Array(n + 1),
    keptBefore: new Int32Array(n + 1),
    seenLowBefore: new Int32Array(n + 1),
    seenHighBefore: new Int32Array(n + 1),
    most: bitsLow.map((word, job) => bitCountOfTwo(word, bitsHigh[job]!)),
    mostBefore: new Int32Array(n + 1),
    held: new Uint16Array(n),
    beside: new Int32Array(n),
    freeBeside: Int32Array.from(model.freeBeside),
    done: new Float64Array(2),
  };
}

/** Whether all goes on from place k as in the base: no unit free there has been so since `to` or before. */
function isBack(counter: Narrow, k: number, to: number, free: number, oldest: number): boolean {
  const { oldestBefore, since, sinceBefore, stride } = counter;
  if (free === 0) return true;
  if (oldest <= to + 1 || oldest !== oldestBefore[k]!) return false;
  for (let i = oldest, at = k * stride + oldest; i < k; i++, at++) {
    if (since[i] !== sinceBefore[at]) return false;
  }
  return true;
}

/**
 * Counts what is kept from place `from` on, up to where all goes on as in the base. One loop and no calls: it is what a search spends
 * its time in. `save` makes the sequence the base; else it gives up with -1 where more than `mayLose` would be lost.
 */
function run(
  counter: Narrow,
  sequence: Uint16Array,
  from: number,
  to: number,
  mayLose: number,
  save: boolean,
): number {
  const { n, stride, low, high, since, sinceBefore, oldestBefore, freeBefore, keptBefore, done } = counter;
  const { seenLowBefore, seenHighBefore, most, mostBefore, beside, freeBeside, bitsLow, bitsHigh } = counter;

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
    if (k > to + 1 && free === freeBefore[k]! && isBack(counter, k, to, free, oldest)) {
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
