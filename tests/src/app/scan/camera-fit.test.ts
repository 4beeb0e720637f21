import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPicture, fitQuad, GUIDE, guidedRegion, placeTags } from '../../../../src/app/scan/camera-fit.ts';
import type { Quad } from '../../../../src/worker/decode-protocol.ts';

const size = fc.record({
  width: fc.integer({ min: 40, max: 4000 }),
  height: fc.integer({ min: 40, max: 4000 }),
});

const quad = (x: number, y: number, width: number, height: number): Quad => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];

describe('fitPicture()', () => {
  it('fills the box and keeps the middle, whatever the shapes', () => {
    fc.assert(
      fc.property(size, size, (picture, box) => {
        const { scale, dx, dy } = fitPicture(picture, box);
        expect(picture.width * scale).toBeGreaterThanOrEqual(box.width - 1e-6);
        expect(picture.height * scale).toBeGreaterThanOrEqual(box.height - 1e-6);
        expect((picture.width / 2) * scale + dx).toBeCloseTo(box.width / 2, 6);
        expect((picture.height / 2) * scale + dy).toBeCloseTo(box.height / 2, 6);
        expect(Math.max(dx, dy)).toBeCloseTo(0, 6);
      }),
    );
  });

  it('cuts a wide picture at its sides in an upright box', () => {
    expect(fitPicture({ width: 1280, height: 720 }, { width: 360, height: 720 })).toEqual({
      scale: 1,
      dx: -460,
      dy: 0,
    });
  });

  it('leaves a picture as it is while either has no size', () => {
    expect(fitPicture({ width: 0, height: 0 }, { width: 10, height: 10 })).toEqual({
      scale: 1,
      dx: 0,
      dy: 0,
    });
  });
});

describe('guidedRegion()', () => {
  it('reads what the guide shows and nothing beside it: its corners on the screen are those of the guide', () => {
    fc.assert(
      fc.property(size, size, (picture, box) => {
        const { x, y, width, height } = guidedRegion(picture, box);
        const region = quad(
          x * picture.width,
          y * picture.height,
          width * picture.width,
          height * picture.height,
        );
        const [topLeft, , bottomRight] = fitQuad(fitPicture(picture, box), region);
        expect(topLeft.x).toBeCloseTo(GUIDE.x * box.width, 4);
        expect(topLeft.y).toBeCloseTo(GUIDE.y * box.height, 4);
        expect(bottomRight.x).toBeCloseTo((GUIDE.x + GUIDE.width) * box.width, 4);
        expect(bottomRight.y).toBeCloseTo((GUIDE.y + GUIDE.height) * box.height, 4);
        // All of it lies inside the picture: there is something to read everywhere.
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(Math.max(x + width, y + height)).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });
});

describe('placeTags()', () => {
  const box = { width: 800, height: 600 };

  it('writes the word where the code has room for it, and the mark alone where it has not', () => {
    const [wide, small] = placeTags(
      [
        { quad: quad(100, 100, 300, 40), text: 'Supplier part' },
        { quad: quad(100, 300, 30, 30), text: 'Supplier part' },
      ],
      box,
    );
    expect([wide?.text, small?.text]).toEqual(['Supplier part', null]);
  });

  it('gives letters that are as wide as they are high their room', () => {
    const widthOf = (text: string) => placeTags([{ quad: quad(100, 100, 300, 40), text }], box)[0]?.width;
    // Han and Hangul are one em wide: 17 px each (Unicode Standard Annex 11, East Asian width W).
    for (const text of ['供应商料号', '공급사 품번']) expect(widthOf(text)).toBeGreaterThan(34 + 5 * 17);
    expect(widthOf('Lot')).toBeLessThan(34 + 3 * 17);
  });

  it('lays no tag over another, and none over the edge of the picture', () => {
    const spot = fc.record({
      quad: fc
        .record({
          x: fc.integer({ min: 0, max: 760 }),
          y: fc.integer({ min: 20, max: 560 }),
          width: fc.integer({ min: 10, max: 400 }),
        })
        .map(({ x, y, width }) => quad(x, y, width, 30)),
      text: fc.constantFrom('Lot', 'Quantity', 'Whole label'),
    });
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 12 }), (codes) => {
        const tags = placeTags(codes, box).flatMap((tag) => tag ?? []);
        for (const [at, tag] of tags.entries()) {
          expect(tag.x - tag.width / 2).toBeGreaterThanOrEqual(0);
          expect(tag.x + tag.width / 2).toBeLessThanOrEqual(box.width);
          for (const other of tags.slice(at + 1)) {
            const apart =
              Math.abs(tag.x - other.x) >= (tag.width + other.width) / 2 || Math.abs(tag.y - other.y) >= 32;
            expect(apart).toBe(true);
          }
        }
      }),
    );
  });
});
