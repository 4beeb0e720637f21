// Remedies of a missed splice: what is cut, what it saves, and that no remedy moves the miss to a neighbour.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RemedyAsk, remediesFor } from '../../../shared/forecast/remedy.ts';
import { scheduleWalks, type WalkScheduleAsk } from '../../../shared/forecast/walk-schedule.ts';

const needs = (windows: readonly (readonly [number, number])[]) =>
  windows.map(([opens, closes], i) => ({
    slot: `M1-F-00${i + 1}`,
    opensMs: opens * 1000,
    closesMs: closes * 1000,
  }));
const walks = (windows: readonly (readonly [number, number])[]): WalkScheduleAsk => ({
  nowMs: 0,
  walkSeconds: 60,
  eachSeconds: 40,
  splices: needs(windows),
});
const ask = (question: WalkScheduleAsk, change: Partial<RemedyAsk> = {}): RemedyAsk => ({
  walks: question,
  need: scheduleWalks(question).missed[0]!.need,
  partsPerSecond: 0.4,
  secondPerson: true,
  secondSlot: true,
  ...change,
});

describe('remediesFor()', () => {
  const crowded = walks([
    [1000, 1045],
    [1000, 1050],
  ]);

  test('cuts just early enough, and counts the parts that are thrown away', () => {
    const [cheapest] = remediesFor(ask(crowded));
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
    const kinds = remediesFor(ask(crowded, { partsPerSecond: 8, costs })).map((remedy) => remedy.kind);
    expect(kinds).toEqual(['secondPerson', 'cutEarly', 'secondSlot']);
  });

  test('says when the second person must start and the second slot must be loaded', () => {
    const question = ask(crowded);
    const closesMs = crowded.splices[question.need]!.closesMs;
    const remedies = remediesFor(question);
    expect(remedies).toContainEqual({ kind: 'secondPerson', cost: 50, startMs: closesMs - 100_000 });
    expect(remedies).toContainEqual({ kind: 'secondSlot', cost: 200, byMs: closesMs });
  });

  test('offers only what is to be had', () => {
    const kinds = remediesFor(ask(crowded, { secondPerson: false, secondSlot: false })).map(
      (remedy) => remedy.kind,
    );
    expect(kinds).toEqual(['cutEarly']);
  });

  test('knows no remedy by walking when the window closes before anyone is there', () => {
    expect(remediesFor(ask(walks([[0, 90]]))).map((remedy) => remedy.kind)).toEqual(['secondSlot']);
  });

  test('cuts early where the window is shorter than the work', () => {
    const [cheapest] = remediesFor(ask(walks([[1000, 1030]]), { secondSlot: false }));
    expect(cheapest).toMatchObject({
      kind: 'cutEarly',
      beginsMs: expect.closeTo(990_000, -3),
      wastedParts: 4,
    });
  });

  test('cuts no earlier than it must, though a walk less would do then', () => {
    const [cheapest] = remediesFor(
      ask(
        walks([
          [200, 300],
          [1000, 1045],
          [1000, 1050],
        ]),
      ),
    );
    expect(cheapest?.kind === 'cutEarly' && cheapest.beginsMs).toBeGreaterThanOrEqual(960_000);
  });

  test('counts what is cut off to the part, and offers a second person a window that is just long enough', () => {
    const exact = walks([
      [1000, 1040],
      [1000, 1040],
    ]);
    const remedies = remediesFor(ask(exact, { partsPerSecond: 1000 }));
    expect(remedies).toContainEqual({ kind: 'secondPerson', cost: 50, startMs: 940_000 });
    const cut = remedies.find((remedy) => remedy.kind === 'cutEarly');
    expect(cut?.cost).toBe(Math.ceil(1_000_000 - (cut?.beginsMs ?? 0)));
    const short = walks([[1000, 1039]]);
    expect(remediesFor(ask(short)).map(({ kind }) => kind)).toEqual(['cutEarly', 'secondSlot']);
    // Whoever must start now still can; a moment later nobody can.
    const now = { ...exact, nowMs: 940_000 };
    expect(remediesFor(ask(now)).map(({ kind }) => kind)).toContain('secondPerson');
    expect(remediesFor(ask({ ...now, nowMs: 940_001 })).map(({ kind }) => kind)).not.toContain(
      'secondPerson',
    );
  });

  test('names what costs the same in one order, and no second slot once the window has closed', () => {
    const costs = { secondPerson: 16, secondSlot: 16 };
    expect(
      remediesFor(ask(crowded, { partsPerSecond: 0, costs: { secondPerson: 0, secondSlot: 0 } })).map(
        ({ kind }) => kind,
      ),
    ).toEqual(['cutEarly', 'secondPerson', 'secondSlot']);
    const closed = { ...walks([[0, 30]]), nowMs: 30_000 };
    expect(remediesFor(ask(closed, { costs }))).toEqual([]);
    expect(remediesFor(ask({ ...closed, nowMs: 29_999 }, { costs })).map(({ kind }) => kind)).toEqual([
      'secondSlot',
    ]);
  });

  test('never makes another splice missed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(400), fc.integer({ min: 30, max: 150 })), { maxLength: 9 }),
        (list) => {
          const question = walks(list.map(([opens, long]) => [opens, opens + long]));
          const before = scheduleWalks(question);
          for (const { need } of before.missed) {
            for (const remedy of remediesFor({ ...ask(question), need })) {
              if (remedy.kind !== 'cutEarly') continue;
              expect(remedy.plan.missed.length).toBeLessThan(before.missed.length);
              expect(remedy.plan.missed.some((missed) => missed.need === need)).toBe(false);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('throws for a need that is not in the list', () => {
    expect(() => remediesFor(ask(crowded, { need: 7 }))).toThrow(RangeError);
  });
});
