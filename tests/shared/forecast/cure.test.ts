// Cures of a missed splice: what is cut, what it saves, and that no cure moves the miss to a neighbour.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CureAsk, curesFor } from '../../../shared/forecast/cure.ts';
import { planRounds, type RoundsAsk } from '../../../shared/forecast/rounds.ts';

const needs = (windows: readonly (readonly [number, number])[]) =>
  windows.map(([opens, closes], i) => ({
    slot: `M1-F-00${i + 1}`,
    opensMs: opens * 1000,
    closesMs: closes * 1000,
  }));
const rounds = (windows: readonly (readonly [number, number])[]): RoundsAsk => ({
  nowMs: 0,
  walkSeconds: 60,
  eachSeconds: 40,
  splices: needs(windows),
});
const ask = (question: RoundsAsk, change: Partial<CureAsk> = {}): CureAsk => ({
  rounds: question,
  need: planRounds(question).missed[0]!.need,
  partsPerSecond: 0.4,
  secondPerson: true,
  secondSlot: true,
  ...change,
});

describe('curesFor()', () => {
  const crowded = rounds([
    [1000, 1045],
    [1000, 1050],
  ]);

  test('cuts just early enough, and counts the parts that are thrown away', () => {
    const [cheapest] = curesFor(ask(crowded));
    expect(cheapest!.kind).toBe('cutEarly');
    if (cheapest!.kind !== 'cutEarly') return;
    // The other needs 40 s within its window of 45 or 50 s: this one must begin 30 to 40 s before its own opens.
    expect(cheapest!.beginsMs).toBeGreaterThanOrEqual(960_000);
    expect(cheapest!.beginsMs).toBeLessThanOrEqual(972_000);
    expect(cheapest!.wastedParts).toBe(Math.ceil(((1_000_000 - cheapest!.beginsMs) / 1000) * 0.4));
    expect(cheapest!.plan.missed).toEqual([]);
  });

  test('orders by cost: a second person comes first when parts are dear', () => {
    const costs = { secondPerson: 10, secondSlot: 500 };
    const kinds = curesFor(ask(crowded, { partsPerSecond: 8, costs })).map((cure) => cure.kind);
    expect(kinds).toEqual(['secondPerson', 'cutEarly', 'secondSlot']);
  });

  test('says when the second person must start and the second slot must be loaded', () => {
    const question = ask(crowded);
    const closesMs = crowded.splices[question.need]!.closesMs;
    const cures = curesFor(question);
    expect(cures).toContainEqual({ kind: 'secondPerson', cost: 50, startMs: closesMs - 100_000 });
    expect(cures).toContainEqual({ kind: 'secondSlot', cost: 200, byMs: closesMs });
  });

  test('offers only what is to be had', () => {
    const kinds = curesFor(ask(crowded, { secondPerson: false, secondSlot: false })).map((cure) => cure.kind);
    expect(kinds).toEqual(['cutEarly']);
  });

  test('knows no cure by walking when the window closes before anyone is there', () => {
    expect(curesFor(ask(rounds([[0, 90]]))).map((cure) => cure.kind)).toEqual(['secondSlot']);
  });

  test('cuts early where the window is shorter than the work', () => {
    const [cheapest] = curesFor(ask(rounds([[1000, 1030]]), { secondSlot: false }));
    expect(cheapest).toMatchObject({
      kind: 'cutEarly',
      beginsMs: expect.closeTo(990_000, -3),
      wastedParts: 4,
    });
  });

  test('never makes another splice missed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(400), fc.integer({ min: 30, max: 150 })), { maxLength: 9 }),
        (list) => {
          const question = rounds(list.map(([opens, long]) => [opens, opens + long]));
          const before = planRounds(question);
          for (const { need } of before.missed) {
            for (const cure of curesFor({ ...ask(question), need })) {
              if (cure.kind !== 'cutEarly') continue;
              expect(cure.plan.missed.length).toBeLessThan(before.missed.length);
              expect(cure.plan.missed.some((missed) => missed.need === need)).toBe(false);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('throws for a need that is not in the list', () => {
    expect(() => curesFor(ask(crowded, { need: 7 }))).toThrow(RangeError);
  });
});
