import { describe, expect, it } from 'vitest';
import { chanceNormal, seededChance } from '../../../shared/kit/chance.ts';
import { findPlaces, joinPlaces, type Place } from '../../../src/worker/decode-places.ts';
import { cutUpright, quadFromCut } from '../../../src/worker/decode-upright.ts';
import { drawCode, mapPixels, onDesk } from './reader.ts';

/** Turns a picture about its middle on a larger desk. */
function turned(code: ReturnType<typeof drawCode>, degrees: number) {
  const desk = onDesk(code, 640, 480);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = (x: number, y: number) =>
    x < 0 || y < 0 || x >= 640 || y >= 480 ? 90 : (desk.data[y * 640 + x] ?? 90);
  return mapPixels(desk, (x, y) => {
    const [dx, dy] = [x - 320, y - 240];
    const [fx, fy] = [320 + dx * cos + dy * sin, 240 + dy * cos - dx * sin];
    const [left, top] = [Math.floor(fx), Math.floor(fy)];
    const [sx, sy] = [fx - left, fy - top];
    const upper = at(left, top) * (1 - sx) + at(left + 1, top) * sx;
    return upper * (1 - sy) + (at(left, top + 1) * (1 - sx) + at(left + 1, top + 1) * sx) * sy;
  });
}

const degreesOf = (place: Place | undefined) => (((((place?.angle ?? 0) * 180) / Math.PI) % 180) + 180) % 180;

describe('findPlaces()', () => {
  for (const degrees of [0, 20, 45, 70, 110, 160]) {
    it(`finds stripes turned by ${degrees} degrees, within 3 degrees and 12 pixels`, () => {
      const [place] = findPlaces(turned(drawCode('code128', '1PABC-42', 2), degrees), 5);
      expect(place?.kind).toBe('stripes');
      const off = Math.abs(degreesOf(place) - degrees);
      expect(Math.min(off, 180 - off)).toBeLessThanOrEqual(3);
      expect(Math.hypot((place?.x ?? 0) - 320, (place?.y ?? 0) - 240)).toBeLessThanOrEqual(12);
    });
  }

  it('finds a square code and a side of it', () => {
    const places = findPlaces(turned(drawCode('datamatrix', 'PART-42-LOT-7', 4), 30), 8);
    const place = places.find(({ kind, x, y }) => kind === 'matrix' && Math.hypot(x - 320, y - 240) < 16);
    expect(place).toBeDefined();
    const off = degreesOf(place) % 90;
    expect(Math.min(Math.abs(off - 30), 90 - Math.abs(off - 30))).toBeLessThanOrEqual(6);
  });

  it('finds nothing in noise', () => {
    const chance = seededChance(5);
    const noise = mapPixels(onDesk(drawCode('code128', 'A', 1), 640, 480), () =>
      Math.max(0, Math.min(255, Math.round(chanceNormal(chance, 120, 10)))),
    );
    expect(findPlaces(noise, 5)).toEqual([]);
  });
});

describe('joinPlaces()', () => {
  const base = { kind: 'stripes', angle: 0.1, strength: 5 } as const;
  it('joins neighbours that stand square to each other and leaves others alone', () => {
    const left: Place = { ...base, x: 100, y: 100, length: 60, breadth: 100 };
    const right: Place = {
      ...base,
      kind: 'matrix',
      x: 170,
      y: 107,
      length: 60,
      breadth: 100,
      angle: 0.1 - Math.PI / 2,
    };
    const far: Place = { ...base, x: 500, y: 100, length: 60, breadth: 60 };
    const askew: Place = { ...base, x: 100, y: 180, length: 60, breadth: 60, angle: 0.6 };
    const joined = joinPlaces([left, right, far, askew]);
    expect(joined.length).toBe(1);
    expect(Math.abs((joined[0]?.x ?? 0) - 145)).toBeLessThanOrEqual(12);
  });
});

describe('cutUpright()', () => {
  it('brings corners back to where they are in the frame', () => {
    const frame = turned(drawCode('datamatrix', 'A', 4), 25);
    const place: Place = { kind: 'matrix', x: 320, y: 240, angle: 0.4, length: 80, breadth: 60, strength: 1 };
    const cut = cutUpright(frame, place, { factor: 2, marginAlong: 10, marginAcross: 10, meanReach: 0 });
    expect([cut.image.width, cut.image.height]).toEqual([200, 160]);
    const centre = { x: 100, y: 80 };
    const [back] = quadFromCut([centre, centre, centre, centre], cut);
    expect([back.x, back.y]).toEqual([320, 240]);
    const right = { x: 200, y: 80 };
    const [edge] = quadFromCut([right, right, right, right], cut);
    expect(edge.x).toBeCloseTo(320 + 50 * Math.cos(0.4));
    expect(edge.y).toBeCloseTo(240 + 50 * Math.sin(0.4));
  });

  it('may enlarge along bars less than across them, and still knows where each corner is', () => {
    const frame = turned(drawCode('code128', '1PABC-42', 2), 25);
    const place: Place = {
      kind: 'stripes',
      x: 320,
      y: 240,
      angle: 0.4,
      length: 80,
      breadth: 60,
      strength: 1,
    };
    const margins = { marginAlong: 10, marginAcross: 10, meanReach: 3 };
    const cut = cutUpright(frame, place, { factor: 3, factorAcross: 1, ...margins });
    expect([cut.image.width, cut.image.height]).toEqual([300, 80]);
    const below = { x: 150, y: 80 };
    const [edge] = quadFromCut([below, below, below, below], cut);
    expect(edge.x).toBeCloseTo(320 - 40 * Math.sin(0.4));
    expect(edge.y).toBeCloseTo(240 + 40 * Math.cos(0.4));
    // One look stays short: what is too large is enlarged less, along alone.
    const large: Place = { ...place, length: 5_000, breadth: 180 };
    const { image } = cutUpright(frame, large, { factor: 3, factorAcross: 1, ...margins });
    expect(image.height).toBe(200);
    expect(image.width * image.height).toBeLessThanOrEqual(450_000);
  });

  it('gives each pixel as cubic convolution does, and the nearest one at the edge of the frame', () => {
    const frame = turned(drawCode('datamatrix', 'A', 4), 25);
    const at = (x: number, y: number) => frame.data[y * frame.width + x] ?? Number.NaN;
    // Keys (1981): -1/16, 9/16, 9/16, -1/16 half-way between pixels, along and down.
    const half = [-1 / 16, 9 / 16, 9 / 16, -1 / 16];
    const place: Place = { kind: 'matrix', x: 321, y: 241, angle: 0, length: 16, breadth: 16, strength: 1 };
    const plain = { factor: 1, marginAlong: 0, marginAcross: 0, meanReach: 0 };
    const onGrid = cutUpright(frame, place, plain).image;
    const between = cutUpright(frame, { ...place, x: 321.5, y: 241.5 }, plain).image;
    for (let row = 0; row < 16; row += 1)
      for (let column = 0; column < 16; column += 1) {
        expect(onGrid.data[row * 16 + column]).toBe(at(313 + column, 233 + row));
        const wanted = half.reduce(
          (sum, down, y) =>
            sum +
            half.reduce((inner, along, x) => inner + down * along * at(312 + column + x, 232 + row + y), 0),
          0,
        );
        const bounded = Math.min(255, Math.max(0, wanted));
        expect(Math.abs((between.data[row * 16 + column] ?? 0) - bounded)).toBeLessThanOrEqual(0.51);
      }
    const corner = cutUpright(frame, { ...place, x: 0, y: 0 }, plain).image;
    expect([corner.data[0], corner.data[255]]).toEqual([at(0, 0), at(7, 7)]);
  });
});
