import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Chance, chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { finishOrder, orderJobs, startOrder } from '../../../shared/order/jobs.ts';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import { unitCounter } from '../../../shared/order/keep-soonest.ts';
import { planOrder } from '../../../shared/order/plan.ts';
import { modelOrder, type OrderQuestion } from '../../../shared/order/problem.ts';

const QUICK = { seed: 1, budget: 1_500_000 };

function answer(question: OrderQuestion, search = QUICK) {
  const found = orderJobs(question, search);
  if (!found.ok) throw new Error(JSON.stringify(found.error));
  return found.value;
}

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items)
    for (const rest of permutations(items.filter((other) => other !== item))) yield [item, ...rest];
}

/** Least by trying every order. */
function leastByTrying(question: OrderQuestion): number {
  let least = Number.POSITIVE_INFINITY;
  for (const order of permutations(question.jobs.map((_, job) => job))) {
    const plan = planOrder(question, order);
    if (plan.ok) least = Math.min(least, plan.value.changes);
  }
  return least;
}

function randomQuestion(
  chance: Chance,
  jobCount: number,
  partCount: number,
  capacity: number,
): OrderQuestion {
  const jobs = Array.from({ length: jobCount }, (_, job) => {
    const size = 2 + chanceBelow(chance, capacity - 1);
    return {
      id: `j${job}`,
      parts: [...new Set(Array.from({ length: size }, () => `p${chanceBelow(chance, partCount)}`))],
    };
  });
  const loaded = chance() < 0.5 ? [] : Array.from({ length: capacity }, (_, at) => `p${at * 2}`);
  return { capacity, jobs, loaded };
}

/** Five jobs, six tools, magazine of three; every order was enumerated: 4 to 8 switches, 6 in the given order. */
const five: OrderQuestion = {
  capacity: 3,
  jobs: ['124', '13', '345', '235', '146'].map((set, at) => ({ id: String(at + 1), parts: [...set] })),
};

describe('orderJobs()', () => {
  test('meets the enumerated five jobs: best 4 + 3, given order 6 + 3, worst 8 + 3', () => {
    expect(answer(five)).toMatchObject({ changes: 7, isProven: true, gap: 0 });
    const all = [...permutations([0, 1, 2, 3, 4])].map((order) => {
      const plan = planOrder(five, order);
      return plan.ok ? plan.value.changes : Number.NaN;
    });
    expect([Math.min(...all), all[0], Math.max(...all)]).toEqual([7, 9, 11]);
  });

  // Yanasse 2009, TESTE1: 3 switches and the first load of three.
  test('meets 3 switches on the instance of Yanasse 2009', () => {
    const sets = ['14', '135', '24', '34', '15', '35', '45', '124'];
    expect(answer({ capacity: 3, jobs: sets.map((set) => ({ id: set, parts: [...set] })) })).toMatchObject({
      changes: 6,
      isProven: true,
    });
  });

  test('proves the least on 60 random small cases, loaded or not, as trying every order finds it', () => {
    const chance = seededChance(5);
    for (let round = 0; round < 60; round++) {
      const question = randomQuestion(chance, 6, 9, 4 + (round % 2));
      const found = answer(question);
      expect(found.isProven).toBe(true);
      expect(found.changes, JSON.stringify(question)).toBe(leastByTrying(question));
    }
  });

  test('proves the published optima of the 10-job sets and reaches those of 15 jobs', () => {
    const url = new URL('../../fixtures/changeover/crama.json', import.meta.url);
    const instances: {
      name: string;
      jobs: number;
      capacity: number;
      jobTools: number[][];
      bestKnown: number;
    }[] = JSON.parse(readFileSync(url, 'utf8')).instances.filter((_: unknown, at: number) => at % 8 === 1);
    for (const one of instances.filter(({ jobs }) => jobs <= 15)) {
      const jobs = one.jobTools.map((parts, job) => ({ id: `j${job}`, parts: parts.map(String) }));
      const found = answer({ capacity: one.capacity, jobs }, { seed: 1, budget: 8_000_000 });
      const used = new Set(one.jobTools.flat()).size;
      expect(found.changes - Math.min(one.capacity, used), one.name).toBe(one.bestKnown);
      if (one.jobs === 10) expect(found.isProven, one.name).toBe(true);
    }
  });

  test('keeps due times first, then changes, and says which is late and by how much', () => {
    const jobs = [
      { id: 'a', parts: ['1', '2'], runMinutes: 60 },
      { id: 'b', parts: ['3', '4'], runMinutes: 60, dueMinutes: 70 },
      { id: 'c', parts: ['1', '2', '3'], runMinutes: 60, dueMinutes: 100 },
    ];
    const question: OrderQuestion = { capacity: 3, jobs, handling: { putIn: 1, takeOut: 1, perChange: 0 } };
    const found = answer(question);
    expect(found.plan.loads.map((load) => load.job)).toEqual(['b', 'c', 'a']);
    expect(found.late).toEqual([{ job: 'c', minutes: 25 }]);
    expect(found.plan.lateMinutes).toBe(25);
  });

  test('leaves locked jobs at their places', () => {
    const chance = seededChance(8);
    for (let round = 0; round < 10; round++) {
      const question = randomQuestion(chance, 9, 14, 5);
      const locks = [
        { job: 'j3', place: 0 },
        { job: 'j1', place: 5 },
      ];
      const order = answer({ ...question, locks }, { seed: round, budget: 200_000 }).plan.loads.map(
        (load) => load.job,
      );
      expect([order[0], order[5]]).toEqual(['j3', 'j1']);
      expect(new Set(order).size).toBe(9);
    }
  });

  test('gives the same order for the same seed and budget', () => {
    const question = randomQuestion(seededChance(9), 30, 40, 9);
    expect(answer(question).order).toEqual(answer(question).order);
  });

  test('stops when asked, with the best so far', () => {
    const question = randomQuestion(seededChance(9), 30, 40, 9);
    let asked = 0;
    const found = orderJobs(question, { seed: 1, budget: 1e12 }, () => ++asked > 3);
    expect(found.ok && found.value.share).toBeLessThan(0.01);
    expect(found.ok && [...found.value.order].sort((x, y) => x - y)).toEqual(
      question.jobs.map((_, job) => job),
    );
  });

  test.each<readonly [Partial<OrderQuestion>, string, string]>([
    [{ widths: { '4': 3 } }, 'job-too-wide', 'a job wider than the machine'],
    [{ loaded: ['1', '2', '3', '9'] }, 'loaded-too-wide', 'more loaded than fits'],
    [{ jobs: [...five.jobs, ...five.jobs] }, 'job-twice', 'a job twice'],
    [{ locks: [{ job: 'z', place: 0 }] }, 'lock-unknown-job', 'a lock on nobody'],
    [{ locks: [{ job: '1', place: 5 }] }, 'lock-place', 'a place past the end'],
    [
      {
        locks: [
          { job: '1', place: 0 },
          { job: '2', place: 0 },
        ],
      },
      'lock-twice',
      'two jobs at one place',
    ],
  ])('refuses %j with %s (%s)', (change, code, _why) => {
    const found = orderJobs({ ...five, ...change }, QUICK);
    expect(found.ok ? null : found.error[0]?.code).toBe(code);
  });
});

describe('startOrder()', () => {
  test('has an order at once and never a worse one later', () => {
    const question = randomQuestion(seededChance(21), 25, 40, 8);
    const started = startOrder(question, QUICK);
    if (!started.ok) throw new Error('must fit');
    let last = Number.POSITIVE_INFINITY;
    let steps = 0;
    for (const state of started.value) {
      expect(state.changes).toBeLessThanOrEqual(last);
      last = state.changes;
      steps++;
      if (steps % 20 === 1) expect(finishOrder(question, state).changes).toBe(state.changes);
    }
    expect(steps).toBeGreaterThan(10);
  });
});

describe('unitCounter()', () => {
  test('counts as the plan does, after any change, narrow and wide', () => {
    const chance = seededChance(31);
    for (const partCount of [20, 60, 150]) {
      const question = { ...randomQuestion(chance, 20, partCount, 12), loaded: [] };
      const locks = question.jobs.map((job, place) => ({ job: job.id, place }));
      const model = modelOrder({ ...question, locks });
      if (!model.ok) throw new Error('must fit');
      const counter = unitCounter(model.value);
      const area = areaCounter(model.value);
      const base = Uint16Array.from(question.jobs, (_, job) => job);
      counter.rebase(base, 0);
      for (let round = 0; round < 40; round++) {
        const from = chanceBelow(chance, 18);
        const to = from + 1 + chanceBelow(chance, 19 - from);
        const turned = base.slice();
        turned.subarray(from, to + 1).reverse();
        const plan = planOrder(question, [...turned]);
        const expected = plan.ok ? plan.value.changes : -1;
        expect(counter.count(turned, from, to, 1e9, 0)).toBe(expected);
        expect(area.refine(turned).changes).toBeGreaterThanOrEqual(expected);
      }
    }
  });

  test('counts as the plan does after taking changed stretches as the base one upon another', () => {
    const chance = seededChance(37);
    for (const [partCount, capacity] of [
      [20, 6],
      [60, 12],
      [60, 25],
      [150, 12],
    ] as const) {
      const question = { ...randomQuestion(chance, 20, partCount, capacity), loaded: [] };
      const locks = question.jobs.map((job, place) => ({ job: job.id, place }));
      const model = modelOrder({ ...question, locks });
      if (!model.ok) throw new Error('must fit');
      const counter = unitCounter(model.value);
      let base = Uint16Array.from(question.jobs, (_, job) => job);
      counter.rebase(base, 0);
      for (let round = 0; round < 150; round++) {
        const from = chanceBelow(chance, 18);
        const to = Math.min(19, from + 1 + chanceBelow(chance, 6));
        const turned = base.slice();
        turned.subarray(from, to + 1).reverse();
        const plan = planOrder(question, [...turned]);
        const expected = plan.ok ? plan.value.changes : -1;
        expect(counter.count(turned, from, to, 1e9, 0), `round ${round}`).toBe(expected);
        if (round % 3 === 0) continue;
        expect(counter.rebase(turned, from, to), `round ${round}`).toBe(expected);
        base = turned;
      }
    }
  });
});
