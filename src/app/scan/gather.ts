// Which codes seen over several frames belong to one label, when is that label whole, and are there two in view?
// Method: the newest frame's coordinates; older sightings are carried along by the movement of the codes seen in both.
// Codes close together in relation to their size are one label, unless they contradict each other, or were never in view
// together with anything between them: where no code ties a frame to those before, the camera may stand before another label.
// Refused: taking the first code that reads (half a label) and taking all in view as one (two labels mixed).

import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { doubtfulFormats, type Point, type Quad } from '../../worker/decode-protocol.ts';
import { centreOf, distance, isWithin, longestSide, movementOf, moveQuad } from './movement.ts';

export interface SeenCode extends ScannedCode {
  readonly quad: Quad;
}

export interface GatherSettings {
  /** Frames without anything new after which a label without a whole 2D code counts as gathered. */
  readonly settleFrames: number;
  /**
   * The same for a label of these codes: quiet frames to wait, or null where it is half a label, which waits until more comes
   * or a person says that this is all.
   */
  readonly settleFor: ((codes: readonly ScannedCode[]) => number | null) | null;
  /** Frames to look on after a whole 2D code was read, in case a second label comes into view. */
  readonly settleWholeFrames: number;
  /** Frames without any code after which the look starts afresh. */
  readonly forgetFrames: number;
  /** Frames after which a code that is no longer read is dropped, as the camera has moved on. */
  readonly staleFrames: number;
  /** Gap between two codes of one label, at most this many times the longer side of the larger one. */
  readonly linkFactor: number;
  /** Symbologies that need two agreeing frames. */
  readonly doubtful: readonly string[];
  /** Whether a code alone says all that a label says: by default a complete ISO/IEC 15434 envelope. */
  readonly isWhole: (code: ScannedCode) => boolean;
  /** What a code claims to be, such as its data identifier: two different codes with one claim cannot share a label. */
  readonly claim: (code: ScannedCode) => string | null;
}

const ENVELOPE = /^\[\)>\u001e[\s\S]*\u001e\u0004?$/;

export const DEFAULT_GATHER_SETTINGS: GatherSettings = {
  settleFrames: 4,
  settleFor: null,
  settleWholeFrames: 1,
  forgetFrames: 6,
  staleFrames: 14,
  linkFactor: 1.2,
  doubtful: doubtfulFormats,
  isWhole: ({ text }) => ENVELOPE.test(text),
  claim: ({ text }) => (ENVELOPE.test(text) ? 'envelope' : null),
};

export interface Track {
  readonly code: SeenCode;
  /** Frames in which it was read. */
  readonly frames: number;
  /** Frames since it was last read; 0 is in view. */
  readonly missed: number;
  /** The view that it belongs to: codes of one view are tied by frames that hold two of them, and share its coordinates. */
  readonly view: number;
}

export interface GatherState {
  readonly tracks: readonly Track[];
  /** Frames since something new was read, and since anything was read. */
  readonly quietFrames: number;
  readonly emptyFrames: number;
  /** The view that the newest codes belong to. */
  readonly view: number;
}

export const EMPTY_GATHER: GatherState = { tracks: [], quietFrames: 0, emptyFrames: 0, view: 0 };

export interface GatheredLabel {
  readonly codes: readonly SeenCode[];
}

export type GatherAnswer =
  | { readonly kind: 'nothing' }
  /** `isHalf`: nothing new comes, and what was read is not enough. */
  | { readonly kind: 'gathering'; readonly label: GatheredLabel; readonly isHalf: boolean }
  | { readonly kind: 'complete'; readonly label: GatheredLabel }
  /** More than one label in view, or codes that contradict each other: a person has to choose or come closer. */
  | { readonly kind: 'several'; readonly labels: readonly GatheredLabel[] };

/** One frame further. `codes`: what was read in it, corners in its pixels. */
export function gatherFrame(
  state: GatherState,
  codes: readonly SeenCode[],
  settings: GatherSettings = DEFAULT_GATHER_SETTINGS,
): GatherState {
  if (codes.length === 0) {
    const emptyFrames = state.emptyFrames + 1;
    if (emptyFrames >= settings.forgetFrames) return EMPTY_GATHER;
    const tracks = state.tracks.map((track) => ({ ...track, missed: track.missed + 1 }));
    return { ...state, tracks, emptyFrames, quietFrames: state.quietFrames + 1 };
  }
  const { tied, apart } = carryAlong(state.tracks, codes);
  const view = tied.length > 0 ? state.view : state.view + 1;
  const taken = new Set<Track>();
  const seen = codes.map((code): Track => {
    const known = nearestSame(tied, code, taken);
    if (known !== null) taken.add(known);
    // Two frames that agree on a text say that it was read right, wherever it stands.
    const before = known ?? apart.find((track) => isSame(track.code, code));
    return { code, frames: (before?.frames ?? 0) + 1, missed: 0, view };
  });
  const isNew =
    view !== state.view ||
    // A doubtful code is news once a second frame agrees: ghosts of a bar code would else keep a label from ever being quiet.
    seen.some(({ code, frames }) => frames === (settings.doubtful.includes(code.format ?? '') ? 2 : 1));
  // No code lies on another: one that would was carried to a wrong place.
  const isCovered = ({ code }: Track) => codes.some(({ quad }) => isWithin(quad, centreOf(code.quad)));
  const unseen = [
    ...tied.filter((track) => !taken.has(track) && !isCovered(track)).map((track) => ({ ...track, view })),
    ...apart,
  ]
    .filter((track) => track.missed < settings.staleFrames)
    .map((track) => ({ ...track, missed: track.missed + 1 }));
  return {
    tracks: [...seen, ...unseen],
    emptyFrames: 0,
    quietFrames: isNew ? 0 : state.quietFrames + 1,
    view,
  };
}

/** Codes of the newest view that may be believed: those that check themselves, and the doubtful ones that two frames agree on. */
export function sureCodes(
  state: GatherState,
  settings: GatherSettings = DEFAULT_GATHER_SETTINGS,
): readonly SeenCode[] {
  return state.tracks
    .filter(
      ({ code, frames, view }) =>
        view === state.view && (frames >= 2 || !settings.doubtful.includes(code.format ?? '')),
    )
    .map(({ code }) => code);
}

/**
 * What can be said so far. Never `complete` while anything contradicts. `isAsking`: which of several labels is meant was asked already; the
 * choice then stays under the finger, whatever more is read, as long as there are several.
 */
export function gatherAnswer(
  state: GatherState,
  settings: GatherSettings = DEFAULT_GATHER_SETTINGS,
  isAsking = false,
): GatherAnswer {
  const sure = sureCodes(state, settings);
  if (sure.length === 0) return { kind: 'nothing' };
  const labels = groupByPlace(sure, settings).map((codes) => ({ codes }));
  const [label, ...others] = labels;
  if (label === undefined) return { kind: 'nothing' };
  if (others.length > 0) {
    // Asked only once it is quiet: a label far from the rest may still be joined by what is between them.
    return isAsking || state.quietFrames >= settings.settleWholeFrames
      ? { kind: 'several', labels }
      : { kind: 'gathering', label, isHalf: false };
  }
  const isWhole = label.codes.some((code) => settings.isWhole(code));
  const quietEnough = isWhole ? settings.settleWholeFrames : patience(label.codes, settings);
  if (quietEnough === null)
    return { kind: 'gathering', label, isHalf: state.quietFrames >= settings.settleFrames };
  const isUnsettled =
    state.tracks.some(({ frames, missed }) => frames === 1 && missed === 0) &&
    sure.length < state.tracks.filter(({ view }) => view === state.view).length;
  return state.quietFrames >= quietEnough && !isUnsettled
    ? { kind: 'complete', label }
    : { kind: 'gathering', label, isHalf: false };
}

function patience(codes: readonly SeenCode[], settings: GatherSettings): number | null {
  return settings.settleFor === null ? settings.settleFrames : settings.settleFor(codes);
}

function isSame(one: ScannedCode, other: ScannedCode): boolean {
  return one.text === other.text && one.format === other.format;
}

/** The codes known so far: those that a code in this frame ties to it, at their place in it; and those that nothing ties. */
function carryAlong(
  tracks: readonly Track[],
  codes: readonly SeenCode[],
): { readonly tied: readonly Track[]; readonly apart: readonly Track[] } {
  const tied: Track[] = [];
  const apart: Track[] = [];
  for (const view of new Set(tracks.map((track) => track.view))) {
    const own = tracks.filter((track) => track.view === view);
    // A text may stand twice in view: then the nearer one is meant, and `movementOf` weighs it against the others.
    const pairs = own.flatMap(({ code }) => {
      const here = centreOf(code.quad);
      const [nearest] = codes
        .filter((each) => isSame(each, code))
        .map(({ quad }) => ({ quad, gap: distance(centreOf(quad), here) }))
        .sort((one, other) => one.gap - other.gap);
      return nearest === undefined ? [] : [{ from: code.quad, to: nearest.quad }];
    });
    const movement = movementOf(pairs);
    if (movement === null) apart.push(...own);
    else
      tied.push(
        ...own.map((track) => ({
          ...track,
          code: { ...track.code, quad: moveQuad(movement, track.code.quad) },
        })),
      );
  }
  return { tied, apart };
}

function nearestSame(tracks: readonly Track[], code: SeenCode, taken: ReadonlySet<Track>): Track | null {
  const here = centreOf(code.quad);
  const same = tracks.filter((track) => !taken.has(track) && isSame(track.code, code));
  return same.reduce<Track | null>((best, track) => {
    if (best === null) return track;
    return distance(centreOf(track.code.quad), here) < distance(centreOf(best.code.quad), here)
      ? track
      : best;
  }, null);
}

function groupByPlace(
  codes: readonly SeenCode[],
  settings: GatherSettings,
): readonly (readonly SeenCode[])[] {
  let groups: readonly (readonly SeenCode[])[] = codes.map((code) => [code]);
  // Nearest first, so that a contradiction parts two labels between their codes and not through one of them.
  const links = codes
    .flatMap((one, at) =>
      codes.slice(at + 1).map((other) => ({ one, other, gap: gapBetween(one.quad, other.quad) })),
    )
    .filter(
      ({ one, other, gap }) =>
        gap <= settings.linkFactor * Math.max(longestSide(one.quad), longestSide(other.quad)),
    )
    .sort((left, right) => left.gap - right.gap);
  for (const { one, other } of links) {
    const left = groups.find((group) => group.includes(one));
    const right = groups.find((group) => group.includes(other));
    if (left === undefined || right === undefined || left === right || areRivals(left, right, settings))
      continue;
    groups = [...groups.filter((group) => group !== left && group !== right), [...left, ...right]];
  }
  // From left to right, so that the numbers on the picture stay with their labels from frame to frame.
  return [...groups].sort((left, right) => leftmost(left) - leftmost(right));
}

function leftmost(codes: readonly SeenCode[]): number {
  return Math.min(...codes.map(({ quad }) => centreOf(quad).x));
}

function areRivals(left: readonly SeenCode[], right: readonly SeenCode[], settings: GatherSettings): boolean {
  return left.some((one) =>
    right.some((other) => {
      // The same code twice at once is two labels of the same kind.
      if (isSame(one, other)) return true;
      const claim = settings.claim(one);
      return claim !== null && claim === settings.claim(other) && one.text !== other.text;
    }),
  );
}

/** Smallest distance between the outlines of two quads; 0 when they overlap or touch at a corner. */
function gapBetween(one: Quad, other: Quad): number {
  const between = (from: Quad, to: Quad) =>
    Math.min(
      ...from.flatMap((point) => to.map((start, at) => toSegment(point, start, to[(at + 1) % 4] ?? start))),
    );
  return Math.min(between(one, other), between(other, one));
}

function toSegment(point: Point, start: Point, end: Point): number {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((point.x - start.x) * dx + (point.y - start.y) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return distance(point, { x: start.x + share * dx, y: start.y + share * dy });
}
