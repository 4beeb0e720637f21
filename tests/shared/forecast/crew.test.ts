// Several operators: everybody's walks are allowed, nothing is done twice, and two never do worse than one.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CrewAsk, shareWalks } from '../../../shared/forecast/crew.ts';
import { scheduleWalks } from '../../../shared/forecast/walk-schedule.ts';

const order = ['M1-F-001', 'M1-F-002', 'M2-F-001', 'M2-F-002'];
const crew = (
  windows: readonly (readonly [string, number, number])[],
  operators: readonly string[],
): CrewAsk => ({
  walks: {
    nowMs: 0,
    walkSeconds: 60,
    eachSeconds: 40,
    splices: windows.map(([slot, opens, closes]) => ({
      slot,
      opensMs: opens * 1000,
      closesMs: closes * 1000,
    })),
  },
  operators,
  walkingOrder: order,
});
const missed = (shares: ReturnType<typeof shareWalks>) =>
  shares.reduce((sum, share) => sum + share.plan.missed.length, 0);

describe('shareWalks()', () => {
  test('gives each a stretch of the line when both are needed', () => {
    const shares = shareWalks(
      crew(
        [
          ['M1-F-001', 100, 145],
          ['M2-F-001', 100, 145],
        ],
        ['A', 'B'],
      ),
    );
    expect(shares.map((share) => [share.operator, share.needs])).toEqual([
      ['A', [0]],
      ['B', [1]],
    ]);
    expect(missed(shares)).toBe(0);
  });

  test('hands a splice over when a stretch is crowded', () => {
    const shares = shareWalks(
      crew(
        [
          ['M1-F-001', 100, 145],
          ['M2-F-002', 100, 145],
          ['M1-F-002', 400, 445],
          ['M2-F-001', 400, 445],
        ],
        ['A', 'B'],
      ),
    );
    expect(missed(shares)).toBe(0);
  });

  test('hands one over where no place to cut the line would do, and nobody does it twice', () => {
    const shares = shareWalks(
      crew(
        [
          ['M1-F-001', 100, 145],
          ['M1-F-002', 100, 145],
          ['M2-F-001', 400, 445],
          ['M2-F-002', 400, 445],
        ],
        ['A', 'B'],
      ),
    );
    expect(missed(shares)).toBe(0);
    expect(shares.flatMap((share) => share.needs).sort()).toEqual([0, 1, 2, 3]);
    expect(shares.map((share) => share.needs.length)).toEqual([2, 2]);
    for (const share of shares) {
      const done = share.plan.walks.flatMap((walk) => walk.splices.map(({ need }) => need));
      expect(done.sort()).toEqual([...share.needs].sort());
    }
  });

  test('walks past slots that are not listed last, by their names, and one slot’s splices as they were asked', () => {
    const needs = (...slots: readonly string[]) =>
      shareWalks(
        crew(
          slots.map((slot) => [slot, 100, 145] as const),
          ['A', 'B'],
        ),
      ).map((share) => share.needs);
    expect(needs('M9-R-002', 'M9-R-001')).toEqual([[1], [0]]);
    expect(needs('M9-R-001', 'M2-F-002')).toEqual([[1], [0]]);
    expect(needs('M9-R-001', 'M9-R-001')).toEqual([[0], [1]]);
  });

  test('gives each as much to do where walks and misses are the same', () => {
    const windows = order.map((slot, at) => [slot, 1000 * at + 100, 1000 * at + 145] as const);
    const shares = shareWalks(crew(windows, ['A', 'B']));
    expect(shares.map((share) => share.needs)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    // Two that one walk serves stay with one.
    const near = shareWalks(
      crew(
        [
          ['M1-F-001', 100, 600],
          ['M2-F-001', 100, 600],
        ],
        ['A', 'B'],
      ),
    );
    expect(near.reduce((sum, share) => sum + share.plan.walks.length, 0)).toBe(1);
  });

  test('is scheduleWalks() for one', () => {
    const question = crew([['M1-F-001', 100, 500]], ['A']);
    expect(shareWalks(question)[0]!.plan).toEqual(scheduleWalks(question.walks));
  });

  test('throws when nobody is there', () => {
    expect(() => shareWalks(crew([], []))).toThrow(RangeError);
  });

  test('does every splice once at most, and two miss no more than one', () => {
    const slotArb = fc.constantFrom('M1-F-001', 'M1-F-002', 'M2-F-001', 'M2-F-002', 'M3-R-001');
    const windowArb = fc
      .tuple(slotArb, fc.nat(1200), fc.integer({ min: 30, max: 300 }))
      .map(([slot, opens, long]) => [slot, opens, opens + long] as const);
    fc.assert(
      fc.property(fc.array(windowArb, { maxLength: 10 }), (windows) => {
        const two = shareWalks(crew(windows, ['A', 'B']));
        const seen = two.flatMap((share) => [
          ...share.plan.walks.flatMap((walk) => walk.splices.map((splice) => splice.need)),
          ...share.plan.missed.map((splice) => splice.need),
        ]);
        expect([...seen].sort((a, b) => a - b)).toEqual(windows.map((_, need) => need));
        expect(missed(two)).toBeLessThanOrEqual(scheduleWalks(crew(windows, ['A']).walks).missed.length);
      }),
      { numRuns: 40 },
    );
  });
});
