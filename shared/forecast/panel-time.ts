// How long does one panel take now, from the panels seen in this run?
// Method: working seconds per panel between counts; the middle value (median) with its spread (median absolute deviation) throws out
// stops, the mean of the rest is the answer; where the newest few differ from those before, only they count, so that a changed rate is followed
// within seven counts. A plain or exponential average was refused: one ten-minute stop would bend it for an hour.

import { type WorkingTime, workingSeconds } from './working-time.ts';

/** A count of panels: at this moment `panels` more had been done since the event before. */
export interface CountEvent {
  readonly atMs: number;
  readonly panels: number;
}

/** Seconds per panel, or why there is no answer. */
export type PanelTime =
  | {
      readonly seconds: number;
      /** One panel's deviation, s. */
      readonly sd: number;
      /** Deviation of `seconds` itself, s. */
      readonly meanSd: number;
      /** Counts used, counts thrown out as stops, and whether a changed rate cut the rest off. */
      readonly basis: { readonly used: number; readonly ignored: number; readonly changed: boolean };
    }
  | { readonly seconds: null; readonly reason: 'tooFewCounts' };

/** Counts looked back on. */
const LOOK_BACK = 181;
/** The newest counts that may speak for a changed rate. */
const NEWEST = 7;
/** Fewest intervals for an answer. */
const FEWEST = 3;
/** Median absolute deviation to standard deviation for a normal law (1 / Φ⁻¹(3/4)). */
const MAD_TO_SD = 1.4826;
/** Robust deviations beyond which an interval is a stop (Iglewicz & Hoaglin 1993: 3.5). */
const STOP_DEVIATIONS = 3.5;
/** Counts closer to the middle than this share of it are never stops: a steady line would have no spread at all. */
const ALWAYS_KEPT = 0.4;

interface Interval {
  readonly seconds: number;
  readonly panels: number;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function middleAndSpread(intervals: readonly Interval[]): { middle: number; spread: number } {
  const values = intervals.map((interval) => interval.seconds);
  const middle = median(values);
  return { middle, spread: MAD_TO_SD * median(values.map((value) => Math.abs(value - middle))) };
}

/** True where the newest intervals no longer fit those before: the middles differ by more than four deviations and 3 %. */
function isChanged(before: readonly Interval[], newest: readonly Interval[]): boolean {
  if (before.length < NEWEST || newest.length < NEWEST) return false;
  const old = middleAndSpread(before);
  const now = middleAndSpread(newest);
  const allowed = 4 * Math.hypot(old.spread / Math.sqrt(before.length), now.spread / Math.sqrt(NEWEST));
  return Math.abs(now.middle - old.middle) > Math.max(allowed, 0.03 * old.middle);
}

function toIntervals(events: readonly CountEvent[], calendar: WorkingTime): Interval[] {
  const intervals: Interval[] = [];
  for (let i = Math.max(1, events.length - LOOK_BACK); i < events.length; i++) {
    const event = events[i]!;
    const seconds = workingSeconds(calendar, events[i - 1]!.atMs, event.atMs);
    if (event.panels > 0 && seconds > 0) {
      intervals.push({ seconds: seconds / event.panels, panels: event.panels });
    }
  }
  return intervals;
}

/**
 * Working seconds per panel from the counts of this run, oldest first (the first only starts the clock). Looks back on 181 counts at
 * most: cost does not grow with the run. Stops are ignored: they belong to the calendar or come unforeseen, and an early forecast is the safe one.
 */
export function panelTimeEstimate(events: readonly CountEvent[], calendar: WorkingTime): PanelTime {
  const all = toIntervals(events, calendar);
  if (all.length < FEWEST) return { seconds: null, reason: 'tooFewCounts' };
  const newest = all.slice(-NEWEST);
  const changed = isChanged(all.slice(0, -NEWEST), newest);
  const looked = changed ? newest : all;
  const { middle, spread } = middleAndSpread(looked);
  const allowed = Math.max(STOP_DEVIATIONS * spread, ALWAYS_KEPT * middle);
  const kept = looked.filter((interval) => Math.abs(interval.seconds - middle) <= allowed);
  const panels = kept.reduce((sum, interval) => sum + interval.panels, 0);
  const seconds = kept.reduce((sum, interval) => sum + interval.seconds * interval.panels, 0) / panels;
  // An interval over k panels shows their mean, whose variance is one panel's over k.
  const squares = kept.reduce(
    (sum, interval) => sum + interval.panels * (interval.seconds - seconds) ** 2,
    0,
  );
  const sd = kept.length > 1 ? Math.sqrt(squares / (kept.length - 1)) : 0;
  return {
    seconds,
    sd,
    meanSd: sd / Math.sqrt(panels),
    basis: { used: kept.length, ignored: looked.length - kept.length, changed },
  };
}
