// Where does a point of the camera's picture lie on the screen, and which part of the picture does a person see?
// Method: the picture fills its box and is cut where the shapes differ (as CSS calls it, `object-fit: cover`); only what lies
// inside the frame guide is read. Refused: reading what is cut off, as a code would then be read that nobody sees.

import type { Point, Quad } from '../../worker/decode-protocol.ts';
import type { Region } from './camera-session.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** x' = x · scale + dx, y' = y · scale + dy; from pixels of the picture to pixels of its box. */
export interface Fit {
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

/** The frame guide: what lies inside of it is read. Shares of the box; at the top is the room of the sentence over it. */
export const GUIDE: Region = { x: 0.05, y: 0.12, width: 0.9, height: 0.82 };

/** How a picture fills its box; as it is where either has no size yet. */
export function fitPicture(picture: Size, box: Size): Fit {
  if (picture.width <= 0 || picture.height <= 0 || box.width <= 0 || box.height <= 0)
    return { scale: 1, dx: 0, dy: 0 };
  const scale = Math.max(box.width / picture.width, box.height / picture.height);
  return {
    scale,
    dx: (box.width - picture.width * scale) / 2,
    dy: (box.height - picture.height * scale) / 2,
  };
}

/** The part of the picture that lies inside the frame guide, as shares of the picture. */
export function guidedRegion(picture: Size, box: Size): Region {
  return regionWithin(picture, box, GUIDE);
}

/** The part of the picture that is shown in its box, as shares of the picture. */
export function shownRegion(picture: Size, box: Size): Region {
  return regionWithin(picture, box, { x: 0, y: 0, width: 1, height: 1 });
}

function regionWithin(picture: Size, box: Size, part: Region): Region {
  if (picture.width <= 0 || picture.height <= 0 || box.width <= 0 || box.height <= 0) return part;
  const { scale, dx, dy } = fitPicture(picture, box);
  return {
    x: (part.x * box.width - dx) / (picture.width * scale),
    y: (part.y * box.height - dy) / (picture.height * scale),
    width: (part.width * box.width) / (picture.width * scale),
    height: (part.height * box.height) / (picture.height * scale),
  };
}

/** The smallest upright box around points. */
export function boxAround(points: readonly Point[]): Region {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { x: left, y: top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/** A quad of the picture, as it lies in the box. */
export function fitQuad({ scale, dx, dy }: Fit, quad: Quad): Quad {
  const move = ({ x, y }: Point): Point => ({ x: x * scale + dx, y: y * scale + dy });
  const [a, b, c, d] = quad;
  return [move(a), move(b), move(c), move(d)];
}

/** A word that stands on a code. */
export interface Tag {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Null where there is room for the mark alone. */
  readonly text: string | null;
}

const TAG_HEIGHT = 32;
/** Width of a letter of the tags' type, on average, of one that is as wide as it is high, and of the mark with its margins. */
const CHAR_WIDTH = 9.6;
const WIDE_CHAR_WIDTH = 17;
const MARK_WIDTH = 34;

/** Han, kana and Hangul are as wide as they are high. */
const isWide = (letter: string) => /[\u1100-\u11ff\u2e80-\ud7ff\uf900-\ufaff\uff00-\uff60]/.test(letter);

/** About how wide a word is in the tags' type, px. */
function wordWidthOf(text: string): number {
  return [...text].reduce((sum, letter) => sum + (isWide(letter) ? WIDE_CHAR_WIDTH : CHAR_WIDTH), 0);
}

/**
 * Places a tag on the middle of each code, so that none lies on another: with its word where the code is wide enough or
 * nothing is near, as a mark alone where it is not, and not at all where even that would hide a neighbour's.
 */
export function placeTags(
  codes: readonly { readonly quad: Quad; readonly text: string }[],
  box: Size,
): readonly (Tag | null)[] {
  const placed: Tag[] = [];
  const collides = (tag: Tag) =>
    placed.some(
      (other) =>
        Math.abs(other.x - tag.x) < (other.width + tag.width) / 2 + 2 &&
        Math.abs(other.y - tag.y) < TAG_HEIGHT + 2,
    );
  return codes.map(({ quad, text }) => {
    const around = boxAround(quad);
    const wordWidth = MARK_WIDTH + wordWidthOf(text) + 10;
    const tries: readonly { readonly text: string | null; readonly width: number }[] = [
      { text, width: wordWidth },
      { text: null, width: MARK_WIDTH },
    ];
    for (const { text: word, width } of tries) {
      if (word !== null && width > Math.max(around.width * 1.4, 120)) continue;
      const middle = around.x + around.width / 2;
      const x = Math.min(Math.max(middle, width / 2 + 4), Math.max(width / 2 + 4, box.width - width / 2 - 4));
      const tag = { x, y: around.y + around.height / 2, width, text: word };
      if (collides(tag)) continue;
      placed.push(tag);
      return tag;
    }
    return null;
  });
}
