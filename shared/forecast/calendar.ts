// When does a line not run: outside shifts, in breaks, on planned stops, in a zone whose clocks jump?
// Method: shifts as wall-clock times of a zone, each turned into moments on its own date with the platform's zone data (Intl), so that
// a shift over a clock change is an hour shorter or longer; what no shift covers is a stop. A fixed offset was refused:
// wrong for half the year.

import { DAY_MS, utcDate } from '../kit/moment.ts';
import type { Stop } from './working-time.ts';

/** Wall-clock time of day, `HH:MM`, 00:00 to 23:59. */
export type WallTime = string;

/** A stretch of the wall clock. Ends on the next day where `to` is not after `from`. */
export interface WallSpan {
  readonly from: WallTime;
  readonly to: WallTime;
}

/** A pause within a shift; `days`: those of the shift's days on which it is taken, all of them where absent. */
export interface Break extends WallSpan {
  readonly days?: readonly number[];
}

/** A shift on some days of the week; `days` by ISO 8601: 1 Monday to 7 Sunday, the day on which it starts. */
export interface Shift extends WallSpan {
  readonly days: readonly number[];
  readonly breaks: readonly Break[];
}

/** Shifts of every second week, beside those of the week `firstWeek` (any date in it) and every second one from there. */
export interface OtherWeek {
  readonly shifts: readonly Shift[];
  readonly firstWeek: string;
}

/** A line's plan. No shift at all: the line runs round the clock but for `plannedStops` and closed days. */
export interface LinePlan {
  /** IANA zone, such as `Europe/Berlin`. */
  readonly zone: string;
  readonly shifts: readonly Shift[];
  /** Absent: every week is alike. */
  readonly otherWeek?: OtherWeek | null;
  /** Dates (`YYYY-MM-DD`, by the zone's clock) on which no shift starts. */
  readonly closedDates: readonly string[];
  /** Stops known by moment: maintenance, meetings. */
  readonly plannedStops: readonly Stop[];
  /** Work beside the shifts, on closed days too; nothing to a line that runs round the clock. */
  readonly overtime?: readonly Stop[];
}

/** A zone's offset from UTC at a moment, ms; made once per question, since a formatter is slow to make. */
type OffsetAt = (atMs: number) => number;

function zoneOffset(zone: string): OffsetAt {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return (atMs) => {
    const wholeMs = Math.floor(atMs / 1000) * 1000;
    const field: Record<string, number> = {};
    for (const part of format.formatToParts(new Date(wholeMs))) field[part.type] = Number(part.value);
    const wall = Date.UTC(
      field['year']!,
      field['month']! - 1,
      field['day']!,
      field['hour']!,
      field['minute']!,
      field['second']!,
    );
    return wall - wholeMs;
  };
}

/**
 * The moment (ms) of a wall-clock time `YYYY-MM-DDTHH:MM` in a zone, read as shifts are where the clocks jump; null where the text is no
 * such time. Throws RangeError for a zone that the platform does not know.
 */
export function momentInZone(text: string, zone: string): number | null {
  const wallMs = /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(text) ? Date.parse(`${text.slice(0, 16)}Z`) : Number.NaN;
  return Number.isFinite(wallMs) ? wallToMoment(wallMs, zoneOffset(zone)) : null;
}

/**
 * The moment of a wall-clock time given as if it were UTC. A time that the clocks skip is read by the offset before the jump
 * (02:30 becomes 03:30); one that they show twice is the first.
 */
function wallToMoment(wallMs: number, offsetAt: OffsetAt): number {
  const before = offsetAt(wallMs - DAY_MS);
  const after = offsetAt(wallMs + DAY_MS);
  const early = wallMs - before;
  if (before === after || offsetAt(early) === before) return early;
  const late = wallMs - after;
  return offsetAt(late) === after ? late : early;
}

function minutesOf(time: WallTime): number {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(time);
  if (!match) throw new RangeError(`Cannot read wall time as it must be HH:MM: current value is ${time}`);
  return Number(match[1]) * 60 + Number(match[2]);
}

/** A span on the date whose midnight, as if UTC, is `dayMs`, in moments. `notBefore`: minute of day from which it must start. */
function spanOn(dayMs: number, span: WallSpan, rules: { offsetAt: OffsetAt; notBefore: number }): Stop {
  let from = minutesOf(span.from);
  if (from < rules.notBefore) from += 24 * 60;
  let to = minutesOf(span.to);
  while (to <= from) to += 24 * 60;
  const moment = (minutes: number) => wallToMoment(dayMs + minutes * 60_000, rules.offsetAt);
  return { fromMs: moment(from), toMs: moment(to) };
}

function isoDay(dayMs: number): number {
  return new Date(dayMs).getUTCDay() || 7;
}

/** What `spans` leave open between two moments. `spans` in any order, overlapping allowed. */
function gaps(spans: readonly Stop[], range: Stop): Stop[] {
  const open: Stop[] = [];
  let reached = range.fromMs;
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    if (span.toMs <= reached) continue;
    if (span.fromMs >= range.toMs) break;
    if (span.fromMs > reached) open.push({ fromMs: reached, toMs: span.fromMs });
    reached = span.toMs;
  }
  if (reached < range.toMs) open.push({ fromMs: reached, toMs: range.toMs });
  return open;
}

/**
 * The stops of a line between two moments, for `workingTime`. A break belongs to the shift it is listed in and is a stop even
 * where another shift overlaps it. Throws RangeError for a zone that the platform does not know or a time that is not HH:MM.
 * Cost: about 10 µs a shift edge; ask for days or weeks, not years.
 */
export function calendarStops(plan: LinePlan, range: Stop): Stop[] {
  const offsetAt = zoneOffset(plan.zone);
  const closed = new Set(plan.closedDates);
  const shifts: Stop[] = [];
  const stops: Stop[] = plan.plannedStops.filter(
    (stop) => stop.toMs > range.fromMs && stop.fromMs < range.toMs,
  );
  const firstDay = Math.floor((range.fromMs + offsetAt(range.fromMs)) / DAY_MS) * DAY_MS - 2 * DAY_MS;
  const lastDay = range.toMs + offsetAt(range.toMs);
  for (let dayMs = firstDay; dayMs <= lastDay; dayMs += DAY_MS) {
    if (closed.has(utcDate(dayMs))) {
      if (isRoundTheClock(plan)) stops.push(wholeDay(dayMs, offsetAt));
      continue;
    }
    const weekday = isoDay(dayMs);
    for (const shift of shiftsOn(plan, dayMs)) {
      if (!shift.days.includes(weekday)) continue;
      shifts.push(spanOn(dayMs, shift, { offsetAt, notBefore: 0 }));
      const notBefore = minutesOf(shift.from);
      for (const pause of shift.breaks) {
        if (pause.days?.includes(weekday) ?? true) stops.push(spanOn(dayMs, pause, { offsetAt, notBefore }));
      }
    }
  }
  const idle = isRoundTheClock(plan) ? [] : gaps([...shifts, ...(plan.overtime ?? [])], range);
  return [...idle, ...stops]
    .map((stop) => ({
      fromMs: Math.max(stop.fromMs, range.fromMs),
      toMs: Math.min(stop.toMs, range.toMs),
    }))
    .filter((stop) => stop.toMs > stop.fromMs)
    .sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
}

/** The shift that it is at a moment, its breaks included; null outside shifts and on a line that runs round the clock. The latest begun counts. */
export function shiftAt(plan: LinePlan, atMs: number): Stop | null {
  const offsetAt = zoneOffset(plan.zone);
  const closed = new Set(plan.closedDates);
  const today = Math.floor((atMs + offsetAt(atMs)) / DAY_MS) * DAY_MS;
  let found: Stop | null = null;
  for (const dayMs of [today - DAY_MS, today]) {
    if (closed.has(utcDate(dayMs))) continue;
    for (const shift of shiftsOn(plan, dayMs)) {
      if (!shift.days.includes(isoDay(dayMs))) continue;
      const span = spanOn(dayMs, shift, { offsetAt, notBefore: 0 });
      if (span.fromMs <= atMs && atMs < span.toMs && span.fromMs >= (found?.fromMs ?? span.fromMs))
        found = span;
    }
  }
  return found;
}

/** The shifts of the week in which a day lies. */
function shiftsOn(plan: LinePlan, dayMs: number): readonly Shift[] {
  const { otherWeek } = plan;
  if (!otherWeek) return plan.shifts;
  const apart = weekOf(dayMs) - weekOf(Date.parse(`${otherWeek.firstWeek}T00:00Z`));
  return Math.abs(apart) % 2 === 0 ? plan.shifts : otherWeek.shifts;
}

/** Weeks from Monday to Sunday, numbered; 1 January 1970 was a Thursday. */
function weekOf(dayMs: number): number {
  return Math.floor((dayMs / DAY_MS + 3) / 7);
}

function isRoundTheClock({ shifts, otherWeek }: LinePlan): boolean {
  return shifts.length === 0 && (otherWeek?.shifts ?? []).length === 0;
}

function wholeDay(dayMs: number, offsetAt: OffsetAt): Stop {
  return { fromMs: wallToMoment(dayMs, offsetAt), toMs: wallToMoment(dayMs + DAY_MS, offsetAt) };
}
