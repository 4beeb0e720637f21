// How a place of a frame is prepared and read: the ways for stripes, for squares and for what was joined of several places.
// Method: each kind is asked only for what it can be. Stripes are cut as they lean, meaned along their bars and sharpened
// across them; squares are enlarged, sharpened and parted at one grey for the whole cut, which once sharpened keeps more small
// modules than a grey for each neighbourhood does. The ways of a kind stand in the order in which they gave most, measured.
// Refused: one way for all, and every symbology in every cut: most of a look's time went to what could not be there.

import { sharpenGray, sharpenRows } from './decode-image.ts';
import { leanStripes } from './decode-lean.ts';
import type { Place } from './decode-places.ts';
import type { CodeFormat, FoundCode, GrayImage } from './decode-protocol.ts';
import type { CodeReader, ReadEffort } from './decode-reader.ts';
import { cutUpright, quadFromCut } from './decode-upright.ts';

const CUT: ReadEffort = {
  tryHarder: true,
  tryRotate: true,
  tryInvert: false,
  tryDownscale: false,
  tryDenoise: false,
  binarizer: 'GlobalHistogram',
};
const LOCAL: ReadEffort = { ...CUT, binarizer: 'LocalAverage' };
/** For stripes, which are cut as they lean. */
const ALONG: ReadEffort = { ...CUT, tryRotate: false };

interface Way {
  readonly name: string;
  readonly factor: number;
  /** Pixels of the cut each way that a pixel is held against, and how many times it is moved away from their mean. */
  readonly reach: number;
  readonly amount: number;
  /** Pixels of the frame each way over which the light is made even; none for not at all. Stripes only. */
  readonly evenReach?: number;
  readonly effort: ReadEffort;
}

const STRIPES: readonly Way[] = [
  { name: 'stripes-double', factor: 2, reach: 3, amount: 2, effort: ALONG },
  { name: 'stripes-even', factor: 3, reach: 6, amount: 2, evenReach: 20, effort: ALONG },
  { name: 'stripes-triple', factor: 3, reach: 4, amount: 4, effort: ALONG },
];

const SQUARES: readonly Way[] = [
  { name: 'square-double', factor: 2, reach: 3, amount: 2, effort: CUT },
  { name: 'square-large', factor: 4, reach: 8, amount: 2, effort: CUT },
  { name: 'square-local', factor: 3, reach: 6, amount: 1.2, effort: { ...LOCAL, tryDenoise: true } },
  { name: 'square-inverted', factor: 2, reach: 3, amount: 2, effort: { ...CUT, tryInvert: true } },
];

// Enlarged less, or sharpened less, a stacked code of little more than a pixel a module stays unread. Squares are not asked for:
// measured on Data Matrix, what was joined gave none that its parts had not given.
const JOINED: readonly Way[] = [
  { name: 'joined-global', factor: 2, reach: 2, amount: 4, effort: CUT },
  { name: 'joined-local', factor: 2, reach: 3, amount: 2, effort: LOCAL },
];

const WAYS: Readonly<Record<Place['kind'], readonly Way[]>> = {
  stripes: STRIPES,
  matrix: SQUARES,
  joined: JOINED,
};

/** How many ways there are to read a place; more looks at one frame would tell nothing new. */
export function waysOf({ kind }: Place): number {
  return WAYS[kind].length;
}

/** Ways of the kind that has most. */
export const MOST_WAYS = Math.max(...Object.values(WAYS).map(({ length }) => length));

const SQUARE_FORMATS: readonly CodeFormat[] = ['DataMatrix', 'QRCode', 'Aztec'];
/** PDF417 is not asked for in stripes, which are parts of it; a small one may stand as one place of squares. */
function formatsFor(kind: Place['kind'], formats: readonly CodeFormat[]): readonly CodeFormat[] {
  return formats.filter((format) => {
    if (kind === 'joined') return format === 'PDF417';
    if (kind === 'matrix') return SQUARE_FORMATS.includes(format) || format === 'PDF417';
    return format !== 'PDF417' && !SQUARE_FORMATS.includes(format);
  });
}

/** Reads one place in the way whose turn it is; `turn` may be any whole number >= 0. Corners are in pixels of the frame. */
export function readPlace(
  reader: CodeReader,
  { image, formats }: { readonly image: GrayImage; readonly formats: readonly CodeFormat[] },
  { place, turn }: { readonly place: Place; readonly turn: number },
): FoundCode[] {
  const asked = formatsFor(place.kind, formats);
  const ways = WAYS[place.kind];
  const way = ways[turn % ways.length]!; // never empty
  const cut = place.kind === 'stripes' ? cutStripes(image, place, way) : cutSquare(image, place, way);
  const { reach, amount, evenReach = 0, factor, effort } = way;
  const sharp =
    place.kind === 'stripes'
      ? sharpenRows(cut.image, { reach, amount, evenReach: Math.round(evenReach * factor) })
      : sharpenGray(cut.image, reach, amount);
  return reader(sharp, asked, effort).map((code) => ({
    ...code,
    quad: quadFromCut(code.quad, cut),
    pass: way.name,
  }));
}

function cutStripes(image: GrayImage, place: Place, { factor }: Way) {
  return cutUpright(image, place, {
    factor,
    // Along its bars a code of stripes says the same at each pixel: more of them cost time and tell nothing.
    factorAcross: 0.5,
    // A quiet zone of ten modules.
    marginAlong: Math.max(16, place.length * 0.1),
    marginAcross: 4,
    meanReach: 4,
  });
}

function cutSquare(image: GrayImage, place: Place, { factor }: Way) {
  // A quiet zone of one to four modules, and an edge that a place beside other print misses. With more
  // around what was joined, a small stacked code that is out of focus stays unread.
  const margin = place.kind === 'joined' ? 14 : Math.max(14, 0.2 * Math.max(place.length, place.breadth));
  return cutUpright(image, place, { factor, marginAlong: margin, marginAcross: margin, meanReach: 0 });
}

/** The shortest codes of stripes have some 50 modules: the edge of a label is shorter across. */
const LEAST_STRIPES_PX = 56;

/** A place as it is looked at; null where no code of these symbologies can be read in a place of its kind and size. */
export function placeToLookAt(image: GrayImage, place: Place, formats: readonly CodeFormat[]): Place | null {
  if (formatsFor(place.kind, formats).length === 0) return null;
  if (place.kind !== 'stripes') return place;
  return place.length < LEAST_STRIPES_PX ? null : leanStripes(image, place);
}
