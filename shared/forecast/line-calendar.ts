// A line's working time: from the weeks that somebody entered, else from the shifts, breaks and stops of its rules.
// In the rules a break has weekdays of its own and no shift. Where all of them are days on which the shift begins, they are read as such, so that
// a night's break after midnight goes with its night; else they are days of the calendar. Refused: a break on every day of its shift, which took
// an hour of Friday off each day of the week.

import type { FloorState, LineRules, LineWeeks } from '../floor/state.ts';
import { DAY_MS, utcDate } from '../kit/moment.ts';
import { type Break, calendarStops, type LinePlan, momentInZone, type Shift } from './calendar.ts';
import { type Stop, type WorkingTime, workingTime } from './working-time.ts';

/** How far ahead the calendar is laid out. */
const HORIZON_DAYS = 8;
/** How far back, for the pace of panels already seen. */
const LOOK_BACK_DAYS = 1;
/** A holiday is at most so long; an end typed wrong must not fill memory. */
const MOST_HOLIDAY_DAYS = 366;

/** The line's working time around a moment, from its shifts, breaks, holidays, overtime and planned stops. */
export function lineCalendar(floor: FloorState, line: string, nowMs: number): WorkingTime {
  const plan = linePlan(floor, line);
  if (plan === null) return workingTime([]);
  // Laid out from midnight to midnight (UTC), so that it is made once a day and not once a second.
  const fromMs = Math.floor(nowMs / DAY_MS - LOOK_BACK_DAYS) * DAY_MS;
  return workingTime(
    calendarStops(plan, { fromMs, toMs: fromMs + (LOOK_BACK_DAYS + HORIZON_DAYS + 1) * DAY_MS }),
  );
}

/** The line's plan, in its own zone; null where nobody set any rules. */
export function linePlan(floor: FloorState, line: string): LinePlan | null {
  const rules = floor.rules.get(line);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const weeks = floor.calendars.get(line);
  const inRules = rules ? planOfRules(rules, zone) : null;
  return weeks ? planOfWeeks(weeks, zone, inRules?.plannedStops ?? []) : inRules;
}

/** The weeks of a line that somebody entered, or what its rules say put as one week. Holidays and the like are empty there. */
export function weeksOf(floor: FloorState, line: string, rules: LineRules): LineWeeks {
  const entered = floor.calendars.get(line);
  if (entered) return entered;
  const shifts = rules.shifts.map(({ days, from, to }) => ({
    days: [...days],
    from,
    to,
    breaks: breaksWithin(rules, { days, from, to }).map((pause) => ({
      from: pause.from,
      to: pause.to,
      days: [...(pause.days ?? days)],
    })),
  }));
  return { line, weeks: [shifts], firstWeek: null, holidays: [], overtime: [], stops: [] };
}

/** `known`: stops that the rules have by moment; they stand whatever the weeks say. */
function planOfWeeks(entered: LineWeeks, zone: string, known: readonly Stop[]): LinePlan {
  const { weeks, firstWeek, holidays, overtime, stops } = entered;
  const [shifts = [], other] = weeks;
  const spells = (list: LineWeeks['stops']) =>
    list.flatMap(({ from, to }): Stop[] => {
      const [fromMs, toMs] = [momentInZone(from, zone), momentInZone(to, zone)];
      return fromMs === null || toMs === null || toMs <= fromMs ? [] : [{ fromMs, toMs }];
    });
  return {
    zone,
    shifts,
    otherWeek: other === undefined || firstWeek === null ? null : { shifts: other, firstWeek },
    closedDates: holidays.flatMap(({ from, to }) => datesBetween(from, to)),
    plannedStops: [...known, ...spells(stops)],
    overtime: spells(overtime),
  };
}

/** Every date from the first to the last. */
function datesBetween(from: string, to: string): readonly string[] {
  const days = Math.round((Date.parse(`${to}T00:00Z`) - Date.parse(`${from}T00:00Z`)) / DAY_MS);
  if (!(days >= 0)) return [];
  return Array.from({ length: Math.min(days + 1, MOST_HOLIDAY_DAYS) }, (_, day) =>
    utcDate(Date.parse(`${from}T00:00Z`) + day * DAY_MS),
  );
}

function planOfRules(rules: LineRules, zone: string): LinePlan {
  return {
    zone,
    shifts: rules.shifts.map((shift): Shift => ({ ...shift, breaks: breaksWithin(rules, shift) })),
    closedDates: [],
    plannedStops: rules.stops.map((stop) => ({ fromMs: Date.parse(stop.from), toMs: Date.parse(stop.to) })),
  };
}

/** A shift's breaks: those of the line that begin within it, on those of its days on which they are taken. */
function breaksWithin(rules: LineRules, shift: LineRules['shifts'][number]): readonly Break[] {
  const overnight = shift.to <= shift.from;
  const within = (time: string) =>
    overnight ? time >= shift.from || time < shift.to : time >= shift.from && time < shift.to;
  return rules.breaks
    .filter((pause) => within(pause.from))
    .map(({ from, to, days: own }) => {
      const isNextDay = overnight && from < shift.from;
      const isOfShift = !isNextDay || own.every((day) => shift.days.includes(day));
      const days = shift.days.filter((day) => own.includes(isOfShift ? day : (day % 7) + 1));
      return { from, to, days };
    })
    .filter(({ days }) => days.length > 0);
}
