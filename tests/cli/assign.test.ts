import { describe, expect, it } from 'vitest';
import { call } from './call.ts';

const question = {
  line: {
    machines: [
      {
        machine: 'M1',
        banks: [
          { bank: 'F', positions: 4 },
          { bank: 'R', positions: 4 },
        ],
      },
    ],
  },
  loaded: [{ slot: 'M1-F-002', part: 'A', width: 1 }],
  jobs: [
    {
      id: 'J1',
      parts: [
        { part: 'A', width: 1, perPanel: 4 },
        { part: 'W', width: 3, perPanel: 1 },
      ],
    },
    {
      id: 'J2',
      parts: [
        { part: 'B', width: 2, perPanel: 9 },
        { part: 'A', width: 1, perPanel: 4 },
      ],
    },
  ],
};
const ask = (value: unknown) => call(['assign', '-'], JSON.stringify(value));

describe('assign', () => {
  it('prints a place for each part of each job, the changes and whether fewer is impossible', async () => {
    const { code, out } = await ask(question);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({
      changes: 2,
      proven: true,
      jobs: [
        { id: 'J1', changes: 1 },
        { id: 'J2', changes: 1 },
      ],
    });
    expect(answer.jobs[0].slots).toContainEqual({ slot: 'M1-F-002', part: 'A' });
    expect(answer.jobs[1].slots).toContainEqual({ slot: 'M1-F-002', part: 'A' });
    expect((await ask(question)).out).toBe(out);
  });

  it('exits 1 and says what does not fit', async () => {
    const wide = { ...question, jobs: [{ id: 'J9', parts: [{ part: 'W', width: 5, perPanel: 1 }] }] };
    const { code, out, err } = await ask(wide);
    expect(code).toBe(1);
    expect(err).toContain(
      'job J9 does not fit the line: its feeders need 5 positions, the line has 8, not side by side on its banks; widest first: W (5)',
    );
    expect(JSON.parse(out)).toMatchObject({
      proven: false,
      problems: [{ code: 'no-room', job: 'J9', parts: [{ part: 'W', width: 5 }] }],
    });
  });

  it.each([
    [
      { ...question, loaded: [{ slot: 'M1-F-009', part: 'A', width: 1 }] },
      'loaded[0].slot: M1-F-009 is no slot of the line',
    ],
    [
      { ...question, jobs: [{ id: 'J1', parts: [{ part: 'A', widht: 1, perPanel: 1 }] }] },
      'jobs[0].parts[0].widht: key not known here',
    ],
    [
      { ...question, jobs: [{ id: 'J1', parts: [{ part: 'A', width: 0, perPanel: 1 }] }] },
      'jobs[0].parts[0].width:',
    ],
    [{ line: question.line, loaded: [] }, 'jobs:'],
  ])('exits 2 with one line and the path', async (value, wanted) => {
    const { code, out, err } = await ask(value);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(wanted);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });
});
