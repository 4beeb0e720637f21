// One order everywhere: total, and never against a tablet's own sequence.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tickClock } from '../../../shared/log/clock.ts';
import type { ClockReading } from '../../../shared/log/entry.ts';
import { compareEntries, compareText, type OrderKey, orderedIndex } from '../../../shared/log/order.ts';

const key: fc.Arbitrary<OrderKey> = fc.record({
  tablet: fc.constantFrom('A', 'a', 'b', 'é'),
  epoch: fc.constantFrom('e1', 'e2'),
  seq: fc.integer({ min: 1, max: 4 }),
  hlc: fc.record({ ms: fc.integer({ min: 0, max: 3 }), n: fc.integer({ min: 0, max: 2 }) }),
});
const sign = (value: number) => Math.sign(value) + 0;

describe('`compareEntries()`', () => {
  it('is a total order', () => {
    fc.assert(
      fc.property(key, key, key, (a, b, c) => {
        expect(sign(compareEntries(a, b))).toBe(sign(-compareEntries(b, a)));
        if (compareEntries(a, b) <= 0 && compareEntries(b, c) <= 0)
          expect(compareEntries(a, c)).toBeLessThanOrEqual(0);
        if (compareEntries(a, b) === 0) expect(a).toEqual(b);
      }),
    );
  });

  it('sorts any shuffle the same', () => {
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), fc.array(fc.nat()), (keys, seeds) => {
        const shuffled = keys
          .map((one, at) => ({ one, rank: seeds[at] ?? at }))
          .sort((a, b) => a.rank - b.rank);
        expect(shuffled.map(({ one }) => one).sort(compareEntries)).toEqual([...keys].sort(compareEntries));
      }),
    );
  });

  it('keeps the sequence of a tablet whose clock is set back and forth', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 2 }), (walls) => {
        let last: ClockReading | null = null;
        const keys = walls.map((wall, at) => {
          last = tickClock(last, wall);
          return { tablet: 't', epoch: 'e', seq: at + 1, hlc: last };
        });
        expect([...keys].sort(compareEntries)).toEqual(keys);
      }),
    );
  });
});

describe('`compareText()`', () => {
  it.each([
    ['a', 'b', -1],
    ['b', 'a', 1],
    ['a', 'a', 0],
    ['Z', 'a', -1],
    ['z', 'é', -1],
    ['\ud83d\ude00', '\ufb33', -1],
  ])('of %s and %s is %i: code units, no language', (a, b, wanted) => {
    expect(compareText(a, b)).toBe(wanted);
  });
});

describe('`orderedIndex()`', () => {
  it('finds where an entry belongs', () => {
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), key, (keys, entry) => {
        const sorted = [...keys].sort(compareEntries);
        const at = orderedIndex(sorted, entry);
        for (const [index, one] of sorted.entries()) expect(compareEntries(one, entry) < 0).toBe(index < at);
      }),
    );
  });
});
