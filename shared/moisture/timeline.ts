// Where was the reel at every moment from the opening of its bag until now?
// Method: the recorded stretches cut at all their ends; each piece takes the worst place that covers it, and a piece that nothing covers
// counts as floor in the climate before. So order, gaps and overlaps of the record cannot lengthen a floor life.

import type { Air } from '../floor/vocabulary.ts';
import { standardClimate } from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';

/** A climate: temperature in °C, relative humidity in %. */
export interface Climate {
  readonly celsius: number;
  readonly humidity: number;
}

/** A recorded stretch of time in one place. Moments in ms since 1970. */
export interface AirSpan {
  readonly fromMs: number;
  /** Null: it still lasts. */
  readonly toMs: number | null;
  readonly where: Air;
  /** °C; null = not recorded. */
  readonly celsius: number | null;
  /** % relative humidity; null = not recorded. */
  readonly humidity: number | null;
  /** A bake only: a lead lets it count whatever the table asks for. */
  readonly isApproved?: boolean;
}

/** A piece of the gapless timeline. */
export interface Piece {
  readonly fromMs: number;
  readonly toMs: number;
  readonly where: Air;
  readonly celsius: number | null;
  readonly humidity: number | null;
  /** The stretch that it comes from; null for a gap. */
  readonly stretch: AirSpan | null;
}

/** The timeline and what had to be assumed to make it. */
export interface Timeline {
  readonly pieces: readonly Piece[];
  /** The climate of the first floor stretch, which holds before it; 30 °C and 60 % or the usual one where none is recorded. */
  readonly firstClimate: Climate;
  /** The climate of a floor stretch that begins at this very moment; null where there is none. */
  readonly climateFromNow: Climate | null;
  readonly notes: readonly FloorLifeNote[];
}

const badness: Readonly<Record<Air, number>> = { floor: 2, dry: 1, bake: 0 };

function isWorse(a: AirSpan, b: AirSpan): boolean {
  if (a.where !== b.where) return badness[a.where] > badness[b.where];
  const [humidityA, humidityB] = [a.humidity ?? 0, b.humidity ?? 0];
  return humidityA !== humidityB ? humidityA > humidityB : (a.celsius ?? 0) > (b.celsius ?? 0);
}

function endOf(stretch: AirSpan, nowMs: number): number {
  return Math.min(stretch.toMs ?? nowMs, nowMs);
}

function climateOf(stretch: AirSpan | null, usual: Climate): Climate {
  return {
    celsius: stretch?.celsius ?? usual.celsius,
    humidity: stretch?.humidity ?? usual.humidity,
  };
}

/** Joins neighbouring pieces that come from the same stretch. */
function joinPieces(pieces: readonly Piece[]): Piece[] {
  const joined: Piece[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (last && last.stretch === piece.stretch && last.toMs === piece.fromMs) {
      joined[joined.length - 1] = { ...last, toMs: piece.toMs };
    } else joined.push(piece);
  }
  return joined;
}

function clipNotes(history: readonly AirSpan[], openedMs: number, nowMs: number): FloorLifeNote[] {
  const notes: FloorLifeNote[] = [];
  if (history.some((stretch) => stretch.fromMs < openedMs)) notes.push(floorLifeNote('beforeOpening'));
  if (history.some((stretch) => stretch.fromMs > nowMs || (stretch.toMs ?? nowMs) > nowMs)) {
    notes.push(floorLifeNote('afterNow'));
  }
  return notes;
}

/**
 * Makes the gapless timeline from `openedMs` to `nowMs`. `history` may be unsorted, overlap and have gaps. Floor is worse than dry
 * storage, that than a bake; of two stretches in one place the moister, then the warmer, is worse. A gap before any floor
 * stretch takes the climate of the first one, without any `usual` (null: 30 °C and 60 %, which is noted). Cost: pieces times stretches.
 */
export function makeTimeline(
  history: readonly AirSpan[],
  openedMs: number,
  nowMs: number,
  usual: Climate | null = null,
): Timeline {
  const notes = clipNotes(history, openedMs, nowMs);
  const inside = history.filter((stretch) => stretch.fromMs < nowMs && endOf(stretch, nowMs) > openedMs);
  const cuts = new Set([openedMs, nowMs]);
  for (const stretch of inside) {
    cuts.add(Math.max(stretch.fromMs, openedMs));
    cuts.add(endOf(stretch, nowMs));
  }
  const moments = [...cuts].sort((a, b) => a - b);
  const floors = history.filter(
    ({ where, celsius, humidity }) => where === 'floor' && celsius !== null && humidity !== null,
  );
  // Of two that begin at one moment the worse: their order in the record must not matter.
  const [firstFloor = null] = [...floors].sort((a, b) => a.fromMs - b.fromMs || (isWorse(a, b) ? -1 : 1));
  const otherwise = usual ?? standardClimate;
  const firstClimate = climateOf(firstFloor, otherwise);
  let climate = firstClimate;
  if (!firstFloor && usual === null) notes.push(floorLifeNote('standardClimate'));
  const pieces: Piece[] = [];
  const overlaps: Piece[] = [];
  for (let at = 0; at + 1 < moments.length; at++) {
    const [fromMs = 0, toMs = 0] = [moments[at], moments[at + 1]];
    const covering = inside.filter((stretch) => stretch.fromMs <= fromMs && endOf(stretch, nowMs) >= toMs);
    const [first] = covering;
    const worst = first && covering.reduce((a, b) => (isWorse(b, a) ? b : a), first);
    if (worst?.where === 'floor') {
      climate = { celsius: worst.celsius ?? climate.celsius, humidity: worst.humidity ?? climate.humidity };
    }
    const piece: Piece = worst
      ? { fromMs, toMs, where: worst.where, celsius: worst.celsius, humidity: worst.humidity, stretch: worst }
      : { fromMs, toMs, where: 'floor', ...climate, stretch: null };
    pieces.push(worst?.where === 'floor' ? { ...piece, ...climate } : piece);
    if (covering.length > 1) overlaps.push({ ...piece, stretch: null });
  }
  for (const { fromMs, toMs } of joinPieces(overlaps))
    notes.push(floorLifeNote('overlap', { from: fromMs, to: toMs }));
  const joined = joinPieces(pieces);
  if (history.length > 0) {
    for (const { stretch, fromMs, toMs } of joined) {
      if (stretch === null) notes.push(floorLifeNote('gapAsFloor', { from: fromMs, to: toMs }));
    }
  }
  const beginning = floors.filter((stretch) => stretch.fromMs === nowMs);
  const lasting = beginning.filter(({ toMs }) => toMs === null || toMs > nowMs);
  const [beginsNow] = [...(lasting.length > 0 ? lasting : beginning)].sort((a, b) =>
    isWorse(b, a) ? 1 : -1,
  );
  return {
    pieces: joined,
    firstClimate,
    climateFromNow: beginsNow ? climateOf(beginsNow, otherwise) : null,
    notes,
  };
}
