// Worse never lasts longer: over random histories a warmer, a wetter and a longer open reel never has more life, and a bake never gives more than
// its row. The table of J-STD-033 itself is not monotone in thickness: in moist air thin bodies have the shorter life (level 3 at 30 °C and 70 %:
// 5 days for class A, 1 for class C, both seen in published copies). So of "thicker" it is asked what can be true: a body that nobody knows, or
// that may be of several classes, never lasts longer than the shortest of them, and a thicker body never needs the shorter bake.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bakeOptions } from '../../../shared/moisture/bake.ts';
import { climateLife } from '../../../shared/moisture/climate-life.ts';
import {
  tableFloorLife,
  tableHumidities,
  tableLevels,
  tableTemperatures,
} from '../../../shared/moisture/derating.ts';
import { type FloorLife, type FloorLifeInput, floorLife } from '../../../shared/moisture/floor-life.ts';
import { moistureLevels, packageClasses } from '../../../shared/moisture/levels.ts';
import type { AirSpan } from '../../../shared/moisture/timeline.ts';

const hourMs = 3_600_000;
const RUNS = 10_000;

type Step =
  | { readonly where: 'floor'; readonly hours: number; readonly celsius: number; readonly humidity: number }
  | { readonly where: 'dry'; readonly hours: number; readonly humidity: number }
  | { readonly where: 'bake'; readonly hours: number; readonly celsius: number };

const hours = fc.oneof(fc.integer({ min: 0, max: 16 }), fc.integer({ min: 0, max: 300 }));
const stepArb: fc.Arbitrary<Step> = fc.oneof(
  fc.record({
    where: fc.constant('floor' as const),
    // No time at all is no stay: it leaves the floor's climate unknown, where an hour of it tells.
    hours: hours.map((each) => Math.max(1, each)),
    celsius: fc.integer({ min: 15, max: 38 }),
    humidity: fc.integer({ min: 0, max: 95 }),
  }),
  fc.record({ where: fc.constant('dry' as const), hours, humidity: fc.integer({ min: 0, max: 30 }) }),
  fc.record({ where: fc.constant('bake' as const), hours, celsius: fc.constantFrom(40, 60, 90, 125) }),
);
const caseArb = fc.record({
  level: fc.constantFrom(...moistureLevels),
  thicknessMm: fc.constantFrom(0.8, 1.4, 1.8, 2.1, 2.9, 3.1, 4.4, null),
  timeOnLabelSeconds: fc.constantFrom(6 * 3600, 24 * 3600),
  cabinetPauses: fc.boolean(),
  steps: fc.array(stepArb, { minLength: 1, maxLength: 6 }),
});
type Case = typeof caseArb extends fc.Arbitrary<infer T> ? T : never;

function inputOf({ steps, ...part }: Case): FloorLifeInput {
  let at = 0;
  const history = steps.map((step): AirSpan => {
    const fromMs = at;
    at += step.hours * hourMs;
    const celsius = step.where === 'dry' ? 25 : step.celsius;
    const humidity = step.where === 'bake' ? 5 : step.humidity;
    return { fromMs, toMs: at, where: step.where, celsius, humidity };
  });
  // What is left is always asked in one and the same air.
  const last = { fromMs: at, toMs: null, where: 'floor' as const, celsius: 30, humidity: 60 };
  return { ...part, openedMs: 0, nowMs: at, history: [...history, last] };
}

function lifeOf(asked: Case): FloorLife {
  const answer = floorLife(inputOf(asked));
  if (!answer.ok) throw new Error(answer.error.code);
  return answer.value;
}

/** Seconds left as a number: no limit is endless. */
const leftOf = (asked: Case) => lifeOf(asked).leftSeconds ?? Number.POSITIVE_INFINITY;

/** Rounding of sums of shares: a thousandth of a second. */
const SLACK = 1e-3;

function neverMore(worse: (asked: Case, at: number, by: number) => Case): void {
  fc.assert(
    fc.property(caseArb, fc.nat(), fc.integer({ min: 1, max: 40 }), (asked, pick, by) => {
      const at = pick % asked.steps.length;
      expect(leftOf(worse(asked, at, by))).toBeLessThanOrEqual(leftOf(asked) + SLACK);
    }),
    { numRuns: RUNS },
  );
}

const change = (asked: Case, at: number, make: (step: Step) => Step): Case => ({
  ...asked,
  steps: asked.steps.map((step, index) => (index === at ? make(step) : step)),
});

describe('over ten thousand histories', () => {
  test('a warmer floor never gives more life', () => {
    neverMore((asked, at, by) =>
      change(asked, at, (step) => (step.where === 'floor' ? { ...step, celsius: step.celsius + by } : step)),
    );
  });

  test('wetter air never gives more life, on the floor or in storage', () => {
    neverMore((asked, at, by) =>
      change(asked, at, (step) =>
        step.where === 'bake' ? step : { ...step, humidity: Math.min(100, step.humidity + by) },
      ),
    );
  });

  test('a longer time on the floor never gives more life', () => {
    neverMore((asked, at, by) =>
      change(asked, at, (step) => (step.where === 'floor' ? { ...step, hours: step.hours + by } : step)),
    );
  });

  test('a floor beyond the table instead of dry storage never gives more life', () => {
    neverMore((asked, at) =>
      change(asked, at, (step) =>
        step.where === 'dry' ? { where: 'floor', hours: step.hours, celsius: 38, humidity: 95 } : step,
      ),
    );
  });

  test('an unknown body never has more life than a known one', () => {
    neverMore((asked) => ({ ...asked, thicknessMm: null }));
  });

  test('a bake gives life back only where it is as long as its row, and nothing sets hot hours back', () => {
    fc.assert(
      fc.property(
        caseArb,
        fc.constantFrom(40, 90, 125),
        fc.integer({ min: 0, max: 2000 }),
        (asked, celsius, baked) => {
          const before = lifeOf(asked);
          const more = {
            ...asked,
            steps: [...asked.steps, { where: 'bake' as const, hours: baked, celsius }],
          };
          const after = lifeOf(more);
          const { level, thicknessMm } = asked;
          const { exceededSeconds } = before;
          const row = bakeOptions({ level, thicknessMm, exceededSeconds })?.find(
            (each) => each.celsius === celsius,
          );
          const isEnough = row !== undefined && baked >= row.hours;
          if (level === '1') return;
          if (isEnough) expect(after).toMatchObject({ usedSeconds: 0, exceededSeconds: 0, shortBake: null });
          else expect(after.leftSeconds).toBe(before.leftSeconds);
          expect(after.hotBakeHours).toBeCloseTo(before.hotBakeHours + (celsius > 90 ? baked : 0), 6);
        },
      ),
      { numRuns: RUNS },
    );
  });
});

test('the table gives thick bodies the longer life in moist air, so that no rule "thicker is worse" can hold', () => {
  const at = (packageClass: 'A' | 'C', humidity: number) =>
    tableFloorLife('3', packageClass, { celsius: 30, humidity })?.seconds ?? Number.NaN;
  expect([at('A', 70), at('C', 70)]).toEqual([5 * 86_400, 86_400]);
  expect(at('A', 50)).toBeLessThan(at('C', 50));
});

test('where several classes may hold, the shortest cell of them counts, cell by cell', () => {
  for (const level of tableLevels)
    for (const celsius of tableTemperatures)
      for (const humidity of tableHumidities) {
        const lives = packageClasses.map(
          (each) => tableFloorLife(level, each, { celsius, humidity })?.seconds ?? Number.NaN,
        );
        const climate = { celsius, humidity };
        const life = climateLife({ level, packageClasses, timeOnLabelSeconds: null, own: null }, climate);
        expect(life.seconds, `${level} at ${celsius} °C, ${humidity} %`).toBe(Math.min(...lives));
      }
});
