// Several operators: everybody's walks are allowed, nothing is done twice, and two never do worse than one.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CrewAsk, shareWalks } from '../../../shared/forecast/crew.ts';
import { scheduleWalks } from '../../../shared/forecast/walk-schedule.ts';

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
  walkingOrder: ['M1-F-001', 'M1-F-002', 'M2-F-001', 'M2-F-002'],
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
