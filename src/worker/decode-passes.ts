// Which looks to take at one frame, in which order, and when to stop.
// Method: one quick look at the whole frame; then places that look like codes and were not read are cut out, turned
// upright, enlarged and sharpened, each frame in another way, within a time budget. Cuts are small, so a cut costs a few
// milliseconds and reads what the whole frame does not give: stripes at any angle, squares of two pixels a module.
// Refused: every look on every frame, and thorough looks at the whole frame as the rule: measured, they cost most on the
// frames that hold nothing.

import { quadToBox, sharpenGray } from './decode-image.ts';
import { findPlaces, joinPlaces, type Place } from './decode-places.ts';
import type { CodeFormat, FoundCode, GrayImage, Quad } from './decode-protocol.ts';
import type { CodeReader, ReadEffort } from './decode-reader.ts';
import { cutUpright, quadFromCut } from './decode-upright.ts';

const QUICK: ReadEffort = {
  tryHarder: false,
  tryRotate: true,
  tryInvert: true,
  tryDownscale: true,
  tryDenoise: false,
  binarizer: 'LocalAverage',
};
const WHOLE: ReadEffort = { ...QUICK, tryHarder: true, tryDenoise: true };
const CUT: ReadEffort = { ...QUICK, tryHarder: true, tryInvert: false, tryDownscale: false };

interface Way {
  readonly name: string;
  readonly factor: number;
  readonly sharpenReach: number;
  readonly sharpenAmount: number;
  readonly effort: ReadEffort;
}

/** Ways to prepare a cut; a frame uses one, the next frame the next, and a second one where time is left. */
const WAYS: readonly Way[] = [
  { name: 'double', factor: 2, sharpenReach: 3, sharpenAmount: 2, effort: CUT },
  { name: 'triple', factor: 3, sharpenReach: 4, sharpenAmount: 3, effort: CUT },
  {
    name: 'triple-denoised',
    factor: 3,
    sharpenReach: 5,
    sharpenAmount: 1.2,
    effort: { ...CUT, tryDenoise: true },
  },
  {
    name: 'double-inverted',
    factor: 2,
    sharpenReach: 3,
    sharpenAmount: 2,
    effort: { ...CUT, tryInvert: true },
  },
  {
    name: 'triple-global',
    factor: 3,
    sharpenReach: 4,
    sharpenAmount: 2,
    effort: { ...CUT, binarizer: 'GlobalHistogram' },
  },
];

/** Every so many frames the whole frame gets a thorough look, for what no place was found for. */
const WHOLE_EVERY = 5;
const MOST_PLACES = 12;
/** So many places are looked at in each frame, whatever the time: on a slow tablet the picture rate gives way, not the reading. */
const LEAST_LOOKS = 3;
/** Share of a place that is covered by codes already read, from which it needs no further look. */
const COVERED = 0.55;

export interface FramePassesOptions {
  readonly nowMs: () => number;
  /** Time for the looks at places; the look under way is finished. */
  readonly budgetMs?: number;
}

export interface FramePasses {
  /** Reads one frame; `isThorough` allows looks after the quick one. */
  read(image: GrayImage, formats: readonly CodeFormat[], isThorough: boolean): readonly FoundCode[];
}

/** Makes the reader of a run of frames; it remembers whose turn it is. */
export function createFramePasses(reader: CodeReader, options: FramePassesOptions): FramePasses {
  const { nowMs, budgetMs = 90 } = options;
  let turn = 0;
  // Where the last frame ran out of time: the next one goes on there, so that weak places are not starved.
  let resumeAt = 0;

  function readWhole(image: GrayImage, formats: readonly CodeFormat[], effort: ReadEffort): FoundCode[] {
    const pass = effort === QUICK ? 'quick' : 'whole';
    return reader(image, formats, effort).map((code) => ({ ...code, pass }));
  }

  function readPlace(
    image: GrayImage,
    formats: readonly CodeFormat[],
    at: { place: Place; way: Way },
  ): FoundCode[] {
    const { place, way } = at;
    const isStripes = place.kind === 'stripes';
    const cut = cutUpright(image, place, {
      factor: way.factor,
      // Along its bars a code of stripes says the same at each pixel: more of them cost time and tell nothing.
      factorAcross: isStripes ? 1 : null,
      // Stripes need a quiet zone of ten modules, squares one to four.
      marginAlong: isStripes ? Math.max(16, place.length * 0.1) : 14,
      marginAcross: isStripes ? 4 : 14,
      meanReach: isStripes ? 3 : 0,
    });
    const sharp = sharpenGray(cut.image, way.sharpenReach, way.sharpenAmount);
    return reader(sharp, formats, way.effort).map((code) => ({
      ...code,
      quad: quadFromCut(code.quad, cut),
      pass: way.name,
    }));
  }

  return {
    read(image, formats, isThorough) {
      let found: readonly FoundCode[] = readWhole(image, formats, QUICK);
      if (!isThorough) return found;
      const way = WAYS[turn % WAYS.length]!; // never empty
      turn += 1;
      const single = findPlaces(image, MOST_PLACES);
      const places = [...single, ...joinPlaces(single)];
      const startMs = nowMs();
      let looks = 0;
      const start = resumeAt < places.length ? resumeAt : 0;
      resumeAt = 0;
      for (let step = 0; step < places.length; step++) {
        const at = (start + step) % places.length;
        if (looks >= LEAST_LOOKS && nowMs() - startMs >= budgetMs) {
          resumeAt = at;
          break;
        }
        const place = places[at]!; // inside by the remainder
        if (coveredShare(place, found) >= COVERED) continue;
        looks += 1;
        found = withNew(found, readPlace(image, formats, { place, way }));
      }
      // What is unread when all have had a look gets another in the time that is left.
      const other = WAYS[(turn + 1) % WAYS.length]!; // never empty
      for (const place of resumeAt === 0 ? places : []) {
        if (nowMs() - startMs >= budgetMs) break;
        if (coveredShare(place, found) >= COVERED) continue;
        found = withNew(found, readPlace(image, formats, { place, way: other }));
      }
      if (turn % WHOLE_EVERY === 0 && nowMs() - startMs < budgetMs) {
        found = withNew(found, readWhole(image, formats, WHOLE));
      }
      return found;
    },
  };
}

/** Adds what is not there yet: the same text twice counts only when it stands in two places. */
function withNew(found: readonly FoundCode[], more: readonly FoundCode[]): readonly FoundCode[] {
  const all = [...found];
  for (const code of more) {
    const isKnown = all.some(
      (each) => each.text === code.text && each.format === code.format && isSamePlace(each.quad, code.quad),
    );
    if (!isKnown) all.push(code);
  }
  return all;
}

function isSamePlace(one: Quad, other: Quad): boolean {
  const [left, right] = [quadToBox(one), quadToBox(other)];
  const apartX = Math.abs(left.x + left.width / 2 - right.x - right.width / 2);
  const apartY = Math.abs(left.y + left.height / 2 - right.y - right.height / 2);
  return (
    apartX <= Math.max(left.width, right.width) / 2 + 4 &&
    apartY <= Math.max(left.height, right.height) / 2 + 4
  );
}

function coveredShare(place: Place, found: readonly FoundCode[]): number {
  const [cos, sin] = [Math.cos(place.angle), Math.sin(place.angle)];
  const covered = found
    .map(({ quad }) => ({
      area: quadArea(quad),
      x: (quad[0].x + quad[2].x) / 2,
      y: (quad[0].y + quad[2].y) / 2,
    }))
    .filter(({ x, y }) => {
      const [dx, dy] = [x - place.x, y - place.y];
      return (
        Math.abs(dx * cos + dy * sin) <= place.length / 2 &&
        Math.abs(dy * cos - dx * sin) <= place.breadth / 2
      );
    })
    .reduce((sum, { area }) => sum + area, 0);
  return covered / (place.length * place.breadth);
}

/** Shoelace formula. */
function quadArea(quad: Quad): number {
  const twice = quad.reduce((sum, { x, y }, at) => {
    const next = quad[(at + 1) % 4]!; // four corners
    return sum + x * next.y - next.x * y;
  }, 0);
  return Math.abs(twice) / 2;
}
