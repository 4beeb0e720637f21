// Slots used in turn, by hand-worked times: the second's tape begins where the first's ends.

import { describe, expect, test } from 'vitest';
import { forecastSlot, type LinePace, type SlotLoad } from '../../../shared/forecast/run-out.ts';
import { loadInTurn } from '../../../shared/forecast/turns.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';

const pace: LinePace = { nowMs: 0, panelSeconds: 30, panelsLeft: 400, calendar: workingTime([]) };
const feeder = { pitchMm: 4, hubToPickMm: 700, intakeToPickMm: 250 };
const first: SlotLoad = { slot: 'M1-F-001', perPanel: 12, left: 1200, sd: 0, loss: 0, ...feeder };
const second: SlotLoad = { ...first, slot: 'M1-F-002', left: 2400 };

describe('loadInTurn()', () => {
  test('1200 and 2400 parts at 12 a panel and 30 s: empty after 100 and 300 panels', () => {
    expect(forecastSlot(pace, loadInTurn(first, [])).runOutMs.expected).toBe(3_000_000);
    const after = forecastSlot(pace, loadInTurn(second, [first]));
    expect(after.fullPanels).toBe(300);
    expect(after.runOutMs.expected).toBe(9_000_000);
    // Its own window: 175 and 62 parts left on it, 3600 - 175 = 3425 and 3600 - 62 = 3538 placements from now, 2.5 s each.
    expect(after.windowMs).toEqual({ opens: 8_562_500, closes: 8_845_000 });
  });

  test('counts what the first gives with the first’s own loss', () => {
    // 1000 parts of which one in ten is lost give 900; 500 more of the second without loss: 1400 placements, 116 panels.
    const load = loadInTurn({ ...second, left: 500 }, [{ ...first, left: 1000, loss: 0.1 }]);
    const forecast = forecastSlot(pace, load);
    expect(forecast.placements.mean).toBeCloseTo(1400, 9);
    expect(forecast.fullPanels).toBe(116);
    // Var = n p q of the first alone: 1000 × 0.1 × 0.9 = 90.
    expect(forecast.placements.sd).toBeCloseTo(Math.sqrt(90), 6);
  });

  test('writes what comes first as parts of the second’s own loss, with its spread', () => {
    // 100 parts, half of them lost: 50 placements, variance 100 × ½ × ½. Where a fifth is lost those are 62.5 parts, one deviation 5 ÷ 0.8.
    const load = loadInTurn({ ...second, left: 500, loss: 0.2 }, [{ ...first, left: 100, loss: 0.5 }]);
    expect([load.left, load.sd]).toEqual([562.5, 6.25]);
    // Nothing before it: its own counts, though they are not known.
    const alone = { ...second, left: Number.NaN };
    expect(loadInTurn(alone, [])).toBe(alone);
  });

  test('adds the spreads of both counts, and the second comes after the first at every bound', () => {
    const one = { ...first, sd: 30 };
    const two = loadInTurn({ ...second, sd: 40 }, [one]);
    expect(two.sd).toBeCloseTo(50, 9);
    const [a, b] = [forecastSlot(pace, one).runOutMs, forecastSlot(pace, two).runOutMs];
    expect(b.early).toBeGreaterThan(a.late);
  });
});
