import { describe, expect, test } from 'vitest';
import { call } from './call.ts';

/** Five jobs, six tools, magazine of three: in a public repository of models for Tang and Denardo 1988. */
const five = {
  capacity: 3,
  jobs: [
    { id: '1', parts: ['1', '2', '4'] },
    { id: '2', parts: ['1', '3'] },
    { id: '3', parts: ['3', '4', '5'] },
    { id: '4', parts: ['2', '3', '5'] },
    { id: '5', parts: ['1', '4', '6'] },
  ],
};

async function order(input: unknown, ...options: string[]) {
  const { code, out, err } = await call(['order', '-', ...options], JSON.stringify(input));
  return { code, err, answer: out === '' ? null : JSON.parse(out), out };
}

describe('reelward order', () => {
  test('reaches the optimum of the published five jobs: 4 switches and the first 3 loads, proven', async () => {
    const { code, answer } = await order(five);
    expect(code).toBe(0);
    expect(answer).toMatchObject({ changes: 7, proven: true, gap: 0, lowest: 7 });
    expect([...answer.order].sort()).toEqual(['1', '2', '3', '4', '5']);
  });

  test('prints loads that can be carried out and add up to the changes', async () => {
    const widths = { '1': 2, '5': 3, '6': 2 };
    const { answer } = await order({ ...five, capacity: 6, widths, loaded: ['6', '9', '5'] });
    const on = new Set(['6', '9', '5']);
    const widthOf = (part: string) => (widths as Record<string, number>)[part] ?? 1;
    let changes = 0;
    for (const load of answer.loads) {
      for (const part of load.out) expect(on.delete(part)).toBe(true);
      for (const part of load.in) {
        expect(on.has(part)).toBe(false);
        on.add(part);
        changes++;
      }
      for (const part of five.jobs.find((job) => job.id === load.job)?.parts ?? [])
        expect(on.has(part)).toBe(true);
      expect([...on].reduce((sum, part) => sum + widthOf(part), 0)).toBeLessThanOrEqual(6);
    }
    expect(answer.changes).toBe(changes);
    expect(answer.loads.map((load: { job: string }) => load.job)).toEqual(answer.order);
  });

  test('counts nothing for what is loaded already', async () => {
    const { answer } = await order({ ...five, jobs: [five.jobs[0]], loaded: ['1', '2', '4'] });
    expect(answer).toMatchObject({ changes: 0, loads: [{ job: '1', in: [], out: [] }] });
  });

  test('gives the same answer for the same seed', async () => {
    const jobs = Array.from({ length: 25 }, (_, job) => ({
      id: `J${job}`,
      parts: Array.from({ length: 6 }, (_, at) => `P${(job * 7 + at * at * 3) % 29}`),
    }));
    const once = await order({ capacity: 10, jobs }, '--seconds', '0.1', '--seed', '7');
    const again = await order({ capacity: 10, jobs }, '--seconds', '0.1', '--seed', '7');
    expect(once.code).toBe(0);
    expect(again.out).toBe(once.out);
  });

  test('answers an empty list', async () => {
    expect((await order({ capacity: 3, jobs: [] })).answer).toMatchObject({
      order: [],
      loads: [],
      changes: 0,
      proven: true,
    });
  });

  test('says which job does not fit and by how much, with exit 1', async () => {
    const { code, err, answer } = await order({ ...five, capacity: 3, widths: { '4': 3 } });
    expect(code).toBe(1);
    expect(err).toMatch(/job 1 does not fit the machine: 2 positions over; .*4, /);
    expect(answer.problems.map((one: { job: string; over: number }) => [one.job, one.over])).toEqual([
      ['1', 2],
      ['3', 2],
      ['5', 2],
    ]);
  });

  test.each<readonly [unknown, string[], RegExp, string]>([
    [{ ...five, jobs: [five.jobs[0], five.jobs[0]] }, [], /id 1 is given twice/, 'a job twice'],
    [{ ...five, loaded: ['1', '2', '3', '4'] }, [], /loaded: 1 positions over/, 'more loaded than fits'],
    [{ ...five, capacity: 0 }, [], /capacity/, 'no capacity'],
    [{ ...five, width: {} }, [], /width: key not known/, 'a misspelt key'],
    [{ ...five, widths: { '1': 1.5 } }, [], /widths\.1/, 'half a position'],
    [five, ['--seed', 'x'], /--seed/, 'a seed that is no number'],
    [five, ['--seconds', '0'], /--seconds/, 'no time'],
    [five, ['--speed', '1'], /--speed/, 'an unknown option'],
  ])('refuses %j %j (%s)', async (input, options, message, _why) => {
    const { code, err, out } = await order(input, ...options);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
