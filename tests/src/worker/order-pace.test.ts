// A search must end in the time asked for on slow devices, and on quick ones give what its seed and budget give.

import { describe, expect, test } from 'vitest';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { orderJobs, workOfSeconds } from '../../../shared/order/jobs.ts';
import type { OrderQuestion } from '../../../shared/order/problem.ts';
import { startPaced } from '../../../src/worker/order-pace.ts';

const SECONDS = 0.2;
const chance = seededChance(3);
/** Too many jobs for a proof, so that the whole budget is spent. */
const question: OrderQuestion = {
  capacity: 10,
  jobs: Array.from({ length: 24 }, (_, job) => ({
    id: `j${job}`,
    parts: [...new Set(Array.from({ length: 8 }, () => `p${chanceBelow(chance, 30)}`))],
  })),
};

/** Plays the search on a clock that goes on by so many ms with every step. */
function play(stepMs: number) {
  let clockMs = 0;
  const started = startPaced(question, { seed: 1, seconds: SECONDS }, () => clockMs);
  if (!started.ok) throw new TypeError('The question has an answer');
  for (let steps = 1; ; steps++) {
    const step = started.value.next();
    clockMs += stepMs;
    if (step.done === true) return { last: step.value, clockMs, steps };
  }
}

describe('startPaced()', () => {
  const full = orderJobs(question, { seed: 1, budget: workOfSeconds(SECONDS) });

  test('gives on a quick device what its seed and budget give', () => {
    expect(full.ok && play(0.01).last.order).toEqual(full.ok && full.value.order);
  });

  test('ends near its time on devices that are two to ten times as slow', () => {
    const whole = play(0.01).steps;
    for (const factor of [2, 4, 10]) {
      const { clockMs, last, steps } = play((factor * SECONDS * 1000) / whole);
      expect(clockMs, `${factor} times as slow`).toBeLessThan(SECONDS * 1300);
      expect(steps).toBeLessThan(whole);
      expect(new Set(last.order).size).toBe(question.jobs.length);
    }
  });

  test('passes on why there is no answer', () => {
    const narrow = startPaced({ ...question, capacity: 3 }, { seed: 1, seconds: 1 }, () => 0);
    expect(narrow.ok ? [] : narrow.error.map(({ code }) => code)).toContain('job-too-wide');
  });
});
