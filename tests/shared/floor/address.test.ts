// Addresses of slots: reading, writing, walking order.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareSlots, formatSlot, parseSlot } from '../../../shared/floor/address.ts';

const address = fc.record({
  machine: fc.stringMatching(/^[A-Z]{1,3}\d{0,2}$/),
  bank: fc.stringMatching(/^[A-Z]{1,4}$/),
  position: fc.integer({ min: 0, max: 9999 }),
});

describe('parseSlot()', () => {
  test('reads what `formatSlot()` writes', () => {
    fc.assert(
      fc.property(address, (slot) => {
        expect(parseSlot(formatSlot(slot))).toEqual(slot);
      }),
    );
  });

  test('reads positions with and without leading zeros and banks in either case', () => {
    expect(parseSlot('M1-F-014')).toEqual({ machine: 'M1', bank: 'F', position: 14 });
    expect(parseSlot('M1-f-14')).toEqual({ machine: 'M1', bank: 'F', position: 14 });
  });

  test('refuses what is no address', () => {
    const rows = [
      '',
      'M1',
      'M1-F',
      'M1-F-',
      'M1-F-x',
      '-F-1',
      'M 1-F-1',
      'M1-F-12345',
      'M1-F1-1',
      'M1-F-1-2',
      ' M1-F-1',
    ];
    for (const text of rows) expect(parseSlot(text), text).toBeNull();
  });
});

describe('compareSlots()', () => {
  test('walks machine by machine, front before rear, by number; other texts last', () => {
    const walk = ['M1-F-2', 'M1-F-010', 'M1-R-001', 'M2-F-001', 'M10-F-001', 'feeder cart', 'spare'];
    for (let seed = 0; seed < walk.length; seed += 1) {
      const mixed = [...walk.slice(seed), ...walk.slice(0, seed)].reverse();
      expect(mixed.sort(compareSlots)).toEqual(walk);
    }
  });

  test('is one order: never contradicts itself', () => {
    const text = fc.oneof(address.map(formatSlot), fc.string({ maxLength: 6 }));
    fc.assert(
      fc.property(text, text, text, (a, b, c) => {
        expect(Math.sign(compareSlots(a, b)) + Math.sign(compareSlots(b, a))).toBe(0);
        expect(compareSlots(a, b) === 0).toBe(a === b);
        if (compareSlots(a, b) <= 0 && compareSlots(b, c) <= 0)
          expect(compareSlots(a, c)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });
});
