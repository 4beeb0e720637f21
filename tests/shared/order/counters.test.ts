// What counts feeders while an order is sought, on small cases: against the plan, and against every choice of what stays between two uses.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lowestChanges, proveOrder } from '../../../shared/order/exact.ts';
import { orderJobs } from '../../../shared/order/jobs.ts';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import { unitCounter } from '../../../shared/order/keep-soonest.ts';
import { planOrder } from '../../../shared/order/plan.ts';
import { modelOrder, type OrderQuestion } from '../../../shared/order/problem.ts';

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items)
    for (const rest of permutations(items.filter((other) => other !== item))) yield [item, ...rest];
}
const given = ({ jobs }: OrderQuestion) => jobs.map((_, job) => job);
const modelled = (question: OrderQuestion) => {
  const model = modelOrder(question);
  if (!model.ok) throw new Error('every job fits');
  return model.value;
};
/** Every job bound to its place: none rides with another, and places are those of the order. */
const inPlaces = (question: OrderQuestion) =>
  modelled({ ...question, locks: question.jobs.map(({ id }, place) => ({ job: id, place })) });

/** The fewest feeders put in for jobs in an order: every set that may stay is tried, job by job. */
function fewestFor(question: OrderQuestion, order: readonly number[]): number {
  const widthOf = (part: string) => question.widths?.[part] ?? 1;
  const used = new Set(question.jobs.flatMap(({ parts }) => parts));
  let states = new Map([
    [
      (question.loaded ?? [])
        .filter((part) => used.has(part))
        .sort()
        .join(),
      0,
    ],
  ]);
  for (const job of order) {
    const needed = question.jobs[job]!.parts;
    const own = needed.reduce((sum, part) => sum + widthOf(part), 0);
    const next = new Map<string, number>();
    for (const [key, cost] of states) {
      const there = key === '' ? [] : key.split(',');
      const idle = there.filter((part) => !needed.includes(part));
      const put = needed.filter((part) => !there.includes(part)).length;
      for (let bits = 0; bits < 1 << idle.length; bits++) {
        const kept = idle.filter((_, at) => bits & (1 << at));
        if (kept.reduce((sum, part) => sum + widthOf(part), own) > question.capacity) continue;
        const now = [...needed, ...kept].sort().join();
        next.set(now, Math.min(next.get(now) ?? Number.POSITIVE_INFINITY, cost + put));
      }
    }
    states = next;
  }
  return Math.min(...states.values());
}

const questionOf = (widest: number, jobs: { min: number; max: number }): fc.Arbitrary<OrderQuestion> =>
  fc
    .record({
      widths: fc.array(fc.integer({ min: 1, max: widest }), { minLength: 8, maxLength: 8 }),
      sets: fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 7 }), { minLength: 1, maxLength: 4 }), {
        minLength: jobs.min,
        maxLength: jobs.max,
      }),
      spare: fc.integer({ min: 0, max: 2 }),
      isLoaded: fc.boolean(),
    })
    .map(({ widths, sets, spare, isLoaded }) => {
      const taken = sets.map((set) => set.reduce((sum, part) => sum + widths[part]!, 0));
      return {
        capacity: Math.max(...taken) + spare,
        widths: Object.fromEntries(widths.map((width, part) => [`p${part}`, width])),
        jobs: sets.map((set, job) => ({ id: `j${job}`, parts: set.map((part) => `p${part}`) })),
        loaded: isLoaded ? sets.at(-1)!.map((part) => `p${part}`) : [],
      };
    });

describe('unitCounter()', () => {
  /** More parts than fit one, two and three words: each job has so many of its own besides those that are shared. */
  const many = (
    shared: number,
    seed: number,
    loaded: readonly string[] = [],
    more: { readonly each: number; readonly capacity: number } = { each: 8, capacity: 12 },
  ): OrderQuestion => ({
    capacity: more.capacity,
    jobs: Array.from({ length: 9 }, (_, job) => ({
      id: `j${job}`,
      parts: [
        `own${job}`,
        ...new Set(
          Array.from(
            { length: more.each },
            (_none, at) => `p${(job * (seed + at) * 7 + at * at * 3) % shared}`,
          ),
        ),
      ],
    })),
    loaded: [...loaded],
  });
  const wide = { each: 40, capacity: 44 };
  /** Only parts that two jobs need are told apart, 32 to a word. */
  const wordsOf = ({ jobs }: OrderQuestion) => {
    const uses = new Map<string, number>();
    for (const part of jobs.flatMap(({ parts }) => parts)) uses.set(part, (uses.get(part) ?? 0) + 1);
    return Math.ceil([...uses.values()].filter((count) => count > 1).length / 32);
  };

  test.each([
    ['one word', 1, many(20, 1)],
    ['one word, loaded before', 1, many(20, 2, ['p1', 'p4', 'p9', 'own3'])],
    ['two words', 2, many(53, 3, [], { each: 24, capacity: 28 })],
    ['three words', 3, many(97, 5, [], wide)],
    ['three words, loaded before', 3, many(97, 4, ['p1', 'p4', 'p9', 'own3'], wide)],
  ])('counts as the plan does, in all and place by place: %s', (_, words, question) => {
    expect(wordsOf(question)).toBe(words);
    const model = inPlaces(question);
    const shift = model.hasLoad ? 1 : 0;
    const counter = unitCounter(model);
    const sequenceOf = (order: readonly number[]) =>
      Uint16Array.from([...(shift === 1 ? [0] : []), ...order.map((job) => job + shift)]);
    const planned = (order: readonly number[]) => {
      const plan = planOrder(question, order);
      if (!plan.ok) throw new Error('every job fits');
      return plan.value;
    };
    const ahead = given(question);
    const orders = [ahead, [...ahead].reverse(), [4, 0, 7, 2, 8, 1, 6, 3, 5], [4, 0, 2, 7, 8, 1, 6, 3, 5]];
    const inAt = new Int32Array(model.jobCount);
    let work = 0;
    for (const order of orders) {
      const plan = planned(order);
      expect(counter.rebase(sequenceOf(order), 0)).toBe(plan.changes);
      counter.writeIn(sequenceOf(order), inAt);
      expect([...inAt]).toEqual([...(shift === 1 ? [0] : []), ...plan.loads.map((load) => load.in.length)]);
      expect(counter.work()).toBeGreaterThan(work);
      work = counter.work();
      // Two neighbours change places: counted in full, and given up where more is not worth knowing.
      for (let at = 0; at < order.length - 1; at++) {
        const other = [...order];
        [other[at], other[at + 1]] = [other[at + 1]!, other[at]!];
        const changes = planned(other).changes;
        expect(counter.count(sequenceOf(other), at + shift, at + 1 + shift, 1e9, 0)).toBe(changes);
        expect(counter.count(sequenceOf(other), at + shift, at + 1 + shift, changes, 99)).toBe(changes);
        expect(counter.count(sequenceOf(other), at + shift, at + 1 + shift, changes - 1, 0)).toBeGreaterThan(
          changes - 1,
        );
      }
    }
  });

  test.each([31, 32, 33, 64, 65])('keeps %i parts that all are shared apart from one another', (parts) => {
    const names = Array.from({ length: parts }, (_, part) => `p${part}`);
    // Each part twice, the second half turned round: the last ones meet first.
    const sets = [names.slice(0, 20), names.slice(20), [...names].slice(20).reverse(), names.slice(0, 20)];
    const question = { capacity: parts - 1, jobs: sets.map((set, job) => ({ id: `j${job}`, parts: set })) };
    const plan = planOrder(question, given(question));
    const model = inPlaces(question);
    const sequence = Uint16Array.from({ length: model.jobCount }, (_, job) => job);
    expect(plan.ok && plan.value.changes).toBe(parts + 1);
    expect(unitCounter(model).rebase(sequence, 0)).toBe(parts + 1);
  });

  test('refuses feeders of different widths', () => {
    const jobs = [{ id: 'j0', parts: ['a', 'b'] }];
    expect(() => unitCounter(modelled({ capacity: 9, widths: { a: 2 }, jobs }))).toThrow(TypeError);
  });
});

describe('a fixed order, against every choice of what stays', () => {
  test('equal widths: the plan needs the fewest', () => {
    fc.assert(
      fc.property(questionOf(1, { min: 2, max: 6 }), (question) => {
        const plan = planOrder(question, given(question));
        expect(plan.ok && plan.value.changes).toBe(fewestFor(question, given(question)));
      }),
      { numRuns: 60 },
    );
  });

  test('mixed widths: count, exchanges, plan and fewest stand in this order, and no bound is above the fewest', () => {
    let off = 0;
    fc.assert(
      fc.property(questionOf(3, { min: 2, max: 6 }), (question) => {
        const model = inPlaces(question);
        if (model.isUnit) return;
        const shift = model.hasLoad ? 1 : 0;
        const sequence = Uint16Array.from({ length: model.jobCount }, (_, job) => job);
        const area = areaCounter(model);
        const inAt = new Int32Array(model.jobCount);
        const counted = area.count(sequence, inAt);
        expect(inAt.reduce((sum, each) => sum + each, 0)).toBe(counted);
        const least = area.least(counted);
        const refined = area.refine(sequence);
        expect(refined.inAt.reduce((sum, each) => sum + each, 0)).toBe(refined.changes);
        const fewest = fewestFor(question, given(question));
        const plan = planOrder(question, given(question));
        if (!plan.ok) throw new Error('every job fits');
        expect(counted).toBeGreaterThanOrEqual(refined.changes);
        expect(refined.changes).toBeGreaterThanOrEqual(plan.value.changes);
        expect(plan.value.changes).toBeGreaterThanOrEqual(fewest);
        expect(plan.value.changes - fewest).toBeLessThanOrEqual(1);
        expect(least).toBeLessThanOrEqual(fewest);
        off += plan.value.changes - fewest;
        expect(shift === 1 ? inAt[0] : 0).toBe(0);
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(off).toBeLessThanOrEqual(3);
  });
});

describe('any order, against all of them', () => {
  const fewestOfAll = (question: OrderQuestion) =>
    Math.min(...[...permutations(given(question))].map((order) => fewestFor(question, order)));

  test.each([1, 3])('a proof is right, and a bound is none above it, with widths up to %i', (widest) => {
    let proven = 0;
    let all = 0;
    fc.assert(
      fc.property(questionOf(widest, { min: 2, max: 4 }), (question) => {
        const found = orderJobs(question, { seed: 1, budget: 200_000 });
        if (!found.ok) throw new Error('every job fits');
        const fewest = fewestOfAll(question);
        expect(found.value.lowest).toBeLessThanOrEqual(fewest);
        expect(found.value.changes).toBeGreaterThanOrEqual(fewest);
        if (found.value.isProven) expect(found.value.changes).toBe(fewest);
        all++;
        proven += found.value.isProven ? 1 : 0;
      }),
      { numRuns: 30, seed: 3 },
    );
    expect(proven / all).toBeGreaterThanOrEqual(0.9);
  });

  test('the exact search finds an order below any that needs more, and none below the fewest', () => {
    fc.assert(
      fc.property(questionOf(1, { min: 2, max: 5 }), (question) => {
        const model = modelled(question);
        const fewest = fewestOfAll(question);
        const search = (below: number) => {
          const proof = proveOrder(model, below);
          for (;;) {
            const step = proof.next();
            if (step.done === true) return step.value;
          }
        };
        expect(lowestChanges(model)).toBeLessThanOrEqual(fewest);
        expect(search(fewest).sequence).toBeNull();
        const better = search(fewest + 1);
        expect(better.changes).toBe(fewest);
        expect([...(better.sequence ?? [])].sort((a, b) => a - b)).toEqual(
          Array.from({ length: model.jobCount }, (_, job) => job),
        );
      }),
      { numRuns: 20 },
    );
  });
});
