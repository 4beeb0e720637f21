// What is cut out of the lens's picture, and how small it gets.

import { describe, expect, test } from 'vitest';
import { cutAround, smallEnough } from '../../../../src/app/scan/label-picture.ts';
import type { Quad } from '../../../../src/worker/decode-protocol.ts';

const box = (x: number, y: number, width: number, height: number): Quad => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
const picture = { width: 1280, height: 720 };

describe('cutAround()', () => {
  test('holds every code with a margin, and ends at the picture’s edge', () => {
    expect(cutAround([box(400, 300, 100, 40), box(420, 360, 60, 60)], picture)).toEqual({
      x: 358,
      y: 258,
      width: 184,
      height: 204,
    });
    expect(cutAround([box(10, 10, 200, 100)], picture)).toEqual({ x: 0, y: 0, width: 280, height: 180 });
  });

  test('is nothing where there is no code, or it lies outside', () => {
    expect(cutAround([], picture)).toBeNull();
    expect(cutAround([box(2000, 300, 100, 40)], picture)).toBeNull();
  });
});

describe('smallEnough()', () => {
  const blobOf = (size: number) => new Blob([new Uint8Array(size)]);

  test('takes the finest that fits: coarser first, then smaller', async () => {
    const tried: string[] = [];
    const encode = async (scale: number, quality: number) => {
      tried.push(`${scale} ${quality}`);
      return blobOf(Math.round(100_000 * scale * scale * quality));
    };
    expect((await smallEnough(encode, 25_000))?.size).toBe(18_000);
    expect(tried).toEqual(['1 0.72', '1 0.5', '1 0.32', '0.5 0.72']);
    tried.length = 0;
    expect((await smallEnough(encode, 80_000))?.size).toBe(72_000);
    expect(tried).toEqual(['1 0.72']);
  });

  test('is none where nothing fits, or nothing was encoded', async () => {
    expect(await smallEnough(async () => blobOf(30_000), 25_000)).toBeNull();
    expect(await smallEnough(async () => blobOf(0), 25_000)).toBeNull();
  });
});
