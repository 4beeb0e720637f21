// What the frames before this one gave, and by which look: what one frame alone gave is looked at again in the same way, as a symbology that
// needs two agreeing frames would else wait until that way's turn comes again; and what is known already gives way to what is not.
// Method: the last corners of each code and its look, for as many frames as a hand holds still. Refused: to leave out what is known, since
// the code that ties a frame to the one before would then be missing from it.

import type { Place } from './decode-places.ts';
import { type CodeFormat, doubtfulFormats, type FoundCode, type Quad } from './decode-protocol.ts';

/** A look at one place in one way. */
export interface Look<W> {
  readonly place: Place;
  readonly way: W;
}

interface Sighting<W> {
  readonly format: CodeFormat;
  readonly quad: Quad;
  /** The look that gave it; null where the look at the whole frame did. */
  readonly look: Look<W> | null;
  readonly frames: number;
  readonly missed: number;
}

/** Frames after which a code that is not read again counts as gone. */
const KEPT_FRAMES = 8;
/** Frames in which a look may fail to give its code again before it is left to its turn. */
const MOST_MISSED = 2;
/** Looks repeated in one frame at most, so that the rest of the picture has its turn. */
const MOST_REPEATED = 3;
/** A place of this frame is one of the last when their middles are no farther apart than this share of its length. */
const NEAR = 0.5;

/** The memory of a run of frames. */
export interface Sightings<W> {
  /** Codes that one look gave in this frame. */
  note(codes: readonly FoundCode[], look: Look<W>): void;
  /** The looks that this frame begins with, at the places as they are now. */
  toRepeat(places: readonly Place[], found: readonly FoundCode[]): readonly Look<W>[];
  /** Codes that may be believed and were in view lately, where they stood last. */
  settled(): readonly { readonly quad: Quad }[];
  /** The way in which the code at a place was read; null where none was. */
  wayFor(place: Place): W | null;
  /** Takes all that the frame gave. */
  endFrame(found: readonly FoundCode[]): void;
}

/** Begins with nothing seen. */
export function createSightings<W>(): Sightings<W> {
  let seen: ReadonlyMap<string, Sighting<W>> = new Map();
  let looks = new Map<string, Look<W>>();
  const isSure = ({ format, frames }: Sighting<W>) => frames >= 2 || !doubtfulFormats.includes(format);
  return {
    note(codes, look) {
      for (const code of codes) looks.set(keyOf(code), look);
    },
    toRepeat(places, found) {
      const here = new Set(found.map(keyOf));
      const away = [...seen].filter(([key, { look }]) => look !== null && !here.has(key));
      const unsure = away.filter(([, sighting]) => !isSure(sighting) && sighting.missed < MOST_MISSED);
      // Nothing in view yet: the code read last ties this frame to the ones before.
      const tie = found.length > 0 ? [] : away.filter(([, sighting]) => isSure(sighting)).slice(0, 1);
      return [...unsure, ...tie]
        .slice(0, MOST_REPEATED)
        .flatMap(([, { look }]) => (look === null ? [] : [{ ...look, place: nearest(look.place, places) }]));
    },
    settled: () => [...seen.values()].filter(isSure),
    wayFor(place) {
      for (const { look } of seen.values())
        if (look !== null && nearest(look.place, [place]) === place) return look.way;
      return null;
    },
    endFrame(found) {
      const next = new Map<string, Sighting<W>>();
      for (const code of found) {
        const key = keyOf(code);
        const before = seen.get(key);
        const look = looks.get(key) ?? before?.look ?? null;
        next.set(key, {
          format: code.format,
          quad: code.quad,
          look,
          frames: (before?.frames ?? 0) + 1,
          missed: 0,
        });
      }
      for (const [key, sighting] of seen)
        if (!next.has(key) && sighting.missed < KEPT_FRAMES)
          next.set(key, { ...sighting, missed: sighting.missed + 1 });
      seen = next;
      looks = new Map();
    },
  };
}

function keyOf({ format, text }: FoundCode): string {
  return `${format}\n${text}`;
}

/** The place of this frame that an earlier one has become; the earlier one where none is near enough. */
function nearest(earlier: Place, places: readonly Place[]): Place {
  const gap = (place: Place) => Math.hypot(place.x - earlier.x, place.y - earlier.y);
  const near = places
    .filter((place) => place.kind === earlier.kind && gap(place) <= NEAR * earlier.length)
    .sort((one, other) => gap(one) - gap(other));
  return near[0] ?? earlier;
}
