// The demo's shift on the wall clock: which of its entries have happened by now, at real pace or faster.
// Method: the shift is played on as far as is told, and goes on from there. Refused: hours in advance, as whoever is served meanwhile waits
// for them; a longer play from the start again, which takes longer each time.

import { applyEntry } from '../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../shared/floor/state.ts';
import type { Entry } from '../shared/log/entry.ts';
import { compareEntries } from '../shared/log/order.ts';
import { openLinesPlay } from './more-lines.ts';

/** How far the run is when the demo is opened, ms: after the first break, with a third of the job done. */
const UNDER_WAY_MS = 140 * 60_000;
/** As long as this is played at most, ms. */
const LONGEST_MS = 26 * 3_600_000;

/** A shift that is being told. */
export interface Playing {
  /** Entries told so far, in order. */
  readonly told: readonly Entry[];
  /** The floor after them. */
  readonly state: FloorState;
  /** The plant's time. */
  readonly plantMs: (realMs: number) => number;
  readonly speed: number;
  /** When the shift was opened, on the real clock, which is also its plant time then. */
  readonly openedMs: number;
  /** Tells what has happened up to a moment of the real clock; returns only what is new. */
  readonly tell: (realMs: number) => readonly Entry[];
}

/** Opens a shift that is under way at `openedMs`. `speed`: plant seconds a real second, > 0. */
export function openPlaying(settings: {
  readonly seed: number;
  readonly openedMs: number;
  readonly speed: number;
  readonly zone: string;
  /** Lines that play; one where nobody says. */
  readonly lines?: number;
  /** A small line with a conveyor of two lanes plays beside them; default not. */
  readonly lanes?: boolean;
}): Playing {
  const { seed, openedMs, speed, zone, lines = 1, lanes = false } = settings;
  const startMs = openedMs - UNDER_WAY_MS;
  const playTo = openLinesPlay({ seed, startMs, zone, paste: true }, lines, { lanes });
  /** Played, but later than what is told. */
  let coming: readonly Entry[] = [];
  const told: Entry[] = [];
  const state = emptyState();
  const plantMs = (realMs: number) => openedMs + (realMs - openedMs) * speed;
  return {
    told,
    state,
    plantMs,
    speed,
    openedMs,
    tell: (realMs) => {
      const untilMs = plantMs(realMs);
      const from = told.length;
      const fresh = playTo(Math.min(startMs + LONGEST_MS, Math.floor(untilMs) + 1));
      if (fresh.length > 0) coming = [...coming, ...fresh].sort(compareEntries);
      const later = coming.findIndex(({ hlc }) => hlc.ms > untilMs);
      const now = later === -1 ? coming : coming.slice(0, later);
      coming = later === -1 ? [] : coming.slice(later);
      for (const next of now) {
        told.push(next);
        applyEntry(state, next);
      }
      return told.slice(from);
    },
  };
}
