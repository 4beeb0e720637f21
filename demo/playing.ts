// The demo's shift on the wall clock: which of its entries have happened by now, at real pace or faster.
// Method: the shift is played in advance, a few hours first and twice as many each time they are told; time only decides how much of it
// is told. A longer play begins with the very entries of a shorter one. Refused: all hours at once, seconds before anybody sees anything.

import { applyEntry } from '../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../shared/floor/state.ts';
import type { Entry } from '../shared/log/entry.ts';
import { simulateLines } from './more-lines.ts';

/** How far the run is when the demo is opened, ms: after the first break, with a third of the job done. */
const UNDER_WAY_MS = 140 * 60_000;
/** Hours that are played at most. */
const HOURS_AHEAD = 26;
/** Hours that are played when the demo is opened: forty minutes more than are told then. */
const HOURS_FIRST = 3;
const HOUR_MS = 3_600_000;

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
  const play = (hours: number) =>
    simulateLines({ seed, startMs, zone, hours, paste: true }, lines, { lanes });
  let hours = HOURS_FIRST;
  let entries = play(hours);
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
      const played = hours;
      while (hours < HOURS_AHEAD && untilMs >= startMs + hours * HOUR_MS)
        hours = Math.min(HOURS_AHEAD, 2 * hours);
      if (hours > played) entries = play(hours);
      for (let next = entries[told.length]; next && next.hlc.ms <= untilMs; next = entries[told.length]) {
        told.push(next);
        applyEntry(state, next);
      }
      return told.slice(from);
    },
  };
}
