// A changeover as a picture: each person a lane, each act a stretch of it, on an axis of minutes from the last good panel on.

import type { ChangeTimes, Pause, TimeMark } from '../../../../shared/changeover/times.ts';

/** A stretch of the picture, in percent of its breadth. */
export interface Stretch {
  readonly left: number;
  readonly width: number;
}

/** The picture in numbers. */
export interface TimePicture {
  /** Minutes since the picture's beginning, with their place in percent. */
  readonly ticks: readonly { readonly minutes: number; readonly left: number }[];
  readonly lanes: readonly {
    readonly who: string | null;
    readonly acts: readonly (Stretch & { readonly mark: TimeMark })[];
  }[];
  /** Breaks and planned stops. */
  readonly stops: readonly Stretch[];
}

const tickMinutes = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440] as const;
/** More marks than that run into each other at 390 px. */
const MOST_TICKS = 6;

/**
 * The stretch from the last good panel to the release (or to now), everything outside it cut off; while the old product still
 * runs, the stretch since the changeover was planned.
 */
export function pictureTimes(times: ChangeTimes, beganMs: number, pauses: readonly Pause[]): TimePicture {
  const startMs = times.stoodMs ?? beganMs;
  const wholeMs = Math.max(1, times.endMs - startMs);
  const stretch = (fromMs: number, toMs: number): Stretch | null => {
    const from = Math.max(startMs, fromMs);
    const to = Math.min(startMs + wholeMs, toMs);
    if (to <= from) return null;
    return { left: ((from - startMs) / wholeMs) * 100, width: ((to - from) / wholeMs) * 100 };
  };
  const lanes = times.persons.map(({ who }) => ({
    who,
    acts: times.marks
      .filter((mark) => mark.who === who)
      .flatMap((mark) => {
        const at = stretch(mark.fromMs, mark.atMs);
        return at ? [{ ...at, mark }] : [];
      }),
  }));
  const whole = wholeMs / 60_000;
  const each =
    tickMinutes.find((minutes) => whole / minutes < MOST_TICKS) ??
    Math.ceil(whole / MOST_TICKS / 1440) * 1440;
  const ticks = Array.from({ length: Math.floor(whole / each) + 1 }, (_, index) => ({
    minutes: index * each,
    left: ((index * each) / whole) * 100,
  }));
  return {
    ticks,
    lanes: lanes.filter((lane) => lane.acts.length > 0),
    stops: pauses.flatMap((pause) => stretch(pause.fromMs, pause.toMs) ?? []),
  };
}
