// How many totals a station puts into the log: a year that stays small, and panels told at once in every week that is no endless run.

import { describe, expect, test } from 'vitest';
import { openLogBudget, SPARED_MOST, TOTAL_EVERY_MS } from '../../../src/link/log-budget.ts';

const DAY_S = 86_400;

/** Panels that were told at once, and those that were not, of a line that makes one every `seconds` while it runs. */
function play(days: number, seconds: number, runs: (day: number, second: number) => boolean) {
  const budget = openLogBudget(SPARED_MOST, 0);
  const told = { atOnce: 0, waited: 0 };
  for (let at = seconds; at < days * DAY_S; at += seconds) {
    if (!runs(Math.floor(at / DAY_S), at % DAY_S)) continue;
    if (budget.may(at * 1000)) {
      budget.told();
      told.atOnce += 1;
    } else told.waited += 1;
  }
  return told;
}

describe('a station’s budget', () => {
  test.each([
    ['a panel every 15 s, five days a week around the clock', 15, (day: number) => day % 7 < 5],
    [
      'a panel every 10 s, two shifts on weekdays',
      10,
      (day: number, s: number) => day % 7 < 5 && s < 15 * 3600,
    ],
    ['a panel every 6 s, a shift every day', 6, (_: number, s: number) => s < 6 * 3600],
  ])('tells every panel at once: %s', (_, seconds, runs) => {
    const told = play(70, seconds, runs);
    expect(told.waited).toBe(0);
    expect(told.atOnce).toBeGreaterThan(200_000);
  });

  test('holds a line that never stops to what a year may hold', () => {
    const days = 28;
    const { atOnce, waited } = play(days, 3, () => true);
    const most = SPARED_MOST + (days * DAY_S * 1000) / TOTAL_EVERY_MS;
    expect(atOnce).toBeLessThanOrEqual(most);
    expect(atOnce).toBeGreaterThan(most - 10);
    expect(waited).toBeGreaterThan(0);
  });

  test('takes nothing from a clock that stands or steps back, and owes nothing', () => {
    const budget = openLogBudget(0, 100_000);
    for (const ms of [100_000, 50_000, 100_000 + TOTAL_EVERY_MS - 1]) expect(budget.may(ms)).toBe(false);
    budget.told();
    expect(budget.spared()).toBe(0);
    expect(budget.may(100_000 + 2 * TOTAL_EVERY_MS - 1)).toBe(true);
  });
});
