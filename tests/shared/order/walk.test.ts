// The way that the search takes is the same for a seed, on every tablet and after every update: a plan that was made yesterday is found again.
// Whoever changes a way on purpose measures it on the bench first and writes it anew here.

import { describe, expect, test } from 'vitest';
import { seededChance } from '../../../shared/kit/chance.ts';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import { drawStep, type Step, searchRow } from '../../../shared/order/moves.ts';
import { planOrder } from '../../../shared/order/plan.ts';
import type { OrderQuestion } from '../../../shared/order/problem.ts';
import {
  type AnnealOptions,
  annealOrder,
  greedySequence,
  judgeFor,
  mixSequence,
} from '../../../shared/order/search.ts';
import { ahead, modelled, questionBy, runOut } from './random.ts';

/** A step in short: `3-7` a stretch turned round; `2+3>5` a block of three moved from place 2 to 5, `~` turned round. */
const written = (step: Step | null) => {
  if (step === null) return '.';
  const { kind, from, to, at, length, target, isTurned } = step;
  return kind === 'turn' ? `${from}-${to}` : `${at}+${length}>${target}${isTurned ? '~' : ''}`;
};

const withLocks = (question: OrderQuestion): OrderQuestion => ({
  ...question,
  locks: [
    { job: 'j3', place: 2 },
    { job: 'j1', place: 6 },
  ],
});
const withTimes = (question: OrderQuestion): OrderQuestion => ({
  ...question,
  handling: { putIn: 2, takeOut: 1, perChange: 3 },
  jobs: question.jobs.map((job, at) => ({
    ...job,
    runMinutes: 20,
    ...(at % 2 === 0 ? { dueMinutes: 60 + 25 * ((at * 5) % 8) } : {}),
  })),
});
const plain = questionBy(1, { jobs: 18, parts: 40, most: 8, spare: 2 });
const roomy = questionBy(2, { jobs: 18, parts: 22, most: 7, spare: 7 });
const loaded = questionBy(3, { jobs: 17, parts: 40, most: 8, spare: 2, loaded: 3 });
const wide = questionBy(4, { jobs: 14, parts: 24, most: 6, spare: 3, widest: 3 });
const few = (jobs: number) => questionBy(5, { jobs, parts: 9, most: 4 });

describe('drawStep()', () => {
  test.each<[what: string, question: OrderQuestion, steps: string]>([
    [
      'fourteen jobs',
      plain,
      '10+4>5 10+1>12 6+1>4 3+1>12 2-14 10+4>11~ 15+3>1 10+1>4 8+4>12 1+4>9 14+1>4 10+4>9 1+1>8 2+3>3 10+2>11~ 0+1>14 4-7 10+4>9 8+1>12 . 11+4>8 8-15 14+1>15 2+1>15 1+3>13 6-14 11+3>7~ 7+2>10 2+1>5 9+3>11~ 0+4>8~ . 5+1>2 10+2>2 11+4>10~ 4+1>7 1+1>5 1-11 3+1>12 0+1>12 16+1>9 . 11+1>15 9-10 6+3>7~ 10+3>14~ . 17+1>8 4-15 14+2>13 7+3>11~ 1-3 1-15 . 1-11 9+1>1 6-12 0-7 . 2-12',
    ],
    [
      'behind a load',
      loaded,
      '10+4>1 9+1>12 6+1>13 3+1>11 12-13 9+4>10~ 14+3>0 9+1>4 . 0+1>7 12+1>11 2+1>9 1-12 . 9+4>11 . 5-14 . 9+4>4 8+1>15 5-6 10+4>7 2-15 13+1>14 2+1>9 1+3>5 0-3 10+3>1~ 7+2>10 2+1>4 9+3>6~ 0+4>8~ 5-11 5+1>15 10+2>1 10+4>9~ 4+1>5 1+1>8 9-11 3+1>1 0+1>3 15+1>8 1-5 10+1>6 7-10 . . 7-11 10+1>1 13+2>1~ 9+1>7 14+3>2~ 14+2>7 . 3-15 . 2-10 9+2>2~ 0+4>12~ 5-11',
    ],
    [
      'between bound jobs',
      withLocks(plain),
      '2-13 11+1>4 9+3>8~ 8+4>4 7+1>13 5-10 3-14 12+2>10~ 4-7 13+3>7~ 11+3>8 7+1>2 7+3>9 1+4>8 14+1>12 10-15 10-15 4+4>9 8-9 4-8 9+4>7 8+2>10~ 10-14 1-7 1-2 4-13 11-13 6+4>12 12+4>1~ 6-14 11+1>8 14+2>13 12+1>13 7-13 6-8 0+1>8 6-11 3+1>4 1+4>7 . 7+1>2 12+4>6 3+2>9 11+3>1~ 4+1>12 2-9 . 4+1>3 15+1>0 1-10 12+1>0 14+1>2 5-10 4+4>7 6+4>5~ 11+1>14 0+3>4 4+4>7 5+1>12 8+2>4',
    ],
    [
      'two jobs',
      few(2),
      '1+1>0 . . 1+1>0 0-1 0+1>1 . 1+1>0 . 0+1>1 1+1>0 . 1+1>0 1+1>0 . . 1+1>0 . . 0+1>1 1+1>0 1+1>0 0+1>1 . 0-1 . 0-1 . 0-1 . . . . . . 0-1 0-1 . . . . . . . . . 0+1>1 . . . 1+1>0 . 0+1>1 1+1>0 . 1+1>0 1+1>0 . . 0+1>1',
    ],
    [
      'three jobs',
      few(3),
      '1+1>0 . . 1+1>0 0-1 0+1>1 . 1+1>0 . 0+1>1 1+1>0 . 1+1>0 1+1>0 . . 1+1>0 . . 0+1>1 1+1>0 1+1>0 0+1>1 . 0-1 . 0-1 . 0-1 . . . . . . 0-1 0-1 . . . . . . . . . 0+1>1 . . . 1+1>0 . 0+1>1 1+1>0 . 1+1>0 1+1>0 . . 0+1>1',
    ],
    [
      'four jobs',
      few(4),
      '2+1>0 1-2 0-1 2+1>0 1-2 1+1>2 . 2+1>0 . 1+1>2 2+1>0 . 2+1>0 2+1>0 . . . . . . 2+1>0 2+1>1 0+1>1 2+1>1 0-2 . 1-2 . 0-1 . 0-1 . . . 1+1>2 0-2 0-2 . 2+1>1 . . . 0-1 0+1>1 . . 0+1>1 . . 1-2 . . . . . . 1+2>0~ 1+1>2 2+1>1 .',
    ],
  ])('draws the same steps for a seed: %s', (_, question, steps) => {
    const model = modelled(question);
    const row = searchRow(model, ahead(model));
    const chance = seededChance(9);
    expect(Array.from({ length: 60 }, () => written(drawStep(chance, row))).join(' ')).toBe(steps);
  });
});

describe('greedySequence() and mixSequence()', () => {
  test.each<[what: string, question: OrderQuestion, greedy: string, mixed: string]>([
    [
      'plain',
      plain,
      '0 14 10 16 3 12 7 15 2 4 8 5 13 9 6 11 1 17',
      '8 4 0 5 11 10 17 7 14 15 16 1 6 13 2 3 12 9',
    ],
    [
      'with much room',
      roomy,
      '16 8 14 1 9 4 3 2 10 6 0 7 13 5 12 15 11',
      '12 10 3 6 14 8 0 16 11 1 15 5 7 2 9 4 13',
    ],
    [
      'behind a load',
      loaded,
      '0 15 10 14 5 3 7 12 8 13 6 1 9 17 4 2 16 11',
      '0 2 13 12 6 14 10 1 15 11 5 16 4 9 8 3 7 17',
    ],
    ['wide feeders', wide, '9 3 6 13 4 7 0 1 8 5 10 11 12 2', '3 0 5 1 9 12 6 11 2 8 7 13 4 10'],
    [
      'between bound jobs',
      withLocks(plain),
      '15 12 3 7 0 14 1 10 16 11 6 9 13 2 4 8 5 17',
      '11 6 3 7 10 12 1 9 15 17 8 5 4 13 16 0 14 2',
    ],
    [
      'by due times',
      withTimes(plain),
      '0 8 16 2 10 4 12 6 14 1 3 5 7 9 11 13 15 17',
      '3 1 0 5 13 16 17 12 8 6 2 15 11 7 14 10 4 9',
    ],
  ])('begin at the same orders: %s', (_, question, greedy, mixed) => {
    const model = modelled(question);
    const first = greedySequence(model);
    expect(first.join(' ')).toBe(greedy);
    expect(mixSequence(model, first, seededChance(2)).join(' ')).toBe(mixed);
  });
});

describe('annealOrder()', () => {
  const cases: readonly [
    what: string,
    question: OrderQuestion,
    options: Partial<AnnealOptions>,
    end: readonly [late: number, changes: number, share: number, sequence: string],
  ][] = [
    ['plain', plain, {}, [0, 51, 1, '13 2 5 8 9 4 6 0 14 1 10 11 16 3 12 7 15 17']],
    [
      'as far as a floor',
      plain,
      { floor: 53 },
      [0, 53, 0.2443, '16 14 11 10 9 6 4 0 13 7 8 5 2 15 3 12 1 17'],
    ],
    [
      'hot, with a short glance',
      plain,
      { hot: 2, cold: 1, glance: 1 },
      [0, 52, 1, '14 10 6 4 1 0 11 9 13 5 2 8 15 7 12 3 16 17'],
    ],
    ['with much room', roomy, {}, [0, 24, 1, '6 0 7 10 2 3 5 4 13 12 8 15 9 16 11 1 14']],
    [
      'with much room, giving up soon',
      roomy,
      { slack: 0 },
      [0, 23, 1, '6 16 8 14 9 1 5 13 12 15 4 0 7 11 3 10 2'],
    ],
    ['behind a load', loaded, {}, [0, 41, 1, '0 1 4 9 17 2 15 10 14 5 3 6 7 12 16 11 13 8']],
    ['wide feeders', wide, { hot: 1.5, cold: 0.2 }, [0, 25, 1, '3 9 6 13 12 5 8 7 1 0 11 10 4 2']],
    ['between bound jobs', withLocks(plain), {}, [0, 52, 1, '17 16 3 12 7 15 1 10 4 14 6 0 11 9 13 8 5 2']],
    ['by due times', withTimes(plain), {}, [474, 60, 1, '8 16 2 10 4 14 0 6 12 11 3 9 5 1 13 7 15 17']],
    ['wide feeders by due times', withTimes(wide), {}, [40, 30, 1, '0 8 2 10 4 12 6 13 11 9 7 5 3 1']],
    ['one job', few(1), {}, [0, 2, 1, '0']],
  ];
  test.each(cases)('takes the same way for a seed: %s', (_, question, options, end) => {
    const model = modelled(question);
    const start = ahead(model);
    if (model.isTimed || model.boundTo.some((place, job) => place >= 0 && place !== job))
      start.set(greedySequence(model));
    const run = runOut(annealOrder(model, { seed: 3, budget: 12_000, start, ...options }));
    const { lateMinutes, changes, share, sequence } = run.end;
    const [late, fewest, part, order] = end;
    expect([lateMinutes, changes, sequence.join(' ')]).toEqual([late, fewest, order]);
    expect(share).toBeCloseTo(part, 6);
    const judge = judgeFor(model);
    judge.rebase(sequence, 0);
    expect([judge.late(), judge.changes()]).toEqual([late, fewest]);
  });

  test('tells how far it is, about every 14 000 places', () => {
    const model = modelled(plain);
    const { steps } = runOut(annealOrder(model, { seed: 3, budget: 60_000, start: ahead(model) }));
    expect(steps.map(({ share, changes }) => [Math.round(share * 1e6) / 1e6, changes])).toEqual([
      [0.238615, 51],
      [0.47947, 50],
      [0.719305, 50],
      [0.95623, 50],
    ]);
  });
});

describe('judgeFor()', () => {
  test('weighs half a feeder for a minute late and four for a job, by minutes as far as they can be told while it searches', () => {
    // The last two without any time for handling, and without any for the runs.
    const { handling: _, ...bare } = withTimes(plain);
    const short = {
      ...withTimes(plain),
      jobs: plain.jobs.map((job, at) => ({ ...job, dueMinutes: 9 * at })),
    };
    const questions: readonly OrderQuestion[] = [...[plain, wide, loaded, roomy].map(withTimes), bare, short];
    let lateInAll = 0;
    for (const question of questions) {
      const model = modelled(question);
      const judge = judgeFor(model);
      for (const sequence of [ahead(model), greedySequence(model)]) {
        const shift = model.hasLoad ? 1 : 0;
        const jobs = [...sequence.slice(shift)].map((job) => job - shift);
        const energy = judge.rebase(sequence, 0);
        expect(judge.count(sequence, 0, model.jobCount - 1, 0, 0)).toBe(energy);
        const area = areaCounter(model);
        const inAt = new Int32Array(model.jobCount);
        // With equal widths the plan counts as the search does, with others by area.
        const plan = planOrder(question, jobs);
        if (!plan.ok) throw new Error('every job fits');
        if (model.isUnit)
          for (const [at, load] of plan.value.loads.entries()) inAt[at + shift] = load.in.length;
        else area.count(sequence, inAt);
        const time = question.handling ?? { putIn: 0, takeOut: 0, perChange: 0 };
        let clock = 0;
        let late = 0;
        let lateJobs = 0;
        for (const [at, job] of jobs.entries()) {
          const place = at + shift;
          const put = inAt[place]!;
          // What goes in pushes as much out, but for the first of all.
          if (put > 0) clock += time.perChange + put * (time.putIn + (place > 0 ? time.takeOut : 0));
          const { runMinutes = 0, dueMinutes = Number.POSITIVE_INFINITY } = question.jobs[job]!;
          clock += runMinutes;
          late += Math.max(0, clock - dueMinutes);
          if (clock > dueMinutes) lateJobs++;
        }
        const changes = inAt.reduce((sum, each) => sum + each, 0);
        expect([judge.changes(), judge.late(), energy]).toEqual([
          changes,
          late,
          changes + late / 2 + 4 * lateJobs,
        ]);
        lateInAll += late;
      }
    }
    expect(lateInAll).toBeGreaterThan(100);
  });
});
