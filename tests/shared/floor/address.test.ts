// Addresses of slots: taking apart, writing, the places that they take, walking order.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compareSlots,
  formatSlot,
  isFullAddress,
  isSameSlot,
  parseSlot,
  positionsOf,
  positionsUnder,
} from '../../../shared/floor/address.ts';

const address = fc.record({
  machine: fc.stringMatching(/^[A-Z]{1,3}\d{0,2}$/),
  bank: fc.stringMatching(/^[A-Z]{1,4}$/).filter((bank) => !/^(?:V|H|AV|AR|BACK|REAR)$/.test(bank)),
  position: fc.integer({ min: 1, max: 9999 }),
  lane: fc.constantFrom(null, 'A', 'B', '2'),
});

describe('parseSlot()', () => {
  test('reads what `formatSlot()` writes', () => {
    fc.assert(
      fc.property(address, (slot) => {
        expect(parseSlot(formatSlot(slot))).toEqual({ slot: formatSlot(slot), ...slot });
      }),
    );
  });

  test.each<
    readonly [text: string, machine: string | null, bank: string | null, at: number, lane: string | null]
  >([
    ['M1-F-014', 'M1', 'F', 14, null],
    ['m1/front/14', 'M1', 'F', 14, null],
    ['M1.R.7', 'M1', 'R', 7, null],
    ['M1 F 14', 'M1', 'F', 14, null],
    ['M1F14', 'M1', 'F', 14, null],
    ['M1-hinten-3', 'M1', 'R', 3, null],
    ['M1-1-001', 'M1', '1', 1, null],
    ['B1.F.45', 'B1', 'F', 45, null],
    ['M1-F1-1', 'M1', 'F1', 1, null],
    ['LINE-2-M1-R-7', 'LINE-2-M1', 'R', 7, null],
    ['M1-14', 'M1', null, 14, null],
    ['12.03', '12', null, 3, null],
    ['F-14', null, 'F', 14, null],
    ['F1', null, 'F', 1, null],
    ['14', null, null, 14, null],
    ['2A', null, null, 2, 'A'],
    ['M1-F-14B', 'M1', 'F', 14, 'B'],
    ['M1-F-014-2', 'M1', 'F', 14, '2'],
    ['M1-F-7-2', 'M1', 'F', 7, '2'],
    ['M1-B1-014-2', 'M1', 'B1', 14, '2'],
    // A bank that is a number: its positions are no lanes of one feeder.
    ['L1-M2-1-2', 'L1-M2', '1', 2, null],
    ['L1-M2-1-14', 'L1-M2', '1', 14, null],
    ['M1-F-12345', 'M1', 'F', 12345, null],
  ])('reads %s', (text, machine, bank, position, lane) => {
    expect(parseSlot(text)).toEqual({ slot: text, machine, bank, position, lane });
  });

  test.each(
    ['', 'left cart', 'M1', 'M1-F', 'M1-F-', 'M1-F-x', '-F-1', 'M1-F-000'].filter((text) => text !== 'M1'),
  )('takes %j for a place of its own', (text) => {
    expect(parseSlot(text)).toEqual({ slot: text, machine: null, bank: null, position: null, lane: null });
    expect(positionsOf(text, 3)).toHaveLength(1);
  });

  test('says which texts are surely slots', () => {
    expect(['M1-F-14', 'M1-F-014-2', 'R-100', '4711', 'LOT-7'].filter(isFullAddress)).toEqual([
      'M1-F-14',
      'M1-F-014-2',
    ]);
    // Another maker's label ends in a number too.
    expect(isFullAddress('ART#22-0603-B#QTY#4000#CH#GL-1')).toBe(false);
  });
});

describe('positionsOf()', () => {
  test('covers the width; a lane and a place of its own take themselves', () => {
    expect(positionsOf('M1-F-014', 3)).toEqual(['M1-F#14', 'M1-F#15', 'M1-F#16']);
    expect(positionsOf('M1-F-014A', 3)).toEqual(['M1-F#14/A']);
    expect(positionsUnder('M1-F-014A', 3)).toEqual(positionsOf('M1-F-014', 3));
    expect(positionsOf('left cart', 3)).toEqual(['LEFT CART#']);
    expect(isSameSlot('M1-F-014', 'm1/front/14')).toBe(true);
    expect(isSameSlot('M1-F-014A', 'M1-F-014B')).toBe(false);
  });
});

describe('compareSlots()', () => {
  test('walks machine by machine, front before rear, by number and lane; places of their own last', () => {
    const walk = [
      'M1-F-2',
      'M1-F-2A',
      'M1-F-2B',
      'M1-F-010',
      'M1-R-001',
      'M2-F-001',
      'M10-F-001',
      'feeder cart',
      'spare',
    ];
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
