// How stripes lean: seen from aside, a bar code is no rectangle, its ends run off along the bars. A line square to the bars then
// leaves the code before it has met all of them, and only a line that runs with the code reads it.
// Method: how much the picture changes across the bars and not along them, in small cells; those sums are laid together along
// each of some directions, and the one in which they make the sharpest bands is the code's own. Refused: the label's edges,
// which reels seldom show whole, and a fit through the outline, which what touches a code pulls away.

import type { Place } from './decode-places.ts';
import type { GrayImage } from './decode-protocol.ts';

/** Size of a cell across the bars and along them, in pixels. */
const CELL = { across: 12, along: 3 };
/** Samples in a cell lie this far apart across the bars. */
const SAMPLE = 1.5;
const MOST_LEAN = 0.7;
const LEAN_STEP = 0.035;
/** Share of the strongest band's change from which a line along the code belongs to it. */
const IN_BAND = 0.15;

/** The same stripes with the direction in which they run, and as broad as they are in that direction. */
export function leanStripes(image: GrayImage, place: Place): Place {
  const cells = measureCells(image, place);
  const steps = Math.round(MOST_LEAN / LEAN_STEP);
  let best = { lean: 0, score: -1, ...layTogether(cells, 0) };
  for (let step = -steps; step <= steps; step++) {
    const lean = step * LEAN_STEP;
    const laid = layTogether(cells, lean);
    const score = laid.bands.reduce((sum, value) => sum + value * value, 0);
    if (score > best.score) best = { lean, score, ...laid };
  }
  const most = best.bands.reduce((high, value) => Math.max(high, value), 0);
  if (most === 0) return place;
  let [first, last] = [0, best.bands.length - 1];
  while (best.bands[first]! < IN_BAND * most) first += 1; // ends at the strongest band
  while (best.bands[last]! < IN_BAND * most) last -= 1;
  const breadth = (last - first + 1) * CELL.along;
  // Along the bars, from the place's middle to that of the bands.
  const off = best.low + first * CELL.along + breadth / 2;
  const [cos, sin] = [Math.cos(place.angle), Math.sin(place.angle)];
  return { ...place, x: place.x - off * sin, y: place.y + off * cos, breadth, lean: best.lean };
}

interface CellGrid {
  readonly columns: number;
  readonly rows: number;
  readonly length: number;
  readonly breadth: number;
  /** Row by row, each row across the bars. */
  readonly change: Float32Array;
}

function measureCells(image: GrayImage, { x, y, angle, length, breadth }: Place): CellGrid {
  const columns = Math.max(1, Math.ceil(length / CELL.across));
  const rows = Math.max(1, Math.ceil(breadth / CELL.along));
  const change = new Float32Array(columns * rows);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { width, height, data } = image;
  const samples = Math.floor(CELL.across / SAMPLE);
  for (let row = 0; row < rows; row++) {
    const v = (row + 0.5) * CELL.along - breadth / 2;
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      for (let sample = 0; sample < samples; sample++) {
        const u = column * CELL.across + (sample + 0.5) * SAMPLE - length / 2;
        const [px, py] = [Math.round(x + u * cos - v * sin), Math.round(y + u * sin + v * cos)];
        if (px < 1 || py < 1 || px >= width - 1 || py >= height - 1) continue;
        const at = py * width + px;
        const dx = data[at + 1]! - data[at - 1]!; // inside by the check above
        const dy = data[at + width]! - data[at - width]!;
        sum += Math.max(0, Math.abs(dx * cos + dy * sin) - Math.abs(dy * cos - dx * sin));
      }
      change[row * columns + column] = sum;
    }
  }
  return { columns, rows, length, breadth, change };
}

/** Sums of the cells along lines that lean; `low`: where the first line crosses the middle, along the bars from there. */
function layTogether(
  { columns, rows, length, breadth, change }: CellGrid,
  lean: number,
): { readonly bands: Float32Array; readonly low: number } {
  const reach = Math.ceil((Math.abs(lean) * length) / 2 / CELL.along) + 1;
  const bands = new Float32Array(rows + 2 * reach);
  for (let column = 0; column < columns; column++) {
    const u = (column + 0.5) * CELL.across - length / 2;
    const shift = reach - Math.round((lean * u) / CELL.along);
    for (let row = 0; row < rows; row++) bands[row + shift]! += change[row * columns + column]!; // inside by the reach
  }
  return { bands, low: -breadth / 2 - reach * CELL.along };
}
