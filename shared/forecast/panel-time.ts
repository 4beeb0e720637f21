// How long does one panel take now, from the panels seen in this run?
// Method: working seconds per panel between counts; the middle value (median) with its spread (median absolute deviation) throws out
// stops, the mean of the rest is the answer; where the newest few differ from those before, only they count, so that a changed rate is followed
// within seven counts. Counts made at a hand's pace, or many times as fast as the line runs, are somebody catching up: one lump over the
// time since the count before. A plain or exponential average was refused: one ten-minute stop would bend it for an hour.

import { median } from '../kit/median.ts';
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

function middleAndSpread(intervals: readonly Interval[]): { middle: number; spread: number } {
  const values = intervals.map((interval) => interval.seconds);
  const middle = median(values) ?? 0;
  return { middle, spread: MAD_TO_SD * (median(values.map((value) => Math.abs(value - middle))) ?? 0) };
}

/** True where the newest intervals no longer fit those before: the middles differ by more than four deviations and 3 %. */
function isChanged(before: readonly Interval[], newest: readonly Interval[]): boolean {
  if (before.length < NEWEST || newest.length < NEWEST) return false;
  const old = middleAndSpread(before);
  const now = middleAndSpread(newest);
  const allowed = 4 * Math.hypot(old.spread / Math.sqrt(before.length), now.spread / Math.sqrt(NEWEST));
  return Math.abs(now.middle - old.middle) > Math.max(allowed, 0.03 * old.middle);
}

/** No line makes panels this fast, s: carrying one board out and the next in takes longer (common practice). Fingers do. */
const HAND_SECONDS = 2;
/** Nor does a line suddenly run this many times as fast as it did. */
const IMPLAUSIBLY_FAST = 4;

/** Joins to each interval the ones right after it that took less than `least` seconds a panel. */
function lumped(intervals: readonly Interval[], least: number): Interval[] {
  const lumps: Interval[] = [];
  for (const interval of intervals) {
    const before = lumps.at(-1);
    if (before === undefined || interval.seconds >= least) {
      lumps.push(interval);
      continue;
    }
    const panels = before.panels + interval.panels;
    const seconds = before.seconds * before.panels + interval.seconds * interval.panels;
    lumps[lumps.length - 1] = { seconds: seconds / panels, panels };
  }
  return lumps;
}

/** The seconds a panel below and above which half of the time went by: quick counts weigh next to nothing. */
function middleOfTime(intervals: readonly Interval[]): number {
  const sorted = [...intervals].sort((a, b) => a.seconds - b.seconds);
  const whole = sorted.reduce((sum, interval) => sum + interval.seconds * interval.panels, 0);
  let sum = 0;
  for (const interval of sorted) {
    sum += interval.seconds * interval.panels;
    if (sum >= whole / 2) return interval.seconds;
  }
  return 0;
}

function toIntervals(events: readonly CountEvent[], calendar: WorkingTime): Interval[] {
  const intervals: Interval[] = [];
  let quick = 0;
  // From the newest back, until enough counts are seen that are not one lump.
  for (let i = events.length - 1; i > 0 && intervals.length - quick < LOOK_BACK - 1; i--) {
    const event = events[i]!;
    const seconds = workingSeconds(calendar, events[i - 1]!.atMs, event.atMs);
    const isQuick = event.atMs - events[i - 1]!.atMs < HAND_SECONDS * 1000 * event.panels;
    // Panels of a line that runs on through a planned stop tell nothing: their working time is none.
    if (event.panels <= 0 || (seconds <= 0 && !isQuick)) continue;
    const each = seconds / event.panels;
    if (isQuick) quick += 1;
    intervals.push({ seconds: each, panels: event.panels });
  }
  return intervals.reverse();
}

/** Intervals that a line can have made. A first one that is too quick has no known start and is left out. */
function plausible(all: readonly Interval[], nominalSeconds: number): Interval[] {
  if (all.length === 0) return [];
  const byHand = lumped(all, HAND_SECONDS);
  // Any of them may be far off: the middles after long stops or many quick counts, the nominal time by a slip of whoever typed it.
  const middles = [middleOfTime(byHand), median(byHand.map((interval) => interval.seconds)) ?? 0];
  const usual = Math.min(nominalSeconds, ...middles);
  const least = Math.max(HAND_SECONDS, usual / IMPLAUSIBLY_FAST);
  return lumped(byHand, least).filter((interval, i) => i > 0 || interval.seconds >= least);
}

/**
 * Working seconds per panel from the counts of this run, oldest first (the first only starts the clock). Looks back on 181 counts at
 * most (a burst of counts is one): cost does not grow with the run. Stops are ignored: they belong to the calendar or come unforeseen, and
 * an early forecast is the safe one. `nominalSeconds`: what the run was planned with, s per panel; tells a burst from a change of rate.
 * Example: twenty counts within ten seconds, ten minutes after the count before, are twenty panels of 30.5 s.
 */
export function panelTimeEstimate(
  events: readonly CountEvent[],
  calendar: WorkingTime,
  nominalSeconds = Number.POSITIVE_INFINITY,
): PanelTime {
  const all = plausible(toIntervals(events, calendar), nominalSeconds);
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
