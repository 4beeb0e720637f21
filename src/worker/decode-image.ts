// Grey picture arithmetic for the decoder's second looks: grey from colour, means, sharpening, boxes.
// Method: plain loops over bytes with running sums; each answers a new picture and leaves the given one alone.
// Refused: canvas filters, which differ by browser and copy through the graphics card.

import type { GrayImage, Quad } from './decode-protocol.ts';

/** A rectangle in pixels of a frame. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Red, green, blue, alpha to grey by the luma weights of ITU-R BT.601, in 10-bit fixed point. */
export function rgbaToGray(rgba: Uint8ClampedArray, width: number, height: number): GrayImage {
  const data = new Uint8Array(width * height);
  for (let at = 0, from = 0; at < data.length; at++, from += 4) {
    data[at] = (306 * rgba[from]! + 601 * rgba[from + 1]! + 117 * rgba[from + 2]! + 512) >> 10; // in range by the loop
  }
  return { data, width, height };
}

/** Mean over a square window, reach pixels each way, by running sums: cost does not grow with the reach. */
export function boxMeanGray(image: GrayImage, reach: number): GrayImage {
  return alongRows(alongColumns(image, reach), reach);
}

/** The sums of all columns go down together, row by row: a picture is read as it lies in memory. */
function alongColumns(image: GrayImage, reach: number): GrayImage {
  const { width, height, data } = image;
  const mean = new Uint8Array(data.length);
  const count = 2 * reach + 1;
  const sums = new Int32Array(width);
  for (let x = 0; x < width; x++) sums[x] = data[x]! * (reach + 1);
  for (let y = 1; y <= reach; y++) {
    const row = Math.min(y, height - 1) * width;
    for (let x = 0; x < width; x++) sums[x]! += data[row + x]!; // inside by the loop
  }
  for (let y = 0; y < height; y++) {
    const row = y * width;
    const next = Math.min(y + reach + 1, height - 1) * width;
    const last = Math.max(y - reach, 0) * width;
    for (let x = 0; x < width; x++) {
      mean[row + x] = (sums[x]! + reach) / count;
      sums[x]! += data[next + x]! - data[last + x]!;
    }
  }
  return { data: mean, width, height };
}

function alongRows(image: GrayImage, reach: number): GrayImage {
  const { width, height, data } = image;
  const mean = new Uint8Array(data.length);
  const count = 2 * reach + 1;
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let sum = data[row]! * (reach + 1);
    for (let x = 1; x <= reach; x++) sum += data[row + Math.min(x, width - 1)]!;
    for (let x = 0; x < width; x++) {
      mean[row + x] = (sum + reach) / count;
      sum += data[row + Math.min(x + reach + 1, width - 1)]! - data[row + Math.max(x - reach, 0)]!;
    }
  }
  return { data: mean, width, height };
}

/** Unsharp mask: adds `amount` times what differs from the mean around. Brings edges back after soft focus. */
export function sharpenGray(image: GrayImage, reach: number, amount: number): GrayImage {
  const mean = boxMeanGray(image, reach);
  const data = new Uint8ClampedArray(image.data.length);
  for (let at = 0; at < data.length; at++) {
    const value = image.data[at]!; // same length by construction
    data[at] = value + amount * (value - mean.data[at]!);
  }
  return { data: new Uint8Array(data.buffer), width: image.width, height: image.height };
}

/** How rows are sharpened; reaches in pixels each way. */
export interface RowSharpening {
  readonly reach: number;
  readonly amount: number;
  /** Reach over which the light is made even; 0 for not at all. */
  readonly evenReach: number;
}

/** Unsharp mask along each row by itself, for pictures that say the same down a column; then evens out light that changes along it. */
export function sharpenRows(image: GrayImage, { reach, amount, evenReach }: RowSharpening): GrayImage {
  const { width, height, data } = image;
  const out = new Uint8ClampedArray(data.length);
  const sums = new Int32Array(width + 1);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    for (let x = 0; x < width; x++) sums[x + 1] = sums[x]! + data[row + x]!; // inside by the loop
    for (let x = 0; x < width; x++) {
      const value = data[row + x]!;
      const sharp = value + amount * (value - meanBetween(sums, x - reach, x + reach + 1));
      out[row + x] =
        evenReach === 0 ? sharp : 128 + sharp - meanBetween(sums, x - evenReach, x + evenReach + 1);
    }
  }
  return { data: new Uint8Array(out.buffer), width, height };
}

function meanBetween(sums: Int32Array, from: number, to: number): number {
  const [low, high] = [Math.max(0, from), Math.min(sums.length - 1, to)];
  return (sums[high]! - sums[low]!) / (high - low); // clamped
}

/** The smallest upright box around a quad. */
export function quadToBox(quad: Quad): Box {
  const xs = quad.map(({ x }) => x);
  const ys = quad.map(({ y }) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
