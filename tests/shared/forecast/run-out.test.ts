// Run-out, window and risk: worked values, edges, and properties that must hold for any line.

import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import {
  forecastLine,
  forecastSlot,
  type LawMemory,
  type LinePace,
  panelSecondsFromRate,
  type SlotLoad,
  wholeBelow,
} from '../../../shared/forecast/run-out.ts';
import { neverStopping, workingTime } from '../../../shared/forecast/working-time.ts';
import { chanceNormal, seededChance } from '../../../shared/kit/chance.ts';

const nowMs = Date.parse('2026-03-02T06:00:00+01:00');
const pace: LinePace = { nowMs, panelSeconds: 30, panelsLeft: 2000, calendar: neverStopping };
const load: SlotLoad = { slot: 'M1-F-014', perPanel: 12, left: 4000, sd: 0, loss: 0 };
const secondsTo = (ms: number) => (ms - nowMs) / 1000;

describe('forecastSlot()', () => {
  test('covers 333 panels and 10 000 s when 4000 parts go at 12 a panel and 30 s', () => {
    const forecast = forecastSlot(pace, load);
    expect(forecast.fullPanels).toBe(333);
    expect(secondsTo(forecast.runOutMs.expected)).toBe(10_000);
    expect(333 * 30).toBe(2 * 3600 + 46 * 60 + 30); // the last whole panel, 2 h 46 min 30 s
    expect(forecast.runOutMs.early).toBe(forecast.runOutMs.expected);
    expect(forecast.runOutMs.late).toBe(forecast.runOutMs.expected);
  });

  test('answers the same with laws kept by the caller, also after one figure of the load or the pace changed', () => {
    const laws: LawMemory = new Map();
    const spread = { ...load, sd: 12, loss: 0.004, lossStrength: 800 };
    const changes: [Partial<LinePace>, Partial<SlotLoad>][] = [
      [{}, {}],
      [{ nowMs: nowMs + 5000 }, {}],
      [{ panelsLeft: 340 }, {}],
      [{ panelMeanSd: 0.4 }, {}],
      [{}, { left: 3990 }],
      [{}, { sd: 13 }],
      [{}, { loss: 0.005 }],
      [{}, { lossStrength: 900 }],
    ];
    for (const [line, slot] of [...changes, ...changes]) {
      const asked = [
        { ...pace, ...line },
        { ...spread, ...slot },
      ] as const;
      expect(forecastSlot(...asked, laws)).toEqual(forecastSlot(...asked));
    }
    expect(laws.size).toBe(changes.length - 1);
  });

  test('lasts 2.764 h when half a percent is lost', () => {
    const forecast = forecastSlot(pace, { ...load, loss: 0.005 });
    expect(secondsTo(forecast.runOutMs.expected) / 3600).toBeCloseTo(2.764, 3);
  });

  test('puts early and late at jstat’s binomial points', () => {
    const forecast = forecastSlot(pace, { ...load, left: 500, loss: 0.02 });
    const point = (share: number) => {
      let k = 0;
      while (jStat.binomial.cdf(k, 500, 0.98) < share) k += 1;
      return k;
    };
    expect(secondsTo(forecast.runOutMs.early)).toBeCloseTo((point(0.05) / 12) * 30, 3);
    expect(secondsTo(forecast.runOutMs.late)).toBeCloseTo((point(0.95) / 12) * 30, 3);
  });

  test('gives n panels the variance n·sd² when panels vary', () => {
    const forecast = forecastSlot({ ...pace, panelSd: 6 }, { ...load, left: 1200 });
    expect(secondsTo(forecast.runOutMs.early)).toBeCloseTo(3000 - 1.6448536 * 6 * 10, 2);
    expect(secondsTo(forecast.runOutMs.late)).toBeCloseTo(3000 + 1.6448536 * 6 * 10, 2);
  });

  test('gives a doubtful mean the variance n²·sd²: it is the same for all panels', () => {
    const forecast = forecastSlot({ ...pace, panelMeanSd: 0.5 }, { ...load, left: 1200 });
    expect(secondsTo(forecast.runOutMs.late)).toBeCloseTo(3000 + 1.6448536 * 0.5 * 100, 2);
  });

  test('holds nine seeded runs of ten between early and late when count, loss and panels all vary', () => {
    const reel = { ...load, left: 900, sd: 12, loss: 0.01 };
    const { runOutMs } = forecastSlot({ ...pace, panelSd: 5 }, reel);
    const chance = seededChance(20_261_124);
    let inside = 0;
    const runs = 4000;
    for (let run = 0; run < runs; run++) {
      let placements = 0;
      const picks = Math.round(chanceNormal(chance, reel.left, reel.sd));
      for (let i = 0; i < picks; i++) if (chance() >= reel.loss) placements += 1;
      const panels = placements / reel.perPanel;
      const seconds = chanceNormal(chance, panels * 30, 5 * Math.sqrt(panels));
      if (seconds >= secondsTo(runOutMs.early) && seconds <= secondsTo(runOutMs.late)) inside += 1;
    }
    expect(Math.abs(inside / runs - 0.9)).toBeLessThan(0.02);
  });

  test('opens and closes the window at the whole parts left on the lengths', () => {
    const feeder = { pitchMm: 4, hubToPickMm: 700, intakeToPickMm: 250 };
    const forecast = forecastSlot(pace, { ...load, ...feeder });
    expect(forecast.windowParts).toEqual({ opens: 175, closes: 62 });
    expect(secondsTo(forecast.windowMs!.opens)).toBe(((4000 - 175) / 12) * 30);
    expect(secondsTo(forecast.windowMs!.closes)).toBe(((4000 - 62) / 12) * 30);
  });

  test('takes the loss into account for the window too', () => {
    const feeder = { pitchMm: 4, hubToPickMm: 700, intakeToPickMm: 250 };
    const forecast = forecastSlot(pace, { ...load, ...feeder, loss: 0.1 });
    expect(secondsTo(forecast.windowMs!.opens)).toBeCloseTo(((0.9 * 3825) / 12) * 30, 3);
  });

  test('says now when fewer parts are left than the window needs', () => {
    const feeder = { pitchMm: 4, hubToPickMm: 700, intakeToPickMm: 250 };
    const forecast = forecastSlot(pace, { ...load, ...feeder, left: 100 });
    expect(forecast.windowMs!.opens).toBe(nowMs);
    expect(secondsTo(forecast.windowMs!.closes)).toBe(((100 - 62) / 12) * 30);
  });

  test('has no window when one of the lengths is not known', () => {
    const forecast = forecastSlot(pace, { ...load, pitchMm: 4, hubToPickMm: 700 });
    expect(forecast.windowMs).toBeNull();
  });

  test('is over now when the reel is empty', () => {
    const forecast = forecastSlot(pace, { ...load, left: 0 });
    expect(forecast.runOutMs).toEqual({ early: nowMs, expected: nowMs, late: nowMs });
    expect([forecast.fullPanels, forecast.risk, forecast.outlasts]).toEqual([0, 1, false]);
  });

  test('outlasts a run that is done', () => {
    const forecast = forecastSlot({ ...pace, panelsLeft: 0 }, { ...load, left: 0 });
    expect([forecast.risk, forecast.outlasts]).toEqual([0, true]);
  });

  test('skips breaks and stays on a break’s start', () => {
    const stop = { fromMs: nowMs + 10_000_000, toMs: nowMs + 11_000_000 };
    const forecast = forecastSlot({ ...pace, calendar: workingTime([stop]) }, load);
    expect(secondsTo(forecast.runOutMs.expected)).toBe(10_000);
    const later = forecastSlot({ ...pace, calendar: workingTime([stop]) }, { ...load, left: 4012 });
    expect(secondsTo(later.runOutMs.expected)).toBe(11_030);
  });

  test.each([
    { reason: 'no placements per panel', change: { perPanel: 0 } },
    { reason: 'less than nothing left', change: { left: -1 } },
    { reason: 'a loss beyond 1', change: { loss: 1.2 } },
  ])('throws when there is $reason', ({ change }) => {
    expect(() => forecastSlot(pace, { ...load, ...change })).toThrow(RangeError);
  });

  const loadArb: fc.Arbitrary<SlotLoad> = fc.record({
    slot: fc.constantFrom('M1-F-001', 'M1-F-002', 'M1-R-001'),
    perPanel: fc.integer({ min: 1, max: 60 }),
    left: fc.nat(20_000),
    sd: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 200, noNaN: true })),
    loss: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.2, noNaN: true })),
  });

  test('keeps early, expected and late in order, and never comes sooner with more parts', () => {
    fc.assert(
      fc.property(loadArb, fc.nat(500), (any, more) => {
        const forecast = forecastSlot(pace, any);
        const part = (30 / any.perPanel) * 1000; // a whole-number law's points may stand one part off its mean
        expect(forecast.runOutMs.early).toBeLessThanOrEqual(forecast.runOutMs.expected + part);
        expect(forecast.runOutMs.late).toBeGreaterThanOrEqual(forecast.runOutMs.expected - part);
        expect(forecast.runOutMs.early).toBeLessThanOrEqual(forecast.runOutMs.late);
        const fuller = forecastSlot(pace, { ...any, left: any.left + more });
        expect(fuller.runOutMs.expected).toBeGreaterThanOrEqual(forecast.runOutMs.expected);
        expect(fuller.fullPanels).toBeGreaterThanOrEqual(forecast.fullPanels);
      }),
    );
  });

  test('forecastLine() names the soonest first, of equal ones in walking order', () => {
    const loads = [
      ['c', 4000],
      ['b', 4000],
      ['a', 5000],
      ['d', 100],
      ['e', 4000],
    ] as const;
    const line = forecastLine(
      pace,
      loads.map(([slot, left]) => ({ ...load, slot, left })),
    );
    expect(line.map(({ slot }) => slot).join('')).toBe('dbcea');
  });

  test('forecastLine() names equal ones in walking order, however their numbers are written', () => {
    const line = forecastLine(
      pace,
      ['F10', 'F9', 'F2'].map((slot) => ({ ...load, slot })),
    );
    expect(line.map(({ slot }) => slot)).toEqual(['F2', 'F9', 'F10']);
  });

  test('refuses what no line has', () => {
    for (const wrong of [
      { perPanel: 0 },
      { perPanel: -1 },
      { left: -1 },
      { left: Infinity },
      { loss: 1.1 },
      { loss: -0.1 },
    ])
      expect(() => forecastSlot(pace, { ...load, ...wrong }), JSON.stringify(wrong)).toThrow(RangeError);
    for (const panelSeconds of [0, -1, Infinity, Number.NaN])
      expect(() => forecastSlot({ ...pace, panelSeconds }, load)).toThrow(RangeError);
    expect(forecastSlot(pace, { ...load, left: 0, loss: 1 }).fullPanels).toBe(0);
    expect(forecastSlot(pace, { ...load, loss: 0 }).fullPanels).toBe(333);
  });

  test('forecastLine() asks no order of the slots', () => {
    fc.assert(
      fc.property(fc.uniqueArray(loadArb, { selector: (any) => any.slot }), (loads) => {
        const line = forecastLine(pace, loads);
        expect(forecastLine(pace, [...loads].reverse())).toEqual(line);
        const moments = line.map((forecast) => forecast.runOutMs.expected);
        expect([...moments].sort((a, b) => a - b)).toEqual(moments);
      }),
    );
  });
});

describe('panelSecondsFromRate()', () => {
  test('gives 92.55 s for 1234 placements at 60 000 an hour and a share of 0.8', () => {
    expect(panelSecondsFromRate({ placements: 1234, cph: 60_000, share: 0.8 })).toBeCloseTo(92.55, 9);
  });
});

describe('wholeBelow()', () => {
  test('takes no more for a rounding error than a thousand-millionth', () => {
    expect([wholeBelow(1 - 0.9e-9), wholeBelow(1 - 1.5e-9)]).toEqual([1, 0]);
    expect([wholeBelow(1000 - 0.9e-6), wholeBelow(1000 - 1.5e-6)]).toEqual([1000, 999]);
  });

  test.each([
    [0.3 / 0.1, 3],
    [2.999, 2],
    [175, 175],
    [(1 - 0.9) * 10, 1],
    [0, 0],
  ])('takes %f to %i', (x, whole) => {
    expect(wholeBelow(x)).toBe(whole);
  });
});
