// Keep needed soonest for any number of parts that jobs share: the same arithmetic as the narrow form, over as many words as it takes.
// Indices stay inside arrays made for them; `!` spares the hot loops a test that cannot fail.

import { bitCount } from './bits.ts';
import type { OrderModel } from './problem.ts';
import { type UnitCounter, writeIn } from './unit-counter.ts';

/** The base sequence and what stands before each of its places. */
interface Wide {
  readonly n: number;
  readonly stride: number;
  readonly words: number;
  readonly total: number;
  /** The words of each job's shared parts. */
  readonly byJob: Int32Array;
  readonly freeBeside: OrderModel['freeBeside'];
  readonly since: Uint16Array;
  readonly sinceBefore: Uint16Array;
  readonly freeBefore: Int32Array;
  readonly keptBefore: Int32Array;
  /** Parts of the place in hand that were not found further back yet. */
  readonly rest: Int32Array;
  work: number;
}

/** Makes the counter; `bits`: by word, the shared parts of each job. */
export function wideCounter(model: OrderModel, bits: readonly Int32Array[]): UnitCounter {
  const n = model.jobCount;
  const words = bits.length;
  const byJob = new Int32Array(n * words);
  for (let job = 0; job < n; job++) for (let w = 0; w < words; w++) byJob[job * words + w] = bits[w]![job]!;
  const stride = n + 2;
  const counter: Wide = {
    n,
    stride,
    words,
    total: model.partTotal,
    byJob,
    freeBeside: model.freeBeside,
    since: new Uint16Array(stride),
    sinceBefore: new Uint16Array((n + 1) * stride),
    freeBefore: new Int32Array(n + 1),
    keptBefore: new Int32Array(n + 1),
    rest: new Int32Array(words),
    work: 0,
  };
  return {
    rebase: (sequence, from) => run(counter, sequence, from, n, 0, 0, true),
    count: (sequence, from, to, limit, slack) => run(counter, sequence, from, to, limit, slack, false),
    writeIn: (sequence, inAt) => writeIn(model, counter.keptBefore, sequence, inAt),
    work: () => counter.work,
  };
}

/** Moves the parts of `rest` that job also has out of it and returns how many there were. */
function takeCommon({ words, rest, byJob }: Wide, job: number): number {
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

/** Counts what is put in from place `from` on; `save` makes the sequence the base. */
function run(
  counter: Wide,
  sequence: Uint16Array,
  from: number,
  to: number,
  limit: number,
  slack: number,
  save: boolean,
): number {
  const { n, stride, words, total, byJob, since, sinceBefore, freeBefore, keptBefore, rest } = counter;
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
      const direct = takeCommon(counter, sequence[k - 1]!);
      kept += direct;
      left -= direct;
      for (let p = k - 2; p >= 0 && free > 0 && left > 0; p--) {
        let want = takeCommon(counter, sequence[p]!);
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
        counter.work += k - from + 1;
        return limit + 1;
      }
    }
    const beside = counter.freeBeside[job]!;
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
  counter.work += n - from;
  if (save) keptBefore[n] = kept;
  return total - kept;
}
