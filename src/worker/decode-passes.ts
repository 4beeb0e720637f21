// Which looks to take at one frame, in which order, and when to stop.
// Method: one quick look at the whole frame; then places that look like codes and were not read are cut out, turned
// upright, enlarged and sharpened, round after round in another way, within a time budget; each frame begins with another way.
// Cuts are small, so a cut costs a few milliseconds and reads what the whole frame does not give: stripes at any angle, squares of
// two pixels a module.
// Refused: every look on every frame, and thorough looks at the whole frame as the rule: measured, they cost most on the
// frames that hold nothing.

import { quadToBox } from './decode-image.ts';
import { findPlaces, joinPlaces, type Place } from './decode-places.ts';
import type { CodeFormat, FoundCode, GrayImage, Quad } from './decode-protocol.ts';
import type { CodeReader, ReadEffort } from './decode-reader.ts';
import { MOST_WAYS, placeToLookAt, readPlace, waysOf } from './decode-ways.ts';

const QUICK: ReadEffort = {
  tryHarder: false,
  tryRotate: true,
  tryInvert: true,
  tryDownscale: true,
  tryDenoise: false,
  binarizer: 'LocalAverage',
};
const WHOLE: ReadEffort = { ...QUICK, tryHarder: true, tryDenoise: true };

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

  return {
    read(image, formats, isThorough) {
      let found: readonly FoundCode[] = readWhole(image, formats, QUICK);
      if (!isThorough) return found;
      const ownTurn = turn;
      turn += 1;
      const single = findPlaces(image, MOST_PLACES);
      const startMs = nowMs();
      const places = [...single, ...joinPlaces(single)].flatMap(
        (place) => placeToLookAt(image, place, formats) ?? [],
      );
      let looks = 0;
      const start = resumeAt < places.length ? resumeAt : 0;
      resumeAt = 0;
      // What is unread when all have had a look gets another, in another way, in the time that is left.
      for (let step = 0; step < places.length * MOST_WAYS; step++) {
        const at = (start + step) % places.length;
        if (looks >= LEAST_LOOKS && nowMs() - startMs >= budgetMs) {
          if (step < places.length) resumeAt = at;
          break;
        }
        const place = places[at]!; // inside by the remainder
        const round = Math.floor(step / places.length);
        if (round >= waysOf(place) || coveredShare(place, found) >= COVERED) continue;
        looks += 1;
        found = withNew(found, readPlace(reader, { image, formats }, { place, turn: ownTurn + round }));
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
  const { angle, lean = 0 } = place;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const covered = found
    .map(({ quad }) => ({
      area: quadArea(quad),
      x: (quad[0].x + quad[2].x) / 2,
      y: (quad[0].y + quad[2].y) / 2,
    }))
    .filter(({ x, y }) => {
      const [dx, dy] = [x - place.x, y - place.y];
      const along = dx * cos + dy * sin;
      const across = dy * cos - dx * sin - lean * along;
      return Math.abs(along) <= place.length / 2 && Math.abs(across) <= place.breadth / 2;
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
