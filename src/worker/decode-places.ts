// Where in a frame could a code be, how large and which way up?
// Method: the structure tensor over blocks of 8 pixels (gradient energy, direction and how much the directions agree):
// bars agree on one direction, squares on two at right angles, plain paper and noise on none. Blocks that touch and agree
// make a place. Refused: a trained detector (weight, and no telling why it missed) and looking at a shrunken frame, where
// bars of two pixels melt into grey.

import type { GrayImage } from './decode-protocol.ts';

export interface Place {
  /** `joined`: several places that may be parts of one code. */
  readonly kind: 'stripes' | 'matrix' | 'joined';
  /** Middle, in pixels of the frame. */
  readonly x: number;
  readonly y: number;
  /** Direction across the bars, or of one side of the square; radians from the x axis. */
  readonly angle: number;
  /** Size along and across that direction, in pixels, without quiet zone. */
  readonly length: number;
  readonly breadth: number;
  /** Pixels along the bars for each one across them by which the code's own direction leaves a line square to its bars; 0 where not told. */
  readonly lean?: number;
  /** Gradient energy over that of the frame's noise. */
  readonly strength: number;
}

const BLOCK = 8;

interface Blocks {
  readonly columns: number;
  readonly rows: number;
  readonly energy: Float32Array;
  /** Double-angle sums: cos 2θ and sin 2θ parts, then cos 4θ and sin 4θ parts. */
  readonly cos2: Float32Array;
  readonly sin2: Float32Array;
  readonly cos4: Float32Array;
  readonly sin4: Float32Array;
}

/** Places worth a closer look, strongest first. Cost: one pass over the frame. */
export function findPlaces(image: GrayImage, most: number): readonly Place[] {
  const blocks = smoothBlocks(measureBlocks(image));
  const noise = noiseEnergy(blocks.energy);
  const floor = Math.max(noise * 2.2, noise + 25);
  const strong = Uint8Array.from(blocks.energy, (energy) => (energy > floor ? 1 : 0));
  const stripes = components(blocks, strong, 'stripes').filter(({ cells }) => cells.length >= LEAST_CELLS);
  // The ends of bars show two directions and would bridge a square code to its neighbours.
  const matrices = components(blocks, without(blocks, strong, stripes), 'matrix');
  return [...stripes, ...matrices]
    .map((cells) => toPlace(blocks, cells, noise))
    .filter((place) => place !== null)
    .sort((left, right) => right.strength - left.strength)
    .slice(0, most);
}

function measureBlocks(image: GrayImage): Blocks {
  const { width, height, data } = image;
  const columns = Math.floor(width / BLOCK);
  const rows = Math.floor(height / BLOCK);
  const size = columns * rows;
  const [energy, cos2, sin2] = [new Float32Array(size), new Float32Array(size), new Float32Array(size)];
  const [cos4, sin4] = [new Float32Array(size), new Float32Array(size)];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let [e, c2, s2, c4, s4] = [0, 0, 0, 0, 0];
      const top = Math.max(1, row * BLOCK);
      const bottom = Math.min(height - 1, (row + 1) * BLOCK);
      const left = Math.max(1, column * BLOCK);
      const right = Math.min(width - 1, (column + 1) * BLOCK);
      for (let y = top; y < bottom; y++) {
        for (let at = y * width + left, end = y * width + right; at < end; at++) {
          // Scharr's weights (3, 10, 3): plain differences lean up to 5 degrees towards the axes on fine bars.
          const [above, below] = [at - width, at + width]; // inside by the bounds above
          const gx =
            (3 * (data[above + 1]! - data[above - 1]! + data[below + 1]! - data[below - 1]!) +
              10 * (data[at + 1]! - data[at - 1]!)) /
            16;
          const gy =
            (3 * (data[below - 1]! - data[above - 1]! + data[below + 1]! - data[above + 1]!) +
              10 * (data[below]! - data[above]!)) /
            16;
          const square = gx * gx + gy * gy;
          if (square === 0) continue;
          const cos = gx * gx - gy * gy;
          const sin = 2 * gx * gy;
          e += square;
          c2 += cos;
          s2 += sin;
          c4 += (cos * cos - sin * sin) / square;
          s4 += (2 * cos * sin) / square;
        }
      }
      const cell = row * columns + column;
      const area = BLOCK * BLOCK;
      energy[cell] = e / area;
      cos2[cell] = c2 / area;
      sin2[cell] = s2 / area;
      cos4[cell] = c4 / area;
      sin4[cell] = s4 / area;
    }
  }
  return { columns, rows, energy, cos2, sin2, cos4, sin4 };
}

function smoothBlocks(blocks: Blocks): Blocks {
  const { columns, rows } = blocks;
  const smooth = (values: Float32Array) => {
    const out = new Float32Array(values.length);
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        let sum = 0;
        let count = 0;
        for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
          for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
            sum += values[y * columns + x]!; // inside by the bounds
            count += 1;
          }
        }
        out[row * columns + column] = sum / count;
      }
    }
    return out;
  };
  const { energy, cos2, sin2, cos4, sin4 } = blocks;
  return {
    columns,
    rows,
    energy: smooth(energy),
    cos2: smooth(cos2),
    sin2: smooth(sin2),
    cos4: smooth(cos4),
    sin4: smooth(sin4),
  };
}

/** Most of a frame is plain, so its lower third tells the noise. */
function noiseEnergy(energy: Float32Array): number {
  const sorted = Float32Array.from(energy).sort();
  return sorted[Math.floor(sorted.length * 0.35)] ?? 0;
}

/** Share of the energy whose directions agree, from which blocks count as bars. */
const AGREEING = 0.55;
/** Directions of touching blocks of one code differ by less than this (cosine of twice the angle). */
const SAME_DIRECTION = Math.cos((2 * 14 * Math.PI) / 180);

function components(blocks: Blocks, strong: Uint8Array, kind: Place['kind']): readonly Cells[] {
  const { columns, rows, energy, cos2, sin2 } = blocks;
  const seen = new Uint8Array(strong.length);
  const agrees = (cell: number) => Math.hypot(cos2[cell]!, sin2[cell]!) >= AGREEING * energy[cell]!;
  const belongs = (cell: number) => strong[cell] === 1 && (kind === 'matrix' || agrees(cell));
  const found: Cells[] = [];
  for (let start = 0; start < strong.length; start++) {
    if (seen[start] === 1 || !belongs(start) || (kind === 'matrix' && agrees(start))) continue;
    const cells = [start];
    seen[start] = 1;
    for (let at = 0; at < cells.length; at++) {
      const cell = cells[at]!; // grows while it is walked
      const column = cell % columns;
      const row = (cell - column) / columns;
      for (const [dx, dy] of NEIGHBOURS) {
        const [x, y] = [column + dx, row + dy];
        if (x < 0 || y < 0 || x >= columns || y >= rows) continue;
        const next = y * columns + x;
        if (seen[next] === 1 || !belongs(next)) continue;
        if (kind === 'stripes' && !isSameDirection(blocks, cell, next)) continue;
        if (kind === 'matrix' && agrees(next)) continue;
        seen[next] = 1;
        cells.push(next);
      }
    }
    found.push({ kind, cells });
  }
  return found;
}

function without({ columns, rows }: Blocks, strong: Uint8Array, found: readonly Cells[]): Uint8Array {
  const left = strong.slice();
  for (const cell of found.flatMap(({ cells }) => cells)) {
    const column = cell % columns;
    const row = (cell - column) / columns;
    for (const [dx, dy] of NEIGHBOURS) {
      const [x, y] = [column + dx, row + dy];
      if (x >= 0 && y >= 0 && x < columns && y < rows) left[y * columns + x] = 0;
    }
  }
  return left;
}

interface Cells {
  readonly kind: Place['kind'];
  readonly cells: readonly number[];
}

const NEIGHBOURS: readonly (readonly [number, number])[] = [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [1, -1], [-1, 1], [-1, -1]]; // biome-ignore format: one line reads better

function isSameDirection({ cos2, sin2 }: Blocks, one: number, other: number): boolean {
  const dot = cos2[one]! * cos2[other]! + sin2[one]! * sin2[other]!; // cells of the grid
  const lengths = Math.hypot(cos2[one]!, sin2[one]!) * Math.hypot(cos2[other]!, sin2[other]!);
  return dot >= SAME_DIRECTION * lengths;
}

/** Fewest blocks of a code: 24 by 24 pixels. */
const LEAST_CELLS = 6;

function toPlace(blocks: Blocks, { kind, cells }: Cells, noise: number): Place | null {
  if (cells.length < LEAST_CELLS) return null;
  const sum = (values: Float32Array) => cells.reduce((total, cell) => total + values[cell]!, 0); // cells of the grid
  const energy = sum(blocks.energy);
  const angle =
    kind === 'stripes'
      ? Math.atan2(sum(blocks.sin2), sum(blocks.cos2)) / 2
      : Math.atan2(sum(blocks.sin4), sum(blocks.cos4)) / 4;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  let [lowU, highU, lowV, highV] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const cell of cells) {
    const x = ((cell % blocks.columns) + 0.5) * BLOCK;
    const y = (Math.floor(cell / blocks.columns) + 0.5) * BLOCK;
    const u = x * cos + y * sin;
    const v = y * cos - x * sin;
    lowU = Math.min(lowU, u);
    highU = Math.max(highU, u);
    lowV = Math.min(lowV, v);
    highV = Math.max(highV, v);
  }
  const [u, v] = [(lowU + highU) / 2, (lowV + highV) / 2];
  const length = highU - lowU + BLOCK;
  const breadth = highV - lowV + BLOCK;
  // A single edge, such as a label's, is long and thin along its bars.
  if (kind === 'stripes' && (length < 4 * BLOCK || (length < 7 * BLOCK && breadth > 5 * length))) return null;
  return {
    kind,
    x: u * cos - v * sin,
    y: u * sin + v * cos,
    angle,
    length,
    breadth,
    strength: energy / Math.max(noise, 1),
  };
}

interface Span {
  lowU: number;
  highU: number;
  lowV: number;
  highV: number;
  members: number;
  strength: number;
}

/** Pixels between two places that may still be parts of one code, such as the ends and the middle of a stacked one. */
const BRIDGE = 16;

/** Joins neighbouring places that stand square to each other: a stacked code comes in parts, bars and squares. */
export function joinPlaces(places: readonly Place[]): readonly Place[] {
  const [strongest] = places;
  if (strongest === undefined) return [];
  const { angle } = strongest;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const spans = places.filter((place) => isSquareTo(place.angle, angle)).map((place) => toSpan(place, angle));
  const joined = spans.reduce<readonly Span[]>((groups, span) => {
    const near = groups.filter((group) => touches(group, span));
    return [...groups.filter((group) => !near.includes(group)), [...near, span].reduce(joinSpans)];
  }, []);
  return joined
    .filter(({ members }) => members > 1)
    .map(({ lowU, highU, lowV, highV, strength }) => {
      const [u, v] = [(lowU + highU) / 2, (lowV + highV) / 2];
      const [length, breadth] = [highU - lowU, highV - lowV];
      return { kind: 'joined', x: u * cos - v * sin, y: u * sin + v * cos, angle, length, breadth, strength };
    });
}

function isSquareTo(one: number, other: number): boolean {
  return Math.cos(4 * (one - other)) > Math.cos((4 * 10 * Math.PI) / 180);
}

function toSpan(place: Place, angle: number): Span {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const u = place.x * cos + place.y * sin;
  const v = place.y * cos - place.x * sin;
  const lean = place.angle - angle;
  const [c, s] = [Math.abs(Math.cos(lean)), Math.abs(Math.sin(lean))];
  const alongU = (place.length * c + place.breadth * s) / 2;
  const alongV = (place.length * s + place.breadth * c) / 2;
  return {
    lowU: u - alongU,
    highU: u + alongU,
    lowV: v - alongV,
    highV: v + alongV,
    members: 1,
    strength: place.strength,
  };
}

function touches(one: Span, other: Span): boolean {
  const apartU = Math.max(one.lowU, other.lowU) - Math.min(one.highU, other.highU);
  const apartV = Math.max(one.lowV, other.lowV) - Math.min(one.highV, other.highV);
  return apartU <= BRIDGE && apartV <= BRIDGE;
}

function joinSpans(one: Span, other: Span): Span {
  return {
    lowU: Math.min(one.lowU, other.lowU),
    highU: Math.max(one.highU, other.highU),
    lowV: Math.min(one.lowV, other.lowV),
    highV: Math.max(one.highV, other.highV),
    members: one.members + other.members,
    strength: one.strength + other.strength,
  };
}
