// A line's weeks while somebody edits them: what the picture of one week shows, what does not fit, and what the log is told. Pure.

import type { PayloadOf } from '../../../../../shared/floor/kinds.ts';
import type { LineRules, LineWeeks } from '../../../../../shared/floor/state.ts';
import { DAY_MS, utcDate } from '../../../../../shared/kit/moment.ts';

/** A shift with its breaks. */
export type WeekShift = LineWeeks['weeks'][number][number];
/** The weeks without the line's name. */
export type Weeks = Omit<LineWeeks, 'line'>;

const DAY_MINUTES = 1440;

/** What a stretch of the picture is. */
export type BarKind = 'shift' | 'break' | 'overtime' | 'stop';

/** A stretch of one day, minutes of its wall clock. `shift`: which of the week's shifts it is of, null where of none. */
export interface Bar {
  readonly kind: BarKind;
  readonly from: number;
  readonly to: number;
  readonly shift: number | null;
}

/** One day of the picture. */
export interface DayRow {
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly isHoliday: boolean;
  readonly bars: readonly Bar[];
}

/** Minutes of a wall clock `HH:MM`. */
export function minutesOf(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

/** The Monday of the week of a date. */
export function mondayOf(date: string): string {
  const ms = Date.parse(`${date}T00:00Z`);
  return utcDate(ms - ((new Date(ms).getUTCDay() + 6) % 7) * DAY_MS);
}

/** A date some days on. */
export function daysOn(date: string, days: number): string {
  return utcDate(Date.parse(`${date}T00:00Z`) + days * DAY_MS);
}

/** Which of the patterns a week follows: 0 or 1. `monday`: any day of it. */
export function patternOf({ weeks, firstWeek }: Weeks, monday: string): number {
  if (weeks.length < 2 || firstWeek === null) return 0;
  const apart = Date.parse(`${mondayOf(monday)}T00:00Z`) - Date.parse(`${mondayOf(firstWeek)}T00:00Z`);
  return Math.abs(Math.round(apart / (7 * DAY_MS))) % 2;
}

/** The seven days of a week as the picture shows them; what began on the Sunday before reaches into its Monday. */
export function weekRows(weeks: Weeks, monday: string): readonly DayRow[] {
  const bars: Bar[][] = Array.from({ length: 7 }, () => []);
  for (let day = -1; day < 7; day += 1) {
    const date = daysOn(monday, day);
    if (isHoliday(weeks, date)) continue;
    const pattern = patternOf(weeks, date);
    for (const [at, shift] of (weeks.weeks[pattern] ?? []).entries()) {
      if (!shift.days.includes(((day + 7) % 7) + 1)) continue;
      const own = pattern === patternOf(weeks, monday) ? at : null;
      for (const { kind, from, to } of spansOf(shift, ((day + 7) % 7) + 1))
        spread(bars, day, { kind, from, to, shift: own });
    }
  }
  const startMs = Date.parse(`${monday}T00:00Z`);
  const spells = [
    ...weeks.overtime.map((spell) => ({ ...spell, kind: 'overtime' as const })),
    ...weeks.stops.map((spell) => ({ ...spell, kind: 'stop' as const })),
  ];
  for (const { kind, from, to } of spells) {
    const [first, last] = [from, to].map((text) => (Date.parse(`${text}Z`) - startMs) / 60_000);
    if (first !== undefined && last !== undefined && last > first)
      spread(bars, 0, { kind, from: Math.max(0, first), to: Math.min(7 * DAY_MINUTES, last), shift: null });
  }
  return bars.map((of, day) => {
    const date = daysOn(monday, day);
    return { date, isHoliday: isHoliday(weeks, date), bars: of };
  });
}

function isHoliday({ holidays }: Weeks, date: string): boolean {
  return holidays.some(({ from, to }) => from <= date && date <= to);
}

/** A shift that begins on a weekday, and its breaks of that day, minutes from that day's midnight. */
function spansOf(shift: WeekShift, weekday: number): readonly { kind: BarKind; from: number; to: number }[] {
  const begins = minutesOf(shift.from);
  const after = (from: number, to: number) => (to > from ? to : to + DAY_MINUTES);
  const pauses = shift.breaks
    .filter(({ days }) => days.includes(weekday))
    .map((pause) => {
      const first = minutesOf(pause.from);
      const from = first < begins ? first + DAY_MINUTES : first;
      return {
        kind: 'break' as const,
        from,
        to: after(from % DAY_MINUTES, minutesOf(pause.to)) + from - (from % DAY_MINUTES),
      };
    });
  return [{ kind: 'shift', from: begins, to: after(begins, minutesOf(shift.to)) }, ...pauses];
}

/** Cuts a stretch at each midnight and puts its pieces on their days. */
function spread(bars: Bar[][], day: number, bar: Bar): void {
  for (let from = bar.from; from < bar.to; ) {
    const over = Math.floor(from / DAY_MINUTES);
    const to = Math.min(bar.to, (over + 1) * DAY_MINUTES);
    bars[day + over]?.push({ ...bar, from: from - over * DAY_MINUTES, to: to - over * DAY_MINUTES });
    from = to;
  }
}

/** What keeps weeks from being saved. */
export type WeekFault =
  | { readonly code: 'no-days'; readonly from: string; readonly to: string }
  | { readonly code: 'break-outside'; readonly from: string; readonly to: string }
  | { readonly code: 'ends-early'; readonly from: string; readonly to: string }
  | { readonly code: 'not-filled'; readonly from: string; readonly to: string };

/** The first thing that does not fit; null where all does. */
export function weekFault(weeks: Weeks): WeekFault | null {
  for (const shift of weeks.weeks.flat()) {
    const { from, to } = shift;
    if (from === '' || to === '') return { code: 'not-filled', from, to };
    if (shift.days.length === 0) return { code: 'no-days', from, to };
    const pause = shift.breaks.find((each) => !isWithin(shift, each));
    if (pause)
      return {
        code: pause.from && pause.to ? 'break-outside' : 'not-filled',
        from: pause.from,
        to: pause.to,
      };
  }
  const spells = [...weeks.overtime, ...weeks.stops];
  for (const { from, to } of [...spells, ...weeks.holidays])
    if (from === '' || to === '') return { code: 'not-filled', from, to };
  for (const { from, to } of weeks.holidays) if (to < from) return { code: 'ends-early', from, to };
  for (const { from, to } of spells) if (to <= from) return { code: 'ends-early', from, to };
  return null;
}

/** True where a break begins and ends within its shift. */
function isWithin(shift: WeekShift, pause: WeekShift['breaks'][number]): boolean {
  if (pause.from === '' || pause.to === '') return false;
  const [begins, ends] = [minutesOf(shift.from), minutesOf(shift.to)];
  const length = ends > begins ? ends - begins : ends - begins + DAY_MINUTES;
  const into = (time: string) => (minutesOf(time) - begins + DAY_MINUTES) % DAY_MINUTES;
  const first = into(pause.from);
  const last = into(pause.to) || (length === DAY_MINUTES ? DAY_MINUTES : 0);
  return first < length && first < last && last <= length;
}

/** The same hours as the line's rules state them, for tablets of older versions: all shifts of all weeks, and their breaks. */
export function rulesHours({ weeks }: Weeks): {
  readonly shifts: LineRules['shifts'];
  readonly breaks: LineRules['breaks'];
} {
  const once = <T>(list: readonly T[]): T[] => [
    ...new Map(list.map((each) => [JSON.stringify(each), each] as const)).values(),
  ];
  const all = weeks.flat();
  return {
    shifts: once(all.map(({ days, from, to }) => ({ days: [...days], from, to }))),
    breaks: once(
      all.flatMap(({ breaks }) => breaks.map(({ days, from, to }) => ({ days: [...days], from, to }))),
    ),
  };
}

/** The weeks as the log is told of them. */
export function weeksPayload(line: string, weeks: Weeks): PayloadOf<'line.calendar-ruled'> {
  const spells = (list: Weeks['stops']) => list.map(({ from, to, note }) => ({ from, to, note }));
  return {
    line,
    weeks: weeks.weeks.map((shifts) =>
      shifts.map(({ days, from, to, breaks }) => ({
        days: [...days],
        from,
        to,
        // A break on a day without its shift would say nothing.
        breaks: breaks.map((pause) => ({ ...pause, days: pause.days.filter((day) => days.includes(day)) })),
      })),
    ),
    firstWeek: weeks.weeks.length < 2 ? null : weeks.firstWeek,
    holidays: weeks.holidays.map(({ from, to, note }) => ({ from, to, note })),
    overtime: spells(weeks.overtime),
    stops: spells(weeks.stops),
  };
}
