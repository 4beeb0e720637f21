import { beforeAll, describe, expect, it } from 'vitest';
import { seededChance } from '../../../shared/kit/chance.ts';
import { EMPTY_GATHER, gatherFrame, sureCodes } from '../../../src/app/scan/gather.ts';
import { createFramePasses } from '../../../src/worker/decode-passes.ts';
import { findPlaces } from '../../../src/worker/decode-places.ts';
import { DEFAULT_FORMATS, type FoundCode, type GrayImage } from '../../../src/worker/decode-protocol.ts';
import type { CodeReader } from '../../../src/worker/decode-reader.ts';
import { waysOf } from '../../../src/worker/decode-ways.ts';
import { type Shot, takePicture } from '../../bench/frames-render.ts';
import { makeCase } from '../../bench/frames-set.ts';
import { drawCode, loadReader, mapPixels, onDesk } from './reader.ts';

const ENVELOPE = '[)>\u001e06\u001dPCUST-0042\u001dQ4000\u001e\u0004';

let reader: CodeReader;
beforeAll(async () => {
  reader = await loadReader();
});

// A clock that stands still: every look is taken, whatever this machine's pace.
const allLooks = () => createFramePasses(reader, { nowMs: () => 0 });

function readOver(frames: readonly GrayImage[]): readonly FoundCode[] {
  const passes = allLooks();
  return frames.flatMap((frame) => passes.read(frame, DEFAULT_FORMATS, true));
}

const textsOf = (codes: readonly FoundCode[]) => [...new Set(codes.map(({ text }) => text))];

/** A printed code as the camera sees it at a turn, tilt and bend. */
function photograph(code: GrayImage, more: Partial<Shot>): GrayImage {
  const density = 16;
  const sheet = {
    image: code,
    pixelsPerMm: density,
    widthMm: code.width / density,
    heightMm: code.height / density,
    labels: [],
  };
  const shot = {
    width: 960,
    height: 540,
    pixelsPerMm: 12,
    turnDeg: 0,
    tiltDeg: 0,
    tiltTowardsDeg: 40,
    offset: { x: 0, y: 0 },
    bendMm: null,
    blurPx: 0.5,
    motionPx: 0,
    motionDeg: 0,
    noise: 3,
    light: 0.9,
    glare: 0,
    glareAt: { x: 0, y: 0 },
    ...more,
  };
  return takePicture(sheet, shot, seededChance(3));
}

/** As a stacked code is printed: its rows are three modules high. */
function threeHigh({ width, height, data }: GrayImage): GrayImage {
  const tall = { data: new Uint8Array(3 * data.length), width, height: 3 * height };
  return mapPixels(tall, (x, y) => data[Math.floor(y / 3) * width + x] ?? 0);
}

describe('createFramePasses()', () => {
  for (const turnDeg of [0, 17, 33, 45, 61, 90, 200, 305]) {
    it(`reads stripes turned by ${turnDeg} degrees within two frames`, () => {
      const frame = photograph(drawCode('code128', '1PABC-42', 4), { turnDeg });
      expect(textsOf(readOver([frame, frame]))).toEqual(['1PABC-42']);
    });
  }

  const ways = [
    ['tilted by 40 degrees', { tiltDeg: 40, turnDeg: 25 }],
    ['bent round a reel', { bendMm: 45, turnDeg: 70 }],
  ] as const;
  for (const [name, how] of ways) {
    it(`reads a square code ${name}`, () => {
      expect(textsOf(readOver([photograph(drawCode('datamatrix', ENVELOPE, 5), how)]))).toEqual([ENVELOPE]);
    });
  }

  for (const turnDeg of [20, 70, 160])
    it(`reads long stripes that lean as they are seen from aside, turned by ${turnDeg} degrees`, () => {
      const code = drawCode('code128', '1PABC-4207-LOT', 3);
      const frame = photograph(code, { tiltDeg: 44, tiltTowardsDeg: 45, turnDeg });
      expect(textsOf(readOver([frame, frame]))).toEqual(['1PABC-4207-LOT']);
    });

  it('reads stripes of which a lamp shines on a part', () => {
    const glaring = { glare: 150, glareAt: { x: 420, y: 270 }, light: 0.5, turnDeg: 20 };
    const frame = photograph(drawCode('code128', '1PABC-42', 3), glaring);
    expect(textsOf(readOver([frame, frame]))).toEqual(['1PABC-42']);
  });

  it('reads a square code of less than two pixels a module, out of focus', () => {
    const code = drawCode('datamatrix', ENVELOPE, 3);
    const frame = photograph(code, { tiltDeg: 25, turnDeg: 65, blurPx: 0.95, noise: 5, pixelsPerMm: 10 });
    expect(textsOf(readOver([frame]))).toEqual([ENVELOPE]);
  });

  for (const turnDeg of [15, 25])
    it(`reads a stacked code of little more than a pixel a module, out of focus, turned by ${turnDeg} degrees`, () => {
      const code = threeHigh(drawCode('pdf417', ENVELOPE, 3, { columns: 4 }));
      const frame = photograph(code, { tiltDeg: 10, turnDeg, blurPx: 0.9, pixelsPerMm: 7 });
      expect(textsOf(readOver([frame, frame]))).toEqual([ENVELOPE]);
    });

  it('reads an inverted code', () => {
    const code = drawCode('datamatrix', ENVELOPE, 4);
    const inverted = mapPixels(code, (x, y) => 255 - (code.data[y * code.width + x] ?? 0));
    expect(textsOf(readOver([onDesk(inverted, 640, 480, 40)]))).toEqual([ENVELOPE]);
  });

  it('reads a mirrored code', () => {
    const code = drawCode('datamatrix', ENVELOPE, 4);
    const mirrored = mapPixels(code, (x, y) => code.data[y * code.width + code.width - 1 - x] ?? 0);
    expect(textsOf(readOver([onDesk(mirrored, 640, 480)]))).toEqual([ENVELOPE]);
  });

  it('tells where a code is, also when a cut read it', () => {
    const frame = photograph(drawCode('code128', '1PABC-42', 4), { turnDeg: 40 });
    const [code] = readOver([frame, frame]);
    const middle = (axis: 'x' | 'y') => (code?.quad ?? []).reduce((sum, point) => sum + point[axis], 0) / 4;
    expect(code?.pass).not.toBe('quick');
    expect(Math.hypot(middle('x') - 480, middle('y') - 270)).toBeLessThan(25);
  });

  it('answers the same text once for one code and twice for two', () => {
    const code = drawCode('datamatrix', ENVELOPE, 4);
    const one = onDesk(code, 900, 400);
    expect(readOver([one]).length).toBe(1);
    const two = mapPixels(one, (x, y) => {
      const row = y - Math.floor((400 - code.height) / 2);
      const column = x < 450 ? x - 60 : x - 560;
      const inside = row >= 0 && row < code.height && column >= 0 && column < code.width;
      return inside ? (code.data[row * code.width + column] ?? 0) : 90;
    });
    expect(readOver([two]).length).toBe(2);
  });

  it('takes the quick look only when asked to, and stops when its time is up', () => {
    let looks = 0;
    const counting: CodeReader = () => {
      looks += 1;
      return [];
    };
    const frame = photograph(drawCode('code128', '1PABC-42', 4), { turnDeg: 40 });
    createFramePasses(counting, { nowMs: () => 0 }).read(frame, DEFAULT_FORMATS, false);
    expect(looks).toBe(1);
    looks = 0;
    let nowMs = 0;
    const hurried = createFramePasses(counting, {
      nowMs: () => {
        nowMs += 1000;
        return nowMs;
      },
    });
    hurried.read(makeCase('easy', 3).frames[0] ?? frame, DEFAULT_FORMATS, true);
    // The quick one and the three that every frame gets.
    expect(looks).toBe(4);
  });

  it('looks a second time, in another way, at what is unread and time is left for, and never at what is read', () => {
    const frame = photograph(drawCode('code128', '1PABC-42', 4), { turnDeg: 40 });
    // What was joined is looked at for stacked codes alone, and this frame has none: stripes and squares are left.
    const formats = DEFAULT_FORMATS.filter((format) => format !== 'PDF417');
    const places = findPlaces(frame, 12);
    expect(places.map(({ kind }) => kind)).toContain('stripes');
    const cuts: number[] = [];
    const blind: CodeReader = ({ data }) => {
      cuts.push(data.length);
      return [];
    };
    createFramePasses(blind, { nowMs: () => 0 }).read(frame, formats, true);
    const ways = places.map(waysOf);
    expect(cuts).toHaveLength(1 + ways.reduce((sum, each) => sum + each, 0));
    expect(cuts[1 + places.length]).not.toBe(cuts[1]);
    let looks = 0;
    const seeing: CodeReader = ({ width, height }) => {
      looks += 1;
      const corners = [
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: width, y: height },
        { x: 0, y: height },
      ] as const;
      const code = { text: `code ${looks}`, format: 'Code128' as const, quad: corners };
      return looks === 1 ? [] : [code as unknown as ReturnType<CodeReader>[number]]; // of no more than is asked here
    };
    createFramePasses(seeing, { nowMs: () => 0 }).read(frame, formats, true);
    expect(looks).toBeLessThanOrEqual(1 + places.length);
  });

  it('fully reads three in four labels of the easy half within five frames, and believes nothing wrong', () => {
    const cases = [
      makeCase('easy', 501),
      makeCase('easy', 502),
      makeCase('easy', 503),
      makeCase('hard', 501),
    ];
    let [labels, full] = [0, 0];
    for (const made of cases) {
      const passes = allLooks();
      const gathered = made.frames.reduce(
        (state, frame) => gatherFrame(state, passes.read(frame, DEFAULT_FORMATS, true)),
        EMPTY_GATHER,
      );
      const truth = new Set(made.labels.flatMap(({ codes }) => codes.map(({ text }) => text)));
      const sure = new Set(sureCodes(gathered).map(({ text }) => text));
      expect([...sure].filter((text) => !truth.has(text))).toEqual([]);
      if (made.half === 'hard') continue;
      labels += made.labels.length;
      full += made.labels.filter(({ codes }) => codes.every(({ text }) => sure.has(text))).length;
    }
    expect(full / labels).toBeGreaterThanOrEqual(0.75);
  });
});
