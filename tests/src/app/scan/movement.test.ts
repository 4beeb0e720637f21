import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movePoint, shiftBetween } from '../../../../src/app/scan/movement.ts';
import type { Quad } from '../../../../src/worker/decode-protocol.ts';

const square: Quad = [
  { x: 10, y: 20 },
  { x: 60, y: 20 },
  { x: 60, y: 70 },
  { x: 10, y: 70 },
];

describe('shiftBetween()', () => {
  it('recovers any shift, turn and scale from one code', () => {
    const small = fc.double({ min: -3, max: 3, noNaN: true });
    const far = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 3, noNaN: true }), small, far, far, (scale, turn, dx, dy) => {
        const shift = { a: scale * Math.cos(turn), b: scale * Math.sin(turn), dx, dy };
        const [a, b, c, d] = square;
        const to: Quad = [movePoint(shift, a), movePoint(shift, b), movePoint(shift, c), movePoint(shift, d)];
        const found = shiftBetween([{ from: square, to }]);
        for (const name of ['a', 'b', 'dx', 'dy'] as const) expect(found[name]).toBeCloseTo(shift[name], 6);
      }),
      { seed: 11 },
    );
  });

  it('throws without pairs', () => {
    expect(() => shiftBetween([])).toThrow(RangeError);
  });
});
