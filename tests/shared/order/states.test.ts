// A search from outside: what it says after every few milliseconds of work, how it shares its budget out, and when it is done.

import { describe, expect, test } from 'vitest';
import { lowestChanges } from '../../../shared/order/exact.ts';
import {
  finishOrder,
  type OrderState,
  orderJobs,
  startOrder,
  workOfSeconds,
} from '../../../shared/order/jobs.ts';
import { planOrder } from '../../../shared/order/plan.ts';
import type { OrderQuestion } from '../../../shared/order/problem.ts';
import { modelled, questionBy, runOut } from './random.ts';

/** Share in thousandths, changes, the bound, `!` where proven: states that say the same after one another once. */
function told(states: readonly OrderState[]): string {
  const lines = states.map(
    ({ share, changes, lowest, isProven }) =>
      `${Math.round(share * 1000)} ${changes}/${lowest}${isProven ? '!' : ''}`,
  );
  return lines.join(', ');
}
function searched(question: OrderQuestion, budget: number, seed = 1) {
  const started = startOrder(question, { seed, budget });
  if (!started.ok) throw new Error(JSON.stringify(started.error));
  const { steps, end } = runOut(started.value);
  return { steps, end };
}

const easy = questionBy(2, { jobs: 6, parts: 12, most: 5 });
const hard = questionBy(7, { jobs: 13, parts: 26, most: 8 });
const proof = questionBy(5, { jobs: 8, parts: 16, most: 6, loaded: 3 });
const many = questionBy(1, { jobs: 20, parts: 40, most: 8, spare: 2 });
const loaded = questionBy(3, { jobs: 17, parts: 40, most: 8, spare: 2, loaded: 3 });
const wide = questionBy(9, { jobs: 6, parts: 12, most: 5, widest: 3 });
const manyWide = questionBy(4, { jobs: 14, parts: 24, most: 6, spare: 3, widest: 3 });
const timed: OrderQuestion = {
  ...easy,
  handling: { putIn: 2, takeOut: 1, perChange: 3 },
  jobs: easy.jobs.map((job, at) => ({ ...job, runMinutes: 20, dueMinutes: 40 + 17 * ((at * 5) % 6) })),
};
const inTime: OrderQuestion = {
  ...timed,
  jobs: timed.jobs.map((job) => ({ ...job, dueMinutes: 500 })),
};

describe('startOrder()', () => {
  test.each<[what: string, question: OrderQuestion, budget: number, states: string]>([
    ['few jobs', easy, 100_000, '0 10/10!, 1000 10/10!'],
    [
      'a proof',
      proof,
      600_000,
      '0 15/12, 24 15/12, 48 15/12, 72 15/12, 95 15/12, 150 15/12, 200 15/12, 250 15/12, 300 15/12, 350 15/12, 400 15/12, 450 15/12, 1000 15/15!',
    ],
    [
      'a proof that its half of the work does not reach',
      hard,
      150_000,
      '0 35/24, 96 33/24, 300 33/24, 500 33/24, 695 33/24, 788 33/24, 895 33/24, 991 33/24, 1000 33/24',
    ],
    [
      'more jobs than are proven',
      many,
      150_000,
      '0 60/38, 96 52/38, 190 52/38, 286 51/38, 382 51/38, 476 51/38, 594 51/38, 689 51/38, 783 51/38, 879 51/38, 973 51/38, 1000 51/38',
    ],
    [
      'a load before',
      loaded,
      150_000,
      '0 47/34, 95 42/34, 189 42/34, 283 41/34, 380 41/34, 474 41/34, 595 41/34, 689 41/34, 785 41/34, 881 41/34, 975 41/34, 1000 41/34',
    ],
    [
      'few jobs with wide feeders',
      wide,
      100_000,
      '0 11/10, 18 11/10, 67 11/10, 101 11/10, 135 11/10, 1000 11/11!',
    ],
    [
      'few jobs with wide feeders and too little work for each order',
      wide,
      5_000,
      '0 11/10, 360 11/10, 1000 11/10',
    ],
    [
      'more jobs with wide feeders',
      manyWide,
      100_000,
      '0 26/23, 140 25/23, 391 25/23, 640 24/23, 900 24/23, 1000 24/23',
    ],
    ['due times', timed, 60_000, '0 11/10, 243 11/10, 486 11/10, 737 11/10, 991 11/10, 1000 11/10'],
    ['due times that all can be kept', inTime, 60_000, '0 10/10!, 1000 10/10!'],
    ['no work at all', many, 0, '1000 60/38, 1000 60/38'],
  ])('says how far it is and what is sure: %s', (_, question, budget, states) => {
    const { steps, end } = searched(question, budget);
    expect(told([...steps, end])).toBe(states);
    for (const state of [...steps, end]) {
      const plan = planOrder(question, state.order);
      // With wide feeders exchanges come once the order stands.
      if (modelled(question).isUnit) expect(plan.ok && plan.value.changes).toBe(state.changes);
      else expect(plan.ok && plan.value.changes).toBeLessThanOrEqual(state.changes);
      expect(state.lowest).toBeGreaterThanOrEqual(lowestChanges(modelled(question)));
    }
  });

  test('takes the same way for a seed, and another for another', () => {
    const orders = [1, 2].map((seed) => searched(many, 150_000, seed).end.order.join(' '));
    expect(orders).toEqual([
      '19 17 16 3 12 15 7 2 5 13 8 4 18 9 11 6 1 0 14 10',
      '17 16 19 3 12 15 7 13 5 2 8 18 4 9 11 6 0 14 10 1',
    ]);
  });

  test('is done at once where there is nothing to choose', () => {
    const one: OrderQuestion = { capacity: 3, jobs: [{ id: 'j0', parts: ['a', 'b'] }] };
    const { steps, end } = searched(one, 1000);
    expect([told(steps), told([end])]).toEqual(['0 2/2!', '1000 2/2!']);
    expect(told([searched({ capacity: 3, jobs: [] }, 1000).end])).toBe('1000 0/0!');
  });
});

describe('finishOrder() and orderJobs()', () => {
  const question: OrderQuestion = {
    capacity: 2,
    jobs: ['ab', 'cd', 'ac'].map((set) => ({ id: set, parts: [...set] })),
  };
  const state = { order: [0, 1, 2], changes: 6, share: 1, isProven: false, lowest: 5 };

  test('count anew and say how far the bound is, as a share of it', () => {
    expect(finishOrder(question, state)).toMatchObject({
      changes: 5,
      lowest: 5,
      gap: 0,
      isProven: true,
      late: [],
    });
    const far = finishOrder(question, { ...state, lowest: 4 });
    expect(far).toMatchObject({ changes: 5, lowest: 4, gap: 0.25, isProven: false });
    expect(finishOrder(question, { ...state, lowest: 0 })).toMatchObject({
      gap: 1,
      lowest: 0,
      isProven: false,
    });
    // A bound above the plan is none.
    expect(finishOrder(question, { ...state, lowest: 9 })).toMatchObject({
      lowest: 5,
      gap: 0,
      isProven: true,
    });
  });

  test('say that nothing is better than nothing put in', () => {
    const found = orderJobs(
      { ...question, capacity: 4, loaded: ['a', 'b', 'c', 'd'] },
      { seed: 1, budget: 1000 },
    );
    expect(found.ok && found.value).toMatchObject({ changes: 0, lowest: 0, gap: 0, isProven: true });
  });

  test('call nothing proven that is late, unless it was proven as it is', () => {
    const late: OrderQuestion = {
      ...question,
      jobs: question.jobs.map((job) => ({ ...job, runMinutes: 10, dueMinutes: 25 })),
    };
    const found = finishOrder(late, state);
    expect(found).toMatchObject({ changes: 5, lowest: 5, gap: 0, isProven: false });
    expect(found.late).toEqual([{ job: 'ac', minutes: 5 }]);
    expect(finishOrder(late, { ...state, isProven: true }).isProven).toBe(true);
  });

  test('refuse an order whose jobs do not fit, and tell why', () => {
    const tight = { ...question, capacity: 1 };
    expect(() => finishOrder(tight, state)).toThrow('must fit');
    const failed = orderJobs(tight, { seed: 1, budget: 10 });
    expect(
      failed.ok ? [] : failed.error.map(({ code, job, over, parts }) => [code, job, over, parts]),
    ).toEqual([
      ['job-too-wide', 'ab', 1, ['a', 'b']],
      ['job-too-wide', 'cd', 1, ['c', 'd']],
      ['job-too-wide', 'ac', 1, ['a', 'c']],
    ]);
  });

  test('stop as soon as they are told to, asked after every state', () => {
    const seen: number[] = [];
    const found = orderJobs(many, { seed: 1, budget: 300_000 }, (state_) => seen.push(state_.share) === 3);
    expect(found.ok && found.value.share).toBe(seen[2]);
    expect(seen).toHaveLength(3);
  });
});

test('a second of work is 13 million places, and the least is one', () => {
  expect([1, 0.25, 0].map(workOfSeconds)).toEqual([13_000_000, 3_250_000, 1]);
});
