import { describe, expect, it } from 'vitest';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import {
  boxMeanGray,
  quadToBox,
  rgbaToGray,
  sharpenGray,
  sharpenRows,
} from '../../../src/worker/decode-image.ts';
import type { GrayImage } from '../../../src/worker/decode-protocol.ts';

const image = (width: number, values: readonly number[]): GrayImage => ({
  data: Uint8Array.from(values),
  width,
  height: values.length / width,
});

describe('rgbaToGray()', () => {
  it('weighs red, green and blue by ITU-R BT.601: 0.299, 0.587, 0.114', () => {
    const rgba = new Uint8ClampedArray([255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255, 255, 255, 255, 255]);
    const { data } = rgbaToGray(rgba, 4, 1);
    for (const [at, weight] of [0.299, 0.587, 0.114, 1].entries()) {
      expect(Math.abs((data[at] ?? 0) - 255 * weight)).toBeLessThanOrEqual(1);
    }
  });
});

describe('boxMeanGray()', () => {
  it('answers the mean of each window, the edge repeated', () => {
    const values = [0, 30, 60, 90, 120, 150, 180, 210, 240];
    // Each row's means first (10, 30, 50 and so on), then down.
    expect([...boxMeanGray(image(3, values), 1).data]).toEqual([40, 60, 80, 100, 120, 140, 160, 180, 200]);
  });

  it('leaves a plain picture plain at any reach', () => {
    const plain = image(
      7,
      Array.from({ length: 35 }, () => 77),
    );
    for (const reach of [1, 3, 9]) expect(new Set(boxMeanGray(plain, reach).data)).toEqual(new Set([77]));
  });

  it.each([1, 2, 5, 20])(
    'is the rounded mean down and then along, at a reach of %d, also beyond the picture',
    (reach) => {
      const chance = seededChance(7);
      const [width, height] = [13, 9];
      const given = image(
        width,
        Array.from({ length: width * height }, () => chanceBelow(chance, 256)),
      );
      const steps = Array.from({ length: 2 * reach + 1 }, (_, at) => at - reach);
      const inside = (at: number, most: number) => Math.min(Math.max(at, 0), most - 1);
      const meanOf = (values: readonly number[]) => {
        const sum = values.reduce((total, value) => total + value, 0);
        return Math.floor((sum + reach) / values.length);
      };
      const down = given.data.map((_, at) =>
        meanOf(
          steps.map(
            (step) => given.data[inside(Math.floor(at / width) + step, height) * width + (at % width)] ?? 0,
          ),
        ),
      );
      const along = down.map((_, at) =>
        meanOf(steps.map((step) => down[at - (at % width) + inside((at % width) + step, width)] ?? 0)),
      );
      expect([...boxMeanGray(given, reach).data]).toEqual([...along]);
    },
  );
});

describe('sharpenGray()', () => {
  it('steepens an edge and leaves plain areas', () => {
    const edge = image(
      8,
      Array.from({ length: 64 }, (_, at) => (at % 8 < 4 ? 80 : 160)),
    );
    const sharp = sharpenGray(edge, 1, 1);
    const row = [...sharp.data.subarray(16, 24)];
    expect([row[0], row[7]]).toEqual([80, 160]);
    expect(row[3]).toBeLessThan(80);
    expect(row[4]).toBeGreaterThan(160);
  });
});

describe('sharpenRows()', () => {
  it('moves each pixel away from the mean of its row alone, which ends with the row', () => {
    const given = image(5, [100, 100, 130, 100, 100, 20, 20, 20, 20, 20]);
    const plain = { reach: 1, amount: 2, evenReach: 0 };
    // 100 - 2 * 10 and 130 + 2 * 20.
    expect([...sharpenRows(given, plain).data]).toEqual([100, 80, 170, 80, 100, 20, 20, 20, 20, 20]);
  });

  it('takes a light away that changes along the row, and leaves what changes fast', () => {
    const bars = Array.from({ length: 80 }, (_, x) => (x % 4 < 2 ? 40 : 80));
    const lit = image(
      80,
      bars.map((value, x) => value + 1.5 * x),
    );
    const even = sharpenRows(lit, { reach: 3, amount: 0, evenReach: 10 }).data;
    // Away from the row's ends every bar lies on its own side of the middle grey.
    for (let x = 10; x < 70; x++) expect(Math.sign((even[x] ?? 0) - 128)).toBe(x % 4 < 2 ? -1 : 1);
  });
});

describe('quadToBox()', () => {
  it('is the smallest upright box', () => {
    const quad = [
      { x: 5, y: 0 },
      { x: 10, y: 5 },
      { x: 5, y: 10 },
      { x: 0, y: 5 },
    ] as const;
    expect(quadToBox(quad)).toEqual({ x: 0, y: 0, width: 10, height: 10 });
  });
});
