// Small questions in every way there is: bits counted one by one, every order of five jobs played, every step undone by looking.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededChance } from '../../../shared/kit/chance.ts';
import { bitCount, bitCountOfTwo } from '../../../shared/order/bits.ts';
import { orderJobs } from '../../../shared/order/jobs.ts';
import {
  applyBound,
  drawStep,
  movablePlaces,
  neighbourLists,
  searchRow,
  sharedTable,
} from '../../../shared/order/moves.ts';
import { explainChange, type OrderPlan, planOrder } from '../../../shared/order/plan.ts';
import { modelOrder, type OrderQuestion, toJobOrder } from '../../../shared/order/problem.ts';
import { greedySequence, mixSequence } from '../../../shared/order/search.ts';

const QUICK = { seed: 1, budget: 300_000 };

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items)
    for (const rest of permutations(items.filter((other) => other !== item))) yield [item, ...rest];
}
const played = (question: OrderQuestion, order: readonly number[]): OrderPlan => {
  const plan = planOrder(question, order);
  if (!plan.ok) throw new Error('every job fits');
  return plan.value;
};
const modelled = (question: OrderQuestion) => {
  const model = modelOrder(question);
  if (!model.ok) throw new Error('every job fits');
  return model.value;
};

test('bits are as many as the ones of the number written in twos', () => {
  const word = fc.integer({ min: 0, max: 0xffffffff });
  const ones = (number: number) => number.toString(2).replaceAll('0', '').length;
  fc.assert(
    fc.property(word, word, (one, other) => {
      expect(bitCount(one | 0)).toBe(ones(one));
      expect(bitCountOfTwo(one | 0, other | 0)).toBe(ones(one) + ones(other));
    }),
  );
  expect(bitCountOfTwo(-1, -1)).toBe(64);
});

/** Up to five jobs out of eight parts of mixed widths, on a machine that just holds the widest job or a little more. */
const someQuestion = fc
  .record({
    widths: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 8, maxLength: 8 }),
    sets: fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 7 }), { minLength: 1, maxLength: 5 }), {
      minLength: 2,
      maxLength: 5,
    }),
    spare: fc.integer({ min: 0, max: 3 }),
    isLoaded: fc.boolean(),
  })
  .map(({ widths, sets, spare, isLoaded }): OrderQuestion => {
    const widthOf = (set: readonly number[]) => set.reduce((sum, part) => sum + widths[part]!, 0);
    return {
      capacity: Math.max(...sets.map(widthOf)) + spare,
      widths: Object.fromEntries(widths.map((width, part) => [`p${part}`, width])),
      jobs: sets.map((set, job) => ({ id: `j${job}`, parts: set.map((part) => `p${part}`) })),
      loaded: isLoaded ? sets[0]!.map((part) => `p${part}`) : [],
    };
  });

describe('orderJobs() with feeders of mixed widths', () => {
  test('is no worse than any order that is played, says no bound above what some order needs, and counts as the plan does', () => {
    fc.assert(
      fc.property(someQuestion, (question) => {
        const found = orderJobs(question, QUICK);
        if (!found.ok) throw new Error('every job fits');
        const { order, changes, lowest, isProven } = found.value;
        expect([...order].sort((a, b) => a - b)).toEqual(question.jobs.map((_, job) => job));
        expect(played(question, order).changes).toBe(changes);
        const least = Math.min(
          ...[...permutations(question.jobs.map((_, job) => job))].map(
            (each) => played(question, each).changes,
          ),
        );
        expect(changes).toBeLessThanOrEqual(least);
        expect(lowest).toBeLessThanOrEqual(changes);
        expect(isProven).toBe(lowest === changes);
      }),
      { numRuns: 25 },
    );
  });
});

describe('planOrder()', () => {
  test('never holds more than there is room for, has each job’s feeders in, and says what went in, out and why', () => {
    const withTimes = someQuestion.map(
      (question): OrderQuestion => ({
        ...question,
        handling: { putIn: 2, takeOut: 1, perChange: 5 },
        jobs: question.jobs.map((job, at) => ({ ...job, runMinutes: 10 * at, dueMinutes: 30 })),
      }),
    );
    fc.assert(
      fc.property(withTimes, (question) => {
        const plan = played(
          question,
          question.jobs.map((_, job) => job),
        );
        const widthOf = (parts: Iterable<string>) =>
          [...parts].reduce((sum, part) => sum + (question.widths?.[part] ?? 1), 0);
        const on = new Set(question.loaded);
        const outBefore = new Map<string, string>();
        let clock = 0;
        for (const [place, load] of plan.loads.entries()) {
          const job = question.jobs[place]!;
          for (const part of load.out) {
            expect(on.delete(part)).toBe(true);
            outBefore.set(part, job.id);
          }
          const reasons = load.in.map((part) => {
            const before = outBefore.get(part);
            return before === undefined ? { part, why: 'first' } : { part, why: 'back', outBefore: before };
          });
          expect(explainChange(plan, place)).toEqual(reasons);
          for (const part of load.in) {
            expect(on.has(part)).toBe(false);
            on.add(part);
          }
          expect(job.parts.every((part) => on.has(part))).toBe(true);
          expect(load.taken).toBe(widthOf(on));
          expect(load.taken).toBeLessThanOrEqual(question.capacity);
          const handled = load.in.length + load.out.length;
          const minutes = 2 * load.in.length + load.out.length + (handled > 0 ? 5 : 0);
          clock += minutes + 10 * place;
          expect(load).toMatchObject({ minutes, endMinutes: clock, lateMinutes: Math.max(0, clock - 30) });
        }
        const sum = (of: (load: OrderPlan['loads'][number]) => number) =>
          plan.loads.reduce((all, load) => all + of(load), 0);
        expect(plan.changes).toBe(sum((load) => load.in.length));
        expect(plan.minutes).toBe(sum((load) => load.minutes));
        expect(plan.lateMinutes).toBe(sum((load) => load.lateMinutes));
        expect(explainChange(plan, plan.loads.length)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the question in numbers', () => {
  const six: OrderQuestion = {
    capacity: 4,
    jobs: ['abc', 'ab', 'cde', 'd', 'fgh', 'af'].map((set, at) => ({ id: `j${at}`, parts: [...set] })),
  };

  test('lets a job whose parts are all in another’s ride behind it', () => {
    const model = modelled(six);
    // j1 (ab) rides with j0 (abc), j3 (d) with j2 (cde).
    expect(model.jobCount).toBe(4);
    expect([...model.jobAt]).toEqual([0, 2, 4, 5]);
    expect(toJobOrder(model, [1, 0, 3, 2])).toEqual([2, 3, 0, 1, 5, 4]);
    expect(modelled({ ...six, locks: [{ job: 'j4', place: 0 }] }).jobCount).toBe(6);
    const due = six.jobs.map((job) => ({ ...job, dueMinutes: 60 }));
    expect(modelled({ ...six, jobs: due }).jobCount).toBe(6);
  });

  test('counts in feeders where all take the same room, and in positions else', () => {
    const wide = Object.fromEntries([...'abcdefgh'].map((part) => [part, 2]));
    expect(modelled({ ...six, capacity: 9, widths: wide })).toMatchObject({ isUnit: true, room: 4 });
    const mixed = modelled({ ...six, capacity: 9, widths: { a: 2 } });
    expect(mixed).toMatchObject({ isUnit: false, room: 9, firstTimes: 8, partTotal: 11 });
    expect([...mixed.freeBeside]).toEqual([5, 6, 6, 6]);
  });

  test('has what is loaded as a job before all, and counts only what some job needs of it', () => {
    const model = modelled({ ...six, loaded: ['a', 'b', 'z'] });
    expect(model).toMatchObject({ hasLoad: true, jobCount: 5, firstTimes: 6 });
    expect([...model.jobAt]).toEqual([-1, 0, 2, 4, 5]);
    expect([...model.boundTo]).toEqual([0, -1, -1, -1, -1]);
    expect(modelled({ ...six, loaded: ['z'] }).hasLoad).toBe(false);
  });
});

describe('steps with jobs bound between the others', () => {
  const question: OrderQuestion = {
    capacity: 6,
    jobs: Array.from({ length: 9 }, (_, job) => ({
      id: `j${job}`,
      parts: [`own${job}`, `p${job % 3}`, `p${(job * 5) % 4}`],
    })),
    locks: [
      { job: 'j7', place: 2 },
      { job: 'j1', place: 5 },
    ],
  };
  const model = modelled(question);

  test('a first order and a mixed one have each job once, and bound jobs at their places', () => {
    const greedy = greedySequence(model);
    for (const sequence of [greedy, mixSequence(model, greedy, seededChance(3))]) {
      expect([...sequence].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
      expect([sequence[2], sequence[5]]).toEqual([7, 1]);
    }
    expect(movablePlaces(model)).toEqual([0, 1, 3, 4, 6, 7, 8]);
  });

  test('move a block or turn a stretch of the others, and touch no bound job', () => {
    const places = movablePlaces(model);
    const current = greedySequence(model);
    const row = searchRow(model, current);
    const chance = seededChance(5);
    expect([row.m, row.isStraight]).toEqual([7, false]);
    const seen = new Set<string>();
    for (let round = 0; round < 400; round++) {
      const step = drawStep(chance, row);
      if (step === null) continue;
      const trial = current.slice();
      applyBound(step, places, { current, trial });
      const before = places.map((place) => current[place]!);
      const after = places.map((place) => trial[place]!);
      seen.add(`${step.kind}${step.kind === 'block' && step.isTurned ? ' turned' : ''}`);
      expect([trial[2], trial[5]]).toEqual([7, 1]);
      const block = before.slice(step.at, step.at + step.length);
      const rest = before.filter((_, at) => at < step.at || at >= step.at + step.length);
      const moved = step.isTurned ? block.reverse() : block;
      const expected =
        step.kind === 'turn'
          ? before.map((job, at) =>
              at < step.from || at > step.to ? job : before[step.from + step.to - at]!,
            )
          : [...rest.slice(0, step.target), ...moved, ...rest.slice(step.target)];
      expect(after).toEqual(expected);
      expect(after).not.toEqual(before);
    }
    expect([...seen].sort()).toEqual(['block', 'block turned', 'turn']);
  });

  test('go by how many parts two jobs share; a job’s list begins with those that share most and leaves bound ones out', () => {
    const table = sharedTable(model);
    const sets = question.jobs.map(({ parts }) => new Set(parts));
    const common = (x: number, y: number) => [...sets[x]!].filter((part) => sets[y]!.has(part)).length;
    for (let x = 0; x < 9; x++) {
      for (let y = 0; y < 9; y++) expect(table[x * 9 + y]).toBe(x === y ? 0 : common(x, y));
      const free = [0, 2, 3, 4, 5, 6, 8].filter((job) => job !== x);
      const ranked = free.sort((a, b) => common(x, b) - common(x, a) || a - b);
      expect([...neighbourLists(model, table, 4)[x]!]).toEqual(ranked.slice(0, 4));
    }
  });
});
