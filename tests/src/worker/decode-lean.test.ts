import { describe, expect, it } from 'vitest';
import { leanStripes } from '../../../src/worker/decode-lean.ts';
import type { Place } from '../../../src/worker/decode-places.ts';
import type { GrayImage } from '../../../src/worker/decode-protocol.ts';

const [WIDTH, HEIGHT] = [400, 300];

/** Upright bars of four pixels within a band of 40 that leans, and a dark edge below it. */
function leaning(lean: number): GrayImage {
  const data = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, at) => {
    const [x, y] = [at % WIDTH, Math.floor(at / WIDTH)];
    const [u, v] = [x - 200, y - 150];
    if (v > 110) return 40;
    const isBar = Math.abs(u) < 120 && Math.abs(v - lean * u) < 20 && (x >> 2) % 2 === 0;
    return isBar ? 30 : 220;
  });
  return { data, width: WIDTH, height: HEIGHT };
}

const box: Place = { kind: 'stripes', x: 205, y: 146, angle: 0, length: 270, breadth: 210, strength: 9 };

describe('leanStripes()', () => {
  for (const lean of [-0.5, -0.2, 0, 0.1, 0.35, 0.6])
    it(`finds a lean of ${lean} within 0.05 and the band within 6 pixels`, () => {
      const place = leanStripes(leaning(lean), box);
      expect(Math.abs((place.lean ?? Number.NaN) - lean)).toBeLessThanOrEqual(0.05);
      expect(Math.abs(place.breadth - 40)).toBeLessThanOrEqual(18);
      // The place's middle lies on the code's own, which runs through (200, 150).
      expect(Math.abs(place.y - 150 - lean * (place.x - 200))).toBeLessThanOrEqual(6);
    });

  it('knows a lean in any direction of the bars, either way round', () => {
    const frame = leaning(0.35);
    const turned = leanStripes(frame, { ...box, angle: Math.PI });
    expect(Math.abs((turned.lean ?? Number.NaN) - 0.35)).toBeLessThanOrEqual(0.05);
  });

  it('leaves a place without any stripes as it is', () => {
    const plain = { data: new Uint8Array(WIDTH * HEIGHT).fill(128), width: WIDTH, height: HEIGHT };
    expect(leanStripes(plain, box)).toEqual(box);
  });
});
