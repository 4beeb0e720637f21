// How did the picture move between two frames, judged by codes seen in both?
// Method: least-squares similarity (shift, turn, scale) over the corners of the codes that moved alike. Refused: a full
// perspective fit, which four noisy corners do not hold down away from the code; and any fit over a far jump, as two labels
// often carry one text (quantity, lot), and the jump from one to the other is no movement of the picture.

import type { Point, Quad } from '../../worker/decode-protocol.ts';

/** x' = a x - b y + dx, y' = b x + a y + dy. */
export interface Shift {
  readonly a: number;
  readonly b: number;
  readonly dx: number;
  readonly dy: number;
}

export interface Sighting {
  readonly from: Quad;
  readonly to: Quad;
}

/** A code may move by this share of its longer side between two looks. */
const MOST_MOVED = 0.5;

/**
 * The movement that most of the codes agree on, the smaller one where as many agree on another; null where none moved little
 * enough for it to be the same code surely.
 */
export function movementOf(pairs: readonly Sighting[]): Shift | null {
  const moved = pairs
    .map((pair) => {
      const [from, to] = [centreOf(pair.from), centreOf(pair.to)];
      const reach = MOST_MOVED * longestSide(pair.from);
      return { pair, dx: to.x - from.x, dy: to.y - from.y, reach };
    })
    .filter(({ dx, dy, reach }) => Math.hypot(dx, dy) <= reach)
    .sort((one, other) => Math.hypot(one.dx, one.dy) - Math.hypot(other.dx, other.dy));
  const camps = moved.map((lead) =>
    moved.filter(({ dx, dy, reach }) => Math.hypot(dx - lead.dx, dy - lead.dy) <= reach),
  );
  const camp = camps.reduce((most, each) => (each.length > most.length ? each : most), []);
  return camp.length === 0 ? null : shiftBetween(camp.map(({ pair }) => pair));
}

/** The similarity that best carries the corners of `from` to those of `to`; at least one pair. */
export function shiftBetween(pairs: readonly Sighting[]): Shift {
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

/** A code's outline in the newer frame. */
export function moveQuad(shift: Shift, [a, b, c, d]: Quad): Quad {
  return [movePoint(shift, a), movePoint(shift, b), movePoint(shift, c), movePoint(shift, d)];
}

export function centreOf(quad: Quad): Point {
  return { x: quad.reduce((sum, { x }) => sum + x, 0) / 4, y: quad.reduce((sum, { y }) => sum + y, 0) / 4 };
}

export function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

export function longestSide(quad: Quad): number {
  return Math.max(...quad.map((corner, at) => distance(corner, quad[(at + 1) % 4] ?? corner)));
}

/** Whether a point lies within an outline whose corners go round it. */
export function isWithin(quad: Quad, { x, y }: Point): boolean {
  const sides = quad.map((start, at) => {
    const end = quad[(at + 1) % 4] ?? start;
    return (end.x - start.x) * (y - start.y) - (end.y - start.y) * (x - start.x);
  });
  return sides.every((side) => side >= 0) || sides.every((side) => side <= 0);
}
