import { describe, expect, test } from 'vitest';
import { assignSlots } from '../../../shared/assign/assign.ts';
import { actOut, assignPlainly, boardFamily, smallCase } from './cases.ts';
import { fewestByProgram } from './model.ts';

const line = (...positions: number[]) => ({
  machines: [
    { machine: 'M1', banks: positions.map((count, at) => ({ bank: 'FRAB'[at]!, positions: count })) },
  ],
});
const parts = (...names: string[]) => names.map((part) => ({ part, width: 1, perPanel: 1 }));

describe('assignSlots()', () => {
  test('keeps what is loaded where it stands and puts in the rest once', () => {
    const answer = assignSlots({
      line: line(6),
      loaded: [{ slot: 'M1-F-004', part: 'A', width: 1 }],
      jobs: [
        { id: 'J1', parts: parts('A', 'B') },
        { id: 'J2', parts: parts('C', 'A') },
        { id: 'J3', parts: parts('B', 'C') },
      ],
    });
    if (!answer.ok) throw new Error('no answer');
    const { jobs, changes, isProven } = answer.value;
    expect({ changes, isProven }).toEqual({ changes: 2, isProven: true });
    expect(jobs[0]?.slots[0]).toEqual({ slot: 'M1-F-004', part: 'A' });
    expect(jobs.map((job) => job.changes)).toEqual([1, 1, 0]);
  });

  test('moves a feeder where positions that are free do not lie side by side', () => {
    // Four positions, A on 2 and C on 3: the double feeder fits only where one of them moves, which counts.
    const answer = assignSlots({
      line: line(4),
      loaded: [
        { slot: 'M1-F-002', part: 'A', width: 1 },
        { slot: 'M1-F-003', part: 'C', width: 1 },
      ],
      jobs: [{ id: 'J1', parts: [...parts('A', 'C'), { part: 'W', width: 2, perPanel: 1 }] }],
    });
    expect(answer.ok && answer.value).toMatchObject({ changes: 2, isProven: true });
  });

  test('lets an idle feeder go where its place is needed, and counts it when it comes back', () => {
    const answer = assignSlots({
      line: line(2),
      loaded: [],
      jobs: [
        { id: 'J1', parts: parts('A', 'B') },
        { id: 'J2', parts: parts('A', 'C') },
        { id: 'J3', parts: parts('A', 'B') },
      ],
    });
    expect(answer.ok && answer.value).toMatchObject({ changes: 4, isProven: true });
  });

  test('writes slots as the loaded ones are written', () => {
    const answer = assignSlots({
      line: line(3),
      loaded: [{ slot: 'M1-F-1', part: 'A', width: 1 }],
      jobs: [{ id: 'J1', parts: parts('A', 'B') }],
    });
    expect(answer.ok && answer.value.jobs[0]?.slots.map(({ slot }) => slot).sort()).toEqual([
      'M1-F-1',
      expect.stringMatching(/^M1-F-[23]$/),
    ]);
  });

  test('says which job does not fit, by room or by banks', () => {
    const wide = [1, 2, 3].map((at) => ({ part: `W${at}`, width: 2, perPanel: 1 }));
    const answer = assignSlots({ line: line(3, 3), loaded: [], jobs: [{ id: 'J1', parts: wide }] });
    expect(answer).toMatchObject({
      ok: false,
      error: { code: 'no-room', job: 'J1', needed: 6, capacity: 6 },
    });
  });

  test.each([
    [{ loaded: [{ slot: 'M9-F-001', part: 'A', width: 1 }] }, 'slot-unknown', 'loaded[0].slot'],
    [{ loaded: [{ slot: 'M1-F-003', part: 'A', width: 2 }] }, 'over-end', 'loaded[0].slot'],
    [
      {
        loaded: [
          { slot: 'M1-F-001', part: 'A', width: 2 },
          { slot: 'M1-F-002', part: 'B', width: 1 },
        ],
      },
      'overlap',
      'loaded[1].slot',
    ],
    [{ jobs: [{ id: 'J1', parts: parts('A', 'A') }] }, 'twice', 'jobs[0].parts[1].part'],
    [
      {
        jobs: [
          { id: 'J1', parts: [] },
          { id: 'J1', parts: [] },
        ],
      },
      'twice',
      'jobs[1].id',
    ],
  ])('finds the contradiction in %j', (given, code, path) => {
    const answer = assignSlots({ line: line(3), loaded: [], jobs: [], ...given });
    expect(answer).toMatchObject({ ok: false, error: { code: 'fault', fault: { code, path } } });
  });

  // The optimum is HiGHS's, by an integer program that places every feeder in every job; the bench compares a hundred.
  test.each(Array.from({ length: 14 }, (_, at) => at + 1))(
    'needs as few changes as the integer program on small case %i',
    async (seed) => {
      const question = smallCase(seed);
      const answer = assignSlots(question);
      const fewest = await fewestByProgram(question);
      if (!answer.ok) {
        expect(fewest).toBeNull();
        return;
      }
      const acted = actOut(question, answer.value.jobs);
      expect(answer.value.jobs.map(({ changes }) => changes)).toEqual(acted);
      expect(acted.reduce((sum, count) => sum + count, 0)).toBe(answer.value.changes);
      expect(answer.value.changes - (fewest ?? -1)).toBeLessThanOrEqual(answer.value.isProven ? 0 : 1);
      expect(answer.value.changes).toBeGreaterThanOrEqual(fewest ?? 0);
    },
  );

  test.each([1, 2, 3])(
    'gives the same answer twice, and fewer changes than plain ways, for family of boards %i',
    (seed) => {
      const question = boardFamily(seed);
      const answer = assignSlots(question);
      if (!answer.ok) throw new Error('no answer');
      expect(assignSlots(question)).toEqual(answer);
      const total = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
      const acted = total(actOut(question, answer.value.jobs));
      expect(acted).toBe(answer.value.changes);
      const alphabetical = assignPlainly(question, (a, b) => (a.part < b.part ? -1 : 1));
      const byUsage = assignPlainly(
        question,
        (a, b) => b.perPanel - a.perPanel || (a.part < b.part ? -1 : 1),
      );
      expect(acted).toBeLessThan(total(actOut(question, alphabetical)));
      expect(acted).toBeLessThan(total(actOut(question, byUsage)));
    },
  );
});
