// Which reel hangs on which slot in a picture: by columns under the slots, however the tablet is held, and never by a guess.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { belongTogether, boxOf, type Placed } from '../../../../src/app/scan/pan-place.ts';
import type { Point, Quad } from '../../../../src/worker/decode-protocol.ts';

const box = (key: string, x: number, y: number, width = 60, height = 24): Placed => ({
  key,
  quad: [
    { x: x - width / 2, y: y - height / 2 },
    { x: x + width / 2, y: y - height / 2 },
    { x: x + width / 2, y: y + height / 2 },
    { x: x - width / 2, y: y + height / 2 },
  ],
});

/** As seen by a tablet that is turned and held at a distance. */
function turned({ key, quad }: Placed, degrees: number, scale: number): Placed {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const turn = ({ x, y }: Point): Point => ({
    x: scale * (x * cos - y * sin),
    y: scale * (x * sin + y * cos),
  });
  const [a, b, c, d] = quad;
  const all: Quad = [turn(a), turn(b), turn(c), turn(d)];
  return { key, quad: all };
}

const anyRow = () => true;
const noRow = () => false;
const slots = (...at: readonly number[]) => at.map((x, index) => box(`S${index + 1}`, x, 100));

describe('belongTogether()', () => {
  test('takes the reel in the column of a slot, however the tablet is turned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 359 }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (degrees, scale) => {
          const tops = slots(100, 300, 500).map((each) => turned(each, degrees, scale));
          const reels = [box('R2', 310, 300), box('R1', 80, 220), box('R3', 520, 420)].map((each) =>
            turned(each, degrees, scale),
          );
          const { pairs, unclear } = belongTogether(tops, reels, noRow);
          expect(pairs).toEqual(
            [1, 2, 3].map((at) => ({ slot: `S${at}`, reel: `R${at}`, by: 'nearest-below' })),
          );
          expect(unclear).toEqual([]);
        },
      ),
    );
  });

  test('takes the slot above a reel, not one of the row below it or above that', () => {
    const tops = [box('S1', 100, 100), box('S2', 300, 100), box('T1', 100, 400), box('T2', 300, 400)];
    const { pairs } = belongTogether(tops, [box('R', 100, 250), box('Q', 300, 560)], noRow);
    expect(pairs).toEqual([
      { slot: 'S1', reel: 'R', by: 'nearest-below' },
      { slot: 'T2', reel: 'Q', by: 'nearest-below' },
    ]);
  });

  test('says nothing of a reel above a slot, beside it, or between two', () => {
    for (const [x, y] of [
      [100, 20],
      [700, 300],
      [200, 300],
    ] as const)
      expect(belongTogether(slots(100, 300, 500), [box('R', x, y)], noRow)).toEqual({
        pairs: [],
        unclear: [],
      });
  });

  test('asks where two reels hang in one column', () => {
    const { pairs, unclear } = belongTogether(
      slots(100, 300),
      [box('A', 100, 220), box('B', 110, 330), box('C', 300, 220)],
      noRow,
    );
    expect(pairs).toEqual([{ slot: 'S2', reel: 'C', by: 'nearest-below' }]);
    expect(unclear).toEqual([{ slot: 'S1', reels: ['A', 'B'] }]);
  });

  describe('where no column is clear', () => {
    const leaning = [box('R1', 184, 300), box('R2', 384, 310), box('R3', 584, 290)];

    test('takes the order of a whole row', () => {
      expect(belongTogether(slots(100, 300, 500), leaning, anyRow).pairs).toEqual(
        [1, 2, 3].map((at) => ({ slot: `S${at}`, reel: `R${at}`, by: 'bank-order' })),
      );
    });

    test.each([
      ['slots are missing between them', slots(100, 300, 500), leaning, noRow],
      ['a reel is missing', slots(100, 300, 500), leaning.slice(1), anyRow],
      [
        'they lean by half a column',
        slots(100, 300, 500),
        leaning.map(({ key, quad }) => ({
          key,
          quad: quad.map(({ x, y }) => ({ x: x + 20, y })) as unknown as Quad,
        })),
        anyRow,
      ],
      ['two are too few for an order', slots(100, 300), leaning.slice(0, 2), anyRow],
    ])('says nothing where %s', (_, tops, reels, isRow) => {
      expect(belongTogether(tops, reels, isRow)).toEqual({ pairs: [], unclear: [] });
    });
  });

  test('says nothing where slots lean in different ways, or there are none', () => {
    const crooked = [box('S1', 100, 100), turned(box('S2', 300, 100), 90, 1)];
    expect(belongTogether(crooked, [box('R', 100, 200)], anyRow).pairs).toEqual([]);
    expect(belongTogether([], [box('R', 100, 200)], anyRow).pairs).toEqual([]);
  });
});

describe('boxOf()', () => {
  test('holds every code, in the way of the first', () => {
    const [one, other] = [box('A', 100, 100).quad, box('B', 100, 160).quad];
    expect(boxOf([one])).toBe(one);
    expect(boxOf([one, other]).map(({ x, y }) => [x, y])).toEqual([
      [70, 88],
      [130, 88],
      [130, 172],
      [70, 172],
    ]);
    expect(() => boxOf([])).toThrow(RangeError);
  });
});
