// How did the picture move between two frames, judged by codes seen in both?
// Method: least-squares similarity (shift, turn, scale) over the corners. Refused: a full perspective fit, which four
// noisy corners do not hold down away from the code.

import type { Point, Quad } from '../../worker/decode-protocol.ts';

/** x' = a x - b y + dx, y' = b x + a y + dy. */
export interface Shift {
  readonly a: number;
  readonly b: number;
  readonly dx: number;
  readonly dy: number;
}

export const identityShift: Shift = { a: 1, b: 0, dx: 0, dy: 0 };

/** The similarity that best carries the corners of `from` to those of `to`; at least one pair. */
export function shiftBetween(pairs: readonly { readonly from: Quad; readonly to: Quad }[]): Shift {
  const corners = pairs.flatMap(({ from, to }) =>
    from.map((point, at) => ({ point, target: to[at] ?? point })),
  );
  const count = corners.length;
  if (count === 0)
    throw new RangeError('Cannot fit movement as pairs must not be empty: current value is 0 pairs');
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / count;
  const fromX = mean(corners.map(({ point }) => point.x));
  const fromY = mean(corners.map(({ point }) => point.y));
  const toX = mean(corners.map(({ target }) => target.x));
  const toY = mean(corners.map(({ target }) => target.y));
  let square = 0;
  let along = 0;
  let across = 0;
  for (const { point, target } of corners) {
    const x = point.x - fromX;
    const y = point.y - fromY;
    square += x * x + y * y;
    along += x * (target.x - toX) + y * (target.y - toY);
    across += x * (target.y - toY) - y * (target.x - toX);
  }
  const a = square === 0 ? 1 : along / square;
  const b = square === 0 ? 0 : across / square;
  return { a, b, dx: toX - a * fromX + b * fromY, dy: toY - b * fromX - a * fromY };
}

/** Where a point of the older frame lies in the newer one. */
export function movePoint(shift: Shift, { x, y }: Point): Point {
  return { x: shift.a * x - shift.b * y + shift.dx, y: shift.b * x + shift.a * y + shift.dy };
}
