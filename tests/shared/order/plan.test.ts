import { readFileSync } from 'node:fs';
import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { type Chance, chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { explainChange, planOrder } from '../../../shared/order/plan.ts';
import type { OrderQuestion } from '../../../shared/order/problem.ts';

interface Instance {
  name: string;
  capacity: number;
  jobTools: number[][];
  width?: number[];
  bestKnown: number;
  sequence: number[];
  identitySequence: { setups: number };
}
function fixture(name: string): Instance[] {
  const url = new URL(`../../fixtures/changeover/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(url, 'utf8')).instances;
}
function ask(one: Instance): OrderQuestion {
  const widths = Object.fromEntries((one.width ?? []).map((width, part) => [`p${part}`, width]));
  const jobs = one.jobTools.map((parts, job) => ({ id: `j${job}`, parts: parts.map((part) => `p${part}`) }));
  return { capacity: one.capacity, jobs, widths };
}
function changesOf(question: OrderQuestion, order: readonly number[]): number {
  const plan = planOrder(question, order);
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  return plan.value.changes;
}

/** Tang and Denardo 1988, Table I without the jobs whose parts are within another's. */
const tangDenardo: OrderQuestion = {
  capacity: 4,
  jobs: [
    { id: '1', parts: ['1', '4', '8', '9'] },
    { id: '2', parts: ['1', '3', '5'] },
    { id: '3', parts: ['2', '6', '7', '8'] },
    { id: '7', parts: ['1', '5', '7', '9'] },
    { id: '8', parts: ['3', '5', '8'] },
    { id: '10', parts: ['1', '2', '4'] },
  ],
};

function randomQuestion(chance: Chance, widest: number): OrderQuestion {
  const partCount = 10;
  const widths = Object.fromEntries(
    Array.from({ length: partCount }, (_, p) => [`p${p}`, 1 + chanceBelow(chance, widest)]),
  );
  const capacity = 5 + widest * 2;
  const jobs = Array.from({ length: 7 }, (_, job) => {
    const parts: string[] = [];
    let taken = 0;
    for (let tries = 0; tries < 6; tries++) {
      const part = `p${chanceBelow(chance, partCount)}`;
      const width = widths[part] ?? 1;
      if (parts.includes(part) || taken + width > capacity) continue;
      parts.push(part);
      taken += width;
    }
    return { id: `j${job}`, parts };
  });
  const loaded = chance() < 0.5 ? [] : (jobs[0]?.parts ?? []).slice(0, 2);
  return { capacity, jobs: jobs.slice(loaded.length > 0 ? 1 : 0), widths, loaded };
}

/** Keeping on a fixed order as an integer program over "part is on the machine during job": nothing of ours in it. */
async function fewestByProgram(question: OrderQuestion): Promise<number> {
  const highs = await loadHighs();
  const parts = [...new Set([...question.jobs.flatMap((job) => job.parts), ...(question.loaded ?? [])])];
  const rows: string[] = [];
  const fixed: string[] = [];
  const cost: string[] = [];
  const names: string[] = [];
  question.jobs.forEach((job, k) => {
    const room = parts.map((part, p) => `${question.widths?.[part] ?? 1} x${p}_${k}`);
    rows.push(`${room.join(' + ')} <= ${question.capacity}`);
    parts.forEach((part, p) => {
      names.push(`x${p}_${k}`, `y${p}_${k}`);
      cost.push(`y${p}_${k}`);
      if (job.parts.includes(part)) fixed.push(`x${p}_${k} = 1`);
      const before = k === 0 ? (question.loaded?.includes(part) ? 1 : 0) : null;
      rows.push(
        before === null
          ? `y${p}_${k} - x${p}_${k} + x${p}_${k - 1} >= 0`
          : `y${p}_${k} - x${p}_${k} >= ${-before}`,
      );
    });
  });
  const text = `Minimize\n obj: ${cost.join(' + ')}\nSubject To\n ${[...rows, ...fixed].join('\n ')}\nBinary\n ${names.join(' ')}\nEnd`;
  return Math.round(highs.solve(text).ObjectiveValue);
}

describe('planOrder()', () => {
  // Tang and Denardo 1988, Table III: switches of six sequences; the first load of four is counted here as well.
  test.each<readonly [number[], number]>([
    [[3, 10, 1, 7, 2, 8], 7],
    [[1, 10, 3, 8, 2, 7], 7],
    [[3, 8, 2, 10, 1, 7], 8],
    [[1, 10, 7, 2, 8, 3], 7],
    [[3, 10, 1, 8, 2, 7], 7],
    [[3, 8, 2, 7, 1, 10], 7],
  ])('counts what Tang and Denardo count for %j: %i', (sequence, switches) => {
    const order = sequence.map((id) => tangDenardo.jobs.findIndex((job) => job.id === String(id)));
    expect(changesOf(tangDenardo, order)).toBe(switches + 4);
  });

  test('counts what Ghiani and others 2010, Table 1, count for an order and its reverse: 5 switches', () => {
    const sets = [
      ['1', '3', '8', '9'],
      ['1', '2'],
      ['1', '4', '5', '9'],
      ['1', '6', '7', '9'],
    ];
    const question = { capacity: 4, jobs: sets.map((parts, id) => ({ id: String(id), parts })) };
    expect(changesOf(question, [0, 1, 2, 3])).toBe(5 + 4);
    expect(changesOf(question, [3, 2, 1, 0])).toBe(5 + 4);
  });

  test('counts 1 extra load for Crama and others 1994, Example 1', () => {
    const sets = [['2', '3'], ['1', '2'], ['3'], ['3'], ['1'], ['1', '3']];
    const question = { capacity: 2, jobs: sets.map((parts, id) => ({ id: String(id), parts })) };
    expect(changesOf(question, [0, 1, 2, 3, 4, 5])).toBe(4);
  });

  test('counts the stored sequences of all 320 published instances as stored', () => {
    for (const one of [...fixture('catanzaro'), ...fixture('crama')]) {
      const used = new Set(one.jobTools.flat()).size;
      expect(changesOf(ask(one), one.sequence), one.name).toBe(one.bestKnown + Math.min(one.capacity, used));
    }
  });

  test('equals an independent integer program on 40 random orders of equal widths', async () => {
    const chance = seededChance(11);
    for (let round = 0; round < 40; round++) {
      const question = randomQuestion(chance, 1);
      const order = question.jobs.map((_, job) => job);
      expect(changesOf(question, order), JSON.stringify(question)).toBe(await fewestByProgram(question));
    }
  });

  test('is never below the integer program with mixed widths, equal on nine in ten, at most one above', async () => {
    const chance = seededChance(12);
    let equal = 0;
    for (let round = 0; round < 40; round++) {
      const question = randomQuestion(chance, 3);
      const found = changesOf(
        question,
        question.jobs.map((_, job) => job),
      );
      const least = await fewestByProgram(question);
      expect(found).toBeGreaterThanOrEqual(least);
      expect(found).toBeLessThanOrEqual(least + 1);
      if (found === least) equal++;
    }
    expect(equal).toBeGreaterThanOrEqual(36);
  });

  test('stays within 1 % of the exact keeping on line-like instances in their given order', () => {
    for (const one of fixture('smtlike')) {
      const found = changesOf(
        ask(one),
        one.jobTools.map((_, job) => job),
      );
      expect(found, one.name).toBeGreaterThanOrEqual(one.identitySequence.setups);
      expect(found, one.name).toBeLessThanOrEqual(one.identitySequence.setups * 1.01);
    }
  });

  test('takes nothing out that has room to stay, and adds handling times up', () => {
    const question: OrderQuestion = {
      capacity: 3,
      loaded: ['x', 'a'],
      jobs: [
        { id: '1', parts: ['a', 'b'], runMinutes: 10, dueMinutes: 12 },
        { id: '2', parts: ['c'], runMinutes: 5, dueMinutes: 40 },
      ],
      handling: { putIn: 2, takeOut: 1, perChange: 3 },
    };
    const plan = planOrder(question, [0, 1]);
    if (!plan.ok) throw new Error('must fit');
    expect(plan.value.loads).toEqual([
      { job: '1', in: ['b'], out: [], taken: 3, minutes: 5, endMinutes: 15, lateMinutes: 3 },
      { job: '2', in: ['c'], out: ['a'], taken: 3, minutes: 6, endMinutes: 26, lateMinutes: 0 },
    ]);
    expect(plan.value).toMatchObject({ changes: 2, minutes: 11, lateMinutes: 3 });
  });
});

describe('explainChange()', () => {
  test('tells a first load from one that comes back, and before which job it went out', () => {
    const question = { capacity: 2, jobs: ['ab', 'cd', 'ae'].map((set) => ({ id: set, parts: [...set] })) };
    const plan = planOrder(question, [0, 1, 2]);
    if (!plan.ok) throw new Error('must fit');
    expect(explainChange(plan.value, 2)).toEqual([
      { part: 'a', why: 'back', outBefore: 'cd' },
      { part: 'e', why: 'first' },
    ]);
  });
});
