// A place in a frame, cut out, turned upright and enlarged in one step.
// Method: cubic convolution (Keys 1981, a = -1/2) at each new pixel; for stripes also the mean along the bars, which takes
// noise away and costs no detail. Refused: turning the whole frame, which costs a hundred times as much.

import type { Place } from './decode-places.ts';
import type { GrayImage, Point, Quad } from './decode-protocol.ts';

export interface Cut {
  readonly image: GrayImage;
  readonly place: Place;
  readonly factor: number;
  readonly factorAcross: number;
}

export interface CutOptions {
  /** Enlargement along the direction; across it too where `factorAcross` names none of its own. */
  readonly factor: number;
  readonly factorAcross?: number | null;
  /** Pixels of the frame added on each side along the direction, and across it. */
  readonly marginAlong: number;
  readonly marginAcross: number;
  /** Half the number of frame pixels averaged along the bars; 0 for none. */
  readonly meanReach: number;
}

/** Largest area of a cut in pixels; beyond it the factor is lowered, so that one look stays short. */
const MOST_PIXELS = 450_000;

export function cutUpright(frame: GrayImage, place: Place, options: CutOptions): Cut {
  const lengthPx = place.length + 2 * options.marginAlong;
  const breadthPx = place.breadth + 2 * options.marginAcross;
  const { factorAcross: across = null } = options;
  const most = MOST_PIXELS / (lengthPx * breadthPx);
  const factor = Math.min(options.factor, across === null ? Math.sqrt(most) : most / across);
  const factorAcross = across ?? factor;
  const width = Math.max(8, Math.round(lengthPx * factor));
  const height = Math.max(8, Math.round(breadthPx * factorAcross));
  const data = new Uint8ClampedArray(width * height);
  const { cos, sin, alongX, alongY } = axesOf(place);
  const { width: frameWidth, data: from } = frame;
  const [lastX, lastY] = [frameWidth - 2, frame.height - 2];
  // All in one loop: a cut has some hundred thousand pixels, and most of a look's time goes here.
  for (let row = 0; row < height; row++) {
    const v = (row + 0.5 - height / 2) / factorAcross;
    const [startX, startY] = [place.x - v * sin - 0.5, place.y + v * cos - 0.5];
    for (let column = 0; column < width; column++) {
      const u = (column + 0.5 - width / 2) / factor;
      const x = startX + u * alongX;
      const y = startY + u * alongY;
      if (!(x >= 1 && y >= 1 && x < lastX && y < lastY)) {
        data[row * width + column] = nearestAt(frame, x, y);
        continue;
      }
      const left = x | 0;
      const top = y | 0;
      const fx = x - left;
      const fy = y - top;
      const a = weight0(fx);
      const b = weight1(fx);
      const c = weight1(1 - fx);
      const d = weight0(1 - fx);
      let at = (top - 1) * frameWidth + left - 1;
      const r0 = a * from[at]! + b * from[at + 1]! + c * from[at + 2]! + d * from[at + 3]!; // inside by the check above
      at += frameWidth;
      const r1 = a * from[at]! + b * from[at + 1]! + c * from[at + 2]! + d * from[at + 3]!;
      at += frameWidth;
      const r2 = a * from[at]! + b * from[at + 1]! + c * from[at + 2]! + d * from[at + 3]!;
      at += frameWidth;
      const r3 = a * from[at]! + b * from[at + 1]! + c * from[at + 2]! + d * from[at + 3]!;
      data[row * width + column] =
        weight0(fy) * r0 + weight1(fy) * r1 + weight1(1 - fy) * r2 + weight0(1 - fy) * r3;
    }
  }
  const image = { data: new Uint8Array(data.buffer), width, height };
  return {
    image: options.meanReach > 0 ? meanDown(image, Math.round(options.meanReach * factorAcross)) : image,
    place,
    factor,
    factorAcross,
  };
}

/** A row of the cut runs with the code, a column with its bars. */
function axesOf({ angle, lean = 0 }: Place) {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { cos, sin, alongX: cos - lean * sin, alongY: sin + lean * cos };
}

/** Corners in the cut back to pixels of the frame. */
export function quadFromCut(quad: Quad, cut: Cut): Quad {
  const { place, factor, factorAcross, image } = cut;
  const { cos, sin, alongX, alongY } = axesOf(place);
  const back = ({ x, y }: Point): Point => {
    const u = (x - image.width / 2) / factor;
    const v = (y - image.height / 2) / factorAcross;
    return { x: place.x + u * alongX - v * sin, y: place.y + u * alongY + v * cos };
  };
  const [a, b, c, d] = quad;
  return [back(a), back(b), back(c), back(d)];
}

/** At the frame's edge, and beyond it, the nearest pixel. */
function nearestAt({ width, height, data }: GrayImage, x: number, y: number): number {
  const nearX = Math.min(width - 1, Math.max(0, Math.round(x)));
  const nearY = Math.min(height - 1, Math.max(0, Math.round(y)));
  return data[nearY * width + nearX]!; // clamped
}

// Keys (1981), IEEE Trans. ASSP 29, 1153, eq. 15: the kernel for distances 1 + f and f.
function weight0(f: number): number {
  return ((-0.5 * f + 1) * f - 0.5) * f;
}

function weight1(f: number): number {
  return (1.5 * f - 2.5) * f * f + 1;
}

/** Mean over a window of rows, column by column. */
function meanDown(image: GrayImage, reach: number): GrayImage {
  const { width, height, data } = image;
  const mean = new Uint8Array(data.length);
  const sums = new Int32Array(width);
  let count = 0;
  const add = (row: number, sign: 1 | -1) => {
    if (row < 0 || row >= height) return;
    count += sign;
    for (let x = 0; x < width; x++) sums[x]! += sign * data[row * width + x]!; // inside by the check above
  };
  for (let row = 0; row < Math.min(reach, height); row++) add(row, 1);
  for (let row = 0; row < height; row++) {
    add(row + reach, 1);
    for (let x = 0; x < width; x++) mean[row * width + x] = sums[x]! / count;
    add(row - reach, -1);
  }
  return { data: mean, width, height };
}
