// Walks against a mixed-integer programme on 200 seeded problems, by hand-made cases, and by what must hold for any plan.

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type SpliceNeed,
  scheduleWalks,
  type WalkSchedule,
  type WalkScheduleAsk,
} from '../../../shared/forecast/walk-schedule.ts';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { makeModel } from './walk-model.ts';

const seed = 20_261_124;
const needs = (windows: readonly (readonly [number, number])[]): SpliceNeed[] =>
  windows.map(([opens, closes], i) => ({
    slot: `M1-F-${String(i + 1).padStart(3, '0')}`,
    opensMs: opens * 1000,
    closesMs: closes * 1000,
  }));
const ask = (
  windows: readonly (readonly [number, number])[],
  change: Partial<WalkScheduleAsk> = {},
): WalkScheduleAsk => ({
  nowMs: 0,
  walkSeconds: 60,
  eachSeconds: 40,
  splices: needs(windows),
  ...change,
});
const shape = (plan: WalkSchedule) =>
  plan.walks.map((trip) => [trip.startMs / 1000, ...trip.splices.map((splice) => splice.need)]);

/** Everything that the contract asks of any plan. */
function expectAllowed(question: WalkScheduleAsk, plan: WalkSchedule): void {
  const seen = new Set<number>();
  let free = question.nowMs;
  for (const trip of plan.walks) {
    expect(trip.startMs).toBeGreaterThanOrEqual(free);
    expect(trip.splices.length).toBeGreaterThan(0);
    trip.splices.forEach((splice, i) => {
      const begins = trip.startMs + (question.walkSeconds + i * question.eachSeconds) * 1000;
      const window = question.splices[splice.need]!;
      expect(splice.slot).toBe(window.slot);
      expect(splice.beginsMs).toBeCloseTo(begins, 3);
      expect(begins).toBeGreaterThanOrEqual(window.opensMs - 1e-3);
      expect(begins + question.eachSeconds * 1000).toBeLessThanOrEqual(window.closesMs + 1e-3);
      expect(seen.has(splice.need)).toBe(false);
      seen.add(splice.need);
    });
    free = trip.startMs + (question.walkSeconds + trip.splices.length * question.eachSeconds) * 1000;
    expect(trip.endMs).toBeCloseTo(free, 3);
  }
  for (const missed of plan.missed) {
    expect(seen.has(missed.need)).toBe(false);
    expect(missed.byMs).toBe(question.splices[missed.need]!.closesMs);
    seen.add(missed.need);
  }
  expect(seen.size).toBe(question.splices.length);
}

describe('scheduleWalks()', () => {
  test.each([
    { reason: 'nothing is due', windows: [], walks: [], missed: [] },
    { reason: 'one splice: as late as it may', windows: [[500, 900]], walks: [[800, 0]], missed: [] },
    {
      reason: 'two windows overlap: one walk',
      windows: [
        [500, 900],
        [600, 1000],
      ],
      walks: [[800, 0, 1]],
      missed: [],
    },
    {
      reason: 'windows too far apart: two walks',
      windows: [
        [500, 600],
        [900, 1000],
      ],
      walks: [
        [500, 0],
        [900, 1],
      ],
      missed: [],
    },
    {
      reason: 'the work itself bridges a gap',
      windows: [
        [100, 140],
        [140, 180],
      ],
      walks: [[40, 0, 1]],
      missed: [],
    },
    {
      reason: 'both close together: the first begins sooner',
      windows: [
        [0, 400],
        [0, 400],
      ],
      walks: [[260, 0, 1]],
      missed: [],
    },
    {
      reason: 'a window shorter than the work',
      windows: [[500, 530]],
      walks: [],
      missed: [[0, 'windowTooShort']],
    },
    {
      reason: 'a window that closes before anyone is there',
      windows: [[0, 90]],
      walks: [],
      missed: [[0, 'closesTooSoon']],
    },
    { reason: 'a window that can just be met', windows: [[0, 100]], walks: [[0, 0]], missed: [] },
    {
      reason: 'two exclude each other: the one that lets the walk start later',
      windows: [
        [100, 145],
        [104, 146],
      ],
      walks: [[46, 1]],
      missed: [[0, 'crowdedOut']],
    },
  ] as const)('plans $walks when $reason', ({ windows, walks, missed }) => {
    const question = ask(windows);
    const plan = scheduleWalks(question);
    expectAllowed(question, plan);
    expect(plan.missed.map((splice) => [splice.need, splice.reason])).toEqual(missed);
    expect(shape(plan)).toEqual(walks);
    expect(plan.proven).toBe(true);
  });

  test('works without walk and without work time', () => {
    for (const change of [{ walkSeconds: 0 }, { eachSeconds: 0 }, { walkSeconds: 0, eachSeconds: 0 }]) {
      const question = ask(
        [
          [100, 300],
          [200, 400],
          [350, 700],
          [900, 950],
        ],
        change,
      );
      const plan = scheduleWalks(question);
      expectAllowed(question, plan);
      expect(plan.missed).toEqual([]);
    }
  });

  test('takes equal splices in walking order, however their numbers are written', () => {
    const splices = ['F10', 'F2', 'F9'].map((slot) => ({ slot, opensMs: 0, closesMs: 3_600_000 }));
    const { walks } = scheduleWalks(ask([], { splices }));
    expect(walks.map((each) => each.splices.map(({ slot }) => slot))).toEqual([['F2', 'F9', 'F10']]);
  });

  test('lets one slot have two splices in a shift', () => {
    const splices = [...needs([[100, 300]]), ...needs([[2000, 2300]])];
    const plan = scheduleWalks(ask([], { splices }));
    expect(plan.walks.map((trip) => trip.splices.map((splice) => splice.slot))).toEqual([
      ['M1-F-001'],
      ['M1-F-001'],
    ]);
  });

  test('keeps fractions of a second exact', () => {
    const question = ask(
      [
        [100.25, 400.5],
        [150, 420.125],
      ],
      { walkSeconds: 1.1, eachSeconds: 33.3 },
    );
    expectAllowed(question, scheduleWalks(question));
  });

  test('throws for negative times', () => {
    expect(() => scheduleWalks(ask([], { walkSeconds: -1 }))).toThrow(RangeError);
    expect(() => scheduleWalks(ask([], { eachSeconds: Infinity }))).toThrow(RangeError);
  });
});

describe('scheduleWalks() against a mixed-integer programme', () => {
  test('the programme itself finds the published optima of one machine', async () => {
    const model = await makeModel();
    interface Instance {
      readonly name: string;
      readonly r: readonly number[];
      readonly p: readonly number[];
      readonly d: readonly number[];
      readonly q?: readonly number[];
      readonly claims: { readonly Lmax?: number; readonly CmaxWithTails?: number; readonly U?: number };
    }
    const file = new URL('../../fixtures/forecast/one-machine.json', import.meta.url);
    const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: readonly Instance[] };
    const late = (instance: Instance, slack: number) =>
      model({
        now: 0,
        walk: 0,
        splices: instance.r.map((opens, j) => ({
          opens,
          takes: instance.p[j]!,
          closes: instance.d[j]! + slack,
        })),
      }).missed;
    const [pinedo, carlier, moore] = instances;
    // All in time exactly when every due time is moved by the published least lateness, and not by one less.
    expect([late(pinedo!, pinedo!.claims.Lmax!), late(pinedo!, pinedo!.claims.Lmax! - 1) > 0]).toEqual([
      0,
      true,
    ]);
    const shift = carlier!.claims.CmaxWithTails! - (carlier!.d[0]! + carlier!.q![0]!);
    expect([late(carlier!, shift), late(carlier!, shift - 1) > 0]).toEqual([0, true]);
    expect(late(moore!, 0)).toBe(moore!.claims.U);
  });

  test(`misses no more, walks no more and starts no earlier on 200 problems of seed ${seed}`, async () => {
    const model = await makeModel();
    const chance = seededChance(seed);
    const kinds = { missed: 0, several: 0 };
    for (let c = 0; c < 200; c++) {
      const n = 2 + chanceBelow(chance, 4);
      const walk = chanceBelow(chance, 60);
      const each = 5 + chanceBelow(chance, 60);
      const now = chanceBelow(chance, 100);
      const span = 50 + chanceBelow(chance, 500);
      const windows = Array.from({ length: n }, () => {
        const opens = chanceBelow(chance, span);
        return [opens, opens + each + chanceBelow(chance, 200) - 10] as const;
      });
      const question = ask(windows, { nowMs: now * 1000, walkSeconds: walk, eachSeconds: each });
      const plan = scheduleWalks(question);
      expectAllowed(question, plan);
      expect(plan.proven).toBe(true);
      const best = model({
        now,
        walk,
        splices: windows.map(([opens, closes]) => ({ opens, closes, takes: each })),
      });
      const found = {
        missed: plan.missed.length,
        walks: plan.walks.length,
        firstStart: plan.walks.length === 0 ? null : plan.walks[0]!.startMs / 1000,
      };
      expect(found, `problem ${c}: ${JSON.stringify({ now, walk, each, windows })}`).toEqual(best);
      if (best.missed > 0) kinds.missed += 1;
      if (best.walks > 1) kinds.several += 1;
    }
    // The sample must hold both easy and hopeless shifts, or it would prove little.
    expect(kinds.missed).toBeGreaterThan(30);
    expect(kinds.several).toBeGreaterThan(60);
  });
});

const askArb = (most: number): fc.Arbitrary<WalkScheduleAsk> =>
  fc
    .record({
      nowMs: fc.nat(300).map((seconds) => seconds * 1000),
      walkSeconds: fc.nat(120),
      eachSeconds: fc.nat(90),
      splices: fc.array(fc.tuple(fc.nat(8000), fc.nat(1500)), { maxLength: most }),
    })
    .map((any) => ({ ...any, splices: needs(any.splices.map(([opens, long]) => [opens, opens + long])) }));

describe('scheduleWalks() for any splices', () => {
  test('gives an allowed plan, the same every time', () => {
    fc.assert(
      fc.property(askArb(60), (question) => {
        const plan = scheduleWalks(question);
        expectAllowed(question, plan);
        expect(scheduleWalks(question)).toEqual(plan);
      }),
      { numRuns: 60 },
    );
  });

  test('asks no order of the splices', () => {
    fc.assert(
      fc.property(askArb(14), (question) => {
        const plan = scheduleWalks(question);
        const back = scheduleWalks({ ...question, splices: [...question.splices].reverse() });
        const told = (any: WalkSchedule) =>
          any.walks.map((trip) => [trip.startMs, trip.splices.map((s) => s.slot)]);
        expect(told(back)).toEqual(told(plan));
      }),
    );
  });

  test('misses no more with wider windows or a later end, no fewer with one splice more', () => {
    fc.assert(
      fc.property(askArb(12), fc.nat(300), fc.nat(8000), (question, wider, opens) => {
        const { missed } = scheduleWalks(question);
        const widened = question.splices.map((splice) => ({
          ...splice,
          closesMs: splice.closesMs + wider * 1000,
        }));
        expect(scheduleWalks({ ...question, splices: widened }).missed.length).toBeLessThanOrEqual(
          missed.length,
        );
        const one = { slot: 'M2-F-001', opensMs: opens * 1000, closesMs: (opens + 200) * 1000 };
        const more = scheduleWalks({ ...question, splices: [...question.splices, one] });
        expect(more.missed.length).toBeGreaterThanOrEqual(missed.length);
      }),
    );
  });

  test('lets no single walk start later: the next one or a window holds each back', () => {
    fc.assert(
      fc.property(askArb(12), (question) => {
        const plan = scheduleWalks(question);
        plan.walks.forEach((trip, r) => {
          const next = plan.walks[r + 1]?.startMs ?? Infinity;
          const slack = Math.min(
            next - trip.endMs,
            ...trip.splices.map(
              (splice) =>
                question.splices[splice.need]!.closesMs - splice.beginsMs - question.eachSeconds * 1000,
            ),
          );
          expect(slack).toBeCloseTo(0, 3);
        });
      }),
    );
  });

  test('finds with bounded effort almost always what the proof finds', () => {
    const chance = seededChance(seed);
    let worse = 0;
    for (let c = 0; c < 60; c++) {
      const windows = Array.from({ length: 20 }, () => {
        const opens = chanceBelow(chance, 4000);
        return [opens, opens + 100 + chanceBelow(chance, 700)] as const;
      });
      const proven = scheduleWalks(ask(windows));
      const bounded = scheduleWalks(ask(windows, { effort: 300 }));
      expectAllowed(ask(windows), bounded);
      expect(proven.proven).toBe(true);
      const behind =
        (bounded.missed.length - proven.missed.length) * 100 + bounded.walks.length - proven.walks.length;
      expect(behind).toBeGreaterThanOrEqual(0);
      if (behind > 0) worse += 1;
    }
    expect(worse).toBeLessThanOrEqual(6);
  });

  test('needs as many walks as points that meet every window when neither walk nor work takes time', () => {
    fc.assert(
      fc.property(askArb(40), (any) => {
        const question = { ...any, nowMs: 0, walkSeconds: 0, eachSeconds: 0 };
        // The stabbing number by the textbook rule: a point at the earliest closing that no point meets yet.
        let points = 0;
        let last = -1;
        for (const window of [...question.splices].sort((a, b) => a.closesMs - b.closesMs)) {
          if (window.opensMs <= last) continue;
          points += 1;
          last = window.closesMs;
        }
        expect(scheduleWalks(question).walks).toHaveLength(points);
      }),
    );
  });

  test('still plans a hopelessly crowded shift', () => {
    const chance = seededChance(seed);
    const windows = Array.from({ length: 70 }, () => {
      const opens = chanceBelow(chance, 1500);
      return [opens, opens + 60 + chanceBelow(chance, 300)] as const;
    });
    const plan = scheduleWalks(ask(windows));
    expectAllowed(ask(windows), plan);
    expect(plan.missed.length).toBeGreaterThan(20);
  });
});

describe('scheduleWalks() with a known plan', () => {
  const known = (plan: WalkSchedule) =>
    plan.walks.map((trip) => ({
      startMs: trip.startMs,
      slots: trip.splices.map((splice) => splice.slot),
    }));
  const windows = [
    [500, 900],
    [600, 1000],
    [1500, 1900],
    [1600, 2000],
  ] as const;
  const first = scheduleWalks(ask(windows));

  test('keeps walks and starts when windows tremble', () => {
    const moved = windows.map(([opens, closes]) => [opens + 20, closes + 25] as const);
    const plan = scheduleWalks(ask(moved, { previous: known(first) }));
    expect(plan.kept).toBe(true);
    expect(known(plan)).toEqual(known(first));
  });

  test('moves starts with the run when windows move far, and keeps who is in which walk', () => {
    const moved = windows.map(([opens, closes]) => [opens + 200, closes + 200] as const);
    const plan = scheduleWalks(ask(moved, { previous: known(first) }));
    expect(known(plan)).toEqual(known(first).map((trip) => ({ ...trip, startMs: trip.startMs + 200_000 })));
  });

  test('starts sooner where it must', () => {
    const moved = windows.map(([opens, closes]) => [opens - 30, closes - 30] as const);
    const question = ask(moved, { previous: known(first) });
    const plan = scheduleWalks(question);
    expectAllowed(question, plan);
    expect(plan.walks[0]!.startMs).toBe(first.walks[0]!.startMs - 30_000);
  });

  test('puts a new splice into a known walk where it fits', () => {
    const more = [...windows, [1550, 2100] as const];
    const plan = scheduleWalks(ask(more, { previous: known(first) }));
    expect(plan.kept).toBe(true);
    expect(plan.walks.map((trip) => trip.splices.length)).toEqual([2, 3]);
  });

  test('drops what is done', () => {
    const splices = needs(windows).slice(2);
    const plan = scheduleWalks(ask([], { splices, previous: known(first) }));
    expect(known(plan)).toEqual(known(first).slice(1));
  });

  test('plans anew when that saves a walk or a splice', () => {
    const apart = [
      { startMs: 400_000, slots: ['M1-F-001'] },
      { startMs: 800_000, slots: ['M1-F-002'] },
    ];
    const plan = scheduleWalks(ask(windows.slice(0, 2), { previous: apart }));
    expect([plan.kept, plan.walks.length]).toEqual([false, 1]);
  });

  test('misses and walks no more than a fresh plan, whatever was known', () => {
    fc.assert(
      fc.property(askArb(10), fc.array(fc.nat(9), { maxLength: 10 }), (question, shuffle) => {
        const fresh = scheduleWalks(question);
        const previous = shuffle.map((i) => ({
          startMs: i * 500_000,
          slots: question.splices.slice(i, i + 2).map((splice) => splice.slot),
        }));
        const plan = scheduleWalks({ ...question, previous });
        expectAllowed(question, plan);
        expect(plan.missed.length).toBe(fresh.missed.length);
        expect(plan.walks.length).toBe(fresh.walks.length);
      }),
    );
  });
});
