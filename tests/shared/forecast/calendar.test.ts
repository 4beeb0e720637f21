// Stops of a plan against luxon's zones, over both changes of the clocks.

import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { calendarStops, type LinePlan, momentInZone, shiftAt } from '../../../shared/forecast/calendar.ts';
import { workingSeconds, workingTime } from '../../../shared/forecast/working-time.ts';

const zone = 'Europe/Berlin';
const everyDay = [1, 2, 3, 4, 5, 6, 7];
const weekdays = [1, 2, 3, 4, 5];
const ms = (text: string, inZone = zone) => DateTime.fromISO(text, { zone: inZone }).toMillis();
const range = (from: string, to: string, inZone = zone) => ({
  fromMs: ms(from, inZone),
  toMs: ms(to, inZone),
});
const plan = (parts: Partial<LinePlan>): LinePlan => ({
  zone,
  shifts: [],
  closedDates: [],
  plannedStops: [],
  ...parts,
});
const text = (atMs: number) => DateTime.fromMillis(atMs, { zone }).toFormat('ccc dd.LL HH:mm');

describe('calendarStops()', () => {
  test('leaves nothing but planned stops when there is no shift', () => {
    const week = range('2026-03-02T00:00', '2026-03-09T00:00');
    expect(calendarStops(plan({}), week)).toEqual([]);
    const plannedStops = [range('2026-03-04T10:00', '2026-03-04T11:00')];
    expect(calendarStops(plan({ plannedStops }), week)).toEqual(plannedStops);
  });

  test('closes nights, the weekend and breaks when shifts run on weekdays', () => {
    const shifts = [
      { days: weekdays, from: '06:00', to: '14:00', breaks: [{ from: '09:00', to: '09:15' }] },
      { days: weekdays, from: '14:00', to: '22:00', breaks: [] },
    ];
    const stops = calendarStops(plan({ shifts }), range('2026-03-05T12:00', '2026-03-09T10:00'));
    expect(stops.map((stop) => `${text(stop.fromMs)} - ${text(stop.toMs)}`)).toEqual([
      'Thu 05.03 22:00 - Fri 06.03 06:00',
      'Fri 06.03 09:00 - Fri 06.03 09:15',
      'Fri 06.03 22:00 - Mon 09.03 06:00',
      'Mon 09.03 09:00 - Mon 09.03 09:15',
    ]);
  });

  test('gives a break after midnight to the shift that began the day before', () => {
    const shifts = [{ days: [5], from: '22:00', to: '06:00', breaks: [{ from: '02:00', to: '02:30' }] }];
    const stops = calendarStops(plan({ shifts }), range('2026-03-06T20:00', '2026-03-07T08:00'));
    expect(stops.map((stop) => `${text(stop.fromMs)} - ${text(stop.toMs)}`)).toEqual([
      'Fri 06.03 20:00 - Fri 06.03 22:00',
      'Sat 07.03 02:00 - Sat 07.03 02:30',
      'Sat 07.03 06:00 - Sat 07.03 08:00',
    ]);
  });

  test.each([
    { reason: 'spring takes an hour from the night shift', from: '2026-03-28T20:00', hours: 7 },
    { reason: 'autumn gives the night shift an hour', from: '2026-10-24T20:00', hours: 9 },
    { reason: 'an ordinary night has eight', from: '2026-05-09T20:00', hours: 8 },
  ])('works $hours hours when $reason', ({ from, hours }) => {
    const shifts = [{ days: [6], from: '22:00', to: '06:00', breaks: [] }];
    const start = DateTime.fromISO(from, { zone });
    const night = { fromMs: start.toMillis(), toMs: start.plus({ hours: 16 }).toMillis() };
    const stops = calendarStops(plan({ shifts }), night);
    expect(workingSeconds(workingTime(stops), night.fromMs, night.toMs)).toBe(hours * 3600);
  });

  test('reads a time that the clocks skip by the offset before, and the first of one shown twice', () => {
    const shifts = [{ days: everyDay, from: '02:30', to: '12:00', breaks: [] }];
    const [spring] = calendarStops(plan({ shifts }), range('2026-03-29T00:00', '2026-03-29T11:00'));
    expect(new Date(spring!.toMs).toISOString()).toBe('2026-03-29T01:30:00.000Z'); // 03:30 summer time
    const [autumn] = calendarStops(plan({ shifts }), range('2026-10-25T00:00', '2026-10-25T11:00'));
    expect(new Date(autumn!.toMs).toISOString()).toBe('2026-10-25T00:30:00.000Z'); // 02:30 summer time, the first
  });

  test('starts no shift on a closed date, and closes the whole day of a line without shifts', () => {
    const closedDates = ['2026-03-03'];
    const shifts = [{ days: everyDay, from: '06:00', to: '14:00', breaks: [] }];
    const days = range('2026-03-02T14:00', '2026-03-04T06:00');
    expect(calendarStops(plan({ shifts, closedDates }), days)).toEqual([days]);
    expect(calendarStops(plan({ closedDates }), days)).toEqual([
      range('2026-03-03T00:00', '2026-03-04T00:00'),
    ]);
  });

  test.each([
    'Europe/Berlin',
    'America/New_York',
    'Asia/Kolkata',
    'Australia/Lord_Howe',
    'America/Sao_Paulo',
  ])('puts every shift edge of a year where luxon puts it in %s', (inZone) => {
    const shifts = [{ days: everyDay, from: '05:45', to: '21:15', breaks: [{ from: '12:00', to: '12:40' }] }];
    const year = range('2026-01-01T00:00', '2027-01-01T00:00', inZone);
    const stops = calendarStops(plan({ zone: inZone, shifts }), year);
    const starts = new Set(stops.map((stop) => stop.fromMs));
    const ends = new Set(stops.map((stop) => stop.toMs));
    let day = DateTime.fromMillis(year.fromMs, { zone: inZone });
    let seen = 0;
    for (; day.toMillis() < year.toMs; day = day.plus({ days: 1 })) {
      expect(ends).toContain(day.set({ hour: 5, minute: 45 }).toMillis());
      expect(starts).toContain(day.set({ hour: 12 }).toMillis());
      expect(ends).toContain(day.set({ hour: 12, minute: 40 }).toMillis());
      expect(starts).toContain(day.set({ hour: 21, minute: 15 }).toMillis());
      seen += 1;
    }
    expect(seen).toBe(365);
  });

  test('refuses an unknown zone and a time that is none', () => {
    const day = range('2026-03-02T00:00', '2026-03-03T00:00');
    expect(() => calendarStops(plan({ zone: 'Nowhere/Brae' }), day)).toThrow(RangeError);
    const shifts = [{ days: everyDay, from: '25:00', to: '06:00', breaks: [] }];
    expect(() => calendarStops(plan({ shifts }), day)).toThrow(RangeError);
  });
});

describe('momentInZone()', () => {
  test('is where luxon puts it, in winter and summer, whatever zone the machine is set to', () => {
    for (const inZone of ['Europe/London', 'Asia/Tokyo', 'America/St_Johns'])
      for (const text of ['2026-01-15T08:00', '2026-07-15T23:59'])
        expect(momentInZone(text, inZone)).toBe(ms(text, inZone));
  });

  test('says null where the text is no such time, and refuses an unknown zone', () => {
    expect(['', '2026-01-15', 'soon'].map((text) => momentInZone(text, zone))).toEqual([null, null, null]);
    expect(() => momentInZone('2026-01-15T08:00', 'Nowhere/Brae')).toThrow(RangeError);
  });
});

describe('shiftAt()', () => {
  const plan: LinePlan = {
    zone: 'Europe/London',
    shifts: [
      { days: [1, 2, 3, 4, 5], from: '06:00', to: '14:00', breaks: [] },
      { days: [1, 2, 3, 4, 5], from: '22:00', to: '06:00', breaks: [] },
    ],
    closedDates: ['2026-03-04'],
    plannedStops: [],
  };
  const at = (text: string) => DateTime.fromISO(text, { zone: plan.zone }).toMillis();
  const span = (text: string) => {
    const found = shiftAt(plan, at(text));
    return found && [found.fromMs, found.toMs];
  };

  test('is the shift by the zone’s clock, over midnight that of the day before, none outside', () => {
    expect(span('2026-03-02T06:00')).toEqual([at('2026-03-02T06:00'), at('2026-03-02T14:00')]);
    expect(span('2026-03-03T01:00')).toEqual([at('2026-03-02T22:00'), at('2026-03-03T06:00')]);
    expect(span('2026-03-02T15:00')).toBeNull();
    expect(span('2026-03-07T07:00')).toBeNull();
  });

  test('is an hour shorter over the change to summer time, and none starts on a closed date', () => {
    const saturdays = { ...plan, shifts: [{ days: [6], from: '22:00', to: '06:00', breaks: [] }] };
    const night = shiftAt(saturdays, at('2026-03-29T03:00'));
    expect(night && (night.toMs - night.fromMs) / 3_600_000).toBe(7);
    expect(span('2026-03-04T07:00')).toBeNull();
    expect(span('2026-03-04T01:00')).not.toBeNull();
  });
});
