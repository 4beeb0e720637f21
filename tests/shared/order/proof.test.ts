// How far the exact searches look before they are sure: their bounds against plain sums, and the nodes and orders that they go through.

import { describe, expect, test } from 'vitest';
import { canTryEach, tryEachOrder } from '../../../shared/order/each.ts';
import { canProve, lowestChanges, proveOrder, stepCosts } from '../../../shared/order/exact.ts';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import type { OrderModel, OrderQuestion } from '../../../shared/order/problem.ts';
import { ahead, type Drawn, inPlaces, modelled, permutations, questionBy, runOut } from './random.ts';

const partsAt = (model: OrderModel, job: number) => [
  ...model.parts.subarray(model.starts[job]!, model.starts[job + 1]!),
];
/** Like `question`, with so many jobs more that have a part of their own each. */
const withMore = (question: OrderQuestion, more: number): OrderQuestion => ({
  ...question,
  jobs: [
    ...question.jobs,
    ...Array.from({ length: more }, (_, at) => ({ id: `more${at}`, parts: [`own${at}`] })),
  ],
});
const small = questionBy(2, { jobs: 6, parts: 12, most: 5 });
const wide = questionBy(2, { jobs: 6, parts: 12, most: 5, widest: 3 });
const loaded: OrderQuestion = { ...small, loaded: ['p1'] };
const loadedWide: OrderQuestion = { ...wide, loaded: ['p1'] };
const due = (question: OrderQuestion): OrderQuestion => ({
  ...question,
  jobs: question.jobs.map((job) => ({ ...job, dueMinutes: 100 })),
});
const locked = (question: OrderQuestion): OrderQuestion => ({
  ...question,
  locks: [{ job: 'j1', place: 0 }],
});

describe('canProve() and canTryEach()', () => {
  test.each<[what: string, question: OrderQuestion, proves: boolean, tries: boolean]>([
    ['equal widths', small, true, false],
    ['equal widths, loaded', loaded, true, false],
    ['equal widths with due times', due(small), false, false],
    ['equal widths with a bound job', locked(small), false, false],
    ['equal widths, loaded, with a bound job', locked(loaded), false, false],
    ['16 jobs', withMore(small, 10), true, false],
    ['17 jobs', withMore(small, 11), false, false],
    ['16 jobs, the load one of them', withMore(loaded, 9), true, false],
    ['16 jobs and the load', withMore(loaded, 10), false, false],
    ['mixed widths', wide, false, true],
    ['mixed widths, loaded', loadedWide, false, true],
    ['mixed widths with due times', due(wide), false, false],
    ['mixed widths with a bound job', locked(wide), false, false],
    ['mixed widths, loaded, with a bound job', locked(loadedWide), false, false],
    ['8 jobs of mixed widths', withMore(wide, 2), false, true],
    ['9 jobs of mixed widths', withMore(wide, 3), false, false],
    ['8 jobs of mixed widths and the load', withMore(loadedWide, 2), false, true],
    ['9 jobs of mixed widths and the load', withMore(loadedWide, 3), false, false],
  ])('%s', (_, question, proves, tries) => {
    const model = modelled(question);
    expect([canProve(model), canTryEach(model)]).toEqual([proves, tries]);
  });
});

/** Equal widths, with more or less room and something loaded or not. */
const drawn: readonly Drawn[] = [
  { jobs: 5, parts: 9, most: 4, spare: 0 },
  { jobs: 6, parts: 9, most: 4, spare: 0, loaded: 2 },
  { jobs: 8, parts: 11, most: 5, spare: 0 },
  { jobs: 8, parts: 16, most: 6, loaded: 3 },
  { jobs: 10, parts: 12, most: 4, spare: 0 },
  { jobs: 11, parts: 7, most: 3, spare: 0, loaded: 3 },
];
const models = drawn.flatMap((how) => [1, 2, 3, 4].map((seed) => modelled(questionBy(seed, how))));

/** Least weight of a tree that joins all jobs: the lightest ways first, as far as they join what is apart. */
function lightestTree(model: OrderModel, weight: (x: number, y: number) => number): number {
  const jobs = [...ahead(model)];
  const group = new Map(jobs.map((job) => [job, job]));
  const ways = jobs.flatMap((x) => jobs.filter((y) => y > x).map((y) => ({ x, y, weight: weight(x, y) })));
  let sum = 0;
  for (const way of ways.sort((a, b) => a.weight - b.weight)) {
    const [one, other] = [group.get(way.x)!, group.get(way.y)!];
    if (one === other) continue;
    sum += way.weight;
    for (const job of jobs) if (group.get(job) === other) group.set(job, one);
  }
  return sum;
}

describe('stepCosts() and lowestChanges()', () => {
  test('are what two jobs need together beyond the machine, and the lightest way to join all jobs by that', () => {
    let byTree = 0;
    for (const model of models) {
      const n = model.jobCount;
      const beyond = (x: number, y: number) =>
        Math.max(0, new Set([...partsAt(model, x), ...partsAt(model, y)]).size - model.room);
      const costs = stepCosts(model);
      for (let x = 0; x < n; x++) for (let y = 0; y < n; y++) expect(costs[x * n + y]).toBe(beyond(x, y));
      const first = model.hasLoad
        ? 0
        : Math.min(...[...ahead(model)].map((job) => partsAt(model, job).length));
      const joined = lightestTree(model, beyond) + first;
      expect(lowestChanges(model)).toBe(Math.max(model.firstTimes, joined));
      if (joined > model.firstTimes) byTree++;
    }
    expect(byTree).toBeGreaterThan(0);
  });

  test('are the first times of all parts with mixed widths, and nothing without jobs', () => {
    const model = modelled(loadedWide);
    expect(model.firstTimes).toBe(new Set(wide.jobs.flatMap(({ parts }) => parts)).size - 1);
    expect(lowestChanges(model)).toBe(model.firstTimes);
    expect(lowestChanges(modelled({ capacity: 3, jobs: [] }))).toBe(0);
  });
});

describe('proveOrder()', () => {
  test('goes through few nodes: for the best from nothing, from one too many, and to see that there is none better', () => {
    const found = models.map((model) => {
      const best = runOut(proveOrder(model, 99)).end;
      const fewest = best.changes;
      const close = runOut(proveOrder(model, fewest + 1)).end;
      const none = runOut(proveOrder(model, fewest)).end;
      expect([close.changes, none.changes, none.sequence]).toEqual([fewest, fewest, null]);
      return [fewest, best.nodes, close.nodes, none.nodes];
    });
    expect(found).toEqual([
      [8, 38, 38, 35],
      [7, 3, 3, 0],
      [8, 11, 11, 8],
      [7, 8, 5, 0],
      [7, 52, 52, 47],
      [6, 5, 5, 0],
      [6, 9, 9, 7],
      [5, 5, 5, 0],
      [11, 307, 307, 304],
      [11, 16, 8, 0],
      [12, 167, 164, 92],
      [13, 76, 73, 68],
      [11, 9, 9, 0],
      [10, 13, 9, 0],
      [16, 924, 914, 889],
      [11, 2191, 2189, 0],
      [13, 1496, 1483, 1268],
      [11, 94, 92, 68],
      [17, 238, 238, 236],
      [15, 1015, 968, 869],
      [6, 696, 693, 575],
      [9, 8, 8, 2],
      [6, 12, 12, 6],
      [7, 12, 9, 0],
    ]);
  });

  test('tells its nodes by five hundreds', () => {
    const question = questionBy(3, { jobs: 11, parts: 20, most: 6, spare: 1 });
    const { steps, end } = runOut(proveOrder(modelled(question), 99));
    expect(steps).toEqual(steps.map((_, at) => 500 * (at + 1)));
    expect(steps).toHaveLength(Math.floor(end.nodes / 500));
    expect([end.changes, end.nodes]).toEqual([21, 46088]);
  });
});

describe('tryEachOrder()', () => {
  const cases: readonly Drawn[] = [
    { jobs: 4, parts: 9, most: 4, widest: 3 },
    { jobs: 5, parts: 9, most: 4, widest: 3, spare: 2 },
    { jobs: 5, parts: 12, most: 5, widest: 3, spare: 3, loaded: 2 },
  ];

  test('is the least of all orders after exchanges, and as low as the least of their bounds', () => {
    for (const how of cases)
      for (const seed of [1, 2, 3, 4]) {
        const model = inPlaces({ ...questionBy(seed, how) });
        const first = model.hasLoad ? 1 : 0;
        const orders = [...permutations([...ahead(model)].slice(first))].map((order) =>
          Uint16Array.from([...(first === 1 ? [0] : []), ...order]),
        );
        const area = areaCounter(model);
        const fewest = Math.min(...orders.map((order) => area.refine(order).changes));
        const { end } = runOut(tryEachOrder(model, ahead(model), 99));
        expect(end.changes).toBe(fewest);
        expect(area.refine(end.sequence).changes).toBe(fewest);
        const bounds = orders.map((order) => {
          area.count(order, new Int32Array(model.jobCount));
          return area.least(fewest);
        });
        // An order and its reverse have one bound only where nothing is loaded; the lower one may be that of the other.
        expect(end.lowest).toBeGreaterThanOrEqual(Math.min(...bounds, fewest));
        expect(end.lowest).toBeLessThanOrEqual(fewest);
        // What is known to be better stays.
        const known = runOut(tryEachOrder(model, ahead(model), fewest - 1)).end;
        expect([...known.sequence]).toEqual([...ahead(model)]);
        expect(known.changes).toBe(fewest - 1);
        expect(known.lowest).toBeLessThanOrEqual(fewest - 1);
      }
  });

  test('keeps the best where others cannot be ruled out and are none, and says how low they might have been', () => {
    const model = inPlaces(questionBy(11, { jobs: 5, parts: 9, most: 4, widest: 4, spare: 2 }));
    expect(runOut(tryEachOrder(model, ahead(model), 99)).end).toMatchObject({ changes: 10, lowest: 9 });
    // Here one that the bound would let need 8 needs 10 with all exchanges made: it takes nobody's place.
    const how = { jobs: 5, parts: 9, most: 5, widest: 6, spare: 3, loaded: 2 };
    const other = inPlaces(questionBy(336, how));
    expect(runOut(tryEachOrder(other, ahead(other), 99)).end).toMatchObject({ changes: 9, lowest: 8 });
  });

  test('tells its work after every 200 orders counted and every 100 bounded', () => {
    const how = { jobs: 6, parts: 12, most: 5, widest: 3 };
    const questions = [questionBy(3, how), questionBy(9, how), questionBy(9, { ...how, loaded: 2 })];
    const told = questions.map((question) => {
      const model = modelled(question);
      const { steps, end } = runOut(tryEachOrder(model, ahead(model), 99));
      return { changes: end.changes, lowest: end.lowest, steps };
    });
    expect(told).toEqual([
      { changes: 12, lowest: 12, steps: [1800, 6730, 10202, 13542] },
      { changes: 11, lowest: 11, steps: [1800, 6691, 10050, 13477] },
      { changes: 9, lowest: 9, steps: [2000, 4000, 6000, 10943, 14824, 18936, 22990, 27127, 31089, 34824] },
    ]);
  });
});
