// A line's working time, from its rules: shifts, breaks within them, planned stops.

import type { FloorState, LineRules } from '../floor/state.ts';
import { calendarStops } from './calendar.ts';
import { type WorkingTime, workingTime } from './working-time.ts';

const DAY_MS = 86_400_000;
/** How far ahead the calendar is laid out. */
const HORIZON_DAYS = 8;
/** How far back, for the pace of panels already seen. */
const LOOK_BACK_DAYS = 1;

/** The line's working time around a moment, from its shifts, breaks and planned stops. */
export function lineCalendar(floor: FloorState, line: string, nowMs: number): WorkingTime {
  const rules = floor.rules.get(line);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  if (!rules) return workingTime([]);
  const plan = {
    zone,
    shifts: rules.shifts.map((shift) => ({ ...shift, breaks: breaksWithin(rules, shift) })),
    closedDates: [],
    plannedStops: rules.stops.map((stop) => ({ fromMs: Date.parse(stop.from), toMs: Date.parse(stop.to) })),
  };
  // Laid out from midnight to midnight (UTC), so that it is made once a day and not once a second.
  const fromMs = Math.floor(nowMs / DAY_MS - LOOK_BACK_DAYS) * DAY_MS;
  return workingTime(
    calendarStops(plan, { fromMs, toMs: fromMs + (LOOK_BACK_DAYS + HORIZON_DAYS + 1) * DAY_MS }),
  );
}

/** A shift's breaks: those of the line that begin within it on a day that it runs. */
function breaksWithin(rules: LineRules, shift: LineRules['shifts'][number]): { from: string; to: string }[] {
  const overnight = shift.to <= shift.from;
  const within = (time: string) =>
    overnight ? time >= shift.from || time < shift.to : time >= shift.from && time < shift.to;
  return rules.breaks
    .filter((pause) => within(pause.from) && pause.days.some((day) => shift.days.includes(day)))
    .map(({ from, to }) => ({ from, to }));
}
