// A line's plan against calendars that others wrote: weeks, alternation, holidays and overtime are expanded by an implementation of RFC 5545
// (recurrence rules with BYDAY, INTERVAL, WKST, EXDATE), wall clock becomes moments by luxon's zones. Random plans, every week of years in
// which the clocks change, in zones that change them at different hours, by half an hour, and not at all.

import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import type { LineWeeks } from '../../../shared/floor/state.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { calendarStops } from '../../../shared/forecast/calendar.ts';
import { linePlan } from '../../../shared/forecast/line-calendar.ts';
import { rrule } from './rrule.ts';

const MINUTE_MS = 60_000;
const zones = [
  'Europe/Berlin',
  'America/New_York',
  'Australia/Lord_Howe',
  'America/Santiago',
  'Asia/Kolkata',
  'UTC',
  'Pacific/Auckland',
  'Africa/Casablanca',
];

/** The moment of a wall-clock time as RFC 5545 §3.3.5 reads it: skipped, by the offset before; shown twice, the first. */
function moment(wall: Date, zone: string): number {
  const parts = {
    year: wall.getUTCFullYear(),
    month: wall.getUTCMonth() + 1,
    day: wall.getUTCDate(),
    hour: wall.getUTCHours(),
    minute: wall.getUTCMinutes(),
  };
  const found = DateTime.fromObject(parts, { zone });
  if (found.hour === parts.hour && found.minute === parts.minute)
    return Math.min(...found.getPossibleOffsets().map((each) => each.toMillis()));
  const before = DateTime.fromMillis(wall.getTime() - 86_400_000, { zone: 'utc' }).setZone(zone, {
    keepLocalTime: true,
  });
  return wall.getTime() - before.offset * MINUTE_MS;
}

const wallOf = (day: Date, minutes: number) => new Date(day.getTime() + minutes * MINUTE_MS);
const minutesOf = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));

type Span = readonly [fromMs: number, toMs: number];

/** Every day on which something begins, by its recurrence rule: dates as if they were UTC, as RFC 5545 writes local times. */
function daysOf(
  days: readonly number[],
  on: { readonly entered: LineWeeks; readonly week: number; readonly from: Date; readonly to: Date },
): Date[] {
  if (days.length === 0) return [];
  const { entered, week, from, to } = on;
  const isTurned = entered.weeks.length === 2 && entered.firstWeek !== null;
  const anchor = new Date(`${isTurned ? entered.firstWeek : '2024-01-01'}T00:00Z`);
  // A rule has no days before its start: begin a whole number of turns earlier.
  const start = new Date(anchor.getTime() + (week - 2 * 60) * 7 * 86_400_000);
  const excluded = new Set(
    entered.holidays.flatMap(({ from: first, to: last }) =>
      rrule({ start: new Date(`${first}T00:00Z`), daily: true, until: new Date(`${last}T00:00Z`) }).map(
        Number,
      ),
    ),
  );
  return rrule({ start, days, interval: isTurned ? 2 : 1, from, to }).filter(
    (day) => !excluded.has(Number(day)),
  );
}

/** What the line works in a range, minute by minute, by the recurrence rules. */
function worked(
  entered: LineWeeks,
  zone: string,
  range: { readonly fromMs: number; readonly toMs: number },
): Set<number> {
  const from = new Date(range.fromMs - 4 * 86_400_000);
  const to = new Date(range.toMs + 4 * 86_400_000);
  const on: Span[] = [];
  const off: Span[] = [];
  const span = (day: Date, first: number, last: number): Span => [
    moment(wallOf(day, first), zone),
    moment(wallOf(day, last), zone),
  ];
  const weeks = entered.firstWeek === null ? entered.weeks.slice(0, 1) : entered.weeks;
  for (const [week, shifts] of weeks.entries()) {
    for (const shift of shifts) {
      const begins = minutesOf(shift.from);
      const ends = minutesOf(shift.to);
      for (const day of daysOf(shift.days, { entered, week, from, to }))
        on.push(span(day, begins, ends > begins ? ends : ends + 1440));
      for (const pause of shift.breaks) {
        const first = minutesOf(pause.from) + (minutesOf(pause.from) < begins ? 1440 : 0);
        let last = minutesOf(pause.to);
        while (last <= first) last += 1440;
        const taken = shift.days.filter((day) => pause.days.includes(day));
        for (const day of daysOf(taken, { entered, week, from, to })) off.push(span(day, first, last));
      }
    }
  }
  const spell = ({ from: first, to: last }: { from: string; to: string }): Span => [
    moment(new Date(`${first}Z`), zone),
    moment(new Date(`${last}Z`), zone),
  ];
  on.push(...entered.overtime.map(spell));
  off.push(...entered.stops.map(spell));
  const minutes = new Set<number>();
  const each = ([first, last]: Span, act: (minute: number) => void) => {
    const begin = Math.max(first, range.fromMs);
    for (let ms = begin; ms < Math.min(last, range.toMs); ms += MINUTE_MS * 5) act(ms);
  };
  for (const one of on) each(one, (minute) => minutes.add(minute));
  for (const one of off) each(one, (minute) => minutes.delete(minute));
  return minutes;
}

/** The same by the product. */
function planned(
  entered: LineWeeks,
  zone: string,
  range: { readonly fromMs: number; readonly toMs: number },
): Set<number> {
  const floor = emptyState();
  floor.lines.set('L1', { line: 'L1', name: '', zone, machines: [] });
  floor.calendars.set('L1', entered);
  const plan = linePlan(floor, 'L1');
  if (plan === null) throw new TypeError('Cannot go on as the line must have a plan');
  const stops = calendarStops(plan, range);
  const minutes = new Set<number>();
  let at = 0;
  for (let ms = range.fromMs; ms < range.toMs; ms += MINUTE_MS * 5) {
    while ((stops[at]?.toMs ?? Number.POSITIVE_INFINITY) <= ms) at += 1;
    // Stops may overlap: any that holds the minute counts.
    const isStopped = stops.slice(at, at + 8).some((stop) => stop.fromMs <= ms && ms < stop.toMs);
    if (!isStopped) minutes.add(ms);
  }
  return minutes;
}

// Every time on a full five minutes, as every zone of the list has its offsets.
const time = fc.integer({ min: 0, max: 287 }).map((step) => {
  const minutes = step * 5;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
});
const days = fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 });
const shift = fc
  .record({
    days,
    from: time,
    length: fc.integer({ min: 12, max: 144 }),
    breaks: fc.array(fc.record({ at: fc.nat(100), long: fc.integer({ min: 1, max: 12 }), days }), {
      maxLength: 2,
    }),
  })
  .map(({ days: on, from, length, breaks }) => {
    const begins = minutesOf(from);
    const text = (minutes: number) => {
      const of = ((minutes % 1440) + 1440) % 1440;
      return `${String(Math.floor(of / 60)).padStart(2, '0')}:${String(of % 60).padStart(2, '0')}`;
    };
    return {
      days: on,
      from,
      to: text(begins + length * 5),
      breaks: breaks.map(({ at, long, days: taken }) => {
        const first = begins + Math.min(at, length - 1) * 5;
        return { days: taken, from: text(first), to: text(first + long * 5) };
      }),
    };
  });
const dayText = (day: number) => new Date(day * 86_400_000).toISOString().slice(0, 10);
const year = { first: Date.parse('2026-01-01T00:00Z') / 86_400_000, days: 400 };
/** A day of the week that is asked for, or just beside it: counted from 1 January 1970, moved there afterwards. */
const someDay = fc.integer({ min: 1, max: 10 });
const spell = fc
  .record({ day: someDay, from: time, long: fc.integer({ min: 1, max: 60 }) })
  .map(({ day, from, long }) => {
    const first = day * 1440 + minutesOf(from);
    const text = (minutes: number) => new Date(minutes * MINUTE_MS).toISOString().slice(0, 16);
    return { from: text(first), to: text(first + long * 5), note: '' };
  });
const entered: fc.Arbitrary<LineWeeks> = fc.record({
  line: fc.constant('L1'),
  // The first has a shift, else the line would run round the clock.
  weeks: fc.oneof(
    fc.tuple(fc.array(shift, { minLength: 1, maxLength: 3 })),
    fc.tuple(fc.array(shift, { minLength: 1, maxLength: 3 }), fc.array(shift, { maxLength: 2 })),
  ),
  // A Monday before, within or after what is asked.
  firstWeek: fc
    .integer({ min: -40, max: 90 })
    .map((week) => dayText(Date.parse('2026-01-05T00:00Z') / 86_400_000 + week * 7)),
  holidays: fc.array(
    fc
      .record({ day: someDay, long: fc.nat(4) })
      .map(({ day, long }) => ({ from: dayText(day), to: dayText(day + long), note: '' })),
    { maxLength: 4 },
  ),
  overtime: fc.array(spell, { maxLength: 3 }),
  stops: fc.array(spell, { maxLength: 3 }),
});

/** The plan with its dates moved, the first of someDay() to two days before `fromMs`. */
function moved(plan: LineWeeks, fromMs: number): LineWeeks {
  const byMs = Math.floor(fromMs / 86_400_000 - 3) * 86_400_000;
  const move = (text: string) =>
    new Date(Date.parse(`${text.slice(0, 10)}T00:00Z`) + byMs).toISOString().slice(0, 10) + text.slice(10);
  const span = <T extends { from: string; to: string }>(each: T) => ({
    ...each,
    from: move(each.from),
    to: move(each.to),
  });
  const { holidays, overtime, stops } = plan;
  return { ...plan, holidays: holidays.map(span), overtime: overtime.map(span), stops: stops.map(span) };
}

/** Weeks with a change of the clocks in the zone, and one without. */
function weeksAround(zone: string): readonly number[] {
  const found: number[] = [Date.parse('2026-05-18T00:00Z')];
  let offset = DateTime.fromMillis(year.first * 86_400_000, { zone }).offset;
  for (let day = year.first; day < year.first + year.days; day += 1) {
    const next = DateTime.fromMillis((day + 1) * 86_400_000, { zone }).offset;
    if (next !== offset) found.push((day - 3) * 86_400_000);
    offset = next;
  }
  return found;
}

describe('a line’s plan', () => {
  test('works when recurrence rules of RFC 5545 and luxon’s zones say so, around every change of the clocks', () => {
    const around = new Map(zones.map((zone) => [zone, weeksAround(zone)]));
    // Both changes of the clocks, where a zone has them.
    expect(around.get('Europe/Berlin')).toHaveLength(3);
    expect(around.get('Australia/Lord_Howe')?.length).toBeGreaterThanOrEqual(3);
    fc.assert(
      fc.property(entered, fc.constantFrom(...zones), fc.nat(9), (made, zone, pick) => {
        const weeks = around.get(zone) ?? [];
        const fromMs = weeks[pick % weeks.length] ?? 0;
        const range = { fromMs, toMs: fromMs + 7 * 86_400_000 };
        const plan = moved(made, fromMs);
        const [product, rules] = [planned(plan, zone, range), worked(plan, zone, range)];
        const off = [...product]
          .filter((ms) => !rules.has(ms))
          .concat([...rules].filter((ms) => !product.has(ms)));
        expect(off.slice(0, 5).map((ms) => new Date(ms).toISOString())).toEqual([]);
      }),
      { numRuns: 150 },
    );
  }, 120_000);
});
