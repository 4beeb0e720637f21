// What is wrong with a question, with its facts; what of it plays a role; and which feeders a plan takes out, in their order.

import { describe, expect, test } from 'vitest';
import { explainChange, planOrder } from '../../../shared/order/plan.ts';
import { modelOrder, type OrderQuestion, toJobOrder } from '../../../shared/order/problem.ts';
import { modelled, questionBy } from './random.ts';

const lettered = (capacity: number, ...sets: string[]): OrderQuestion => ({
  capacity,
  jobs: sets.map((set) => ({ id: set, parts: [...set] })),
});
const numbered = (question: OrderQuestion): OrderQuestion => ({
  ...question,
  jobs: question.jobs.map((job, at) => ({ ...job, id: `j${at}` })),
});
const problemsOf = (question: OrderQuestion) => {
  const made = modelOrder(question);
  return made.ok ? [] : made.error;
};

describe('modelOrder()', () => {
  const base = lettered(3, 'abc', 'cd');

  test.each<[what: string, question: OrderQuestion, problems: readonly object[]]>([
    ['a job that just fits', base, []],
    [
      'a job one position too wide, its widest first',
      { ...base, widths: { c: 2 } },
      [{ code: 'job-too-wide', job: 'abc', over: 1, parts: ['c', 'a', 'b'] }],
    ],
    ['a part listed twice counts once', lettered(3, 'abca'), []],
    [
      'every job that does not fit, and the load',
      { ...lettered(1, 'ab', 'c', 'acd'), loaded: ['x', 'y', 'x'], widths: { y: 2 } },
      [
        { code: 'job-too-wide', job: 'ab', over: 1, parts: ['a', 'b'] },
        { code: 'job-too-wide', job: 'acd', over: 2, parts: ['a', 'c', 'd'] },
        { code: 'loaded-too-wide', over: 2, parts: ['y', 'x'] },
      ],
    ],
    ['a load that just fits', { ...base, loaded: ['x', 'y', 'a'] }, []],
    [
      'a name that every object has',
      { capacity: 1, jobs: [{ id: 'j', parts: ['toString'] }], widths: {} },
      [],
    ],
    [
      'a job twice, told once for each time more',
      lettered(3, 'abc', 'cd', 'abc', 'abc'),
      [
        { code: 'job-twice', job: 'abc' },
        { code: 'job-twice', job: 'abc' },
      ],
    ],
    [
      'a lock on a job that is not there',
      { ...base, locks: [{ job: 'x', place: 0 }] },
      [{ code: 'lock-unknown-job', job: 'x', place: 0 }],
    ],
    [
      'places that there are not',
      {
        ...base,
        locks: [
          { job: 'cd', place: -1 },
          { job: 'abc', place: 2 },
        ],
      },
      [
        { code: 'lock-place', job: 'cd', place: -1 },
        { code: 'lock-place', job: 'abc', place: 2 },
      ],
    ],
    [
      'half a place',
      { ...base, locks: [{ job: 'cd', place: 0.5 }] },
      [{ code: 'lock-place', job: 'cd', place: 0.5 }],
    ],
    [
      'the first place and the last',
      {
        ...base,
        locks: [
          { job: 'cd', place: 0 },
          { job: 'abc', place: 1 },
        ],
      },
      [],
    ],
    [
      'two jobs at one place, one job at two',
      {
        ...base,
        locks: [
          { job: 'cd', place: 1 },
          { job: 'abc', place: 1 },
          { job: 'abc', place: 0 },
        ],
      },
      [
        { code: 'lock-twice', job: 'abc', place: 1 },
        { code: 'lock-twice', job: 'abc', place: 0 },
      ],
    ],
  ])('tells what is wrong: %s', (_, question, problems) => {
    expect(problemsOf(question)).toEqual(problems);
  });

  test('numbers parts as they come, and lists each job’s with its room', () => {
    const model = modelled({
      ...lettered(7, 'cab', 'bd', 'ae'),
      widths: { a: 2, e: 3 },
      loaded: ['d', 'z', 'a'],
    });
    expect(model.partNames).toEqual(['c', 'a', 'b', 'd', 'e']);
    expect([...model.widthOf]).toEqual([1, 2, 1, 1, 3]);
    expect([...model.starts]).toEqual([0, 2, 5, 7, 9]);
    expect([...model.parts]).toEqual([1, 3, 0, 1, 2, 2, 3, 1, 4]);
    expect([...model.freeBeside]).toEqual([4, 3, 5, 2]);
    expect(model).toMatchObject({ firstTimes: 3, partTotal: 7, isTimed: false, isUnit: false, partCount: 5 });
    expect(toJobOrder(model, [0, 3, 1, 2])).toEqual([2, 0, 1]);
  });

  test('lets equal jobs ride with the first of them, those in more than one with the widest', () => {
    const model = modelled(lettered(4, 'ab', 'ba', 'abcd', 'a', 'cx', 'c'));
    expect([...model.jobAt]).toEqual([2, 4]);
    expect(model.riders).toEqual([[0, 1, 3, 5], []]);
    const twins = modelled(lettered(4, 'ab', 'ba', 'cd'));
    expect([[...twins.jobAt], twins.riders]).toEqual([
      [0, 2],
      [[1], []],
    ]);
    // In order of size and then of the list: what is loaded shifts none of it.
    const behind = modelled({ ...lettered(4, 'a', 'ab', 'cd', 'd'), loaded: ['a'] });
    expect([[...behind.jobAt], behind.riders]).toEqual([
      [-1, 1, 2],
      [[], [0], [3]],
    ]);
  });

  test('binds jobs to their places, one further on behind a load', () => {
    const locks = [{ job: 'cd', place: 0 }];
    expect([...modelled({ ...base, locks }).boundTo]).toEqual([-1, 0]);
    expect([...modelled({ ...base, locks, loaded: ['a'] }).boundTo]).toEqual([0, -1, 1]);
  });

  test('is timed where one job is due', () => {
    const [first, second] = base.jobs;
    expect(modelled({ ...base, jobs: [first!, { ...second!, dueMinutes: 0 }] }).isTimed).toBe(true);
  });
});

describe('planOrder()', () => {
  const changed = (given: OrderQuestion) => {
    const question = numbered(given);
    const plan = planOrder(
      question,
      question.jobs.map((_, job) => job),
    );
    if (!plan.ok) throw new Error('every job fits');
    return plan.value.loads.map((load) => `+${load.in.join('')} -${load.out.join('')}`).join(', ');
  };

  test.each<[what: string, question: OrderQuestion, loads: string]>([
    ['what no job needs any more goes first', lettered(3, 'abc', 'ad', 'ab'), '+abc -, +d -c, + -'],
    ['then what is needed last', lettered(3, 'abc', 'd', 'ab', 'bc'), '+abc -, +d -c, + -, +c -a'],
    ['by name where all is alike', lettered(3, 'cba', 'd', 'abc'), '+cba -, +d -a, +a -d'],
    [
      'the widest of those needed at the same time',
      { ...lettered(4, 'abc', 'd', 'abc'), widths: { b: 2 } },
      '+abc -, +d -b, +b -d',
    ],
    [
      'nothing that need not go once another has',
      { ...lettered(5, 'abc', 'D', 'a', 'b'), widths: { c: 3, D: 3 } },
      '+abc -, +D -c, + -, + -',
    ],
    [
      'as much as the room asks for',
      { ...lettered(4, 'abcd', 'E', 'ab'), widths: { E: 2 } },
      '+abcd -, +E -cd, + -',
    ],
    [
      'by name too of a load that no job needs',
      { ...lettered(2, 'a', 'b'), loaded: ['x', 'y'] },
      '+a -x, +b -a',
    ],
  ])('takes out %s', (_, question, loads) => {
    expect(changed(question)).toBe(loads);
  });

  test('takes out the same of wide feeders for an order, behind a load or not', () => {
    const how = { jobs: 9, parts: 14, most: 5, widest: 4, spare: 5 };
    const questions = [1, 2, 3, 4, 5, 6].map((seed) =>
      questionBy(seed, { ...how, loaded: seed > 3 ? 3 : 0 }),
    );
    const plans = questions.map((question) => changed(question).replaceAll('p', ' '));
    expect(plans).toEqual([
      '+ 2 6 0 -, + 10 4 -, + 8 11 -, + 7 - 0, + 13 3 - 6 7, + -, + 0 - 2, + 5 - 0, + 12 9 1 - 3',
      '+ 1 9 5 13 -, + 12 0 -, + 6 -, + 3 4 - 5 12, + 7 - 3, + 11 -, + 10 - 4, + -, + 8 4 - 10 13',
      '+ 12 4 9 7 11 -, + 0 13 -, + 5 10 2 6 - 12 4, + 8 - 2, + -, + -, + -, + 4 - 11 9, + 2 9 - 4 5',
      '+ 13 -, + 4 11 3 -, + 0 7 - 10, + 1 - 13, + 8 - 1, + 13 12 - 7 8, + 2 9 - 11 3, + -, + 10 - 0',
      '+ 3 -, + 11 2 -, + 6 13 -, + 5 - 6, + 7 - 11, + 9 1 8 - 5 7 3, + 0 - 8, + 11 3 - 12 13, + -',
      '+ 5 -, + 13 3 11 -, + 9 7 2 - 10 8, + -, + 8 12 - 6 2, + 2 - 8, + 0 4 - 2 11, + 1 - 0, + 6 -',
    ]);
  });

  test('refuses a job that is not there, and tells what does not fit', () => {
    const unknown = planOrder(lettered(3, 'ab'), [0, 1]);
    expect(unknown.ok ? [] : unknown.error.map(({ code }) => code)).toEqual(['lock-unknown-job']);
    const unnamed = { capacity: 3, jobs: [{ id: '', parts: ['a'] }] };
    expect(() => planOrder(unnamed, [7])).toThrow('job numbers must exist: current value is 7');
    const failed = planOrder(lettered(1, 'ab'), [0]);
    expect(failed.ok ? [] : failed.error.map(({ code }) => code)).toEqual(['job-too-wide']);
  });

  test('takes no time for a run that has none given', () => {
    const plan = planOrder(
      { ...lettered(2, 'ab', 'c'), handling: { putIn: 2, takeOut: 1, perChange: 0 } },
      [0, 1],
    );
    expect(plan.ok && plan.value.loads.map(({ endMinutes }) => endMinutes)).toEqual([4, 7]);
  });

  test('says of a feeder that came back twice before which job it went last', () => {
    const plan = planOrder(numbered(lettered(2, 'ab', 'cd', 'ab', 'ef', 'a')), [0, 1, 2, 3, 4]);
    expect(plan.ok && explainChange(plan.value, 2)).toEqual([
      { part: 'a', why: 'back', outBefore: 'j1' },
      { part: 'b', why: 'back', outBefore: 'j1' },
    ]);
    expect(plan.ok && explainChange(plan.value, 4)).toEqual([{ part: 'a', why: 'back', outBefore: 'j3' }]);
    expect(plan.ok && explainChange(plan.value, 0)).toEqual([
      { part: 'a', why: 'first' },
      { part: 'b', why: 'first' },
    ]);
  });
});
