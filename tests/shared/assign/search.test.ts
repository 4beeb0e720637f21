// How good the search is, and the bounds and places that it goes by: counted by hand on small lines, and against the exact search on random ones.

import { describe, expect, test } from 'vitest';
import { assignSlots } from '../../../shared/assign/assign.ts';
import { fewestChanges, proveAssignment } from '../../../shared/assign/exact.ts';
import { type AssignModel, modelOf } from '../../../shared/assign/problem.ts';
import { searchAssignment } from '../../../shared/assign/search.ts';
import { keepSoonest } from '../../../shared/assign/soonest.ts';
import { addStay, bestRun, changesOf, emptyChart, isFree } from '../../../shared/assign/stays.ts';
import { boardFamily, smallCase } from './cases.ts';

const modelled = (question: Parameters<typeof modelOf>[0]): AssignModel => {
  const made = modelOf(question);
  if (!made.ok) throw new Error('the question is sound');
  return made.value;
};
const searched = (model: AssignModel) =>
  changesOf(searchAssignment(model, keepSoonest(model).claims, fewestChanges(model)) ?? []);

/** One bank of so many positions; jobs as letters of their parts, capitals two positions wide; `loaded` from the first slot on. */
function lineOf(positions: number, jobs: readonly string[], loaded = ''): AssignModel {
  const widthOf = (part: string) => (part === part.toUpperCase() ? 2 : 1);
  let next = 1;
  const slots = [...loaded].map((part) => {
    const slot = `M1-F-${String(next).padStart(3, '0')}`;
    next += widthOf(part);
    return { slot, part, width: widthOf(part) };
  });
  return modelled({
    line: { machines: [{ machine: 'M1', banks: [{ bank: 'F', positions }] }] },
    loaded: slots,
    jobs: jobs.map((parts, at) => ({
      id: `J${at}`,
      parts: [...parts].map((part) => ({ part, width: widthOf(part), perPanel: 1 })),
    })),
  });
}

describe('fewestChanges()', () => {
  test.each<[what: string, model: AssignModel, fewest: number]>([
    ['each part once where there is room for all', lineOf(4, ['ab', 'cd', 'ab']), 4],
    ['two idle feeders beside a full job', lineOf(2, ['ab', 'cd', 'ab']), 6],
    ['one of two where one position is left', lineOf(3, ['ab', 'cd', 'ab']), 5],
    ['nothing where all is loaded', lineOf(4, ['ab', 'cd'], 'abcd'), 0],
    ['what is loaded and idle counts as idle too', lineOf(2, ['cd', 'ab'], 'ab'), 4],
    // Idle beside cd: A (2) and b (1) with one position left, 2 too many: giving A up is enough.
    ['the widest idle ones first', lineOf(3, ['Ab', 'cd', 'Ab']), 5],
    // The worst of the jobs decides, not their sum.
    ['the fullest job', lineOf(3, ['abc', 'de', 'ab', 'ef', 'c']), 8],
    ['the last job too', lineOf(2, ['ab', 'ab', 'cd']), 4],
  ])('%s', (_, model, fewest) => {
    expect(fewestChanges(model)).toBe(fewest);
  });

  test('is reached by the search or shown not to be by the exact one', () => {
    for (const [positions, jobs] of [
      [3, ['abc', 'de', 'ab', 'ef', 'c']],
      [4, ['Ab', 'cd', 'Ab', 'CA']],
    ] as const) {
      const model = lineOf(positions, jobs);
      const { stays, isProven } = proveAssignment(model, 99);
      expect(isProven).toBe(true);
      expect(searched(model)).toBe(changesOf(stays ?? []));
    }
  });
});

describe('bestRun()', () => {
  const model = lineOf(5, ['xy', 'xy', 'xyz'], 'wwwx'.slice(3));
  const feederOf = (part: string) => model.feeders.findIndex((feeder) => feeder.part === part);
  const [x, y] = [feederOf('x'), feederOf('y')];
  /** A chart on which feeder y stands at places, each in jobs from one to another. */
  const chartWith = (...stays: readonly (readonly [start: number, uses: readonly number[]])[]) => {
    const chart = emptyChart(model);
    for (const [start, uses] of stays) addStay(chart, { feeder: y, uses, start });
    return chart;
  };
  const all = { feeder: y, uses: [1, 2, 3] };

  test.each<[what: string, chart: ReturnType<typeof chartWith>, start: number]>([
    ['at the bank’s end on an empty line, the first of the two', chartWith(), 0],
    ['beside what stands there', chartWith([0, [1, 2, 3]]), 1],
    ['between two others rather than at an end', chartWith([1, [1, 2, 3]], [3, [1, 2, 3]]), 0],
    // 4 of the 6 cells beside it are taken there: the end in three jobs and a neighbour in one; beside the other only 3.
    ['at an end with a neighbour in one job', chartWith([0, [1, 2, 3]], [3, [2]]), 4],
    ['in the gap', chartWith([0, [1, 2, 3]], [2, [1, 2, 3]]), 1],
  ])('puts a feeder %s', (_, chart, start) => {
    expect(bestRun(chart, all)).toEqual({ start, from: 0, to: 2 });
  });

  test('prefers a longer run to a tighter place, and takes the longest there is', () => {
    // Position 1 is free in all jobs; the others are taken in job 2.
    const chart = chartWith([0, [2]], [2, [2]], [3, [2]], [4, [2]]);
    expect(bestRun(chart, all)).toEqual({ start: 1, from: 0, to: 2 });
    const cut = chartWith([0, [3]], [1, [3]], [2, [3]], [3, [3]], [4, [3]]);
    expect(bestRun(cut, all)).toMatchObject({ from: 0, to: 1 });
    const behind = chartWith([0, [1]], [1, [1]], [2, [1]], [3, [1]], [4, [1]]);
    expect(bestRun(behind, all)).toMatchObject({ from: 1, to: 2 });
    // Free in jobs 1 and 3 but not between: two runs of one use each.
    const between = chartWith([0, [2]], [1, [2]], [2, [2]], [3, [2]], [4, [2]]);
    expect(bestRun(between, { feeder: y, uses: [1, 3] })).toMatchObject({ from: 0, to: 0 });
    const full = chartWith(...[0, 1, 2, 3, 4].map((start) => [start, [1, 2, 3]] as const));
    expect(bestRun(full, all)).toBeNull();
  });

  test('lets a run that begins loaded begin where it is loaded; what is only loaded is no run', () => {
    const claim = { feeder: x, uses: [0, 1, 2, 3] };
    expect(model.feeders[x]!.loadedAt).toEqual([0]);
    expect(bestRun(chartWith(), claim)).toEqual({ start: 0, from: 0, to: 3 });
    expect(bestRun(chartWith([0, [1]]), claim)).toMatchObject({ from: 1, to: 3 });
    expect(bestRun(chartWith([0, [2]]), claim)).toMatchObject({ from: 1, to: 3 });
    const full = chartWith(...[0, 1, 2, 3, 4].map((start) => [start, [1, 2, 3]] as const));
    expect(bestRun(full, claim)).toBeNull();
  });

  test('knows the ends of the line', () => {
    const chart = chartWith([2, [1]]);
    expect([-1, 0, 1, 2, 3, 4, 5].map((start) => isFree(chart, 1, start, 1))).toEqual([
      false,
      true,
      true,
      false,
      true,
      true,
      false,
    ]);
    expect([0, 1, 3, 4].map((start) => isFree(chart, 1, start, 2))).toEqual([true, false, true, false]);
    expect(isFree(chart, 2, 2, 2)).toBe(true);
  });
});

describe('searchAssignment()', () => {
  test('finds the fewest there are on 25 small lines, and the whole answer is proven there', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const question = smallCase(seed);
      const model = modelled(question);
      const found = searched(model);
      const fewer = proveAssignment(model, found);
      expect([seed, fewer]).toEqual([seed, { stays: null, isProven: true }]);
      const answer = assignSlots(question);
      const facts = { changes: found, lowest: found, isProven: true };
      expect(answer.ok && answer.value).toMatchObject(facts);
    }
  });

  test.each([1, 2, 3])('needs no more than the bound for family of boards %i', (seed) => {
    const model = modelled(boardFamily(seed));
    expect(searched(model)).toBe(fewestChanges(model));
  });
});
