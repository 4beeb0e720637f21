// What to keep in a fixed order with wide feeders: against the rule written out once more with lists in the place of buckets.

import { describe, expect, test } from 'vitest';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import type { OrderModel } from '../../../shared/order/problem.ts';
import { ahead, type Drawn, inPlaces, questionBy } from './random.ts';

interface Pipe {
  readonly part: number;
  readonly from: number;
  readonly to: number;
  readonly width: number;
}
const areaOf = ({ from, to, width }: Pipe) => (to - from - 1) * width;
const partsAt = (model: OrderModel, job: number) => [
  ...model.parts.subarray(model.starts[job]!, model.starts[job + 1]!),
];

/** A machine over the places of an order, with what is kept on it between two uses. */
class Kept {
  readonly model: OrderModel;
  readonly sequence: readonly number[];
  /** Every stretch between two uses that do not follow right after one another, in the order of its end. */
  readonly pipes: readonly Pipe[];
  readonly kept = new Set<Pipe>();

  constructor(model: OrderModel, sequence: readonly number[]) {
    this.model = model;
    this.sequence = sequence;
    this.pipes = sequence.flatMap((job, to) =>
      partsAt(model, job).flatMap((part) => {
        const from = sequence
          .slice(0, to)
          .reduce((last, other, at) => (partsAt(model, other).includes(part) ? at : last), -1);
        return from < 0 || from === to - 1 ? [] : [{ part, from, to, width: model.widthOf[part]! }];
      }),
    );
  }

  fits(pipe: Pipe): boolean {
    for (let place = pipe.from + 1; place < pipe.to; place++) {
      const there = [...this.kept].filter(({ from, to }) => from < place && place < to);
      const taken = there.reduce((sum, { width }) => sum + width, pipe.width);
      if (taken > this.model.freeBeside[this.sequence[place]!]!) return false;
    }
    return true;
  }

  /** Adds what fits, in the order given. */
  add(pipes: readonly Pipe[]): readonly Pipe[] {
    return pipes.filter((pipe) => !this.kept.has(pipe) && this.fits(pipe) && this.kept.add(pipe));
  }

  /** The least area first, the narrower first, what ends last first; areas beyond the last bucket are all one. */
  byArea(areas = Number.POSITIVE_INFINITY): void {
    const key = (pipe: Pipe) => Math.min(areaOf(pipe), areas);
    const narrow = areas === Number.POSITIVE_INFINITY;
    this.add([...this.pipes].reverse().sort((x, y) => key(x) - key(y) || (narrow ? x.width - y.width : 0)));
  }

  /** One kept for two that were refused, the largest first, as long as one exchange helps. */
  exchange(): void {
    const sorted = [...this.pipes].sort((x, y) => areaOf(x) - areaOf(y));
    for (let helped = true; helped; ) {
      helped = false;
      for (const pipe of [...sorted].reverse()) {
        if (!this.kept.delete(pipe)) continue;
        const added = this.add(sorted.filter((other) => other !== pipe));
        if (added.length >= 2) helped = true;
        else {
          for (const other of added) this.kept.delete(other);
          this.kept.add(pipe);
        }
      }
    }
    this.add(sorted);
  }

  inAt(): readonly number[] {
    return this.sequence.map((job, place) => {
      if (this.model.hasLoad && place === 0) return 0;
      const before = place === 0 ? [] : partsAt(this.model, this.sequence[place - 1]!);
      return partsAt(this.model, job).filter(
        (part) =>
          !before.includes(part) && ![...this.kept].some((pipe) => pipe.part === part && pipe.to === place),
      ).length;
    });
  }

  /** `part * jobs + place` of every use that the part stays on after. */
  keptFrom(): readonly number[] {
    const n = this.sequence.length;
    const direct = this.sequence.flatMap((job, place) =>
      partsAt(this.model, job).flatMap((part) =>
        place + 1 < n && partsAt(this.model, this.sequence[place + 1]!).includes(part)
          ? [part * n + place]
          : [],
      ),
    );
    return [...direct, ...[...this.kept].map(({ part, from }) => part * n + from)].sort((x, y) => x - y);
  }
}

const sumOf = (numbers: Iterable<number>) => [...numbers].reduce((sum, each) => sum + each, 0);

/** Wide feeders in up to 12 jobs, loaded before or not; the last ones so wide that areas share their buckets. */
const drawn: readonly Drawn[] = [
  { jobs: 5, parts: 7, most: 4, widest: 3 },
  { jobs: 7, parts: 9, most: 5, widest: 3, spare: 3, loaded: 3 },
  { jobs: 10, parts: 12, most: 5, widest: 2, spare: 2 },
  { jobs: 12, parts: 16, most: 6, widest: 4, spare: 6, loaded: 2 },
  { jobs: 9, parts: 10, most: 5, widest: 30, spare: 25 },
  { jobs: 9, parts: 10, most: 5, widest: 3000, spare: 4000 },
];
const cases = drawn.flatMap((how) => [1, 2, 3, 4, 5, 6].map((seed) => ({ how, seed })));
const modelBy = ({ how, seed }: { how: Drawn; seed: number }) => inPlaces(questionBy(seed, how));
/** The order of the list, and another that begins with the load if there is one. */
const ordersOf = (model: OrderModel): readonly Uint16Array[] => {
  const given = ahead(model);
  const first = model.hasLoad ? 1 : 0;
  return [given, Uint16Array.from([...given.slice(0, first), ...given.slice(first).reverse()])];
};

describe('areaCounter()', () => {
  test('keeps by area what the rule keeps, place by place, and refines it by the exchanges of the rule', () => {
    let gained = 0;
    for (const each of cases) {
      const model = modelBy(each);
      const area = areaCounter(model);
      for (const sequence of ordersOf(model)) {
        const rule = new Kept(model, [...sequence]);
        const widest = Math.max(...model.widthOf);
        const isFine = model.jobCount * widest * (widest + 1) < 8192;
        rule.byArea(isFine ? undefined : 8191);
        const inAt = new Int32Array(model.jobCount).fill(99);
        expect(area.count(sequence, inAt)).toBe(sumOf(rule.inAt()));
        expect([...inAt]).toEqual(rule.inAt());
        const counted = sumOf(inAt);
        rule.exchange();
        const refined = area.refine(sequence);
        expect([...refined.inAt]).toEqual(rule.inAt());
        expect(refined.changes).toBe(sumOf(rule.inAt()));
        expect([...refined.keptFrom].sort((x, y) => x - y)).toEqual(rule.keptFrom());
        gained += counted - refined.changes;
      }
    }
    expect(gained).toBeGreaterThan(5);
  });

  test('says how much it has looked at: each place and an eighth of the parts, and the pipes of every price', () => {
    const model = modelBy(cases[7]!);
    const area = areaCounter(model);
    const sequence = ahead(model);
    expect(area.work()).toBe(0);
    area.count(sequence, new Int32Array(model.jobCount));
    const once = model.jobCount + Math.floor(model.parts.length / 8);
    expect(area.work()).toBe(once);
    area.least(0);
    const pipes = new Kept(model, [...sequence]).pipes.length;
    expect(area.work()).toBe(once + Math.floor((60 * (model.jobCount + pipes)) / 32));
  });
});
