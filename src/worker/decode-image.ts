// Grey picture arithmetic for the decoder's second looks: crop, rescale, sharpen, even out the light.
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

/** Cuts a box out; the box is first cut to the picture. */
export function cropGray(image: GrayImage, box: Box): GrayImage {
  const left = Math.max(0, Math.floor(box.x));
  const top = Math.max(0, Math.floor(box.y));
  const width = Math.max(1, Math.min(image.width, Math.ceil(box.x + box.width)) - left);
  const height = Math.max(1, Math.min(image.height, Math.ceil(box.y + box.height)) - top);
  const data = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const from = (top + row) * image.width + left;
    data.set(image.data.subarray(from, from + width), row * width);
  }
  return { data, width, height };
}

/** Enlarges by a whole or broken factor above 1, straight lines between pixels. */
export function enlargeGray(image: GrayImage, factor: number): GrayImage {
  const width = Math.max(1, Math.round(image.width * factor));
  const height = Math.max(1, Math.round(image.height * factor));
  const data = new Uint8Array(width * height);
  const columns = new Int32Array(width);
  const shares = new Int32Array(width);
  for (let x = 0; x < width; x++) {
    const from = Math.min(Math.max((x + 0.5) / factor - 0.5, 0), image.width - 1.001);
    columns[x] = Math.floor(from);
    shares[x] = Math.round((from - Math.floor(from)) * 256);
  }
  for (let y = 0; y < height; y++) {
    const from = Math.min(Math.max((y + 0.5) / factor - 0.5, 0), image.height - 1.001);
    const row = Math.floor(from) * image.width;
    const below = image.height > 1 ? row + image.width : row;
    const share = Math.round((from - Math.floor(from)) * 256);
    for (let x = 0; x < width; x++) {
      const column = columns[x]!; // filled above for each x
      const next = image.width > 1 ? column + 1 : column;
      const s = shares[x]!;
      const upper = image.data[row + column]! * (256 - s) + image.data[row + next]! * s;
      const lower = image.data[below + column]! * (256 - s) + image.data[below + next]! * s;
      data[y * width + x] = (upper * (256 - share) + lower * share + 32768) >> 16;
    }
  }
  return { data, width, height };
}

/** Shrinks by a whole factor, each new pixel the mean of a square of old ones: takes noise away with the detail. */
export function shrinkGray(image: GrayImage, factor: 2 | 3 | 4): GrayImage {
  const width = Math.floor(image.width / factor);
  const height = Math.floor(image.height / factor);
  const data = new Uint8Array(width * height);
  const area = factor * factor;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = area >> 1;
      for (let dy = 0; dy < factor; dy++) {
        const from = (y * factor + dy) * image.width + x * factor;
        for (let dx = 0; dx < factor; dx++) sum += image.data[from + dx]!; // inside by the sizes above
      }
      data[y * width + x] = sum / area;
    }
  }
  return { data, width, height };
}

/** Mean over a square window, reach pixels each way, by running sums: cost does not grow with the reach. */
export function boxMeanGray(image: GrayImage, reach: number): GrayImage {
  return alongRows(transposed(alongRows(transposed(image), reach)), reach);
}

function transposed(image: GrayImage): GrayImage {
  const { width, height, data } = image;
  const turned = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) turned[x * height + y] = data[y * width + x]!; // inside by the loop
  }
  return { data: turned, width: height, height: width };
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

/** Stretches each place to the range of light around it, so that glare and shadow weigh less. */
export function evenLightGray(image: GrayImage, reach: number): GrayImage {
  const mean = boxMeanGray(image, reach);
  const spread = new Uint8Array(image.data.length);
  for (let at = 0; at < spread.length; at++) spread[at] = Math.abs(image.data[at]! - mean.data[at]!);
  const meanSpread = boxMeanGray({ ...image, data: spread }, reach);
  const data = new Uint8ClampedArray(image.data.length);
  for (let at = 0; at < data.length; at++) {
    // A floor of 6 grey steps keeps plain paper from turning into noise.
    const scale = 52 / Math.max(meanSpread.data[at]!, 6);
    data[at] = 128 + (image.data[at]! - mean.data[at]!) * scale;
  }
  return { data: new Uint8Array(data.buffer), width: image.width, height: image.height };
}

/** Moves a quad from a cut or rescaled picture back to the frame. */
export function quadToFrame(quad: Quad, factor: number, box: Pick<Box, 'x' | 'y'>): Quad {
  const [a, b, c, d] = quad;
  const back = ({ x, y }: { readonly x: number; readonly y: number }) => ({
    x: x / factor + box.x,
    y: y / factor + box.y,
  });
  return [back(a), back(b), back(c), back(d)];
}

/** The smallest upright box around a quad. */
export function quadToBox(quad: Quad): Box {
  const xs = quad.map(({ x }) => x);
  const ys = quad.map(({ y }) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
