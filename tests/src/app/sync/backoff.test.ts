// Waits with full jitter, and that a plant's tablets do not knock all at once.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance } from '../../../../shared/kit/chance.ts';
import { longestWaitMs, retryAfterMs, waitAfter } from '../../../../src/app/sync/backoff.ts';

describe('`waitAfter()`', () => {
  it('lies between nothing and min(60 s, 0.5 s doubled each time)', () => {
    fc.assert(
      fc.property(
        fc.nat(2_000),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        (failures, chance) => {
          const wait = waitAfter(failures, chance);
          expect(wait).toBeGreaterThanOrEqual(0);
          expect(wait).toBeLessThanOrEqual(Math.min(longestWaitMs, 500 * 2 ** Math.min(failures, 20)));
        },
      ),
    );
  });

  it('spreads 300 tablets over the wait', () => {
    const chance = seededChance(7);
    const waits = Array.from({ length: 300 }, () => waitAfter(6, chance()));
    const perSecond = new Map<number, number>();
    for (const wait of waits)
      perSecond.set(Math.floor(wait / 1_000), (perSecond.get(Math.floor(wait / 1_000)) ?? 0) + 1);
    // 300 over 32 s is 9.4 a second; without jitter it would be 300 in one.
    expect(Math.max(...perSecond.values())).toBeLessThan(30);
    const mean = waits.reduce((sum, wait) => sum + wait, 0) / waits.length;
    expect(Math.abs(mean - 16_000)).toBeLessThan(1_600);
  });
});

describe('`retryAfterMs()`', () => {
  it.each([
    ['3', 3_000],
    [' 120 ', 120_000],
    ['Wed, 21 Oct 2026 07:28:00 GMT', null],
    ['-1', null],
    ['', null],
    [null, null],
  ])('reads %j as %j', (header, ms) => {
    expect(retryAfterMs(header)).toBe(ms);
  });
});
